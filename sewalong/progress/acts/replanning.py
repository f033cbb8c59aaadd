"""Wanting another plan: everything but the method can change."""

from __future__ import annotations

from typing import ClassVar

from sewalong.progress.acts.act import Act, Now
from sewalong.progress.record.events.event import Event
from sewalong.progress.record.events.replanning import PlanChanged
from sewalong.progress.record.state import State
from sewalong.quilt.plan_parts import parts_that_differ
from sewalong.quilt.quilt import Quilt


class ChangePlan(Act, frozen=True):
    """Have the quilt as in `now` from now on; `was` is the plan it was changed from.

    `as_sewn`: what is made already was made by the new plan.
    """

    needs_progress: ClassVar[bool] = True
    sits_down: ClassVar[bool] = False

    was: Quilt
    now: Quilt
    as_sewn: bool = False

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        was, wanted = parts_that_differ(self.was, self.now)
        changed = PlanChanged(
            at=now.at, session=now.session, was=was, now=wanted, as_sewn=self.as_sewn
        )
        changed.check(state)
        return (changed,)
