"""What is part of the one top already, and so no longer loose."""

from __future__ import annotations

from sewalong.progress.record.route import JOIN_ROWS, ROW, RouteStage, TopStage
from sewalong.progress.record.state import State


def last_on_the_top(state: State, *, after: RouteStage | None = None) -> TopStage | None:
    """The last stage of the top that was counted, of those after `after`; None if none was."""
    for stage in reversed(state.route.of_the_top):
        if stage == after:
            return None
        if state.done[stage.id]:
            return stage
    return None


def joined_rows(state: State) -> int:
    """Rows that are part of the top: seams join them, or a border holds the only one."""
    if last_on_the_top(state) is None:
        return 0
    return state.done.get(JOIN_ROWS, 0) + 1


def loose_rows(state: State) -> int:
    """Rows sewn and not joined to anything yet."""
    return state.piles[ROW.id] - joined_rows(state)
