"""After an interruption within a session: one line before the next count."""

from __future__ import annotations

from datetime import datetime, timedelta

from sewalong.piecing.method import Stage, Station
from sewalong.progress.joining.current_stage import next_unit
from sewalong.progress.joining.web import rows_hold, seam_in_words
from sewalong.progress.record.events.sessions import is_over
from sewalong.progress.record.state import State

A_FEW_MINUTES = timedelta(minutes=5)
"""A pause longer than this is an interruption; common practice."""


def after_interruption(state: State, now: datetime) -> str:
    """What to look at before the next count; empty when the work just went on.

    A person who counts a whole lot at once is silent while sewing it: twice what the last
    lot takes by a first guess is no interruption. Quiet outside a session, and where nothing
    was counted yet in it.
    """
    session = state.session
    stage = state.route.stage(state.chosen) if state.chosen else None
    if session is None or stage is None or is_over(session, now):
        return ""
    if stage.id not in session.counts or state.chosen_by_hand:
        return ""
    usual = timedelta(minutes=2 * stage.minutes * state.last_lot.get(stage.id, 1))
    if now - session.last_at <= max(A_FEW_MINUTES, usual):
        return ""
    unit = next_unit(state, stage.id)
    if held := rows_hold(state):
        return " ".join(
            filter(
                None, (f"Before you sew on: count two rows. {held} {seam_in_words(state)}", unit)
            )
        )
    if unit:
        return f"Before you sew on: {unit[:1].lower()}{unit[1:]} Does it lie so?"
    if isinstance(stage, Stage) and stage.station is Station.MACHINE:
        what = state.route.piles[stage.takes[0].pile].noun.one
        return (
            f"Before you sew on: lay the top {what} on the last one sewn. "
            "Same edge to the needle, same end first?"
        )
    if isinstance(stage, Stage):
        return "Before you go on: compare the top piece with the last one. Which edge, which end?"
    return "Before you go on: which edge is next, and which end is the top?"
