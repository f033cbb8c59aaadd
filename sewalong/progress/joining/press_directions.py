"""Which way seams are pressed so that they nest: by row, and by the place of a unit in the grid.

Said by where a row begins, which is at the unit with its tag, and by row 1, never by hands. Two seams nest when
their allowances lie on opposite sides of the line where they meet.
"""

from __future__ import annotations

from enum import StrEnum

from msgspec import Struct

BEGINS = "A row begins at the unit its tag is pinned on."


class Way(StrEnum):
    """Where the allowance of a seam goes."""

    TO_THE_START = "towards where the row begins"
    FROM_THE_START = "away from where the row begins"
    TO_ROW_1 = "towards row 1"
    FROM_ROW_1 = "away from row 1"


class UnitWays(Struct, frozen=True):
    """A unit's own seams: `along` lies level and runs out at the units beside it, `upright`
    runs out at the rows before and after."""

    along: Way
    upright: Way


def row_way(row: int) -> Way:
    """Where the seams between the units of a row are pressed; every other row the other way."""
    return Way.TO_THE_START if row % 2 else Way.FROM_THE_START


def unit_ways(row: int, column: int) -> UnitWays:
    """Where the seams inside the unit at a place are pressed, by whether row and column
    together are even or odd: every unit against all four neighbours. Counted from 1."""
    if (row + column) % 2:
        return UnitWays(Way.FROM_ROW_1, Way.FROM_THE_START)
    return UnitWays(Way.TO_ROW_1, Way.TO_THE_START)


TOWARDS_THE_SASHES = "towards the sashes"
"""Where there are sashes, in rows and sash rows alike: where they cross, one allowance then lies
on the sash of the row, the other away from the cornerstone, and they nest. Common practice."""


def press_words(row: int, *, sashed: bool = False) -> str:
    """One sentence for the seams of a row."""
    return f"Row {row}: press its seams {TOWARDS_THE_SASHES if sashed else row_way(row)}."


def press_rule(*, placed: bool = True, sashed: bool = False) -> str:
    """The rule for all rows, for the note of the stage.

    `placed` is whether the placement is settled: until it is, a row could still change places
    with its neighbour and lie ridge on ridge, so its seams are pressed open (working practice
    reported by makers, quiltingboard.com).
    """
    if sashed:
        return TOWARDS_THE_SASHES
    if not placed:
        return "open, until the placement is settled"
    return f"odd rows {Way.TO_THE_START}, even rows away from there"
