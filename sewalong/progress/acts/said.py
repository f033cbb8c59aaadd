"""Questions answered, things said once."""

from __future__ import annotations

from sewalong.progress.acts.act import Act, Now, text
from sewalong.progress.record.events.event import Event
from sewalong.progress.record.events.said import Answered, Mentioned
from sewalong.progress.record.limits import quoted
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State
from sewalong.progress.safety.closing_questions import ANSWERS, ON_LEAVING_THE_IRON


class Answer(Act, frozen=True):
    """What the person says when asked about the iron."""

    question: str
    answer: str

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        if self.question != ON_LEAVING_THE_IRON.id:
            raise Refused(f"Nothing called {quoted(self.question)} is asked while sewing.")
        if state.iron_asked:
            raise Refused("Nothing is asked about the iron just now. Nothing was recorded.")
        if self.answer not in ANSWERS:
            raise Refused(f"{ON_LEAVING_THE_IRON.ask} Answer yes, no or did not look.")
        return (
            Answered(at=now.at, session=now.session, question=self.question, answer=self.answer),
        )


class Mention(Act, frozen=True):
    """Something was said, so that it is not said again."""

    what: str

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        what = text(self.what, "what was said")
        return (Mentioned(at=now.at, session=now.session, what=what),)
