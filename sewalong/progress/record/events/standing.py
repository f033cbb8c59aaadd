"""Whether the quilt is being worked on: laid aside, picked up again, done."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.progress.record.events.event import Event, Recorded, stopped
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import Standing, State
from sewalong.progress.record.tally import Tally


class LaidAside(Event, frozen=True, kw_only=True, tag="laid aside"):
    """The quilt rests for now."""

    reason: str

    def check(self, state: State) -> None:
        must_be_in_progress(state)

    def apply(self, tally: Tally, seq: int) -> None:
        tally.standing, tally.aside_reason = Standing.LAID_ASIDE, self.reason
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return f"Laid aside: {stopped(self.reason)}" if self.reason else "Laid aside."


class PickedUp(Event, frozen=True, kw_only=True, tag="picked up"):
    """A quilt that was laid aside or done is worked on again."""

    def check(self, state: State) -> None:
        if state.standing is Standing.IN_PROGRESS:
            raise Refused("This quilt is in progress already; just count on.")

    def apply(self, tally: Tally, seq: int) -> None:
        tally.standing, tally.aside_reason = Standing.IN_PROGRESS, ""
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return "Picked up again."


class MarkedDone(Event, frozen=True, kw_only=True, tag="marked done"):
    """The person says that the quilt is done."""

    def check(self, state: State) -> None:
        if state.standing is Standing.DONE:
            raise Refused("This quilt is marked done already.")

    def apply(self, tally: Tally, seq: int) -> None:
        tally.standing = Standing.DONE
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return "Marked done."


def must_be_in_progress(state: State) -> None:
    """Raise Refused for a quilt that is laid aside or done."""
    if state.standing is not Standing.IN_PROGRESS:
        raise Refused(f"This quilt is {state.standing.value}. Pick it up again first.")
