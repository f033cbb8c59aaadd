"""How few touches a laying can have at best: limits that hold for every laying, with the reason.

A fabric is counted here by the units that show nothing else, and by the sides that show it. What
holds for those holds all the more for a top that has other units too.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from math import ceil

from sewalong.wall.laying.edges import SAME_PLACE, TouchRule, length
from sewalong.wall.laying.grid import CORNERS, Grid
from sewalong.wall.laying.laying import Rules
from sewalong.wall.laying.units import WallUnit


def most_apart(grid: Grid, rule: TouchRule) -> int:
    """A number of units of one fabric that no laying without a touch can pass.

    Straight, it is ceil(rc/2) by the edge rule, and ceil(r/2) * ceil(c/2) by the corner rule: so
    many groups in which all places touch each other (two, or a window of 2 x 2) cover the top, and
    each holds one unit of the fabric at most. With sashes no unit touches another.
    """
    if _apart(grid):
        return len(grid.places)
    return min(len(groups) for groups in _covers(grid, rule))


def least_of_one(grid: Grid, rule: TouchRule, count: int) -> int:
    """Touches that so many units of one fabric have at least.

    In groups that cover the top, of which each is all touching, they are as few as they can be
    where the groups are filled evenly: the sum of n(n-1)/2. On a walk through all places, step by
    step to a neighbour, n of N places touch 2n - N times at least where it comes back to its
    beginning, else once less. And the sum of their neighbours less all there are is no more than
    the neighbours they have among themselves.
    """
    if _apart(grid):
        return 0
    places = len(grid.places)
    least = 0
    for groups in _covers(grid, rule):
        even, more = divmod(count, len(groups))
        least = max(
            least, sum(n * (n - 1) // 2 for n in [even + 1] * more + [even] * (len(groups) - more))
        )
    if not grid.on_point:
        rows, columns = len(grid.rows), grid.rows[0]
        comes_back = min(rows, columns) > 1 and places % 2 == 0
        least = max(least, 2 * count - places - (0 if comes_back else 1))
    neighbours = sorted(_neighbours(grid, rule))
    return max(least, sum(neighbours[:count]) - sum(neighbours) // 2)


def least_of_few(grid: Grid, rule: TouchRule, fabrics: int) -> int:
    """Touches that so few fabrics have at least by the corner rule, however many there are of
    each: every window of 2 x 2 holds some, and one along a seam lies in two windows at most."""
    if rule is TouchRule.EDGE or _apart(grid) or fabrics < 1:
        return 0
    here = set(grid.lattice)
    windows = sum(
        all((y + down, x + across) in here for down in (0, 1) for across in (0, 1))
        for y, x in grid.lattice
    )
    even, more = divmod(4, fabrics)
    in_each = more * (even + 1) * even // 2 + (fabrics - more) * even * (even - 1) // 2
    return ceil(windows * in_each / 2)


def least_touches(grid: Grid, units: Sequence[WallUnit], rules: Rules) -> int:
    """Touches of like fabrics that any laying of these units has at least.

    Where there are more units than places, those that make most may be left out.
    """
    spares = max(0, len(units) - len(grid.places))
    return max(_by_plain_units(grid, units, rules, spares), _by_sides(grid, units, rules, spares))


def _by_plain_units(grid: Grid, units: Sequence[WallUnit], rules: Rules, spares: int) -> int:
    counts = plain_counts(units)
    least = sum(least_of_one(grid, rules.touch, n) for n in _left_out(counts, spares))
    if sum(counts.values()) == len(units) >= len(grid.places):
        least = max(least, least_of_few(grid, rules.touch, len(counts)))
    return least


def plain_counts(units: Sequence[WallUnit]) -> Counter[str]:
    """How many units there are of each fabric that show nothing else."""
    return Counter(unit.plain for unit in units if unit.plain is not None)


def _left_out(counts: Mapping[str, int], spares: int) -> list[int]:
    """The counts once the spares are left out of the most frequent, one by one: what is over the
    limit of a fabric costs the more, the more of it there is."""
    left = sorted(counts.values(), reverse=True)
    for _ in range(spares):
        if not left or left[0] < 1:
            break
        left[0] -= 1
        left.sort(reverse=True)
    return left


def _by_sides(grid: Grid, units: Sequence[WallUnit], rules: Rules, spares: int) -> int:
    """Each seam has two sides. A fabric that is longer on all sides together than all seams and
    the rim are once meets itself, and each touch takes up one side at most."""
    if _apart(grid):
        return 0
    whole = max((length(unit.sides[0]) for unit in units), default=0.0)
    if any(abs(length(side) - whole) > SAME_PLACE for unit in units for side in unit.sides):
        return 0
    links = [link for links in grid.links for link in links if link.mine < CORNERS]
    inner = sum(link.other >= 0 for link in links)
    room = whole * (inner / 2 + len(links) - inner)
    shown: dict[str, list[float]] = {}
    for unit in units:
        lengths: dict[str, float] = {}
        for side in unit.sides:
            for span in side:
                lengths[span.fabric] = lengths.get(span.fabric, 0.0) + span.end - span.start
        for fabric, inches in lengths.items():
            shown.setdefault(fabric, []).append(inches)
    total = 0
    for each in shown.values():
        laid = sum(sorted(each)[: len(each) - spares]) if spares < len(each) else 0.0
        total += max(0, ceil((laid - room) / whole - SAME_PLACE))
    return total


def _apart(grid: Grid) -> bool:
    """Whether no unit meets another, because there are sashes."""
    return not any(link.other >= 0 for links in grid.links for link in links)


def _neighbours(grid: Grid, rule: TouchRule) -> list[int]:
    return [
        sum(link.other >= 0 and (link.mine < CORNERS or rule is TouchRule.CORNER) for link in links)
        for links in grid.links
    ]


def _covers(grid: Grid, rule: TouchRule) -> list[list[list[int]]]:
    """Ways to part the places into groups in which all touch each other."""
    if rule is TouchRule.CORNER:
        return [
            _grouped(grid, [((y + down) // 2, (x + across) // 2) for y, x in grid.lattice])
            for down in (0, 1)
            for across in (0, 1)
        ]
    if grid.on_point:
        # A unit between the whole rows goes with the one before it in its slanting row.
        return [_grouped(grid, [(x, y - (y + x + 1) % 2) for y, x in grid.lattice])]
    columns = grid.rows[0]
    snake = [y * columns + (x if y % 2 == 0 else columns - 1 - x) for y, x in grid.lattice]
    return [_grouped(grid, [(step // 2, 0) for step in snake])]


def _grouped(grid: Grid, names: Sequence[tuple[int, int]]) -> list[list[int]]:
    groups: dict[tuple[int, int], list[int]] = {}
    for place, name in enumerate(names):
        groups.setdefault(name, []).append(place)
    return list(groups.values())
