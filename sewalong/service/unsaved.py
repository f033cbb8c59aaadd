"""Counts that could not be saved: kept in the window, in order, until the record takes them.

They are no part of the record and of nothing that is shown as done. They are tried again, each
with the time it was made at; and the quilt with them can be written to another place meanwhile.
"""

from __future__ import annotations

from datetime import datetime

from sewalong.progress.acts.act import Act
from sewalong.progress.acts.decide import decide
from sewalong.progress.record.events.event import Recorded
from sewalong.progress.record.fold import fold
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State
from sewalong.progress.safety.cautions import CautionFirst
from sewalong.service.acting import do
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.faults import StoreFault


class Unsaved:
    """What waits to be saved of one open quilt. `why` is why the last try failed."""

    def __init__(self, quilt: OpenQuilt) -> None:
        self._quilt = quilt
        self._waiting: list[tuple[Act, datetime]] = []
        self.why = ""

    def __len__(self) -> int:
        return len(self._waiting)

    def keep(self, act: Act, why: str) -> None:
        """Keep an act that the record does not take, behind those that wait.

        Raises Refused, or CautionFirst, where it could not be done even then.
        """
        at = self._quilt.now()
        _, state = self._ahead()
        try:
            decide(state, act, at)
        except CautionFirst as due:
            raise due.with_words(self._quilt.preferences.cautions) from None
        self._waiting.append((act, at))
        self.why = why

    def save(self) -> str:
        """Try all of them again, in order; empty when none is left.

        Otherwise what keeps them: the record still takes nothing, or does not take this one any
        more, because another window wrote meanwhile; that one is then let go, and said.
        """
        while self._waiting:
            act, at = self._waiting[0]
            try:
                do(self._quilt, act, at=at, quietly=True)
            except StoreFault as fault:
                self.why = str(fault)
                return self.why
            except Refused as refused:
                del self._waiting[0]
                return f"One that waited cannot be saved any more: {refused}"
            del self._waiting[0]
        self.why = ""
        return ""

    def as_text(self) -> str:
        """The quilt with what waits, as an exported quilt: what can be taken in elsewhere."""
        from sewalong.store.archive import to_text
        from sewalong.store.library import Loaded

        record, _ = self._ahead()
        return to_text(Loaded(self._quilt.entry, self._quilt.begun_as, tuple(record)))

    def _ahead(self) -> tuple[list[Recorded], State]:
        """The record and the quilt as they will be once all that waits is saved."""
        quilt = self._quilt
        record, state = list(quilt.record), quilt.state
        for act, at in self._waiting:
            try:
                events = decide(state, act, at)
            except Refused:
                continue
            record += [Recorded(len(record) + i, one) for i, one in enumerate(events, start=1)]
            state = fold(quilt.begun_as, record)
        return record, state
