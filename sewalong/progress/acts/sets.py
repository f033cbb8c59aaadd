"""Choosing and laying sets of squares."""

from __future__ import annotations

from typing import ClassVar

from sewalong.progress.acts.act import Act, Now, text
from sewalong.progress.record.events.event import Event
from sewalong.progress.record.events.sets import (
    Mark,
    SetMarked,
    SetsAccepted,
    SetsLaid,
    SetTakenUp,
    numbered,
)
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State

Squares = tuple[str, ...]
"""Her letter for the fabric at each place of a set."""


class AcceptSets(Act, frozen=True):
    """Have these sets in this order, in place of all that are not begun, locked or held back.

    They take the lowest numbers that are free. `rule` is how they were chosen, in words.
    """

    needs_progress: ClassVar[bool] = True
    sits_down: ClassVar[bool] = False

    sets: tuple[Squares, ...]
    rule: str = ""

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        accepted = SetsAccepted(
            at=now.at,
            session=now.session,
            sets=numbered(state, self.sets),
            rule=text(self.rule),
        )
        accepted.check(state)
        return (accepted,)


class SwapSquares(Act, frozen=True):
    """The square at `place` of set `number` changes with the one at `other_place` of set `other`;
    places are numbered from 1."""

    needs_progress: ClassVar[bool] = True

    number: int
    place: int
    other: int
    other_place: int

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        from sewalong.progress.record.squares_left import laid_set

        sets = {n: list(laid_set(state, n).squares) for n in (self.number, self.other)}
        here, there = sets[self.number], sets[self.other]
        i = _a_place(self.place, here)
        j = _a_place(self.other_place, there)
        here[i], there[j] = there[j], here[i]
        changed = tuple((n, tuple(squares)) for n, squares in sets.items())
        laid = SetsLaid(at=now.at, session=now.session, sets=changed, how="swapped")
        laid.check(state)
        return (laid,)


class LayOwn(Act, frozen=True):
    """Set `number` is of these squares, as she laid it herself."""

    needs_progress: ClassVar[bool] = True

    number: int
    squares: Squares

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        changed = ((self.number, self.squares),)
        laid = SetsLaid(at=now.at, session=now.session, sets=changed, how="own")
        laid.check(state)
        return (laid,)


class MarkSet(Act, frozen=True):
    """A set is put behind all others, held back or let in again, locked or unlocked."""

    needs_progress: ClassVar[bool] = True
    sits_down: ClassVar[bool] = False

    number: int
    mark: Mark

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        marked = SetMarked(at=now.at, session=now.session, number=self.number, mark=self.mark)
        marked.check(state)
        return (marked,)


class TakeUp(Act, frozen=True):
    """This set is the one in hand at a stage, whatever was thought to lie first."""

    needs_progress: ClassVar[bool] = True

    stage: str
    number: int

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        taken = SetTakenUp(at=now.at, session=now.session, stage=self.stage, number=self.number)
        taken.check(state)
        return (taken,)


def _a_place(place: int, squares: list[str]) -> int:
    if not 1 <= place <= len(squares):
        raise Refused(f"Places in a set go from 1 to {len(squares)}.")
    return place - 1
