"""Four fabrics of which none touch, at points either: they fit in few ways only, and this is all."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import permutations


def four_fabrics(rows: int, columns: int, counts: Sequence[int]) -> list[int] | None:
    """Which of four fabrics lies at each place, row by row, so that none touches itself even at a
    point; None where no laying of so many of each does that.

    Every window of 2 x 2 holds all four then. So either each row has two fabrics by turns, every
    other row the same two, or each column has (a window fixes the next one but for one choice, and
    a row that is not by turns fixes all rows below it). Raises ValueError unless both sides are 2
    or more and the counts are those of the places.
    """
    if min(rows, columns) < 2 or len(counts) != 4 or sum(counts) != rows * columns:
        raise ValueError("four fabrics for all places of two rows and two columns at least")
    for lines, across, turned in ((rows, columns, False), (columns, rows, True)):
        for a, b, c, d in permutations(range(4)):
            first = _by_turns((lines + 1) // 2, across, counts[a], counts[b])
            second = _by_turns(lines // 2, across, counts[c], counts[d])
            if first is None or second is None:
                continue
            names = ((a, b), (c, d))
            begins = [next((first, second)[line % 2]) for line in range(lines)]
            laid = [
                [names[line % 2][(begins[line] + place) % 2] for place in range(across)]
                for line in range(lines)
            ]
            if turned:
                laid = [list(column) for column in zip(*laid, strict=True)]
            return [fabric for line in laid for fabric in line]
    return None


def _by_turns(lines: int, across: int, one: int, other: int) -> Iterator[int] | None:
    """Which of two fabrics begins each of these lines, so that there are so many of each; None
    where that cannot be."""
    if one + other != lines * across:
        return None
    more = one - lines * (across // 2)
    if across % 2 == 0:
        return iter([0, 1] * lines) if more == 0 else None
    # In a line of odd length the fabric that begins it lies there once more.
    return iter([0] * more + [1] * (lines - more)) if 0 <= more <= lines else None
