"""Sessions: sat down to sew, and put away."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime, timedelta
from typing import ClassVar

from msgspec import field
from msgspec.structs import replace

from sewalong.progress.record.events.event import Event, Recorded
from sewalong.progress.record.limits import short
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import SessionRecord, State
from sewalong.progress.record.tally import Sitting, Tally
from sewalong.progress.record.time_words import day_and_time, in_the_future

SESSION_GAP = timedelta(hours=4)
"""A session not heard from for this long was over; nobody said so. From memory of evenings."""

NO_SESSION = 0
"""The session of what happens outside any, such as laying the quilt aside."""


class SessionOpened(Event, frozen=True, kw_only=True, tag="session opened"):
    """Somebody sat down to sew."""

    undoable: ClassVar[bool] = False

    def check(self, state: State) -> None:
        if state.session is not None or self.session != next_number(state):
            raise Refused(f"Session {short(self.session)} is opened out of turn.")

    def apply(self, tally: Tally, seq: int) -> None:
        tally.sitting = Sitting(number=self.session, opened=self.at, last_at=self.at)
        tally.cautions_read, tally.iron_asked = {}, True

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return "Sat down to sew."

    def in_full(self, state: State, record: Sequence[Recorded]) -> str:
        return f"Session {self.session} opened."


class SessionClosed(Event, frozen=True, kw_only=True, tag="session closed"):
    """Put away for today. `answers` holds what the person said of each thing asked about.

    `forgotten` is true when the session was never closed by hand: the program closed
    it later, `ended` is when it last heard from the person, and nothing was asked.
    """

    undoable: ClassVar[bool] = False

    ended: datetime
    answers: Mapping[str, str] = field(default_factory=dict)
    next_step: str = ""
    forgotten: bool = False

    def check(self, state: State) -> None:
        if state.session is None:
            raise Refused("No session is open, so there is none to close.")

    def apply(self, tally: Tally, seq: int) -> None:
        if tally.sitting is None:
            return
        closed = replace(
            tally.sitting.frozen(),
            ended=self.ended,
            answers=self.answers,
            next_step=self.next_step,
            forgotten=self.forgotten,
        )
        tally.sessions.append(closed)
        tally.sitting = None
        tally.cautions_read, tally.iron_asked = {}, True
        first, last = tally.put_away
        if last == seq - 1 and tally.last_at == self.at:
            tally.one_act(seq - first)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return (
            "The session had ended without being closed."
            if self.forgotten
            else "Closed the session."
        )

    def in_full(self, state: State, record: Sequence[Recorded]) -> str:
        if self.forgotten:
            when = day_and_time(self.ended)
            return f"Session {self.session} was never closed; last heard from {when}."
        said = "; ".join(f"{thing}: {answer}" for thing, answer in self.answers.items())
        asked = f" Asked about {said}." if said else ""
        next_step = f" Next time: {self.next_step}" if self.next_step else ""
        return f"Session {self.session} closed.{asked}{next_step}"

    def facts(self, state: State, record: Sequence[Recorded]) -> tuple[str, ...]:
        if self.forgotten:
            return (self.in_full(state, record),)
        asked = (f"Asked about the {thing}: {answer}." for thing, answer in self.answers.items())
        next_step = (f"Next time: {self.next_step}",) if self.next_step else ()
        return (f"Session {self.session} closed.", *asked, *next_step)


def next_number(state: State) -> int:
    """The number of the session to open next; they are numbered from 1."""
    return state.sessions[-1].number + 1 if state.sessions else 1


def is_over(session: SessionRecord, at: datetime) -> bool:
    """Whether a session left open was not heard from for so long that it was over.

    A session of another clock, opened or heard from in what is the future now, is over too.
    """
    return abs(at - session.last_at) >= SESSION_GAP or in_the_future(session.opened, at)


def session_length(session: SessionRecord, now: datetime) -> timedelta:
    """The one length a session has, wherever it is shown: from sitting down to putting away.

    An open one goes on until `now`; one that nobody closed ended when it was last heard from.
    Never below nothing, though a clock was set back.
    """
    ended = session.ended
    if ended is None:
        ended = session.last_at if is_over(session, now) else max(session.last_at, now)
    return max(timedelta(), ended - session.opened)
