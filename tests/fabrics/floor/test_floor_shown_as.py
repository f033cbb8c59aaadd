"""A place of units that are not known, as a unit of the method: pieced anew it shows what lay there."""

from __future__ import annotations

import numpy as np
import pytest
from msgspec.structs import replace

from sewalong.fabrics.floor.known import UNKNOWN, shapes_of
from sewalong.fabrics.floor.read import read_floor
from sewalong.fabrics.floor.result import FloorReading, HowSure
from sewalong.fabrics.floor.shown_as import ShownAs, shown_as
from sewalong.piecing.cloth import turned
from sewalong.piecing.derive import Derivation
from sewalong.piecing.geometry import turn
from tests.fabrics.floor.made_floors import METHODS, anyhow, made


def read(method: str) -> tuple[FloorReading, list[dict[tuple[float, float], str]]]:
    """Twelve units laid anyhow as they were read without their sets, and what each shows."""
    floor = anyhow(method, 3, 4)
    photo = floor.scene(turned=2.0).file(format="PNG")
    shapes = shapes_of(made(method))
    reading = read_floor(photo, 3, 4, shapes=shapes, colours=floor.seen_colours)
    return reading, [floor.shows(one) for row in floor.laid for one in row]


def pieced(derived: Derivation, found: ShownAs) -> dict[tuple[float, float], str]:
    """What the unit shows as the engine turns it, as `Floor.shows` has it."""
    piece = turned(derived.units[found.unit], turn(2 * found.turn))
    seam = float(derived.seam)
    width, height = piece.size
    shown = {}
    for patch in piece.finished(seam):
        x, y = np.mean(patch.points, axis=0)
        at = (round((x + seam) / width, 2), round((y + seam) / height, 2))
        shown[at] = found.fabrics[patch.letter]
    return shown


@pytest.mark.parametrize("method", METHODS)
def test_it_shows_what_lay_there(method: str) -> None:
    reading, truth = read(method)
    derived = made(method)
    for place, shown in zip(reading.places, truth, strict=True):
        assert pieced(derived, shown_as(derived, reading, place)) == shown, place.address


def test_of_a_letter_that_shows_twice_the_surer_patch_is_believed() -> None:
    reading, _ = read("hourglass")
    place = reading.places[0]
    derived = made("hourglass")
    letters = shown_as(derived, reading, place).fabrics
    first, *others = place.patches
    doubted = replace(first, fabric="Q", sure=HowSure.NOT_SURE)
    assert shown_as(derived, reading, replace(place, patches=(doubted, *others))).fabrics == letters
    unlike = replace(first, fabric=None, sure=HowSure.SURE)
    found = shown_as(derived, reading, replace(place, patches=(unlike, *others))).fabrics
    assert UNKNOWN in found.values()


def test_a_place_of_another_shape_is_refused() -> None:
    reading, _ = read("hourglass")
    place = reading.places[0]
    with pytest.raises(ValueError, match="shape"):
        shown_as(made("hourglass"), reading, replace(place, patches=place.patches[:2]))
