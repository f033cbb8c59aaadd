"""What a finished quilt came to: units, sessions, hours, dates, the first and the last note."""

from __future__ import annotations

from datetime import datetime, timedelta

from sewalong.progress.pace.duration_words import hours
from sewalong.progress.plan.plan import Plan
from sewalong.progress.record.events.sessions import session_length
from sewalong.progress.record.state import Standing, State
from sewalong.progress.record.time_words import day


def is_done(state: State, now_plan: Plan) -> bool:
    """Whether the quilt is marked done, or nothing of it is left to do and it is not laid aside."""
    if state.standing is Standing.IN_PROGRESS:
        return now_plan.complete
    return state.standing is Standing.DONE


def done_facts(state: State, now_plan: Plan, now: datetime) -> tuple[tuple[str, str], ...]:
    """One fact each, a label and a text; no label where one goes on from the one before. Hours are those of the sessions, from sitting down to putting away."""
    unit = state.route.piles[state.quilt.method.unit].noun
    made = now_plan.units.made
    facts = [("The top", f"{state.target}, {unit.count(state.units_wanted)}.")]
    if made > state.units_wanted:
        facts.append(("", f"{unit.count(made)} were made."))
    sewn = [session for session in state.sessions if session.counts]
    if sewn:
        lengths = sum((session_length(session, now) for session in sewn), timedelta())
        n = len(sewn)
        often = f"{n} session{'' if n == 1 else 's'}"
        facts.append(("Sewn", f"{often}, {hours(lengths.total_seconds() / 3600)} in all."))
        first, last = day(sewn[0].opened), day(sewn[-1].last_at)
        when = f"{first}." if first == last else f"{first} to {last}."
        facts.append(("Dates", when))
    notes = state.notes
    if notes:
        facts.append(("First note" if len(notes) > 1 else "Note", notes[0].text))
    if len(notes) > 1:
        facts.append(("Last note", notes[-1].text))
    return tuple(facts)
