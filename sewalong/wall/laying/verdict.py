"""Possible or not, before anything is searched: which fabric is one too many, and how few touches
any laying has at least."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from sewalong.quilt.setting import Setting
from sewalong.wall.laying.board import Board
from sewalong.wall.laying.bounds import least_touches, most_apart, plain_counts
from sewalong.wall.laying.edges import TouchRule
from sewalong.wall.laying.four import four_fabrics
from sewalong.wall.laying.grid import CORNERS, Grid, grid_of
from sewalong.wall.laying.laying import USUAL, Put, Rules, empty_laying
from sewalong.wall.laying.start import patterns
from sewalong.wall.laying.units import WallUnit

NEEDED_AT_POINTS = 4
"""Fabrics without which like ones meet at a point: every window of 2 x 2 places is all touching."""


class TooMany(Struct, frozen=True):
    """A fabric of which there are `units` that show nothing else, where `most` can lie apart."""

    fabric: str
    units: int
    most: int


class Verdict(Struct, frozen=True):
    """What can be had of these units.

    `possible` is True where a laying without a touch is known, False where there is none, and
    None where only a search can tell. `least` is how many touches of like fabrics any laying has
    at least, `too_many` the fabrics of which no laying can keep all apart, and `too_few` says that
    there are not enough fabrics for the corner rule. `four` says that four fabrics fit by the
    corner rule in a few ways, and these counts in none of them.
    """

    possible: bool | None
    least: int
    too_many: tuple[TooMany, ...] = ()
    too_few: bool = False
    four: bool = False


def verdict(
    units: Sequence[WallUnit],
    rows: int,
    columns: int,
    setting: Setting | None = None,
    rules: Rules = USUAL,
) -> Verdict:
    """What can be had; quick, for it searches nothing. Raises ValueError for no row or column.

    Where units are over, they are left out as is best.
    """
    grid = grid_of(rows, columns, setting)
    counts = plain_counts(units)
    spares = max(0, len(units) - len(grid.places))
    most = most_apart(grid, rules.touch)
    too_many = tuple(
        TooMany(fabric, n, most) for fabric, n in sorted(counts.items()) if n - spares > most
    )
    all_plain = sum(counts.values()) == len(units) >= len(grid.places)
    least = least_touches(grid, units, rules)
    too_few = (
        all_plain
        and rules.touch is TouchRule.CORNER
        and len(counts) < NEEDED_AT_POINTS
        and _has_window(grid)
    )
    four = all_plain and not spares and _four_do_not_fit(grid, rules, list(counts.values()))
    if four:
        least = max(1, least)
    if least:
        return Verdict(False, least, too_many, too_few, four)
    return Verdict(_found_at_once(units, rows, columns, setting, rules) or None, 0)


def _has_window(grid: Grid) -> bool:
    return any(link.mine >= CORNERS for links in grid.links for link in links)


def _four_do_not_fit(grid: Grid, rules: Rules, counts: list[int]) -> bool:
    straight = not grid.on_point and _has_window(grid)
    if rules.touch is TouchRule.EDGE or len(counts) != NEEDED_AT_POINTS or not straight:
        return False
    return four_fabrics(len(grid.rows), grid.rows[0], counts) is None


def _found_at_once(
    units: Sequence[WallUnit], rows: int, columns: int, setting: Setting | None, rules: Rules
) -> bool:
    """Whether a pattern lays them without any touch."""
    empty = empty_laying(rows, columns, setting)
    for numbers in patterns(empty.grid, units, rules.touch):
        laying = empty.with_places([Put(number) for number in numbers])
        if not Board(laying, units, rules).touches():
            return True
    return False
