"""Where a quilt stood before each of its events: what an audit holds the events against.

A record of any length is walked in steps that cost the same. What only grows is forgotten
(`Tally.forget_the_past`), and copies are kept on the way, so that an undo folds anew only from
the last copy before what it takes back, and a run of undos only once. What is no act can lie
behind it in any number and is gone through again; nobody who sews has more than a few there.
"""

from __future__ import annotations

from bisect import bisect_left

from sewalong.progress.record.events.event import Recorded
from sewalong.progress.record.events.undoing import Redone, Undone
from sewalong.progress.record.fold import step
from sewalong.progress.record.state import State
from sewalong.progress.record.tally import Tally, opening
from sewalong.quilt.quilt import Quilt

BETWEEN_COPIES = 50
"""Events from one copy of the tally to the next."""

MOST_AGAIN = 1_000_000
"""Events that may be gone through again, beyond those since a copy: half a second."""


class RunningCheck:
    """The tally of the events so far, less those that an undo took back."""

    def __init__(self, quilt: Quilt) -> None:
        self._counting: list[Recorded] = []
        self._gone: list[Recorded] = []
        self._copies: list[tuple[int, Tally]] = [(0, opening(quilt))]
        self._tally: Tally | None = opening(quilt)
        self._again = 0

    def add(self, recorded: Recorded) -> None:
        """The next event. What an `Undone` takes back must be there and still count; what a
        `Redone` puts back must be what was taken back last."""
        if isinstance(recorded.event, Undone):
            self._gone.append(self._counting.pop(self._change_at(recorded.event.of)))
            return
        if isinstance(recorded.event, Redone):
            back = self._gone.pop()
            self._counting.insert(self._change_at(back.seq), back)
            return
        if recorded.event.undoable:
            self._gone.clear()
        self._counting.append(recorded)
        if self._tally is not None:
            step(self._tally, recorded)
            self._copy_now_and_then(self._tally, len(self._counting))

    @property
    def goes_too_far_back(self) -> bool:
        """Whether so much lies behind what was taken back that it is not worth following."""
        return self._again > MOST_AGAIN

    def state(self) -> State:
        """How it stands, without the past that no event is checked against."""
        if self._tally is None:
            length, copy = self._copies[-1]
            self._tally = copy.copy()
            self._again += max(0, len(self._counting) - length - BETWEEN_COPIES)
            for at, recorded in enumerate(self._counting[length:], start=length + 1):
                step(self._tally, recorded)
                self._copy_now_and_then(self._tally, at)
        return self._tally.freeze()

    def _change_at(self, seq: int) -> int:
        """The place of an event that is to come or go; no copy was made of what is behind it."""
        place = bisect_left(self._counting, seq, key=lambda recorded: recorded.seq)
        while self._copies[-1][0] > place:
            self._copies.pop()
        self._tally = None
        return place

    def _copy_now_and_then(self, tally: Tally, length: int) -> None:
        if length - self._copies[-1][0] >= BETWEEN_COPIES:
            tally.forget_the_past()
            self._copies.append((length, tally.copy()))
