"""Proposed sets beside an exact solver: never worse in the same time, and small ones as good as can be."""

from __future__ import annotations

import time

import pytest

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.sets.proposing import proposed
from sewalong.fabrics.sets.rules import Rule
from sewalong.fabrics.sets.tasks import task_of
from tests.fabrics.made_fabrics import asked, colour_drawer, coloured, drawer
from tests.fabrics.solver import Solver


def never_worse(seed: int, times: float) -> None:
    """168 squares of 42 fabrics in stacks of eight; the solver gets `times` the time we took."""
    fabrics = drawer(42, 4, seed)
    wanted = asked(fabrics, 21)
    begun = time.perf_counter()
    found = proposed(wanted)
    taken = time.perf_counter() - begun
    values = [swatch.value or 0 for swatch in fabrics]
    theirs = Solver(task_of(wanted).wanted).strongest_by_value(values, times * taken)
    assert found.weakest is not None
    assert found.bound is not None
    assert found.doubles == 0
    assert found.weakest >= theirs
    assert found.weakest >= 0.8 * found.bound


def test_the_solver_finds_nothing_better_in_the_same_time() -> None:
    never_worse(seed=1, times=1)


@pytest.mark.long
@pytest.mark.parametrize("seed", range(2))
def test_the_solver_finds_nothing_better_in_ten_times_the_time(seed: int) -> None:
    never_worse(seed, times=10)


SMALL = [
    (Rule.BY_VALUE, "stacked-four-patch", 10, 2, 2),
    (Rule.BY_VALUE, "stacked-four-patch", 9, 2, 2),
    (Rule.LIGHT_ON_DARK, "stacked-four-patch", 10, 2, 2),
    (Rule.BY_COLOUR, "stacked-four-patch", 10, 2, 2),
    (Rule.BY_VALUE, "four-patch", 7, 2, 3),
    (Rule.LIGHT_ON_DARK, "four-patch", 7, 2, 3),
    (Rule.BY_COLOUR, "four-patch", 7, 2, 3),
    (Rule.ONE_BACKGROUND, "four-patch", 7, 2, 3),
]
"""The rule, the method, so many prints of so many squares, and so many sets."""


@pytest.mark.parametrize(
    "seed", [0, *(pytest.param(n, marks=pytest.mark.long) for n in range(1, 3))]
)
@pytest.mark.parametrize(("rule", "method", "prints", "squares", "sets"), SMALL)
def test_small_ones_are_the_optimum_the_solver_proves(
    rule: Rule, method: str, prints: int, squares: int, sets: int, seed: int
) -> None:
    fabrics = colour_drawer(prints, squares, seed)
    if rule is Rule.ONE_BACKGROUND:
        # Enough of one fabric for all sets.
        fabrics = (*fabrics, coloured("Z", 2 * sets, Colour(246, 236, 212)))
    wanted = asked(fabrics, sets, rule, method, "Z")
    found = proposed(wanted, 600 if method == "stacked-four-patch" else 120)
    assert found.weakest is not None
    assert found.bound is not None
    assert found.weakest <= found.bound
    assert found.doubles == 0
    task = task_of(wanted).wanted
    stronger = {one for row in task.strength for one in row if one > found.weakest}
    assert Solver(task).can_reach(found.weakest, seconds=60) is True
    if stronger:
        assert Solver(task).can_reach(min(stronger), seconds=60) is False
