"""A record that grows, and where the quilt stands at its end.

A copy of the tally is kept some way behind the end. What is undone or put back lies near the end,
so either folds anew from there and costs the same however long the record is.
"""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.progress.record.events.event import Recorded
from sewalong.progress.record.events.undoing import TakenOrPutBack, undone_in
from sewalong.progress.record.fold import carry
from sewalong.progress.record.state import State
from sewalong.progress.record.tally import opening
from sewalong.quilt.quilt import Quilt

BEHIND = 200
"""Events between the copy and the end, at the least; at the most three times as many."""


class History:
    """The record of a quilt from its beginning; `record` is only ever added to from here."""

    def __init__(self, quilt: Quilt, record: Sequence[Recorded]) -> None:
        self.record = list(record)
        self._quilt = quilt
        self._kept_at = 0
        self._kept = self._tally = opening(quilt)
        self._fold_anew()

    def state(self) -> State:
        """Where the quilt stands at the end of the record."""
        return self._tally.freeze()

    def add(self, new: Sequence[Recorded]) -> None:
        """Events that follow the record."""
        self.record += new
        changed = [one.event.of for one in new if isinstance(one.event, TakenOrPutBack)]
        if not changed:
            carry(self._tally, new)
        elif min(changed) > self._kept_at:
            self._tally = self._kept.copy()
            carry(self._tally, self.record[self._kept_at :])
        else:
            self._fold_anew()
        if len(self.record) - self._kept_at > 3 * BEHIND:
            self._fold_anew()

    def back_to(self, length: int) -> None:
        """Forget what was added after so many events: it did not come to the disk."""
        del self.record[length:]
        self._fold_anew()

    def _fold_anew(self) -> None:
        self._kept_at = max(0, len(self.record) - BEHIND)
        self._kept = opening(self._quilt)
        carry(self._kept, self.record[: self._kept_at], undone_in(self.record))
        self._tally = self._kept.copy()
        carry(self._tally, self.record[self._kept_at :])
