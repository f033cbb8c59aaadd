"""Laying the quilt aside, picking it up again, marking it done."""

from __future__ import annotations

from typing import ClassVar

from sewalong.progress.acts.act import Act, Now, text
from sewalong.progress.record.events.event import Event
from sewalong.progress.record.events.standing import LaidAside, MarkedDone, PickedUp
from sewalong.progress.record.state import State


class LayAside(Act, frozen=True):
    """Lay the quilt aside for now, perhaps with a reason."""

    sits_down: ClassVar[bool] = False

    reason: str = ""

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        aside = LaidAside(at=now.at, session=now.session, reason=text(self.reason))
        aside.check(state)
        return (aside,)


class PickUp(Act, frozen=True):
    """Go on with a quilt that was laid aside or done."""

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        picked_up = PickedUp(at=now.at, session=now.session)
        picked_up.check(state)
        return (picked_up,)


class MarkDone(Act, frozen=True):
    """The quilt is done."""

    sits_down: ClassVar[bool] = False

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        done = MarkedDone(at=now.at, session=now.session)
        done.check(state)
        return (done,)
