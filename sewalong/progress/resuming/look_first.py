"""What may have been left unsafe at the end of the last session: to be seen to before all else."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime

from sewalong.piecing.method import Hazard
from sewalong.progress.record.events.sessions import is_over
from sewalong.progress.record.state import SessionRecord, State
from sewalong.progress.resuming.concerns import Concern, Kind

PINS = "pins"
_IN_ORDER = (
    (Hazard.IRON, "iron", "the iron is off"),
    (Hazard.CUTTER, "blade", "the blade is closed"),
    (Hazard.NEEDLE, "machine", "the machine is off"),
    (Hazard.PINS, PINS, "the pins are counted"),
)
"""What is asked about at the end (see `closing_questions`), and how it should be."""

_WHY = {"no": "you said no last time", "did not look": "nobody looked last time"}


def look_first(state: State, now: datetime) -> Iterator[Concern]:
    """What was answered otherwise than with yes, and what nobody was asked about."""
    last = state.last_session
    if last is None or not last.counts:
        return
    unsure = [thing for thing, answer in last.answers.items() if answer != "yes"]
    for answer, why in _WHY.items():
        things = [thing for thing in unsure if last.answers[thing] == answer]
        if things:
            yield _concern(last, things, why)
    if last.forgotten or (last.is_open and is_over(last, now)):
        things = [thing for thing in _met(state, last) if thing not in unsure]
        if things:
            yield _concern(last, things, "that session was never closed, so nobody asked")


def _met(state: State, session: SessionRecord) -> list[str]:
    """What is asked about at the end of a session, by what was worked at in it."""
    hazards = {
        hazard
        for stage_id in session.counts
        if (stage := state.route.stage(stage_id)) is not None
        for hazard in stage.hazards
    }
    return [thing for hazard, thing, _ in _IN_ORDER if hazard in hazards]


def _concern(last: SessionRecord, things: Sequence[str], why: str) -> Concern:
    return Concern(Kind.LEFT_UNSAFE, "First", last.last_at, (f"{_see_to(things)}: {why}.",))


def _see_to(things: Sequence[str]) -> str:
    if tuple(things) == (PINS,):
        return "Count the pins"
    safe = [words for _, thing, words in _IN_ORDER if thing in things]
    *others, final = safe
    return f"See that {', '.join(others)} and {final}" if others else f"See that {final}"
