"""Sitting down and putting away."""

from __future__ import annotations

from collections.abc import Mapping
from typing import ClassVar

from msgspec import field

from sewalong.progress.acts.act import Act, Now, text
from sewalong.progress.acts.piles import PutPileAway
from sewalong.progress.record.events.event import Event
from sewalong.progress.record.events.sessions import SessionClosed, is_over
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State
from sewalong.progress.safety.closing_questions import ANSWERS, questions


class OpenSession(Act, frozen=True):
    """Sit down to sew; the session is opened by whatever is asked first."""

    needs_progress: ClassVar[bool] = True

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        return ()


class CloseSession(Act, frozen=True):
    """Put away for today.

    `answers` maps each question's id (see `closing_questions`) to the person's answer; `put`
    each pile that was put somewhere to its place.
    """

    closes_session: ClassVar[bool] = True

    answers: Mapping[str, str] = field(default_factory=dict)
    next_step: str = ""
    put: Mapping[str, str] = field(default_factory=dict)

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        session = state.session
        if session is None:
            raise Refused("No session is open, so there is none to close.")
        asked = {question.id: question for question in questions(state)}
        for id, question in asked.items():
            if self.answers.get(id) not in ANSWERS:
                raise Refused(f"Before you go: {question.ask} Answer yes, no or did not look.")
        put = [
            event
            for pile, place in self.put.items()
            for event in PutPileAway(pile, place).decide(state, now)
        ]
        over = is_over(session, now.at) and not put
        closed = SessionClosed(
            at=now.at,
            session=now.session,
            ended=session.last_at if over else max(session.last_at, now.at),
            answers={id: self.answers[id] for id in asked},
            next_step=text(self.next_step),
        )
        return (*put, closed)
