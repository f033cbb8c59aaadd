"""What is part of the one top already, and so no longer loose."""

from __future__ import annotations

from sewalong.progress.record.route import ADD_SASHES, JOIN_ROWS, ROW, RouteStage, TopStage
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
    """Rows that are part of the top: seams join them, a sash is on them, or a border holds the
    only one."""
    if last_on_the_top(state) is None:
        return 0
    return max(state.done.get(JOIN_ROWS, 0) + 1, sashed_rows(state))


def sashed_rows(state: State) -> int:
    """Rows that have their sash, at the least: with a frame one of them has two."""
    setting = state.quilt.setting
    two_on_one = 1 if setting is not None and setting.frame else 0
    return max(0, state.done.get(ADD_SASHES, 0) - two_on_one)


def loose_sashes(state: State) -> int:
    """Sashes along rows that no joining seam holds on their other side."""
    return state.done.get(ADD_SASHES, 0) - state.done.get(JOIN_ROWS, 0)


def loose_rows(state: State) -> int:
    """Rows sewn and not joined to anything yet."""
    return state.piles[ROW.id] - joined_rows(state)
