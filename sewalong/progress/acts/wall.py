"""Laying units on the wall, moving them, and exchanging whole rows.

Places are row and place in the row, from 1; units are numbered from 0 as they were laid.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from sewalong.progress.acts.act import Act, Now
from sewalong.progress.record.events.event import Event
from sewalong.progress.record.events.wall import (
    EMPTY,
    HowLaid,
    HowMoved,
    HowOrdered,
    Moved,
    PlacesLocked,
    RowsReordered,
    UnitsMoved,
    WallLaid,
    a_place,
    must_be_laid,
    place_called,
)
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State
from sewalong.progress.record.wall import At, LaidUnit, Lies, Row, TouchWord


class LayWall(Act, frozen=True):
    """Have these units lie so, in place of whatever was laid; fields as in `WallLaid`."""

    needs_progress: ClassVar[bool] = True
    sits_down: ClassVar[bool] = False

    units: tuple[LaidUnit, ...]
    rows: tuple[Row, ...]
    touch: TouchWord = "edge"
    stacks: bool = True
    rim: str = ""
    how: HowLaid = "proposed"

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        laid = WallLaid(
            at=now.at,
            session=now.session,
            units=self.units,
            rows=self.rows,
            touch=self.touch,
            stacks=self.stacks,
            rim=self.rim,
            how=self.how,
        )
        laid.check(state)
        return (laid,)


class ClearWall(Act, frozen=True):
    """Nothing is laid any more."""

    needs_progress: ClassVar[bool] = True
    sits_down: ClassVar[bool] = False

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        cleared = WallLaid(at=now.at, session=now.session, units=(), rows=())
        cleared.check(state)
        return (cleared,)


class SwapPlaces(Act, frozen=True):
    """What lies at one place changes with what lies at another, each turned as it lies, or with so
    many more quarter turns; one of the two may be empty."""

    needs_progress: ClassVar[bool] = True
    sits_down: ClassVar[bool] = False

    row: int
    place: int
    other_row: int
    other_place: int
    quarters: int = 0
    other_quarters: int = 0

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        must_be_laid(state)
        here = a_place(state, (self.row, self.place))
        there = a_place(state, (self.other_row, self.other_place))
        if here == there:
            raise Refused("Name two places: a unit cannot change with itself.")
        mine = _turned(state.wall.at(here), self.quarters)
        theirs = _turned(state.wall.at(there), self.other_quarters)
        return _moved(state, now, [(here, theirs), (there, mine)], "swapped")


class TurnUnit(Act, frozen=True):
    """What lies at a place is turned by so many quarter turns."""

    needs_progress: ClassVar[bool] = True
    sits_down: ClassVar[bool] = False

    row: int
    place: int
    quarters: int = 1

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        must_be_laid(state)
        at = a_place(state, (self.row, self.place))
        lies = state.wall.at(at)
        if lies is None:
            raise Refused(f"Nothing lies at {place_called(at)}, so nothing can be turned there.")
        return _moved(state, now, [(at, _turned(lies, self.quarters))], "turned")


class PutSpare(Act, frozen=True):
    """A spare goes to a place, turned as given; what lay there is spare then. No unit: the place is
    left empty."""

    needs_progress: ClassVar[bool] = True
    sits_down: ClassVar[bool] = False

    row: int
    place: int
    unit: int | None = None
    turns: int = 0

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        must_be_laid(state)
        at = a_place(state, (self.row, self.place))
        if self.unit is None:
            return _moved(state, now, [(at, None)], "taken out")
        if self.unit not in state.wall.spares():
            raise Refused("That unit is not spare. Swap the two places instead.")
        return _moved(state, now, [(at, (self.unit, self.turns % 4))], "put in")


class MoveMany(Act, frozen=True):
    """From now on these places have this; one act, taken back by one undo."""

    needs_progress: ClassVar[bool] = True
    sits_down: ClassVar[bool] = False

    moves: tuple[Moved, ...]

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        moved = UnitsMoved(at=now.at, session=now.session, places=self.moves)
        moved.check(state)
        return (moved,)


class LockPlaces(Act, frozen=True):
    """What lies at these places stays there when the rest is proposed anew; or no longer."""

    needs_progress: ClassVar[bool] = True
    sits_down: ClassVar[bool] = False

    places: tuple[At, ...]
    locked: bool = True

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        locked = PlacesLocked(
            at=now.at, session=now.session, places=self.places, locked=self.locked
        )
        locked.check(state)
        return (locked,)


class ExchangeRows(Act, frozen=True):
    """Two whole rows change places."""

    needs_progress: ClassVar[bool] = True
    sits_down: ClassVar[bool] = False

    first: int
    second: int

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        must_be_laid(state)
        first, second = a_place(state, (self.first, 1)), a_place(state, (self.second, 1))
        if first == second:
            raise Refused("Name two rows: a row cannot change places with itself.")
        order = list(range(1, len(state.wall.rows) + 1))
        order[self.first - 1], order[self.second - 1] = self.second, self.first
        return _reordered(state, now, order, (), "exchanged")


class TurnRow(Act, frozen=True):
    """A whole row is turned end for end."""

    needs_progress: ClassVar[bool] = True
    sits_down: ClassVar[bool] = False

    row: int

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        must_be_laid(state)
        a_place(state, (self.row, 1))
        order = range(1, len(state.wall.rows) + 1)
        return _reordered(state, now, order, (self.row,), "turned")


class OrderRows(Act, frozen=True):
    """The rows lie in this order now, as it was found again; `turned` as in `RowsReordered`."""

    needs_progress: ClassVar[bool] = True
    sits_down: ClassVar[bool] = False

    order: tuple[int, ...]
    turned: tuple[int, ...] = ()

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        return _reordered(state, now, self.order, self.turned, "found")


def _turned(lies: Lies | None, quarters: int) -> Lies | None:
    return None if lies is None else (lies[0], (lies[1] + quarters) % 4)


def _moved(
    state: State, now: Now, moves: Sequence[tuple[At, Lies | None]], how: HowMoved
) -> tuple[Event, ...]:
    places = tuple((*at, *(lies if lies is not None else (EMPTY, 0))) for at, lies in moves)
    moved = UnitsMoved(at=now.at, session=now.session, places=places, how=how)
    moved.check(state)
    return (moved,)


def _reordered(
    state: State, now: Now, order: Sequence[int], turned: tuple[int, ...], how: HowOrdered
) -> tuple[Event, ...]:
    reordered = RowsReordered(
        at=now.at, session=now.session, order=tuple(order), turned=turned, how=how
    )
    reordered.check(state)
    return (reordered,)
