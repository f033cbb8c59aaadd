"""What is cut to lie between the units: sashes and cornerstones, how many, and from what cloth."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from sewalong.lengths import Length, as_given
from sewalong.piecing.method import Noun, Pile
from sewalong.quilt.cloth.squares import cloth_for
from sewalong.quilt.cloth.strips import strips_for
from sewalong.quilt.layouts.centre import sashes_of
from sewalong.quilt.setting import CORNERSTONE, LONG, LYING, STANDING, Sashing
from sewalong.quilt.size import Size
from sewalong.quilt.worksheet.basis import Basis
from sewalong.quilt.worksheet.line import Line, plural


class SettingCut(Struct, frozen=True):
    """`count` pieces alike that lie between the units, cut from the cloth called `name`.

    `size` is how each is cut, its longer side first; `strips` of its shorter side, `strip_text`
    wide in words, take `cloth` inches along the cloth. `reason` says how they come out of them.
    """

    pile: Pile
    name: str
    count: int
    size: Size
    strips: int
    strip_text: str
    cloth: Length
    reason: str

    @property
    def noun(self) -> Noun:
        """What one is called, and several."""
        return self.pile.noun


def setting_cuts(basis: Basis) -> tuple[SettingCut, ...]:
    """Every kind of piece between the units of the target; none where they are set straight.

    Raises NumbersFault as `cloth_for` and `strips_for` do.
    """
    return tuple(_sashes(basis, basis.quilt.setting)) if basis.quilt.setting else ()


def _sashes(basis: Basis, sashing: Sashing) -> Iterator[SettingCut]:
    found = sashes_of(basis.quilt, sashing, basis.target, basis.unit)
    if found.standing:
        yield _pieces(basis, STANDING, sashing.cloth, found.standing, found.cut_standing.turned)
    if found.lying:
        pile = LONG if sashing.cornerstones is None else LYING
        yield _pieces(basis, pile, sashing.cloth, found.lying, found.cut_lying)
    if found.cut_cornerstone is not None and sashing.cornerstones is not None:
        name = sashing.cornerstones.cloth
        yield _pieces(basis, CORNERSTONE, name, found.cornerstones, found.cut_cornerstone)


def _pieces(basis: Basis, pile: Pile, name: str, count: int, size: Size) -> SettingCut:
    usable, unit = basis.choices.usable, basis.shown_in
    if size.width > usable:
        return _joined(basis, pile, name, count, size)
    cut = cloth_for(count, size, usable=usable, unit=unit)
    return SettingCut(
        pile, name, count, cut.piece, cut.strips, cut.strip_text, cut.cloth, cut.reason
    )


def _joined(basis: Basis, pile: Pile, name: str, count: int, size: Size) -> SettingCut:
    """Longer than the cloth is wide: strips are joined into one, and that is cut."""
    choices = basis.choices
    strips = strips_for(
        count * size.width,
        size.length,
        usable=choices.usable,
        join=basis.join,
        seam=basis.quilt.seam,
        unit=basis.shown_in,
    )
    return SettingCut(
        pile,
        name,
        count,
        size,
        strips.count,
        strips.width_text,
        strips.cloth,
        f"strips joined, {choices.joins} joins; {strips.reason}",
    )


_MUST_FIT = {
    STANDING.id: "measure the units first; ",
    LYING.id: "measure the units first; ",
    LONG.id: "measure the rows first; ",
}


def setting_lines(basis: Basis) -> Iterator[Line]:
    """The cut list's lines: cut when there are units to measure, for that is what must fit."""
    unit = basis.shown_in
    for one in setting_cuts(basis):
        across, along = one.size.width, one.size.length
        size = f"{as_given(along, unit, symbol=False)} × {as_given(across, unit)}"
        if across == along:
            size = as_given(along, unit)
        fits = _MUST_FIT.get(one.pile.id, "")
        yield Line(
            f"{one.noun.many}, {one.name}",
            f"{one.noun.count(one.count)} of {size} from {plural(one.strips, 'strip')} "
            f"of {one.strip_text}",
            f"{fits}{one.reason}",
            float(one.cloth),
        )
