"""A photograph of units laid out in rows, read as a wall: which unit lies where, and how turned.

Nothing of the file is kept but what lies at each place.
"""

from __future__ import annotations

import re
from collections import Counter
from typing import TYPE_CHECKING

from sewalong.fabrics.floor.known import shapes_of, units_of_sets
from sewalong.fabrics.floor.mending import patch_said, said
from sewalong.fabrics.floor.read import read_floor
from sewalong.fabrics.floor.result import FloorPlace, FloorReading
from sewalong.fabrics.floor.shown_as import shown_as
from sewalong.fabrics.swatch import swatches
from sewalong.lengths.fault import quoted
from sewalong.progress.acts.wall import LayWall
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State
from sewalong.progress.record.wall import OF_NO_SET, LaidUnit, Lies, Row
from sewalong.progress.sets.read_squares import fabric_typed
from sewalong.progress.wall.units import units_to_lay
from sewalong.quilt.derived import derived
from sewalong.service.photographs import MOST_BYTES, PhotoAsked, photo_asked
from sewalong.service.wall.typed import set_and_unit
from sewalong.store.bounded import read_at_most

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sewalong.fabrics.colours import Colour


def floor_asked(state: State, file: str, corners: str = "") -> PhotoAsked:
    """Which photograph, of all places of the layout wanted; `corners` as for `photo_asked`. Raises
    NumbersFault for what cannot be read, Refused on point, where rows are of several lengths."""
    if state.quilt.is_on_point:
        raise Refused(
            "Units on point lie in slanting rows, which are not read from a photograph. Type what "
            "lies there, or have a layout proposed."
        )
    target = state.target
    return photo_asked(file, f"{target.rows} x {target.columns}", "1", corners)


def read_on_the_floor(state: State, asked: PhotoAsked) -> FloorReading:
    """What the photograph shows: the units of her sets where there are any, else the fabric of each
    patch. It takes up to some seconds. Raises PhotoRefused for what cannot be read, SizeRefused for
    sizes of which no unit comes, and StoreFault for a file that is none."""
    made = derived(state.quilt)
    sets = {number: one.known for number, one in state.sets.sets.items() if not one.held_back}
    return read_floor(
        read_at_most(asked.path, MOST_BYTES),
        asked.rows,
        asked.columns,
        units=units_of_sets(made, sets),
        shapes=shapes_of(made),
        colours=_colours(state),
        corners=asked.corners,
    )


def _colours(state: State) -> dict[str, Colour]:
    """Her fabrics as they look from afar, by letter; those without a colour are left out."""
    found = swatches(state.quilt.counted_fabrics)
    return {one.letter: one.colour for one in found if one.colour is not None}


def lay_as_read(state: State, reading: FloorReading) -> LayWall:
    """The act by which units lie as they were read, by the rules of before. Where it cannot be told
    what lies at a place, it is empty."""
    units, lies = _of_sets(state, reading) if reading.known else _by_patches(state, reading)
    places = iter(lies)
    seen = reading.seen
    rows: tuple[Row, ...] = tuple(
        tuple(next(places) for _ in range(seen.columns)) for _ in range(seen.rows)
    )
    wall = state.wall
    return LayWall(units, rows, wall.touch, wall.stacks, wall.rim, how="photograph")


def _of_sets(
    state: State, reading: FloorReading
) -> tuple[tuple[LaidUnit, ...], Iterator[Lies | None]]:
    units = units_to_lay(state)
    number = {(unit.set, unit.unit): at for at, unit in enumerate(units)}
    read = [place.lies.unit for place in reading.places if place.lies is not None]
    found = [reading.units[unit] for unit in read if unit is not None]
    if any((one.set, one.number - 1) not in number for one in found):
        raise Refused("The sets are others than when the photograph was read. Read it again.")

    def lies() -> Iterator[Lies | None]:
        for place in reading.places:
            found = place.lies
            if found is None or found.unit is None:
                yield None
            else:
                known = reading.units[found.unit]
                yield number[known.set, known.number - 1], found.turn

    return units, lies()


def _by_patches(
    state: State, reading: FloorReading
) -> tuple[tuple[LaidUnit, ...], Iterator[Lies | None]]:
    made = derived(state.quilt)
    shown = [shown_as(made, reading, place) for place in reading.places]
    units = [
        LaidUnit(OF_NO_SET, one.unit, tuple(one.fabrics.get(x, "") for x in made.letters))
        for one in shown
    ]
    # Of plain squares it is known what else there is.
    spare = Counter(units_to_lay(state))
    spare.subtract(units)
    return (*units, *spare.elements()), iter([(at, one.turn) for at, one in enumerate(shown)])


NOTHING = "nothing"
"""What is said of a place where no unit lies."""


def said_at(
    state: State, reading: FloorReading, place: FloorPlace, typed: str, patch: str | None = None
) -> FloorReading:
    """The reading once it is said what lies at a place: "7/2" for unit 2 of set 7, "7/2/1" for how it
    is turned too, or nothing; or of which fabric a patch is, by its number from 1. Raises Refused for
    what cannot be read, and PhotoRefused for what cannot lie there."""
    if patch is not None:
        if not re.fullmatch("[0-9]{1,3}", patch.strip(), re.ASCII):
            raise Refused("Write the patch as its number in reading order, such as 1.")
        letter = fabric_typed(state.quilt, typed)
        return patch_said(reading, place.row, place.column, int(patch), letter)
    if typed.strip().casefold() == NOTHING:
        return said(reading, place.row, place.column, None)
    found = set_and_unit(typed)
    if found is None:
        raise Refused(
            f"{quoted(typed)} is no unit. Write its set and its number in it, such as 7/2, or nothing."
        )
    number, unit, turns = found
    known = [(one.set, one.number) for one in reading.units] if reading.known else []
    if (number, unit) not in known:
        raise Refused(f"There is no unit {number}/{unit} among those that may lie there.")
    at = known.index((number, unit))
    if turns is None:
        # As it was seen to lie there, where it was taken into account.
        turns = next((one.turn for one in place.candidates if one.unit == at), 0)
    return said(reading, place.row, place.column, at, turns)
