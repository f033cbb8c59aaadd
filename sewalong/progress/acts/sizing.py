"""Deciding what units are trimmed to."""

from __future__ import annotations

from fractions import Fraction
from typing import ClassVar

from sewalong.progress.acts.act import Act, Now
from sewalong.progress.record.events.event import Event
from sewalong.progress.record.events.sizing import UnitDecided
from sewalong.progress.record.measurable import Unmeasurable, decided, made_of
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State
from sewalong.quilt.unit_size import usual_unit


class DecideUnit(Act, frozen=True):
    """Trim all units to this width and height from now on, in inches to the raw edges.

    None for both: to what the method gives, as if no size had ever been said.
    """

    needs_progress: ClassVar[bool] = True

    width: Fraction | None
    height: Fraction | None

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        try:
            was = decided(state.quilt)
            usual = usual_unit(made_of(state.quilt), state.quilt.unit)
        except Unmeasurable as error:
            raise Refused(str(error)) from error
        given_up = self.width is None or self.height is None
        unit = UnitDecided(
            at=now.at,
            session=now.session,
            width=str(usual.width if given_up else self.width),
            height=str(usual.length if given_up else self.height),
            was_width=str(was.width),
            was_height=str(was.length),
            usual=given_up,
        )
        unit.check(state)
        return (unit,)
