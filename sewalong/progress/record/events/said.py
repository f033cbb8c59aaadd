"""What passed between the program and the person: cautions read, questions answered, things said."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from sewalong.progress.record.events.event import Event, Recorded
from sewalong.progress.record.state import State
from sewalong.progress.record.tally import Tally


class CautionRead(Event, frozen=True, kw_only=True, tag="caution read"):
    """The person acknowledged the cautions for these hazards."""

    undoable: ClassVar[bool] = False

    hazards: tuple[str, ...]

    def apply(self, tally: Tally, seq: int) -> None:
        tally.cautions_read.update(dict.fromkeys(self.hazards, self.at))

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return f"Read the caution: {', '.join(self.hazards)}."


class Answered(Event, frozen=True, kw_only=True, tag="answered"):
    """What the person said when asked about the iron on leaving a pressing stage."""

    undoable: ClassVar[bool] = False

    question: str
    answer: str

    def apply(self, tally: Tally, seq: int) -> None:
        tally.iron_asked = True

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return f"Asked about the {self.question}: {self.answer}."


class Mentioned(Event, frozen=True, kw_only=True, tag="mentioned"):
    """Something was said once, so that it is not said again. `what` is a short id of it."""

    undoable: ClassVar[bool] = False

    what: str

    def apply(self, tally: Tally, seq: int) -> None:
        tally.mentioned[self.what] = self.at

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return "Said once."
