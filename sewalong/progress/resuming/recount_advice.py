"""After a long absence: the few piles worth counting before the hands go on."""

from __future__ import annotations

from datetime import datetime, timedelta

from sewalong.piecing.method import Stage
from sewalong.progress.plan.plan import Plan
from sewalong.progress.record.recount_rules import ToCount, to_count
from sewalong.progress.record.state import Standing, State

LONG_AWAY = timedelta(days=14)
"""After so long nobody remembers a number; common practice."""

MOST_PILES = 3
"""Piles asked for at once, so that they are counted and not passed over."""


def long_away(state: State, now: datetime) -> bool:
    """Whether the last session is so long ago that a recount is worth offering."""
    last = state.last_session
    return last is not None and now - last.last_at >= LONG_AWAY


def worth_counting(state: State, now: datetime, now_plan: Plan) -> tuple[ToCount, ...]:
    """What to count, one number at a time; nothing before a long absence.

    The piles the next stage takes, then the other piles that wait for work still to do, the
    furthest along first; piles of which pieces are missing before all. A pile in several
    places is counted place by place. Piles that are empty by the record are left out, unless
    pieces of them are missing, and so are piles that nothing is to be done with.
    """
    if state.standing is not Standing.IN_PROGRESS or not long_away(state, now):
        return ()
    wanted = [pile for pile in state.missing if pile in state.route.piles]
    lines = {line.stage.id: line for line in now_plan.lines}
    next_stage = now_plan.suggestion.stage if now_plan.suggestion else None
    first = state.route.stage(next_stage) if next_stage else None
    stages = [stage for stage in reversed(state.route.of_pieces) if lines[stage.id].to_do]
    for stage in ([first] if isinstance(first, Stage) else []) + stages:
        wanted += [taken.pile for taken in stage.takes if state.piles[taken.pile]]
    piles = list(dict.fromkeys(wanted))[:MOST_PILES]
    return tuple(one for pile in piles for one in to_count(state, pile))


def offer_in_words(state: State, now: datetime, now_plan: Plan) -> str:
    """The offer as one sentence; empty when there is none to make."""
    piles = dict.fromkeys(one.pile for one in worth_counting(state, now, now_plan))
    if not piles:
        return ""
    names = ", then the ".join(state.route.piles[pile].noun.many for pile in piles)
    return f"It has been long: count the {names} before you go on."
