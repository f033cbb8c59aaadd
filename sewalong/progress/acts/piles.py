"""Pieces spoiled, found or bought, put away."""

from __future__ import annotations

from typing import ClassVar

from sewalong.progress.acts.act import Act, Now, text
from sewalong.progress.record.events.event import Event
from sewalong.progress.record.events.piles import Found, HowFound, PutAway, Spoiled
from sewalong.progress.record.state import State


class Spoil(Act, frozen=True):
    """`n` pieces of a pile are spoiled, and why; of which set, or squares of which fabric, where
    that is known."""

    needs_progress: ClassVar[bool] = True

    pile: str
    n: int
    reason: str
    set: int = 0
    fabric: str = ""

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        spoiled = Spoiled(
            at=now.at,
            session=now.session,
            pile=self.pile,
            n=self.n,
            reason=text(self.reason),
            set=self.set,
            fabric=self.fabric,
        )
        spoiled.check(state)
        text(self.reason, "a reason, so that it can be seen later what went wrong")
        return (spoiled,)


class Find(Act, frozen=True):
    """`n` more pieces came to a pile."""

    needs_progress: ClassVar[bool] = True

    pile: str
    n: int
    how: HowFound = "found"

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        found = Found(at=now.at, session=now.session, pile=self.pile, n=self.n, how=self.how)
        found.check(state)
        return (found,)


class PutPileAway(Act, frozen=True):
    """Put the pile somewhere, or only `n` of it."""

    pile: str
    place: str
    n: int | None = None

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        put = PutAway(
            at=now.at,
            session=now.session,
            pile=self.pile,
            place=text(self.place, "a place"),
            n=self.n,
        )
        put.check(state)
        return (put,)
