"""A laying to begin with: one that is found at once, before anything is searched."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import partial
from random import Random

from sewalong.wall.laying.board import Board
from sewalong.wall.laying.edges import TouchRule
from sewalong.wall.laying.four import four_fabrics
from sewalong.wall.laying.grid import Grid
from sewalong.wall.laying.laying import Put
from sewalong.wall.laying.units import WallUnit

LOOKED_AT = 12
"""Units that are tried at each place, drawn from all that are left: what there is most of comes
up most often, so that it is not left for the end (own choice)."""


def lay_one_by_one(board: Board, free: Sequence[int], chance: Random) -> None:
    """Lay the units that lie in the slots `free` anew, place by place in reading order, each as it
    touches least what lies there already. Where there are too few, the last places stay empty."""
    left = [put.unit for slot in free if (put := board.lies[slot]) is not None]
    chance.shuffle(left)
    for slot in free:
        board.put(slot, None)
    for slot in free:
        if not left:
            return
        best: tuple[int, int, Put] | None = None
        for _ in range(LOOKED_AT):
            drawn = int(chance.random() * len(left))
            unit = left[drawn]
            turns = board.faces.turns[unit]
            for turn in chance.sample(turns, len(turns)) if len(turns) > 1 else turns:
                put = Put(unit, turn)
                board.put(slot, put)
                touches = board.around(slot)
                if best is None or touches < best[0]:
                    best = (touches, drawn, put)
                if not touches:
                    break
            if best is not None and not best[0]:
                break
        assert best is not None
        _, drawn, put = best
        board.put(slot, put)
        left[drawn] = left[-1]
        left.pop()


def patterns(grid: Grid, units: Sequence[WallUnit], rule: TouchRule) -> Iterator[list[int]]:
    """Layings of squares of one fabric each that leave as little touching as their pattern can:
    the number of the unit at each place. None of units that show several fabrics.

    Each pattern parts the places into classes in which none touch; the fabrics fill class after
    class, the most frequent first, each class from one end of the top on. So the two parts of a
    fabric that runs over from one class into the next lie at opposite ends of the top.
    """
    by_fabric: dict[str, list[int]] = {}
    for number, unit in enumerate(units):
        if unit.plain is None:
            return
        by_fabric.setdefault(unit.plain, []).append(number)
    if len(units) < len(grid.places):
        return
    fabrics = sorted(by_fabric.values(), key=len, reverse=True)
    for _ in range(len(units) - len(grid.places)):
        # What is over is least missed where there is most.
        fabrics[0].pop()
        fabrics.sort(key=len, reverse=True)
    fabrics = [numbers for numbers in fabrics if numbers]
    straight = not grid.on_point and len(grid.rows) > 1 and grid.rows[0] > 1
    if rule is TouchRule.CORNER and len(fabrics) == 4 and straight:
        counts = [len(numbers) for numbers in fabrics]
        laid = four_fabrics(len(grid.rows), grid.rows[0], counts)
        if laid is not None:
            take = [iter(numbers) for numbers in fabrics]
            yield [next(take[fabric]) for fabric in laid]
    most, *others = fabrics
    wide = max(x for _, x in grid.lattice) > max(y for y, _ in grid.lattice)
    for pattern in _classes(len(fabrics)):
        # Along the longer side the two ends are farther apart.
        places = sorted(
            range(len(grid.places)),
            key=lambda n: (pattern(*grid.lattice[n]), *grid.lattice[n][:: -1 if wide else 1]),
        )
        # Where the few come next to the most frequent, what runs over is seldom much.
        for order in (fabrics, [most, *reversed(others)]):
            in_order = [number for numbers in order for number in numbers]
            laid = [0] * len(places)
            for place, number in zip(places, in_order, strict=True):
                laid[place] = number
            yield laid


def _classes(fabrics: int) -> Iterator[Callable[[int, int], int]]:
    """Checkers, every second place of every second row, and slanting stripes of five and of as
    many as there are fabrics, a knight's move and more from row to row."""
    yield lambda y, x: (y + x) % 2
    yield lambda y, x: y % 2 * 2 + x % 2
    yield lambda y, x: x % 2 * 2 + y % 2
    for stripes in sorted({5, fabrics} - set(range(5))):
        for step in range(2, min(stripes - 1, 6)):
            yield partial(_stripe, stripes, step)


def _stripe(stripes: int, step: int, y: int, x: int) -> int:
    return (step * y + x) % stripes
