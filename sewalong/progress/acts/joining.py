"""Joining two rows."""

from __future__ import annotations

from typing import ClassVar

from sewalong.progress.acts.act import Act, Now
from sewalong.progress.acts.counting import before_a_count
from sewalong.progress.record.events.event import Event
from sewalong.progress.record.events.joining import RowsJoined
from sewalong.progress.record.limits import a_stage
from sewalong.progress.record.route import JOIN_ROWS
from sewalong.progress.record.state import State


class JoinRows(Act, frozen=True):
    """Join two neighbouring rows by their numbers, in whichever order they are read.

    `caution_read` says that the caution now due was read.
    """

    needs_progress: ClassVar[bool] = True

    first: int
    second: int
    caution_read: bool = False

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        first, second = sorted((self.first, self.second))
        joined = RowsJoined(at=now.at, session=now.session, first=first, second=second)
        joined.check(state)
        stage = a_stage(state, JOIN_ROWS)
        return (*before_a_count(state, stage, now, caution_read=self.caution_read), joined)
