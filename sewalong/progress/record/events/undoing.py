"""Taking something back, and putting back what was taken back.

Both name the event itself and never each other, so however often one is taken back and put back
again, whether it counts is what the last of them says.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from sewalong.progress.record.events.event import Event, Recorded
from sewalong.progress.record.state import State
from sewalong.progress.record.tally import Tally


class TakenOrPutBack(Event, frozen=True, kw_only=True):
    """From now on the event numbered `of` counts, or it does not. It stands in its old place:
    nothing that changes a pile can come between its being taken back and put back."""

    undoable: ClassVar[bool] = False

    of: int


class Undone(TakenOrPutBack, frozen=True, kw_only=True, tag="undone", omit_defaults=True):
    """The event numbered `of` no longer counts. An act of several events takes several of these,
    the last event first; `together` marks those after the first of them."""

    together: bool = False

    def apply(self, tally: Tally, seq: int) -> None:
        """It can be put back; that it does not count is the fold's to see to."""
        tally.took_back(self.of, together=self.together)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        what = record[self.of - 1].event.words(state, record)
        return f"Undone: {what[:1].lower()}{what[1:]}"

    def in_full(self, state: State, record: Sequence[Recorded]) -> str:
        what = record[self.of - 1].event.in_full(state, record)
        return f"Undid number {self.of}: {what}"


class Redone(TakenOrPutBack, frozen=True, kw_only=True, tag="put back"):
    """The event numbered `of`, which was taken back, counts again."""

    def apply(self, tally: Tally, seq: int) -> None:
        """It is no longer to be put back; that it counts is the fold's to see to."""
        tally.put_back()

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        what = record[self.of - 1].event.words(state, record)
        return f"Put back: {what[:1].lower()}{what[1:]}"

    def in_full(self, state: State, record: Sequence[Recorded]) -> str:
        what = record[self.of - 1].event.in_full(state, record)
        return f"Put back number {self.of}: {what}"


def undone_in(record: Sequence[Recorded]) -> set[int]:
    """The numbers of the events that were taken back and not put back since."""
    undone: set[int] = set()
    for one in record:
        if isinstance(one.event, Undone):
            undone.add(one.event.of)
        elif isinstance(one.event, Redone):
            undone.discard(one.event.of)
    return undone


def effective(record: Sequence[Recorded]) -> tuple[Recorded, ...]:
    """The record without what was undone and without the undoing and putting back."""
    undone = undone_in(record)
    return tuple(
        one for one in record if one.seq not in undone and not isinstance(one.event, TakenOrPutBack)
    )
