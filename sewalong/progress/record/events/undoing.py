"""Taking something back."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from sewalong.progress.record.events.event import Event, Recorded
from sewalong.progress.record.state import State
from sewalong.progress.record.tally import Tally


class Undone(Event, frozen=True, kw_only=True, tag="undone"):
    """The event numbered `of` no longer counts. An act of several events takes several of these."""

    undoable: ClassVar[bool] = False

    of: int

    def apply(self, tally: Tally, seq: int) -> None:
        """Nothing: the fold leaves out what was undone."""

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        what = record[self.of - 1].event.words(state, record)
        return f"Undone: {what[:1].lower()}{what[1:]}"

    def in_full(self, state: State, record: Sequence[Recorded]) -> str:
        what = record[self.of - 1].event.in_full(state, record)
        return f"Undid number {self.of}: {what}"


def undone_in(record: Sequence[Recorded]) -> set[int]:
    """The numbers of the events that were taken back."""
    return {one.event.of for one in record if isinstance(one.event, Undone)}


def effective(record: Sequence[Recorded]) -> tuple[Recorded, ...]:
    """The record without what was undone and without the undoing."""
    undone = undone_in(record)
    return tuple(
        one for one in record if one.seq not in undone and not isinstance(one.event, Undone)
    )
