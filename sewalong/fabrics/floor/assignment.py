"""Each row to a column of its own at the least cost together, and what another column would cost."""

from __future__ import annotations

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from sewalong.fabrics.photo.tones import Flags, Numbers

Indices = NDArray[np.intp]


class Assignment(Struct, frozen=True):
    """`column_of` has for each row its column. `of_row` and `of_column` are the duals: what each is
    worth. No cost is less than the two of its row and column together, and it is just that where
    they are assigned; a column is worth 0 where it is free, and else 0 or less."""

    costs: Numbers
    column_of: Indices
    of_row: Numbers
    of_column: Numbers

    @property
    def reduced(self) -> Numbers:
        """The costs less what row and column are worth."""
        less: Numbers = np.maximum(self.costs - self.of_row[:, None] - self.of_column, 0)
        return less


def assigned(costs: Numbers) -> Assignment:
    """The assignment of least total cost, rows to no fewer columns.

    Row by row by the shortest augmenting path, exact. Source: Jonker and Volgenant 1987,
    doi 10.1007/BF02278710. Raises ValueError for more rows than columns.
    """
    rows, columns = costs.shape
    if rows > columns:
        raise ValueError("there are more rows than columns")
    of_row, of_column = np.zeros(rows), np.zeros(columns)
    row_of = np.full(columns, -1, dtype=np.intp)
    column_of = np.full(rows, -1, dtype=np.intp)
    for first in range(rows):
        away = np.full(columns, np.inf)
        came_from = np.full(columns, -1, dtype=np.intp)
        done = np.zeros(columns, dtype=bool)
        row, so_far = first, 0.0
        while True:
            onward = so_far + costs[row] - of_row[row] - of_column
            nearer = ~done & (onward < away)
            away[nearer] = onward[nearer]
            came_from[nearer] = row
            last = int(np.argmin(np.where(done, np.inf, away)))
            so_far = float(away[last])
            if row_of[last] < 0:
                break
            done[last] = True
            row = int(row_of[last])
        of_row[first] += so_far
        of_row[row_of[done]] += so_far - away[done]
        of_column[done] -= so_far - away[done]
        while True:
            row = int(came_from[last])
            row_of[last], column_of[row], last = row, last, int(column_of[row])
            if row == first:
                break
    return Assignment(costs, column_of, of_row, of_column)


def margins(found: Assignment, row: int) -> Numbers:
    """How much more all together cost at least if this row had each of the columns instead, the
    others moving as they then must."""
    others = np.delete(np.arange(len(found.column_of)), row)
    left = _without(found, row, others)
    free = np.ones(len(left.of_column), dtype=bool)
    free[left.column_of] = False
    costs: Numbers = found.costs[row] - left.of_column + _ways_to(left, free)[0]
    more: Numbers = costs - costs.min()
    return more


def _without(found: Assignment, row: int, others: Indices) -> Assignment:
    """The best assignment of the other rows: the column that this row leaves is taken by whoever
    gains most by it, with a chain of moves.

    The duals stay. A column was only ever bid down along a way that led on to a free one, so from
    the one that is left such a way costs nothing.
    """
    left = Assignment(
        found.costs[others], found.column_of[others], found.of_row[others], found.of_column
    )
    start = np.zeros(len(found.of_column), dtype=bool)
    start[found.column_of[row]] = True
    away, onward = _ways_to(left, start)
    freed = int(np.argmin(away - left.of_column))
    held = {int(column): at for at, column in enumerate(left.column_of)}
    column_of = left.column_of.copy()
    while not start[freed]:
        taken = int(onward[freed])
        column_of[held[freed]] = taken
        freed = taken
    return Assignment(left.costs, column_of, left.of_row, left.of_column)


def _ways_to(found: Assignment, start: Flags) -> tuple[Numbers, Indices]:
    """For each column what it costs at least until the row that holds it and those that it drives
    out have moved on to one of `start`, and to which column that row moves. No way for a column
    that no row holds."""
    reduced, held = found.reduced, found.column_of
    away = np.where(start, 0.0, np.inf)
    onward = np.full(len(away), -1, dtype=np.intp)
    open_ = np.isin(np.arange(len(away)), held) | start
    while True:
        nearest = int(np.argmin(np.where(open_, away, np.inf)))
        if not open_[nearest] or away[nearest] == np.inf:
            return away, onward
        open_[nearest] = False
        through = reduced[:, nearest] + away[nearest]
        nearer = through < away[held]
        away[held[nearer]] = through[nearer]
        onward[held[nearer]] = nearest
