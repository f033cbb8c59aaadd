"""Whether an act may happen: it comes back as events, or is refused in a plain sentence.

Pure: the time comes in with the act. Nothing is written here; the store writes the events,
and only if nobody else wrote in between.
"""

from __future__ import annotations

from datetime import datetime

from sewalong.progress.acts.act import Act, Now
from sewalong.progress.record.events.event import Event
from sewalong.progress.record.events.sessions import (
    NO_SESSION,
    SessionClosed,
    SessionOpened,
    is_over,
    next_number,
)
from sewalong.progress.record.events.standing import must_be_in_progress
from sewalong.progress.record.state import Standing, State


def decide(state: State, act: Act, at: datetime) -> tuple[Event, ...]:
    """The events `act` gives at time `at`, in order; raises Refused and changes nothing.

    Working without an open session opens one; a session that was left open and not heard
    from for `SESSION_GAP` is closed first, as forgotten. `at` must have an offset.
    """
    if at.tzinfo is None:
        raise ValueError("a time needs its offset from UTC")
    if act.needs_progress:
        must_be_in_progress(state)
    opened, session = _session(state, act, at)
    return (*opened, *act.decide(state, Now(at, session)))


def _session(state: State, act: Act, at: datetime) -> tuple[tuple[Event, ...], int]:
    """What happens to the sessions before the act, and the number of the one it is in."""
    open_now = state.session
    closes = act.closes_session
    if open_now is not None and (closes or not is_over(open_now, at)):
        return (), open_now.number
    forgotten: tuple[Event, ...] = ()
    if open_now is not None:
        forgotten = (
            SessionClosed(at=at, session=open_now.number, ended=open_now.last_at, forgotten=True),
        )
    # A note on a quilt laid aside or done does not mean that somebody sat down to sew.
    if closes or not act.sits_down or state.standing is not Standing.IN_PROGRESS:
        return forgotten, NO_SESSION
    number = next_number(state)
    return (*forgotten, SessionOpened(at=at, session=number)), number
