"""Every fabric once in each row and each column, and perhaps none meeting itself at a point."""

from __future__ import annotations

from functools import lru_cache
from math import gcd

from msgspec import Struct

Square = tuple[tuple[int, ...], ...]


@lru_cache(maxsize=32)
def latin_square(order: int, *, corners: bool = False) -> Square | None:
    """A square of so many fabrics, each once in each row and column, with `corners` none at a
    point of itself either; None where there is none: with `corners`, for orders 2, 3 and 4.

    Each row goes so many places on from the one before. That gives a square wherever the step and
    the order share no factor, and none at a point where the step is not one place either way;
    for 4 and 6 there is no such step, and all squares are tried. Raises ValueError below 1.
    """
    if order < 1:
        raise ValueError("a square has one row at least")
    steps = range(2, order - 1) if corners else (1,)
    step = next((step for step in steps if gcd(step, order) == 1), None)
    if step is not None:
        return tuple(
            tuple((place + step * row) % order for place in range(order)) for row in range(order)
        )
    return _tried(order, ((*range(order),),))


def _tried(order: int, rows: Square) -> Square | None:
    """The square that begins with these rows; every way to go on is tried."""
    if len(rows) == order:
        return rows
    for row in _next_rows(order, rows, ()):
        found = _tried(order, (*rows, row))
        if found is not None:
            return found
    return None


def _next_rows(order: int, rows: Square, begun: tuple[int, ...]) -> list[tuple[int, ...]]:
    place = len(begun)
    if place == order:
        return [begun]
    near = rows[-1][max(0, place - 1) : place + 2]
    taken = {*begun, *near, *(row[place] for row in rows)}
    return [
        whole
        for fabric in range(order)
        if fabric not in taken
        for whole in _next_rows(order, rows, (*begun, fabric))
    ]


class RowsAndColumns(Struct, frozen=True):
    """Whether each fabric can lie at most once in each row and column. `rows_fail` and
    `columns_fail` are the places of a row, or of a column, that must repeat; `points_fail` says
    that it can be had, but not so that none meets itself at a point."""

    rows_fail: int
    columns_fail: int
    points_fail: bool = False

    @property
    def possible(self) -> bool:
        """Whether all of it can be had together."""
        return not (self.rows_fail or self.columns_fail or self.points_fail)


def rows_and_columns(
    fabrics: int, rows: int, columns: int, *, corners: bool = False
) -> RowsAndColumns:
    """Which of the wishes fails for so many fabrics, each as often as there are rows and no oftener
    than it is wanted. That points fail is said of squares, where all is tried."""
    rows_fail, columns_fail = max(0, columns - fabrics), max(0, rows - fabrics)
    square = fabrics == rows == columns
    points = corners and square and latin_square(fabrics, corners=True) is None
    return RowsAndColumns(rows_fail, columns_fail, points)
