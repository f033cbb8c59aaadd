"""Taking back the last act."""

from __future__ import annotations

from typing import ClassVar

from sewalong.progress.acts.act import Act, Now
from sewalong.progress.record.events.event import Event
from sewalong.progress.record.events.undoing import Undone
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
            Undone(at=now.at, session=now.session, of=seq) for seq in reversed(state.last_act)
        )
