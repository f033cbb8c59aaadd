"""Where in the work a quiet word does not disturb: at a stage boundary, or a chain's end."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.piecing.method import Station
from sewalong.progress.pace.count_times import effective
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.events import Counted, Recorded
from sewalong.progress.record.state import State


def at_a_stage_boundary(state: State) -> bool:
    """Whether no stage is being worked: before the first count of a session, after turning
    to another stage, or when the stage last counted has nothing ready or nothing to do."""
    session = state.session
    if session is None or not session.counts or state.chosen_by_hand or state.chosen is None:
        return True
    line = plan(state).line(state.chosen)
    return not line.ready or not line.to_do


def at_a_chains_end(state: State, record: Sequence[Recorded]) -> bool:
    """A stage boundary, or after a count that is no single piece out of a chain.

    Pieces counted several at once were counted when the chain was clipped; away from the
    machine there is no chain.
    """
    if at_a_stage_boundary(state):
        return True
    counts = [r.event for r in effective(record) if isinstance(r.event, Counted)]
    stage = state.route.stage(counts[-1].stage) if counts else None
    return stage is None or stage.station is not Station.MACHINE or counts[-1].n > 1
