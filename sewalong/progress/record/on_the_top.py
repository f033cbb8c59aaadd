"""What is part of the one top already, and so no longer loose."""

from __future__ import annotations

from sewalong.progress.record.route import ADD_SASHES, JOIN_ROWS, ROW, RouteStage, TopStage
from sewalong.progress.record.rows_sewn import rows_of, rows_pile
from sewalong.progress.record.state import State
from sewalong.progress.record.web_rows import rows_joined
from sewalong.quilt.setting import SET_SIDE, SET_UNIT
from sewalong.quilt.web import WEB_PILES, WEB_ROW, WEB_UNIT, added_to_a_row


def last_on_the_top(state: State, *, after: RouteStage | None = None) -> TopStage | None:
    """The last stage of the top that was counted, of those after `after`; None if none was."""
    for stage in reversed(state.route.of_the_top):
        if stage == after:
            return None
        if state.done[stage.id]:
            return stage
    return None


def unpick_rows_first(state: State, keep: str) -> str:
    """How rows that are sewn come apart, the last sewn first, or what is kept instead."""
    pile = rows_pile(state.quilt)
    rows = state.piles[pile.id]
    on_the_top = [
        f"{stage.counts.count(state.done[stage.id])} at {stage.label}"
        for stage in reversed(state.route.of_the_top)
        if state.done[stage.id]
    ]
    if state.quilt.is_web and (added := state.piles[WEB_UNIT.id]):
        on_the_top.append(WEB_UNIT.noun.count(added))
    if on_the_top:
        first = ", then ".join([*on_the_top, pile.noun.count(rows)])
        return f"That would have to be unpicked first: {first}. Or keep {keep}."
    return f"Unpick {'it' if rows == 1 else 'them'} first, or keep {keep}."


def joined_rows(state: State) -> int:
    """Rows that are part of the top: seams join them, a sash is on them, or a border holds the
    only one."""
    if last_on_the_top(state) is None:
        return 0
    return max(state.done.get(JOIN_ROWS, 0) + 1, sashed_rows(state))


def sashed_rows(state: State) -> int:
    """Rows that have their sash, at the least: with a frame one of them has two."""
    sashing = state.quilt.sashing
    two_on_one = 1 if sashing is not None and sashing.frame else 0
    return max(0, state.done.get(ADD_SASHES, 0) - two_on_one)


def loose_sashes(state: State) -> int:
    """Sashes along rows that no joining seam holds on their other side."""
    return state.done[ADD_SASHES] - state.done[JOIN_ROWS]


def loose(state: State, pile: str) -> int:
    """How many pieces of a pile lie by themselves; rows joined already, and what lies in such
    rows on point, do not."""
    if state.quilt.is_web and pile in WEB_PILES:
        each = 1 if pile == WEB_ROW.id else added_to_a_row(state.target.columns)
        return max(0, state.piles[pile] - len(rows_joined(state)) * each)
    if pile == ROW.id:
        return state.piles[pile] - joined_rows(state)
    if pile in (SET_UNIT.id, SET_SIDE.id):
        return max(0, state.piles[pile] - _held(state, pile))
    return state.piles[pile]


def _held(state: State, pile: str) -> int:
    """Pieces in the rows on point that are joined, at the least: in those joined by number, or in
    as many of the rows with the fewest."""
    rows = [row.units if pile == SET_UNIT.id else row.sides for row in rows_of(state)]
    named = {row for joint in state.joints for row in joint}
    return max(sum(rows[row - 1] for row in named), sum(sorted(rows)[: joined_rows(state)]))
