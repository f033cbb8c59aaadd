"""The layout that comes nearest a wanted size, once a real unit has been measured."""

from __future__ import annotations

from msgspec import Struct

from sewalong.lengths import Length
from sewalong.quilt.quilt import Target
from sewalong.quilt.refusal import above_zero, at_least
from sewalong.quilt.size import Size


class Relaid(Struct, frozen=True):
    """`planned` is what the layout as planned would finish at, `target` the layout nearest to
    what was wanted and `finishes` its size; `over` is how many units are too many for it
    (below zero: too few). Inches, without borders."""

    planned: Size
    target: Target
    finishes: Size
    over: int


def relaid(planned: Target, unit_finishes: Length, wanted: Size, units: int) -> Relaid:
    """The layout for `wanted` from `units` units that really finish at `unit_finishes`.

    Raises NumbersFault for a size not above zero or no units.
    """
    above_zero(unit_finishes, "size the unit finishes at")
    at_least(1, units, "units")
    columns = max(1, round(wanted.width / unit_finishes))
    rows = max(1, round(wanted.length / unit_finishes))
    unit = Size.square(unit_finishes)
    return Relaid(
        planned=unit.times(planned.columns, planned.rows),
        target=Target(rows, columns),
        finishes=unit.times(columns, rows),
        over=units - rows * columns,
    )
