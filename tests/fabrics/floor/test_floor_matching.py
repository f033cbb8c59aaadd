"""What is taken to lie where, and how sure that is, against trying everything."""

from __future__ import annotations

import math
from itertools import product

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sewalong.fabrics.floor.costs import Costs
from sewalong.fabrics.floor.matching import matched
from sewalong.fabrics.floor.result import HowSure
from sewalong.fabrics.floor.ways import Way

PLACES, UNITS = 3, 4
WAYS = [
    Way(unit, (turn,), ((0, f"{unit}" * (1 + turn)), (1, f"{unit}" * (2 - turn))))
    for unit in range(UNITS)
    for turn in (0, 1)
]
"""Four units of two patches, each in two ways."""

SURE, LIKE, UNLIKE, MOST = 7.5**2, 2 * 5.0**2, 2 * 8.0**2, 4
NONE = -1
Option = tuple[int | None, int]


def tried(costs: Costs, bare: list[float | None]) -> dict[int, dict[Option, float]]:
    """For each place and what may lie there the least that all cost together then; (None, 0) is
    nothing, and (NONE, 0) a unit that nobody knows."""
    best: list[dict[Option, float]] = [{} for _ in range(PLACES)]
    options: list[Option] = [(way.unit, way.turns[0]) for way in WAYS]
    every = [[*options, (NONE, 0), *([(None, 0)] if one is not None else [])] for one in bare]
    for chosen in product(*every):
        units = [unit for unit, _ in chosen if unit is not None and unit != NONE]
        if len(set(units)) < len(units):
            continue
        total = sum(_cost(costs, bare, place, one) for place, one in enumerate(chosen))
        for place, one in enumerate(chosen):
            best[place][one] = min(best[place].get(one, math.inf), total)
    return dict(enumerate(best))


def _cost(costs: Costs, bare: list[float | None], place: int, one: Option) -> float:
    unit, turn = one
    if unit is None:
        nothing = bare[place]
        assert nothing is not None
        return min(nothing, UNLIKE)
    return UNLIKE if unit == NONE else float(costs[place, 2 * unit + turn])


@settings(max_examples=60)
@given(st.integers(0, 100_000))
def test_what_lies_where_and_how_sure_that_is_is_what_trying_everything_says(seed: int) -> None:
    rng = np.random.default_rng(seed)
    costs = (rng.uniform(0, 14, (PLACES, len(WAYS))) ** 2).astype(np.float32)
    bare = [float(rng.uniform(0, 100)) if rng.random() < 0.3 else None for _ in range(PLACES)]
    found = matched(costs, bare, WAYS, frozenset())
    for place, options in tried(costs, bare).items():
        least = min(options.values())
        told = found[place]
        if bare[place] is not None:
            del options[NONE, 0]
        if options.get((NONE, 0)) == pytest.approx(least):
            assert told.sure is HowSure.CANNOT_TELL
            assert 0 < len(told.candidates) <= MOST
            continue
        options.pop((NONE, 0), None)
        near = sorted(
            (total - least, one) for one, total in options.items() if total - least < SURE
        )
        near.sort(key=lambda option: option[0])
        assert [(one.unit, one.turn) for one in told.candidates] == [one for _, one in near][:MOST]
        for one, (more, _) in zip(told.candidates, near, strict=False):
            assert one.worse == pytest.approx(math.sqrt(more), abs=0.06)
        unit, turn = near[0][1]
        unlike = unit is not None and costs[place, 2 * unit + turn] > LIKE
        assert (told.sure is HowSure.SURE) == (len(near) == 1 and not unlike)


@pytest.mark.parametrize(
    ("misfit", "sure"),
    [
        (4.9, HowSure.SURE),
        (5.1, HowSure.NOT_SURE),
        (7.9, HowSure.NOT_SURE),
        (8.1, HowSure.CANNOT_TELL),
    ],
)
def test_a_unit_far_from_what_is_seen_is_not_sure_and_then_not_taken(
    misfit: float, sure: HowSure
) -> None:
    costs = np.full((1, len(WAYS)), 800, dtype=np.float32)
    costs[0, 3] = 2 * misfit**2
    (told,) = matched(costs, [None], WAYS, frozenset())
    assert told.sure is sure
    assert (told.candidates[0].unit, told.candidates[0].turn) == (1, 1)
    assert told.way == (None if sure is HowSure.CANNOT_TELL else 3)


@pytest.mark.parametrize(("apart", "sure"), [(7.4, HowSure.NOT_SURE), (7.6, HowSure.SURE)])
def test_another_turn_must_be_worse_by_three_times_what_passes_for_one_fabric(
    apart: float, sure: HowSure
) -> None:
    costs = np.full((1, len(WAYS)), 800, dtype=np.float32)
    costs[0, 4], costs[0, 5] = 2.0, 2.0 + apart**2
    (told,) = matched(costs, [None], WAYS, frozenset())
    assert told.sure is sure
    assert told.way == 4


def test_a_unit_that_lies_elsewhere_is_no_candidate() -> None:
    costs = np.full((1, len(WAYS)), 800, dtype=np.float32)
    costs[0, 0], costs[0, 2] = 0, 10
    (told,) = matched(costs, [None], WAYS, frozenset({0}))
    assert [one.unit for one in told.candidates] == [1]
