"""The starting pieces in the cut list: what the target takes, and what of it is short."""

from __future__ import annotations

from collections.abc import Iterator

from sewalong.lengths import as_given
from sewalong.piecing.method import Noun
from sewalong.quilt.cloth.squares import ClothFor
from sewalong.quilt.worksheet.basis import Basis
from sewalong.quilt.worksheet.cloth import strips_text
from sewalong.quilt.worksheet.line import Line, plural
from sewalong.quilt.worksheet.piece_cloth import (
    PieceCloth,
    StartNeed,
    cloth_of,
    fabric_counts,
    piece_cloths,
    start_needs,
)


def starting_pieces(basis: Basis) -> Iterator[Line]:
    """What the target takes, and last of each pile what of it is still short."""
    needs = start_needs(basis)
    for need in needs:
        start, noun = need.start, need.noun
        if start.packs is not None:
            packs = f"{noun.count(start.count)} in {plural(start.packs, 'pack')}"
            yield Line(noun.many, "cut already", f"{packs}; {need.words}")
        elif basis.quilt.named_fabrics:
            yield Line(f"{noun.many} in all", noun.count(need.need), need.words)
        if start.packs is not None and basis.quilt.named_fabrics:
            for name, count in fabric_counts(need, basis).items():
                yield Line(_label(noun, name or "any other"), noun.count(count), "for the target")
    for one in sorted(piece_cloths(basis), key=lambda each: -each.longest):
        yield _piece(one, next(need for need in needs if need.start.pile == one.pile), basis)
    for need in needs:
        if need.short:
            cut = cloth_of(need.start, need.short, basis)
            text = _pieces_text(cut, need.noun, basis, strip=need.start.length is not None)
            yield Line(f"{need.noun.many} still short", text, need.words, float(cut.cloth))


def _label(noun: Noun, name: str) -> str:
    return f"{noun.many}, {name}" if name else noun.many


def _piece(one: PieceCloth, need: StartNeed, basis: Basis) -> Line:
    text = _pieces_text(one.cut, need.noun, basis, strip=one.strip)
    words = "" if basis.quilt.named_fabrics else f"{need.words}; "
    reason = f"{words}if not cut yet; {one.cut.reason}"
    return Line(_label(need.noun, one.name), text, reason, float(one.cut.cloth))


def _pieces_text(cut: ClothFor, noun: Noun, basis: Basis, *, strip: bool) -> str:
    """`64 squares of 5 in from 8 strips of 5 in`; strips are cut as they are."""
    unit = basis.shown_in
    said = f"{noun.count(cut.count)} of {cut.strip_text}"
    if strip:
        return f"{said}, {as_given(cut.piece.width, unit)} long"
    return f"{said} from {strips_text(cut.strips, as_given(cut.piece.length, unit))}"
