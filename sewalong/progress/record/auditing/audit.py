"""Whether a record from outside could have happened: asked before it is taken in.

Every event checks itself, as it did before it was written; here is only what no single event
can know: numbers, undoing, sessions, times and the length of texts.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime

from msgspec import Struct

from sewalong.progress.record.auditing.running_check import RunningCheck
from sewalong.progress.record.events.event import Event, Recorded
from sewalong.progress.record.events.replanning import PlanChanged
from sewalong.progress.record.events.sessions import NO_SESSION, SessionClosed, SessionOpened
from sewalong.progress.record.events.undoing import Redone, Undone
from sewalong.progress.record.limits import LONGEST_TEXT, MOST_AT_ONCE, short
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.route import route_for
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.rules import a_text

YEARS = range(1900, 9000)
"""Years a clock may show; outside them times cannot be reckoned with in every time zone."""


def audit(quilt: Quilt, record: Sequence[Recorded]) -> str | None:
    """None when plan and record hold together, else what is wrong with the first that does not.

    Whatever could be written here passes.
    """
    trouble = _misfit_of_plan(quilt) or _misfit_of_order(record)
    if trouble:
        return trouble
    so_far = RunningCheck(quilt)
    session = NO_SESSION
    for recorded in record:
        event = recorded.event
        trouble = _misfit_of_time(event) or _misfit_of_session(session, event)
        trouble = trouble or _misfit_of_values(event) or _misfit_now(so_far, event)
        if trouble:
            return f"event {recorded.seq} {trouble}"
        if so_far.goes_too_far_back:
            return f"up to event {recorded.seq} it takes back, again and again, what is long past"
        so_far.add(recorded)
        if isinstance(event, SessionOpened):
            session = event.session
        elif isinstance(event, SessionClosed):
            session = NO_SESSION
    return None


def reckonable(time: datetime) -> bool:
    """Whether a time from outside has its offset and a year that can be reckoned with."""
    return time.tzinfo is not None and time.year in YEARS


def _misfit_of_plan(quilt: Quilt) -> str | None:
    try:
        method = quilt.method
        route_for(quilt, quilt.target)
    except (ValueError, KeyError) as error:
        return f"its plan cannot be worked by this sewalong ({error})"
    for start in quilt.starts:
        if start.pile not in method.starts:
            return f"it begins with a pile “{start.pile}”, and its method does not"
    return None


def _misfit_of_order(record: Sequence[Recorded]) -> str | None:
    """Numbers run from 1 without gaps, and what was undone or put back was the last that could
    be."""
    kept: list[int] = []
    gone: list[int] = []
    for place, recorded in enumerate(record, start=1):
        event = recorded.event
        if recorded.seq != place:
            return f"event {place} carries the number {short(recorded.seq)}"
        if isinstance(event, Undone):
            if not kept or kept[-1] != event.of:
                return f"event {place} undoes number {short(event.of)}, which was not the last"
            gone.append(kept.pop())
        elif isinstance(event, Redone):
            if not gone or gone[-1] != event.of:
                return (
                    f"event {place} puts back number {short(event.of)}, which was not undone last"
                )
            kept.append(gone.pop())
        elif event.undoable:
            kept.append(place)
            gone.clear()
    return None


def _misfit_of_time(event: Event) -> str | None:
    times = (event.at, event.ended) if isinstance(event, SessionClosed) else (event.at,)
    for time in times:
        if time.tzinfo is None:
            return "has a time without its offset"
        if time.year not in YEARS:
            return f"is dated to the year {time.year}"
    return None


def _misfit_of_session(now: int, event: Event) -> str | None:
    """What is between sessions belongs to none. No undo takes a session back."""
    if isinstance(event, SessionOpened):
        return None
    if event.session != now and not (isinstance(event, SessionClosed) and now == NO_SESSION):
        return f"belongs to session {short(event.session)}, which was not open"
    return None


def _misfit_of_values(event: Event) -> str | None:
    if isinstance(event, PlanChanged):
        # Its check puts both plans to the rules of a plan, which notes of several lines pass.
        return None
    for i, value in enumerate(_values(event), start=1):
        if i > event.most_values:
            return f"says more than {event.most_values} things"
        if isinstance(value, int) and abs(value) > MOST_AT_ONCE * MOST_AT_ONCE:
            return f"has a number in it that cannot be: {short(value)}"
        try:
            a_text(value if isinstance(value, str) else "", LONGEST_TEXT)
        except ValueError as error:
            return f"has a text that cannot be kept. {str(error).rstrip('.')}"
    return None


def _values(value: object) -> Iterator[object]:
    """Every text and number in an event."""
    if isinstance(value, str | int):
        yield value
    elif isinstance(value, Mapping):
        for key, held in value.items():
            yield from _values(key)
            yield from _values(held)
    elif isinstance(value, tuple):
        for held in value:
            yield from _values(held)
    elif isinstance(value, Struct):
        for name in value.__struct_fields__:
            yield from _values(getattr(value, name))


def _misfit_now(so_far: RunningCheck, event: Event) -> str | None:
    """What an event says against having happened now."""
    if type(event).check is Event.check:
        return None  # it can always happen, so nobody need know how things stood
    try:
        event.check(so_far.state())
    except Refused as refused:
        return f"({event.kind}) cannot have happened. {str(refused).rstrip('.')}"
    return None
