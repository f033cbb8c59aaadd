"""What a key of the wall screen does: the act for it, or why there is none."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from sewalong.progress.acts.act import Act
from sewalong.progress.acts.wall import LockPlaces, PutSpare, SwapPlaces, TurnUnit
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State
from sewalong.progress.wall.on_wall import laying_of
from sewalong.service.wall.in_hand import WallInHand
from sewalong.service.wall.looks import Spare
from sewalong.service.wall.mending import as_act
from sewalong.service.wall.typed import EMPTY
from sewalong.wall.laying.grid import At
from sewalong.wall.laying.mending import Mended
from sewalong.wall.laying.moves import moved


def turn(wall: WallInHand, at: At) -> Act:
    """What lies at a place turned on by a quarter, or half way round where it fits its place only so.
    Raises Refused where each turn shows the same."""
    put = wall.on.laying.at(at)
    if put is None:
        return TurnUnit(*at)
    turns = wall.on.units[put.unit].turns
    if len(turns) == 1:
        raise Refused("Whichever way it is turned, this unit shows the same.")
    return TurnUnit(*at, quarters=min((turn - put.turns) % 4 or 4 for turn in turns))


def swap(held: At, at: At) -> Act:
    """What lies at these places changed for each other."""
    return SwapPlaces(*held, *at)


def lock(wall: WallInHand, at: At) -> Act:
    """A place locked, or unlocked where it is."""
    return LockPlaces((at,), at not in wall.on.locked)


def put_in(at: At, spare: Spare) -> Act:
    """A spare brought to a place, turned as is best there."""
    return PutSpare(*at, spare.unit, spare.turns)


def take_out(at: At) -> Act:
    """A place left empty."""
    return PutSpare(*at)


def mend_so_far(state: State, found: Mended, moves: int) -> Act:
    """The first so many of the moves that mend the wall, as one act."""
    laying = laying_of(state, state.wall.rows)
    for move in found.moves[:moves]:
        laying = moved(laying, move)
    return as_act(state, replace(found, after=laying))


class TypedRow(Struct, frozen=True):
    """A row to be typed: what is asked for, and what lies there where letters say it."""

    words: str
    typed: str


def rows_to_type(state: State) -> Sequence[TypedRow]:
    """Every row of the layout wanted, in order."""
    lengths = [row.units for row in state.quilt.rows_for(state.target)]
    return [
        TypedRow(f"Row {number}: {units} unit{'' if units == 1 else 's'}", _typed(state, number))
        for number, units in enumerate(lengths, start=1)
    ]


def _typed(state: State, row: int) -> str:
    """A row by letters; empty where it has units of several."""
    wall = state.wall
    if not wall.rows or any(len(unit.squares) != 1 for unit in wall.units):
        return ""
    letters = [
        EMPTY[0] if lies is None else wall.units[lies[0]].squares[0] for lies in wall.rows[row - 1]
    ]
    return " ".join(letters)
