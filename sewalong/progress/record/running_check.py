"""Where a quilt stood before each of its events: what an audit holds the events against.

A record of any length is walked in steps that cost the same. What only grows is forgotten
(`Tally.forget_the_past`), and copies are kept on the way, so that an undo folds anew only from
the last copy before what it takes back, and a run of undos only once.
"""

from __future__ import annotations

from bisect import bisect_left

from sewalong.progress.record.events.event import Recorded
from sewalong.progress.record.events.undoing import Undone
from sewalong.progress.record.fold import step
from sewalong.progress.record.state import State
from sewalong.progress.record.tally import Tally, opening
from sewalong.quilt.quilt import Quilt

BETWEEN_COPIES = 50
"""Events from one copy of the tally to the next."""


class RunningCheck:
    """The tally of the events so far, less those that an undo took back."""

    def __init__(self, quilt: Quilt) -> None:
        self._counting: list[Recorded] = []
        self._copies: list[tuple[int, Tally]] = [(0, opening(quilt))]
        self._tally: Tally | None = opening(quilt)

    def add(self, recorded: Recorded) -> None:
        """The next event. What an `Undone` takes back must be there and still count."""
        if isinstance(recorded.event, Undone):
            self._take_back(recorded.event.of)
            return
        self._counting.append(recorded)
        if self._tally is not None:
            step(self._tally, recorded)
            self._copy_now_and_then(self._tally, len(self._counting))

    def state(self) -> State:
        """How it stands, without the past that no event is checked against."""
        if self._tally is None:
            length, copy = self._copies[-1]
            self._tally = copy.copy()
            for at, recorded in enumerate(self._counting[length:], start=length + 1):
                step(self._tally, recorded)
                self._copy_now_and_then(self._tally, at)
        return self._tally.freeze()

    def _take_back(self, seq: int) -> None:
        place = bisect_left(self._counting, seq, key=lambda recorded: recorded.seq)
        del self._counting[place]
        while self._copies[-1][0] > place:
            self._copies.pop()
        self._tally = None

    def _copy_now_and_then(self, tally: Tally, length: int) -> None:
        if length - self._copies[-1][0] >= BETWEEN_COPIES:
            tally.forget_the_past()
            self._copies.append((length, tally.copy()))
