"""Taking back the last act, and putting it back."""

from __future__ import annotations

from typing import ClassVar

from sewalong.progress.acts.act import Act, Now
from sewalong.progress.record.events.event import Event
from sewalong.progress.record.events.undoing import Redone, Undone
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State


class Undo(Act, frozen=True):
    """Take back one act. `of` is the last event the person saw of it; None means the last act."""

    sits_down: ClassVar[bool] = False

    of: int | None = None

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        if not state.last_act:
            raise Refused("There is nothing to undo.")
        if self.of is not None and self.of != state.last_act[-1]:
            raise Refused("The record went on in another window. Look again before undoing.")
        return tuple(
            Undone(at=now.at, session=now.session, of=seq, together=place > 0)
            for place, seq in enumerate(reversed(state.last_act))
        )


class Redo(Act, frozen=True):
    """Put back the act that was taken back last, unless something was done since. `of` is the last
    of its events, as the person saw it; None means whichever it is."""

    sits_down: ClassVar[bool] = False

    of: int | None = None

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        if self.of is not None and self.of not in state.last_undone[-1:]:
            raise Refused("The record went on in another window. Look again before putting back.")
        if not state.last_undone:
            raise Refused(
                "There is nothing to put back: nothing was undone, or something was done since."
            )
        return tuple(Redone(at=now.at, session=now.session, of=seq) for seq in state.last_undone)
