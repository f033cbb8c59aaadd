"""How many of a stage could be done now with what waits for it."""

from __future__ import annotations

from itertools import takewhile

from sewalong.piecing.method import Stage
from sewalong.progress.record.begun_rows import can_be_made, units_across
from sewalong.progress.record.route import JOIN_ROWS, ROW, SEW_ROWS, RouteStage, TopStage
from sewalong.progress.record.state import State


def ready(state: State, stage: RouteStage) -> int:
    """How many of a stage could be done now with what waits for it."""
    if isinstance(stage, Stage):
        if stage.id == SEW_ROWS and state.begun:
            return _rows(state, stage)
        return min(state.piles[taken.pile] // taken.count for taken in stage.takes)
    left = stage.steps - state.done[stage.id]
    if stage.id == JOIN_ROWS:
        return min(left, max(0, state.piles[ROW.id] - 1 - state.done[stage.id]))
    return left if _before_is_done(state, stage) else 0


def _rows(state: State, stage: Stage) -> int:
    """Rows that can be made of the rows begun, the loose units, and what else a row takes."""
    unit = state.quilt.method.unit
    made = can_be_made(state.begun, units_across(state.route, unit), state.piles[unit])
    others = (state.piles[t.pile] // t.count for t in stage.takes if t.pile != unit)
    return min([made, *others])


def _before_is_done(state: State, stage: TopStage) -> bool:
    """Whether the top is ready for `stage`: rows all sewn and joined, and each stage before."""
    before = takewhile(lambda other: other.id != stage.id, state.route.of_the_top)
    return state.piles[ROW.id] >= state.target.rows and all(
        state.done[other.id] == other.steps for other in before
    )
