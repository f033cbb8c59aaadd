"""What the person wrote down in her own words: notes, and which way seams are pressed."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.progress.record.events.event import Event, Recorded, label_of, stopped
from sewalong.progress.record.limits import a_stage
from sewalong.progress.record.state import Note, State
from sewalong.progress.record.tally import Tally


class Noted(Event, frozen=True, kw_only=True, tag="noted"):
    """A note for herself."""

    text: str

    def apply(self, tally: Tally, seq: int) -> None:
        tally.notes.append(Note(self.at, self.session, self.text))
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return f"Noted: {self.text}"


class PressNoted(Event, frozen=True, kw_only=True, tag="press noted"):
    """Which way the seams of a stage are pressed, in the owner's words."""

    stage: str
    direction: str

    def check(self, state: State) -> None:
        a_stage(state, self.stage)

    def apply(self, tally: Tally, seq: int) -> None:
        tally.press[self.stage] = self.direction
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return f"Pressing at {label_of(state, self.stage)}: {stopped(self.direction)}"
