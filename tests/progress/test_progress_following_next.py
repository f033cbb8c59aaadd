"""Doing what is next, one count at a time, never lowers what is possible."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from sewalong.piecing.catalogue import method_ids
from sewalong.piecing.method import Stage
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.state import State
from tests.progress.building import a_quilt, opening


def quilt_of(id: str, counts: list[int], rows: int, columns: int) -> State:
    """A quilt begun with unlike piles."""
    quilt = a_quilt(id, 1, rows, columns)
    starts = tuple(
        replace(start, count=count) for start, count in zip(quilt.starts, counts, strict=False)
    )
    return opening(replace(quilt, starts=starts))


def done_once(state: State, stage: Stage) -> State:
    """One count of a stage."""
    piles = dict(state.piles)
    for taken in stage.takes:
        piles[taken.pile] -= taken.count
    piles[stage.makes.pile] += stage.makes.count
    done = {**state.done, stage.id: state.done[stage.id] + 1}
    return replace(state, piles=piles, done=done, chosen=stage.id)


def followed(state: State) -> tuple[list[int], State]:
    """What was possible before each count, and the quilt when there is no more piecing to do."""
    seen = []
    while True:
        now = plan(state)
        seen.append(now.units.possible)
        if now.suggestion is None:
            return seen, state
        stage = now.line(now.suggestion.stage).stage
        if not isinstance(stage, Stage) or stage.makes.pile == "row":
            return seen, state
        state = done_once(state, stage)


def test_10_large_and_33_small_squares_come_to_32_geese_when_next_is_followed() -> None:
    seen, end = followed(quilt_of("flying-geese-four", [10, 33], 6, 7))
    assert set(seen) == {32}
    assert end.piles["unit"] >= 7


@pytest.mark.parametrize("id", method_ids())
@settings(max_examples=8, deadline=None)
@given(st.lists(st.integers(1, 24), min_size=3, max_size=3), st.integers(1, 6), st.integers(1, 6))
def test_next_never_lowers_what_is_possible(
    id: str, counts: list[int], rows: int, columns: int
) -> None:
    seen, _ = followed(quilt_of(id, counts, rows, columns))
    assert set(seen) == {seen[0]}
