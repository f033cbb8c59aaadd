"""Counts that come in from elsewhere as a number."""

from __future__ import annotations

from typing import ClassVar

from sewalong.progress.acts.act import Act, Now, text
from sewalong.progress.measuring.by_others import person_meant
from sewalong.progress.record.events.elsewhere import MadeElsewhere
from sewalong.progress.record.events.event import Event
from sewalong.progress.record.limits import a_stage
from sewalong.progress.record.state import State


class CountElsewhere(Act, frozen=True):
    """`n` of a stage were done elsewhere: at `place`, as piles were put there, and `by` whom, each
    empty where it is not said."""

    sits_down: ClassVar[bool] = False
    needs_progress: ClassVar[bool] = True

    stage: str
    n: int
    place: str = ""
    by: str = ""

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        made = MadeElsewhere(
            at=now.at,
            session=now.session,
            stage=a_stage(state, self.stage).id,
            n=self.n,
            place=_place_meant(state, text(self.place)),
            by=person_meant(state, text(self.by)),
        )
        made.check(state)
        return (made,)


def _place_meant(state: State, typed: str) -> str:
    """The place as it was written when a pile was put there; else as it is typed."""
    known = [place for places in state.places.values() for place in places]
    return next((one for one in known if one.casefold() == typed.casefold()), typed)
