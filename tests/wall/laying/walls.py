"""Walls for the tests: typed by letters, or of units of a method with fabrics dealt at random."""

from __future__ import annotations

from fractions import Fraction as F
from functools import cache
from itertools import count
from random import Random

from sewalong.piecing.derive import Derivation, derive
from sewalong.quilt.setting import Setting
from sewalong.wall.laying.grid import grid_of
from sewalong.wall.laying.laying import Laying, Put, empty_laying
from sewalong.wall.laying.units import WallUnit, plain_unit, wall_unit

LETTERS = [f"{a}{b}" for a in ("", *"ABC") for b in "ABCDEFGHIJKLMNOPQRSTUVWXYZ"]


@cache
def derived(method: str) -> Derivation:
    return derive(method, F(5))


def typed(text: str) -> tuple[tuple[WallUnit, ...], Laying]:
    """Squares by letters, row by row: "AB / BA"."""
    rows = text.split(" / ")
    number = count()
    units = tuple(plain_unit(letter) for row in rows for letter in row)
    places = tuple(tuple(Put(next(number)) for _ in row) for row in rows)
    return units, Laying(len(rows), len(rows[0]), places)


def squares(number: int, fabrics: int) -> tuple[WallUnit, ...]:
    """So many squares of so many fabrics, of each as many as of the others, or one fewer."""
    return tuple(plain_unit(LETTERS[n % fabrics]) for n in range(number))


def counted(**counts: int) -> tuple[WallUnit, ...]:
    return tuple(plain_unit(letter) for letter, n in counts.items() for _ in range(n))


def sets(method: str, number: int, fabrics: int, seed: int = 1) -> list[dict[str, str]]:
    """So many sets, the fabric of each of their letters, dealt at random."""
    letters = list(derived(method).letters)
    chance = Random(seed)
    pool = [LETTERS[n % fabrics] for n in range(number * len(letters))]
    chance.shuffle(pool)
    return [
        dict(zip(letters, pool[first : first + len(letters)], strict=True))
        for first in range(0, len(pool), len(letters))
    ]


def made(method: str, number: int, fabrics: int, seed: int = 1) -> tuple[WallUnit, ...]:
    """So many units of a method, set by set, of `sets` dealt at random."""
    different = derived(method).units
    batches = sets(method, -(-number // len(different)), fabrics, seed)
    units = [
        wall_unit(unit, 0.25, named, stack=stack)
        for stack, named in enumerate(batches)
        for unit in different
    ]
    return tuple(units[:number])


def laid_anyhow(
    units: tuple[WallUnit, ...],
    rows: int,
    columns: int,
    seed: int,
    setting: Setting | None = None,
) -> Laying:
    """Units at random, in random turns of those they may lie in; what is over is left out."""
    chance = Random(seed)
    places = len(grid_of(rows, columns, setting).places)
    drawn = chance.sample(range(len(units)), places)
    return empty_laying(rows, columns, setting).with_places(
        [Put(number, chance.choice(units[number].turns)) for number in drawn]
    )
