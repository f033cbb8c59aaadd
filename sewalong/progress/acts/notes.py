"""Writing down: notes, and which way seams are pressed."""

from __future__ import annotations

from sewalong.progress.acts.act import Act, Now, text
from sewalong.progress.record.events.event import Event
from sewalong.progress.record.events.notes import Noted, PressNoted
from sewalong.progress.record.state import State


class WriteNote(Act, frozen=True):
    """A note for herself."""

    text: str

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        return (Noted(at=now.at, session=now.session, text=text(self.text, "some words")),)


class NotePress(Act, frozen=True):
    """Which way the seams of a stage are pressed."""

    stage: str
    direction: str

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        what = "the direction, such as “towards the dark cloth”"
        noted = PressNoted(
            at=now.at, session=now.session, stage=self.stage, direction=text(self.direction)
        )
        noted.check(state)
        text(self.direction, what)
        return (noted,)
