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
from sewalong.quilt.worksheet.setting_cloth import setting_cuts

UNNAMED = "the units' cloth"
"""What pieces are cut from that no fabric has been named for."""


def label_lines(basis: Basis) -> Iterator[Line]:
    """Cuts of one cloth that are easily taken for each other."""
    cuts = (_strip_cuts, _piece_cuts, _setting_cuts, _length_cuts)
    for one in to_label(cut for kind in cuts for cut in kind(basis)):
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
    for strip in dict.fromkeys((one.name, one.size.length) for one in setting_cuts(basis)):
        yield Cut(strip[0], "the setting", strip[1])
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


def _setting_cuts(basis: Basis) -> Iterator[Cut]:
    for one in setting_cuts(basis):
        yield Cut.of(one.name, one.noun.many, one.size.turned)


def _length_cuts(basis: Basis) -> Iterator[Cut]:
    for place, (border, one) in enumerate(
        zip(basis.quilt.borders, basis.bordered(), strict=True), start=1
    ):
        width = one.strips.width
        yield Cut.of(border.cloth, f"border {place}'s sides", Size(width, one.each_side))
        yield Cut.of(border.cloth, f"border {place}'s top and bottom", Size(width, one.each_end))
