"""What is cut to lie between and around the units: sashes, cornerstones, squares for triangles."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct
from msgspec.structs import replace

from sewalong.lengths import Length, as_given
from sewalong.piecing.method import Noun, Pile
from sewalong.quilt.cloth.squares import cloth_for
from sewalong.quilt.cloth.strips import strips_for
from sewalong.quilt.layouts.centre import sashes_of, triangles_of
from sewalong.quilt.setting import (
    CORNER,
    CORNERSTONE,
    LONG,
    LYING,
    SIDE,
    STANDING,
    Sashing,
    SetOnPoint,
)
from sewalong.quilt.size import Size
from sewalong.quilt.worksheet.basis import Basis
from sewalong.quilt.worksheet.line import Line, plural


class SettingCut(Struct, frozen=True):
    """`count` pieces alike for the pile, called `noun`, cut from the cloth called `name`.

    `size` is how each is cut, its longer side first; `strips` of its shorter side, `strip_text`
    wide in words, take `cloth` inches along the cloth. `reason` says how they come out of them.
    """

    pile: Pile
    noun: Noun
    name: str
    count: int
    size: Size
    strips: int
    strip_text: str
    cloth: Length
    reason: str


def setting_cuts(basis: Basis) -> tuple[SettingCut, ...]:
    """Every kind of piece the setting of the target takes; none where units are set straight.

    Raises NumbersFault as `cloth_for` and `strips_for` do.
    """
    match basis.quilt.setting:
        case Sashing() as sashing:
            return tuple(_sashes(basis, sashing))
        case SetOnPoint() as on_point:
            return tuple(_squares(basis, on_point))
        case _:
            return ()


def _squares(basis: Basis, setting: SetOnPoint) -> Iterator[SettingCut]:
    """The squares that triangles are cut from, corner to corner."""
    found = triangles_of(basis.quilt, setting, basis.target, basis.unit)
    for pile, one in ((SIDE, found.side), (CORNER, found.corner)):
        if one.squares:
            noun = Noun(f"square for {pile.noun.many}", f"squares for {pile.noun.many}")
            cut = _cut(basis, pile, noun, setting.cloth, one.squares, Size.square(one.cut_at))
            reason = f"{one.reason}: {pile.noun.count(one.triangles)}, straight grain outside; "
            yield replace(cut, reason=reason + cut.reason)


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
    if size.width > basis.choices.usable:
        return _joined(basis, pile, name, count, size)
    return _cut(basis, pile, pile.noun, name, count, size)


def _cut(basis: Basis, pile: Pile, noun: Noun, name: str, count: int, size: Size) -> SettingCut:
    cut = cloth_for(count, size, usable=basis.choices.usable, unit=basis.shown_in)
    return SettingCut(
        pile, noun, name, count, cut.piece, cut.strips, cut.strip_text, cut.cloth, cut.reason
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
        pile.noun,
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
