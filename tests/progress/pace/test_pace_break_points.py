"""Where a quiet word does not disturb, and which cuts leave edges that stretch."""

from __future__ import annotations

from math import cos, radians, sin, sqrt

import pytest

from sewalong.piecing.cloth import Patch
from sewalong.piecing.geometry import Polygon
from sewalong.progress.joining.bias_cuts import _of_patch, bias_cuts
from sewalong.progress.pace.break_points import (
    at_a_chains_end,
    at_a_stage_boundary,
    something_may_be_worn,
)
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.state import State
from tests.progress import every_act as c
from tests.progress.building import EVENING, MINUTE, a_quilt, go_on, play

QUILT = a_quilt(pieces=160, rows=4, columns=5)


def test_a_stage_with_nothing_waiting_or_nothing_to_do_is_at_its_boundary() -> None:
    state, record = play(QUILT, c.Count("pair", 20), c.Count("sew", 4))
    assert not at_a_stage_boundary(state, plan(state))
    waits_for_more = go_on(state, record.copy(), c.Count("sew", 6))
    assert at_a_stage_boundary(waits_for_more, plan(waits_for_more))
    all_done = go_on(state, record.copy(), c.Count("pair", 20))
    assert at_a_stage_boundary(all_done, plan(all_done))
    turned = go_on(state, record.copy(), c.ChooseStage("press"))
    assert at_a_stage_boundary(turned, plan(turned))


def test_a_chain_ends_where_several_are_counted_at_once_or_away_from_the_machine() -> None:
    state, record = play(QUILT, c.Count("pair", 10), c.Count("sew", 2))
    assert at_a_chains_end(state, plan(state))
    state = go_on(state, record, c.Count("sew", 1))
    assert not at_a_chains_end(state, plan(state))
    state = go_on(state, record, c.Count("pair", 1))
    assert at_a_chains_end(state, plan(state))


@pytest.mark.parametrize("method", ["paired-squares", "stacked-four-patch"])
def test_the_double_cut_of_what_is_sewn_around_leaves_edges_that_stretch(method: str) -> None:
    assert bias_cuts(a_quilt(method)) == {"cut-twice"}


@pytest.mark.parametrize(
    "method", ["half-square-two", "hourglass", "flying-geese-four", "nine-patch"]
)
def test_cuts_that_seams_hold_or_that_follow_the_threads_leave_none(method: str) -> None:
    assert bias_cuts(a_quilt(method)) == set()


TRIANGLE: Polygon = ((0.0, 0.0), (4.0, 0.0), (0.0, 4.0))
OBLONG: Polygon = ((0.0, 0.0), (3.0, 0.0), (3.0, 5.0), (0.0, 5.0))


@pytest.mark.parametrize(
    ("points", "degrees", "inches"),
    [
        (TRIANGLE, 0, 4 * sqrt(2)),
        (TRIANGLE, 45, 8),
        (TRIANGLE, 20, 8 + 4 * sqrt(2)),
        (OBLONG, 0, 0),
        (OBLONG, 90, 0),
        (OBLONG, 45, 16),
        (OBLONG, 0.9, 0),
        (OBLONG, -0.9, 0),
        (OBLONG, 1.1, 16),
        (OBLONG, -1.1, 16),
    ],
)
def test_an_edge_stretches_that_is_more_than_a_degree_off_the_threads(
    points: Polygon, degrees: float, inches: float
) -> None:
    patch = Patch(points, "A", (sin(radians(degrees)), -cos(radians(degrees))))
    assert _of_patch(patch) == pytest.approx(inches)


def test_wear_is_looked_for_at_boundaries_and_at_a_chains_end_after_fifty_minutes() -> None:
    def looked_for(state: State, after: float) -> bool:
        return something_may_be_worn(state, plan(state), EVENING + after * MINUTE)

    state, record = play(QUILT, c.OpenSession(), c.Count("pair", 10))
    assert [looked_for(state, after) for after in (2, 49.9, 50)] == [False, False, True]
    state = go_on(state, record, c.Count("sew", 1))
    assert not looked_for(state, 90), "in the middle of a chain"
    state = go_on(state, record, c.ChooseStage("press"))
    assert something_may_be_worn(state, plan(state), EVENING) is True
    state = go_on(state, record, c.CloseSession({"machine": "yes"}))
    assert looked_for(state, 5)
