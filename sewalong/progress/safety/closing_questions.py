"""What is asked on leaving a pressing stage and on closing a session.

The program asks; it never claims to know. The answer is recorded as it was given.
"""

from __future__ import annotations

from msgspec import Struct

from sewalong.piecing.method import Hazard
from sewalong.progress.record.state import SessionRecord, State

ANSWERS = ("yes", "no", "did not look")


class Question(Struct, frozen=True):
    """`id` names the answer in the record; `ask` is put to the person."""

    id: str
    ask: str


ON_LEAVING_THE_IRON = Question("iron", "Leaving the board: is the iron off, or safe on its heel?")

_ON_CLOSING = (
    (Hazard.IRON, Question("iron", "Is the iron off and unplugged?")),
    (Hazard.CUTTER, Question("blade", "Is the blade closed?")),
    (Hazard.NEEDLE, Question("machine", "Is the machine off, and your foot off the pedal?")),
    (Hazard.PINS, Question("pins", "Are the pins counted in?")),
)


def questions(state: State) -> tuple[Question, ...]:
    """What to ask before the open session closes."""
    return () if state.session is None else questions_of(state, state.session)


def questions_of(state: State, session: SessionRecord) -> tuple[Question, ...]:
    """What is to be asked at the end of a session: one for each hazard counted at in it."""
    stages = (state.route.stage(stage_id) for stage_id in session.counts)
    met = {hazard for stage in stages if stage is not None for hazard in stage.hazards}
    return tuple(question for hazard, question in _ON_CLOSING if hazard in met)


def leaving_question(state: State, going_to: str) -> Question | None:
    """The question owed when an iron stage was counted and the person turns to another."""
    stage = state.route.stage(going_to)
    if state.iron_asked or stage is None or Hazard.IRON in stage.hazards:
        return None
    return ON_LEAVING_THE_IRON
