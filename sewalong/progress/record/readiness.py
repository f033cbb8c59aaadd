"""How many of a stage could be done now with what waits for it."""

from __future__ import annotations

from itertools import takewhile

from sewalong.piecing.method import Stage
from sewalong.progress.record.begun_rows import can_be_made, pieces_held, units_across
from sewalong.progress.record.route import ADD_SASHES, JOIN_ROWS, SEW_ROWS, RouteStage, TopStage
from sewalong.progress.record.rows_sewn import rows_sewn, rows_wanted, wanted_in_rows
from sewalong.progress.record.state import State
from sewalong.quilt.rules import MOST_PIECES
from sewalong.quilt.web import START_WEB, WEB_PILES, WEB_ROW


def ready(state: State, stage: RouteStage) -> int:
    """How many of a stage could be done now with what waits for it.

    What is cut from cloth waits for nothing that is counted: as many as a pile can hold.
    """
    waits = min(
        (state.piles[taken.pile] // taken.count for taken in stage.takes), default=MOST_PIECES
    )
    if isinstance(stage, Stage):
        if stage.id == SEW_ROWS and state.begun:
            return _rows(state, stage)
        if state.quilt.is_web and stage.makes.pile in WEB_PILES:
            return min(waits, room_in_the_web(state, stage))
        return waits
    done = state.done[stage.id]
    if stage.id == ADD_SASHES:
        return max(0, min(waits, sashes_that_fit(state, stage) - done))
    if stage.id == JOIN_ROWS:
        pairs = min(rows_sewn(state) - 1, state.done.get(ADD_SASHES, stage.steps))
        return min(stage.steps - done, max(0, pairs - done))
    return min(waits, stage.steps - done) if _before_is_done(state, stage) else 0


def sashes_that_fit(state: State, stage: TopStage) -> int:
    """Sashes that the rows sewn so far take: one each, and with a frame one more.

    Without a frame one row of all has none.
    """
    rows, sashing = rows_sewn(state), state.quilt.sashing
    more = 1 if sashing is not None and sashing.frame else 0
    return min(stage.steps, rows + more) if rows else 0


def room_in_the_web(state: State, stage: Stage) -> int:
    """Seams that the web has left at a stage; none after the first pass until that is whole."""
    if stage.id != START_WEB and state.piles[WEB_ROW.id] < state.target.rows:
        return 0
    pile = stage.makes.pile
    return max(0, wanted_in_rows(state.quilt, state.target)[pile] - state.piles[pile])


def _rows(state: State, stage: Stage) -> int:
    """Rows that can be made of the rows begun, the loose units, and what else a row takes."""
    unit = state.quilt.method.unit
    across = units_across(state.route, unit)
    made = can_be_made(state.begun, across, state.piles[unit])
    while made and not _has_the_sashes(state, stage, made, across):
        made -= 1
    return made


def _has_the_sashes(state: State, stage: Stage, rows: int, across: int) -> bool:
    held = pieces_held(stage, state.quilt.method.unit, state.begun, across, rows)
    return all(rows * t.count - held[t.pile] <= state.piles[t.pile] for t in stage.takes)


def _before_is_done(state: State, stage: TopStage) -> bool:
    """Whether the top is ready for `stage`: rows all sewn and joined, and each stage before."""
    before = takewhile(lambda other: other.id != stage.id, state.route.of_the_top)
    return rows_sewn(state) >= rows_wanted(state) and all(
        state.done[other.id] == other.steps for other in before
    )
