"""Which cuts of one cloth are to be labelled, since they are easily taken for each other."""

from __future__ import annotations

from collections.abc import Iterator

from sewalong.quilt.cloth.labels import Cut, to_label
from sewalong.quilt.cloth.to_cut import cut_size
from sewalong.quilt.size import Size
from sewalong.quilt.worksheet.basis import Basis
from sewalong.quilt.worksheet.cloth import binding_of
from sewalong.quilt.worksheet.line import Line
from sewalong.quilt.worksheet.piece_cloth import fabric_counts, piece_cloths, start_needs

UNNAMED = "the units' cloth"
"""What pieces are cut from that no fabric has been named for."""


def label_lines(basis: Basis) -> Iterator[Line]:
    """Cuts of one cloth that are easily taken for each other."""
    for one in to_label((*_strip_cuts(basis), *_piece_cuts(basis), *_length_cuts(basis))):
        yield Line(
            f"label, {one.first.cloth}",
            one.words(basis.shown_in),
            "mark each as it is cut: so near they are taken for each other",
        )


def _strip_cuts(basis: Basis) -> Iterator[Cut]:
    for place, (border, one) in enumerate(
        zip(basis.quilt.borders, basis.bordered(), strict=True), start=1
    ):
        yield Cut(border.cloth, f"border {place}", one.strips.width)
    yield Cut("binding", "binding", binding_of(basis).strips.width)
    for piece in piece_cloths(basis):
        if piece.strip:
            noun = basis.quilt.method.pile(piece.pile).noun
            yield Cut(piece.name or UNNAMED, noun.many, piece.cut.piece.length)


def _piece_cuts(basis: Basis) -> Iterator[Cut]:
    for need in start_needs(basis):
        if need.start.length is None:
            size = cut_size(Size.square(need.start.size), basis.shown_in)
            for name in fabric_counts(need, basis):
                yield Cut.of(name or UNNAMED, need.noun.many, size)


def _length_cuts(basis: Basis) -> Iterator[Cut]:
    for place, (border, one) in enumerate(
        zip(basis.quilt.borders, basis.bordered(), strict=True), start=1
    ):
        width = one.strips.width
        yield Cut.of(border.cloth, f"border {place}'s sides", Size(width, one.each_side))
        yield Cut.of(border.cloth, f"border {place}'s top and bottom", Size(width, one.each_end))
