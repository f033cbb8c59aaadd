"""Every laying of a small wall, one after the other: an oracle that knows no trick."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sewalong.wall.laying.edges import TouchRule
from sewalong.wall.laying.grid import CORNERS, Grid


def pairs(grid: Grid, rule: TouchRule) -> list[tuple[int, int]]:
    """The places that touch, two by two."""
    return [
        (here, link.other)
        for here, links in enumerate(grid.links)
        for link in links
        if link.other > here and (link.mine < CORNERS or rule is TouchRule.CORNER)
    ]


def fewest_touches(grid: Grid, rule: TouchRule, counts: Sequence[int]) -> int:
    """The fewest touches of all layings of so many squares of each fabric."""
    meeting = pairs(grid, rule)
    before = [[a for a, b in meeting if b == here] for here in range(len(grid.places))]
    best = len(meeting)
    lies: list[int] = []
    left = list(counts)

    def go_on(touches: int) -> None:
        nonlocal best
        if touches >= best:
            return
        if len(lies) == len(before):
            best = touches
            return
        for fabric in range(len(left)):
            if left[fabric]:
                left[fabric] -= 1
                more = sum(lies[other] == fabric for other in before[len(lies)])
                lies.append(fabric)
                go_on(touches + more)
                lies.pop()
                left[fabric] += 1

    go_on(0)
    return best


def splits(total: int, parts: int, largest: int | None = None) -> Iterator[tuple[int, ...]]:
    """Every way to have so many in so many fabrics, none of nothing, the most frequent first."""
    most = total if largest is None else min(total, largest)
    if parts == 1:
        if 1 <= total <= most:
            yield (total,)
        return
    for first in range(most, 0, -1):
        for rest in splits(total - first, parts - 1, first):
            yield (first, *rest)
