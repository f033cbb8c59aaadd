"""Deciding what units are trimmed to."""

from __future__ import annotations

from fractions import Fraction
from typing import ClassVar

from sewalong.progress.acts.act import Act, Now
from sewalong.progress.record.event import Event
from sewalong.progress.record.measurable import Unmeasurable, decided
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.sizing import UnitDecided
from sewalong.progress.record.state import State


class DecideUnit(Act, frozen=True):
    """Trim all units to this width and height from now on, in inches to the raw edges."""

    needs_progress: ClassVar[bool] = True

    width: Fraction
    height: Fraction

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        try:
            was = decided(state.quilt)
        except Unmeasurable as error:
            raise Refused(str(error)) from error
        unit = UnitDecided(
            at=now.at,
            session=now.session,
            width=str(self.width),
            height=str(self.height),
            was_width=str(was.width),
            was_height=str(was.length),
        )
        unit.check(state)
        return (unit,)
