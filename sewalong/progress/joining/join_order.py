"""Rows joined in pairs, the pairs into fours and so on: which seam comes at which level.

There is one seam fewer than rows whichever way they are joined. In pairs the long heavy
piece is handled only at the last join; one after another it is handled at every one.
"""

from __future__ import annotations

from msgspec import Struct

Run = tuple[int, int]
"""Neighbouring rows that are one piece: the first and the last of them."""


class Join(Struct, frozen=True):
    """One seam: the piece of rows `above` to the piece `below`, at a level from 1.

    The rows sewn together are `first` and `second`, the last of `above` and the first of
    `below`; `above` is the piece nearer row 1.
    """

    above: Run
    below: Run
    level: int

    @property
    def first(self) -> int:
        """The row of `above` along the seam."""
        return self.above[1]

    @property
    def second(self) -> int:
        """The row of `below` along the seam."""
        return self.below[0]

    @property
    def rows(self) -> int:
        """Rows in the piece it makes."""
        return self.below[1] - self.above[0] + 1


def levels(rows: int) -> int:
    """Joins that any one row goes through: log2 of the rows, rounded up; none for one row."""
    return max(0, rows - 1).bit_length()


def join_tree(rows: int) -> tuple[Join, ...]:
    """Every join of `rows` rows, level by level, each level from row 1 on.

    Rows go together in pairs, and pieces as near to halves as whole pairs allow, so that
    before the last join no piece has more than half the rows (rounded up) and one.
    """
    joins = _joins(1, rows)
    return tuple(sorted(joins, key=lambda join: (join.level, join.first)))


def _joins(first: int, last: int) -> list[Join]:
    rows = last - first + 1
    if rows < 2:
        return []
    pairs = (rows + 1) // 2
    middle = first + (2 * ((pairs + 1) // 2) if pairs > 1 else 1) - 1
    above, below = _joins(first, middle), _joins(middle + 1, last)
    level = max((join.level for join in (*above, *below)), default=0) + 1
    return [*above, *below, Join((first, middle), (middle + 1, last), level)]
