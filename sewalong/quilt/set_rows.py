"""The rows that units are sewn into, by how they are set, and how many units there are in all.

Set straight or with sashes, every row has a unit in each column. On point the rows run on the
slant, from one corner of the top to the other, and first grow and then shrink; what a layout
calls rows and columns are then the whole units along the edges (plane geometry).
"""

from __future__ import annotations

from msgspec import Struct

from sewalong.quilt.setting import SetOnPoint, Setting

CORNERS = 4
"""Triangles at the corners of a top on point."""


class SetRow(Struct, frozen=True):
    """One row: its units, and the side triangles at its ends, which only rows on point have.

    Where a row ends in a corner of the top, the corner's triangle is sewn on last of all.
    """

    units: int
    sides: int = 0


def set_rows(setting: Setting | None, rows: int, columns: int) -> tuple[SetRow, ...]:
    """Every row in order. On point, the first is the one unit in the corner at row 1, column 1."""
    if not isinstance(setting, SetOnPoint):
        return (SetRow(columns),) * rows
    return tuple(
        SetRow(units, 2 - (number == rows) - (number == columns))
        for number, units in enumerate(slanting(rows, columns), start=1)
    )


def slanting(rows: int, columns: int) -> tuple[int, ...]:
    """Units in each slanting row: one, three, five and so on, and back to one."""
    count = rows + columns - 1
    widest = 2 * min(rows, columns) - 1
    return tuple(min(2 * n - 1, 2 * (count - n) + 1, widest) for n in range(1, count + 1))


def units_in(setting: Setting | None, rows: int, columns: int) -> int:
    """Units of the whole top. On point, those between the whole rows and columns too."""
    between = (rows - 1) * (columns - 1) if isinstance(setting, SetOnPoint) else 0
    return rows * columns + between


def most_columns(setting: Setting | None, rows: int, units: int) -> int:
    """The most columns that so many units fill, in so many rows; 0 where not even one."""
    if isinstance(setting, SetOnPoint):
        return (units + rows - 1) // (2 * rows - 1)
    return units // rows
