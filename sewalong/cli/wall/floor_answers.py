"""What a person says of places that a photograph left unsure: 2.3=7/2, 2.3=nothing, 2.3/1=A."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.cli.frame.errors import CommandError
from sewalong.cli.wall.typed_places import place_typed, set_and_unit
from sewalong.fabrics.floor.mending import patch_said, said
from sewalong.fabrics.floor.result import FloorReading
from sewalong.progress.record.state import State
from sewalong.progress.sets.read_squares import fabric_typed

NOTHING = "nothing"


def answered(state: State, reading: FloorReading, answers: Sequence[str]) -> FloorReading:
    """The reading with every answer, one after the other. Raises CommandError for what is none, and
    PhotoRefused and Refused as `mending` and `fabric_typed` do."""
    for answer in answers:
        where, equals, what = answer.partition("=")
        if not equals:
            raise CommandError("--said takes a place and what lies there, such as 2.3=7/2")
        reading = _one(state, reading, where.strip(), what.strip())
    return reading


def _one(state: State, reading: FloorReading, where: str, what: str) -> FloorReading:
    place, slash, patch = where.partition("/")
    row, column = place_typed(place)
    if slash:
        if not (patch.isascii() and patch.isdigit() and len(patch) < 4):
            raise CommandError("--said takes a patch by its number, such as 2.3/1=A")
        letter = fabric_typed(state.quilt, what)
        return patch_said(reading, row, column, int(patch), letter)
    if what == NOTHING:
        return said(reading, row, column, None)
    found = set_and_unit(what)
    if found is None:
        raise CommandError(
            f"“{what[:20]}” is no unit. Write its set and its number, such as 7/2, or nothing."
        )
    number, unit, turns = found
    at = next(
        (n for n, one in enumerate(reading.units) if (one.set, one.number) == (number, unit)), None
    )
    if at is None or not reading.known:
        raise CommandError(f"There is no unit {number}/{unit} among those that may lie there.")
    return said(
        reading, row, column, at, _turn(reading, row, column, at) if turns is None else turns
    )


def _turn(reading: FloorReading, row: int, column: int, unit: int) -> int:
    """How the unit would lie there as it was seen, where that is known."""
    place = reading.place(row, column)
    candidates = place.candidates if place is not None else ()
    return next((one.turn for one in candidates if one.unit == unit), 0)
