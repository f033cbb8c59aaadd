"""What may have been left unsafe at the end of the last session: to be seen to before all else."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime

from sewalong.progress.record.events.sessions import is_over
from sewalong.progress.record.state import SessionRecord, State
from sewalong.progress.resuming.concerns import Concern, Kind
from sewalong.progress.safety.closing_questions import questions_of

PINS = "pins"
_SAFE = {
    "iron": "the iron is off",
    "blade": "the blade is closed",
    "machine": "the machine is off",
    PINS: "the pins are counted",
}
"""How it should be, by the question that is asked about it at the end."""

_WHY = {"no": "you said no last time", "did not look": "nobody looked last time"}


def look_first(state: State, now: datetime) -> Iterator[Concern]:
    """What was answered otherwise than with yes, and what nobody was asked about."""
    last = state.last_session
    if last is None or not last.counts:
        return
    unsure = [thing for thing in _SAFE if last.answers.get(thing, "yes") != "yes"]
    for answer, why in _WHY.items():
        things = [thing for thing in unsure if last.answers[thing] == answer]
        if things:
            yield _concern(last, things, why)
    if last.forgotten or (last.is_open and is_over(last, now)):
        met = [question.id for question in questions_of(state, last)]
        if things := [thing for thing in met if thing not in unsure]:
            yield _concern(last, things, "that session was never closed, so nobody asked")


def _concern(last: SessionRecord, things: Sequence[str], why: str) -> Concern:
    return Concern(Kind.LEFT_UNSAFE, "First", last.last_at, (f"{_see_to(things)}: {why}.",))


def _see_to(things: Sequence[str]) -> str:
    if tuple(things) == (PINS,):
        return "Count the pins"
    *others, final = (_SAFE[thing] for thing in things)
    return f"See that {', '.join(others)} and {final}" if others else f"See that {final}"
