"""The layouts that the units there are will fill, with the one now wanted marked."""

from __future__ import annotations

from msgspec import Struct

from sewalong.quilt.layouts.layout import Layout, LayoutChoice, layouts, usual_reach
from sewalong.quilt.quilt import Target
from sewalong.quilt.size import Size
from sewalong.quilt.worksheet.basis import Basis
from sewalong.quilt.worksheet.line import Line, size_text


class LayoutLine(Struct, frozen=True):
    """One layout. `target` is what to set to have it; `current` marks the one wanted now.

    `spare` units would be over and `short` are not there; `size` is what the top finishes at.
    """

    target: Target
    current: bool
    spare: int
    short: int
    size: Size
    line: Line


def choice_of(basis: Basis, have: int) -> LayoutChoice:
    """What every layout of `have` units of this quilt shares."""
    return LayoutChoice(
        have,
        basis.unit.grown(-basis.quilt.seam),
        basis.border_in_all,
        shown_in=basis.shown_in,
        setting=basis.quilt.setting,
        seam=basis.quilt.seam,
    )


def fitting(basis: Basis, have: int) -> tuple[LayoutLine, ...]:
    """The one now wanted first, then every rows × columns within reach of `have` units.

    At least 2 and at most 60 rows and columns, no more than twice as long as wide, or wide as
    long, and a quarter of the units over; those that leave least over come first.
    """
    choice = choice_of(basis, have)
    found = layouts(choice, usual_reach(have))
    now = basis.target
    others = [one for one in found if (one.rows, one.columns) != (now.rows, now.columns)]
    current = choice.layout(now.rows, now.columns)
    return tuple(_line(one, one is current, basis) for one in (current, *others))


def _line(one: Layout, current: bool, basis: Basis) -> LayoutLine:
    marked = "; the one now wanted" if current else ""
    line = Line(
        f"{one.rows} rows of {one.columns}",
        f"{size_text(one.size, basis.shown_in)}, {one.leaves}{marked}",
        str(one.shape),
        float(one.size.width),
        float(one.size.length),
    )
    return LayoutLine(Target(one.rows, one.columns), current, one.spare, one.short, one.size, line)
