"""Where light and dark shall lie: the value plans she can pick, and families spread evenly."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from statistics import fmean, pstdev

from sewalong.wall.laying.grid import Grid
from sewalong.wall.laying.laying import Put
from sewalong.wall.laying.units import WallUnit


class Plan(StrEnum):
    """How values are laid out."""

    LIGHT_TO_DARK = "light to dark"
    RINGS = "rings"
    CHECKER = "checker"
    SCATTERED = "scattered"
    MIRRORED = "mirrored"

    @property
    def words(self) -> str:
        """What it does, in a sentence."""
        return _WORDS[self]


_WORDS = {
    Plan.LIGHT_TO_DARK: "The lightest units lie in row 1, the darkest in the last row.",
    Plan.RINGS: "The lightest units lie in the middle, the darkest all round.",
    Plan.CHECKER: "A light unit and a dark one by turns.",
    Plan.SCATTERED: "Light and dark are as even as can be over the whole top.",
    Plan.MIRRORED: "Both halves of each row are as light as each other, place by place.",
}

REACH = 2
"""Places across or down within which units of one family, or of like value, repel each other
(own choice)."""

FAMILY, VALUE = 0.1, 0.05
"""What two units of one family side by side cost, and two that are both so light or so dark as one
part of the quilt's own spread: a tenth of a touch and less, so that touches come first (own choice)."""


class Tones:
    """What a laying costs beside its touches, as a share of a touch: units far from the value that
    the plan has for their place, and families and values that crowd.

    `slots` is how many slots there are: the places of `grid`, and spares behind them.
    """

    def __init__(
        self,
        grid: Grid,
        slots: int,
        units: Sequence[WallUnit],
        plan: Plan | None,
        *,
        spread: bool = False,
    ) -> None:
        self.rank = _ranks([unit.value for unit in units])
        self.goal = [*goals(grid, plan), *[None] * (slots - len(grid.places))]
        self.mate = [*_mates(grid, plan), *[None] * (slots - len(grid.places))]
        even = spread or plan is Plan.SCATTERED
        self.near: list[tuple[tuple[int, float], ...]] = [
            *(_near(grid) if even else [()] * len(grid.places)),
            *[()] * (slots - len(grid.places)),
        ]
        # Of one class are units that repel the others alike.
        steps = _steps([unit.value for unit in units])
        kinds = [(unit.family, step) for unit, step in zip(units, steps, strict=True)]
        classes = list(dict.fromkeys(kinds))
        self.of = [classes.index(kind) for kind in kinds]
        self.like = [[_like(a, b) for b in classes] for a in classes]
        self.matter = self._matters()

    def _matters(self) -> bool:
        """Whether anything is asked for beside touches."""
        if any(value is not None for value in (*self.goal, *self.mate)):
            return True
        return any(self.near) and any(cost for row in self.like for cost in row)

    def change(self, lies: Sequence[Put | None], one: int, other: int) -> float:
        """What it would cost more if what lies in these two slots were exchanged."""
        mine, theirs = lies[one], lies[other]
        a = None if mine is None else mine.unit
        b = None if theirs is None else theirs.unit
        return self._moved(lies, one, a, b, other) + self._moved(lies, other, b, a, one)

    def _moved(
        self, lies: Sequence[Put | None], slot: int, goes: int | None, comes: int | None, skip: int
    ) -> float:
        cost = 0.0
        there = 0.5 if goes is None else self.rank[goes]
        then = 0.5 if comes is None else self.rank[comes]
        goal = self.goal[slot]
        if goal is not None:
            cost += (then - goal) ** 2 - (there - goal) ** 2
        mate = self.mate[slot]
        if mate is not None and mate != skip:
            put = lies[mate]
            value = 0.5 if put is None else self.rank[put.unit]
            cost += (then - value) ** 2 - (there - value) ** 2
        if self.near[slot]:
            nothing = [0.0] * len(self.like)
            before = nothing if goes is None else self.like[self.of[goes]]
            after = nothing if comes is None else self.like[self.of[comes]]
            of = self.of
            for near, weight in self.near[slot]:
                put = lies[near]
                if near != skip and put is not None:
                    kind = of[put.unit]
                    cost += weight * (after[kind] - before[kind])
        return cost

    def total(self, lies: Sequence[Put | None]) -> float:
        """What the laying costs beside its touches."""
        cost = 0.0
        for slot, put in enumerate(lies):
            if put is None:
                continue
            goal, mate = self.goal[slot], self.mate[slot]
            if goal is not None:
                cost += (self.rank[put.unit] - goal) ** 2
            other = lies[mate] if mate is not None and mate > slot else None
            if other is not None:
                cost += (self.rank[put.unit] - self.rank[other.unit]) ** 2
            row = self.like[self.of[put.unit]]
            for near, weight in self.near[slot]:
                there = lies[near]
                if near > slot and there is not None:
                    cost += weight * row[self.of[there.unit]]
        return cost


def goals(grid: Grid, plan: Plan | None) -> list[float | None]:
    """How dark the unit at each place shall be: its rank among all, 0 the lightest, 1 the darkest;
    None where the plan leaves it open."""
    if plan is Plan.LIGHT_TO_DARK:
        keys = [down for down, _ in grid.shown]
    elif plan is Plan.RINGS:
        keys = [-ring for ring in _rings(grid)]
    elif plan is Plan.CHECKER:
        keys = [(y + x) % 2 for y, x in grid.lattice]
    else:
        return [None] * len(grid.places)
    return [*_shares(keys)]


def _rings(grid: Grid) -> list[int]:
    """How many rings of places lie outside of each place."""
    last_down = max(down for down, _ in grid.shown)
    first_down = min(down for down, _ in grid.shown)
    first, last = (edge(across for _, across in grid.shown) for edge in (min, max))
    return [
        min(down - first_down, last_down - down, across - first, last - across)
        for down, across in grid.shown
    ]


def _mates(grid: Grid, plan: Plan | None) -> list[int | None]:
    """The place that lies over against each one, beyond the middle; None for one in the middle."""
    if plan is not Plan.MIRRORED:
        return [None] * len(grid.places)
    number = {shown: n for n, shown in enumerate(grid.shown)}
    ends = min(across for _, across in grid.shown) + max(across for _, across in grid.shown)
    mates = [number.get((down, ends - across)) for down, across in grid.shown]
    return [None if mate == n else mate for n, mate in enumerate(mates)]


def _near(grid: Grid) -> list[tuple[tuple[int, float], ...]]:
    """The places within reach of each, and how strongly they repel: less, the farther."""
    by_place = {shown: n for n, shown in enumerate(grid.shown)}
    reach = range(-REACH, REACH + 1)
    steps = [(y, x, 1 / (y * y + x * x)) for y in reach for x in reach if y or x]
    return [
        tuple(
            (by_place[(down + y, across + x)], weight)
            for y, x, weight in steps
            if (down + y, across + x) in by_place
        )
        for down, across in grid.shown
    ]


def _shares(keys: Sequence[float]) -> list[float]:
    """The rank of each key among all, from 0 to 1; like keys have one rank, the mean of theirs."""
    order = sorted(keys)
    last = max(1, len(keys) - 1)
    places: dict[float, list[int]] = {}
    for place, key in enumerate(order):
        places.setdefault(key, []).append(place)
    return [fmean(places[key]) / last for key in keys]


def _ranks(values: Sequence[float | None]) -> list[float]:
    """How dark each is among those whose value is known; the others stand in the middle."""
    known = [-value for value in values if value is not None]
    shares = iter(_shares(known))
    return [0.5 if value is None else next(shares) for value in values]


def _steps(values: Sequence[float | None]) -> list[int | None]:
    """How many quarters of the spread each value is from the mean of all, six at most (own choice)."""
    known = [value for value in values if value is not None]
    spread = pstdev(known) if known else 0.0
    if not spread:
        return [None] * len(values)
    mean = fmean(known)
    return [
        None if value is None else max(-6, min(6, round(4 * (value - mean) / spread)))
        for value in values
    ]


def _like(a: tuple[str | None, int | None], b: tuple[str | None, int | None]) -> float:
    family = FAMILY if a[0] is not None and a[0] == b[0] else 0.0
    value = VALUE * a[1] * b[1] / 16 if a[1] is not None and b[1] is not None else 0.0
    return family + value
