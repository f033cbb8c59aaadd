"""Where in the work a quiet word does not disturb: at a stage boundary, or a chain's end."""

from __future__ import annotations

from datetime import datetime, timedelta

from sewalong.piecing.method import Station
from sewalong.progress.plan.plan import Plan
from sewalong.progress.record.state import State
from sewalong.progress.record.web_rows import next_seam
from sewalong.quilt.web import SEW_WEB, START_WEB

STOP_MINUTES = 50
"""HSE (L26, display screen work only) finds 5 to 10 minutes after 50 to 60 likely better than
15 minutes every two hours; for sewing, common practice."""


def at_a_stage_boundary(state: State, now: Plan) -> bool:
    """Whether no stage is being worked: before the first count of a session, after turning
    to another stage, or when the stage last counted has nothing ready or nothing to do."""
    session = state.session
    if session is None or not session.counts or state.chosen_by_hand or state.chosen is None:
        return True
    line = now.line(state.chosen)
    return not line.ready or not line.to_do


def at_a_pause(state: State, now: Plan) -> bool:
    """A stage boundary, or after several counted at once: the hands have come to a stop."""
    return at_a_stage_boundary(state, now) or state.last_lot.get(state.last_counted, 1) > 1


def at_a_chains_end(state: State, now: Plan) -> bool:
    """A stage boundary, the end of a pass of a web, or after a count that is no single piece out of
    a chain.

    Pieces counted several at once were counted when the chain was clipped; away from the
    machine there is no chain.
    """
    if at_a_stage_boundary(state, now):
        return True
    seam = next_seam(state)
    if seam is not None and seam.is_first and state.last_counted in (START_WEB, SEW_WEB):
        return True
    stage = state.route.stage(state.last_counted) if state.last_counted else None
    if stage is None or stage.station is not Station.MACHINE:
        return True
    return state.last_lot[stage.id] > 1


def something_may_be_worn(
    state: State, now: Plan, at: datetime, stop_minutes: int = STOP_MINUTES
) -> bool:
    """Whether it is worth while to look what wears out: a look through the whole record.

    Between stage boundaries only the bobbin can be due, where its changes are written down, and a
    stop, and none before its time has gone by.
    """
    session = state.session
    if session is None or at_a_stage_boundary(state, now):
        return True
    sat = at - session.opened
    may_be = "bobbin" in state.changed or (stop_minutes and sat >= timedelta(minutes=stop_minutes))
    return bool(may_be) and at_a_chains_end(state, now)
