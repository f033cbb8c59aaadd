"""Counting a pile by hand."""

from __future__ import annotations

from typing import ClassVar

from sewalong.progress.acts.act import Act, Now, text
from sewalong.progress.record.events.event import Event
from sewalong.progress.record.events.recounting import Recounted
from sewalong.progress.record.limits import a_pile
from sewalong.progress.record.recount_rules import Accepted, recorded_there
from sewalong.progress.record.state import State


class Recount(Act, frozen=True):
    """`how` says what the difference is; with a `place` only what lies there was counted."""

    needs_progress: ClassVar[bool] = True

    pile: str
    counted: int
    how: Accepted = "stands"
    place: str = ""

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        pile, place, how = a_pile(state, self.pile), text(self.place), self.how
        recorded = recorded_there(state, pile, self.counted, how, place)
        # Where nothing differs there is nothing to say of a difference; but what was missing
        # can be given up all the same.
        if self.counted == recorded and how != "lost":
            how = "stands"
        recounted = Recounted(
            at=now.at,
            session=now.session,
            pile=pile,
            recorded=recorded,
            counted=self.counted,
            how=how,
            place=place,
        )
        recounted.check(state)
        return (recounted,)
