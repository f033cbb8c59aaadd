"""Units that are known by their sets are found with their turns, whatever the light, the camera and
the file do."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

import numpy as np
import pytest
from msgspec.structs import replace
from PIL import Image

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.floor.read import read_floor
from sewalong.fabrics.floor.result import FloorReading, HowSure
from sewalong.fabrics.photo.read import read_photo
from tests.fabrics.floor.made_floors import METHODS, Floor, anyhow, cloth, shown
from tests.fabrics.photo.made_photos import (
    Print,
    Scene,
    dots,
    file_of,
    real_texture,
    solid,
    texture,
)

EVERYTHING: Mapping[str, object] = {
    "side": 0.97,
    "turned": 3.0,
    "askew": 0.12,
    "fall_off": 0.3,
    "noise": 4.0,
    "jitter": 0.02,
    "margin": 0.85,
}
JPEG = {"format": "JPEG", "quality": 60}


def read(
    floor: Floor, how: Mapping[str, object], file: Mapping[str, object] = JPEG
) -> FloorReading:
    rows, columns = floor.size
    photo = floor.scene(**how).file(**file)  # type: ignore[arg-type]
    return read_floor(photo, rows, columns, units=floor.units, colours=floor.seen_colours)


def must_be_true(floor: Floor, reading: FloorReading) -> None:
    """Every place shows what was laid there, is sure of it, and no unit lies twice."""
    laid = [one for row in floor.laid for one in row]
    for one, place in zip(laid, reading.places, strict=True):
        assert shown(place) == floor.shows(one), place.address
        assert place.sure is HowSure.SURE, place.address
        assert place.lies is not None
        if one is None:
            assert place.lies.unit is None
        else:
            assert one.unit in (place.lies.unit, *place.same)
    units = Counter(place.lies.unit for place in reading.places if place.lies)
    del units[None]
    assert set(units.values()) == {1}


@pytest.mark.parametrize("method", METHODS)
def test_units_of_every_method_are_found_all_at_once(method: str) -> None:
    floor = anyhow(method, 4, 5, spare=3)
    must_be_true(floor, read(floor, EVERYTHING))


@pytest.mark.parametrize(
    ("how", "file"),
    [
        ({}, {}),
        ({"side": 1.0}, {}),
        ({"side": 0.8}, {}),
        ({"side": 1.08, "turned": 2.0, "jitter": 0.01}, {}),
        ({"side": 1.0, "fall_off": 0.4}, {}),
        ({"side": 1.0, "turned": 3.0, "margin": 0.8}, {}),
        ({"turned": -12.0, "margin": 1.2}, {}),
        ({"side": 1.0, "askew": 0.25, "margin": 0.9}, {}),
        ({"noise": 5.0}, {}),
        ({"blur": 1.2}, {}),
        ({"jitter": 0.04}, {}),
        ({"side": 0.98, "jitter": 0.03}, {}),
        ({"ground": "#17191c"}, {}),
        ({"ground": "#2e6b4f", "side": 1.0}, {}),
        ({"lamp": lambda u, v: 0.5 + 0 * u}, {}),
        ({"side": 1.0}, JPEG),
        ({}, {"format": "WEBP", "quality": 80}),
    ],
    ids=[
        "plain",
        "edge to edge",
        "far apart",
        "each over the allowance of the next",
        "light falls off",
        "turned 3°",
        "turned far",
        "perspective",
        "noise",
        "soft",
        "laid by hand",
        "laid by hand, edges nearly touching",
        "black cloth",
        "green mat",
        "far too dark",
        "JPEG at 60",
        "WebP",
    ],
)
@pytest.mark.parametrize("method", ["stacked-four-patch", "nine-patch"])
def test_units_are_found_however_they_are_photographed(
    method: str, how: Mapping[str, object], file: Mapping[str, object]
) -> None:
    floor = anyhow(method, 3, 4, spare=4, seed=2)
    must_be_true(floor, read(floor, how, file))


def test_the_colour_of_the_lamp_does_not_matter() -> None:
    floor = anyhow("stacked-four-patch", 4, 5)
    picture = np.asarray(floor.scene().image()).astype(float)
    warm = Image.fromarray(np.clip(picture * [1.0, 0.88, 0.68], 0, 255).astype(np.uint8))
    reading = read_floor(file_of(warm), 4, 5, units=floor.units, colours=floor.seen_colours)
    must_be_true(floor, reading)


def test_prints_are_told_by_what_they_are_from_afar() -> None:
    seconds = {key: Colour(244, 240, 230) for key in "BEGKNRU"}
    floor = replace(anyhow("stacked-four-patch", 4, 5), seconds=seconds)
    must_be_true(floor, read(floor, EVERYTHING))


def test_with_the_colours_that_a_photograph_of_the_pack_gave_units_of_real_textures_are_found() -> (
    None
):
    # Grey photographs that scikit-image ships, dyed; some with dots, some solid.
    greys = [real_texture(name) for name in ("brick", "grass", "gravel")]
    prints: dict[str, Print] = {}
    for number, (key, colour) in enumerate(cloth(20, 9.0).items()):
        dyed = texture(greys[number % 3], str(colour))
        prints[key] = (dyed, solid(str(colour)), dots(str(colour), "#f4f0e6", 0.1, 0.3))[number % 3]
    keys = list(prints)
    squares = [[prints[key] for key in keys[row * 5 : row * 5 + 5]] for row in range(4)]
    pack = Scene(squares=squares, size=(500, 410), fall_off=0.3, turned=2.0, noise=3.0)
    read_pack = read_photo(pack.file("JPEG", quality=80), 4, 5).photo
    colours = {key: place.colour for key, place in zip(keys, read_pack.places, strict=True)}
    floor = replace(anyhow("stacked-four-patch", 4, 5, fabrics=20), prints=prints)
    lamp = {**EVERYTHING, "lamp": lambda u, v: 0.7 + 0 * u}
    photo = floor.scene(**lamp).file("JPEG", quality=80)
    must_be_true(floor, read_floor(photo, 4, 5, units=floor.units, colours=colours))


@pytest.mark.parametrize("fall_off", [0.0, 0.3])
def test_without_cloth_around_them_the_units_themselves_say_how_light_falls(
    fall_off: float,
) -> None:
    floor = anyhow("stacked-four-patch", 4, 5)
    file, corners = cut_out(floor, fall_off=fall_off)
    reading = read_floor(file, 4, 5, units=floor.units, colours=floor.seen_colours, corners=corners)
    must_be_true(floor, reading)
    assert reading.notes == (
        "No plain cloth is seen around the units, so the light was evened by the fabrics in them.",
    )


def cut_out(floor: Floor, **how: object) -> tuple[bytes, list[tuple[float, float]]]:
    """A photograph that shows nothing but units, edge to edge, and its corners."""
    rows, columns = floor.size
    scene = floor.scene(side=1.0, margin=0.56, **how)
    left, top = scene.point(-0.5, -0.5)
    right, bottom = scene.point(columns - 0.5, rows - 0.5)
    image = scene.image().crop((int(left) + 1, int(top) + 1, int(right), int(bottom)))
    wide, high = image.size
    return file_of(image, "JPEG", quality=80), [(0, 0), (wide, 0), (wide, high), (0, high)]


@pytest.mark.parametrize("side", [0.9, 1.0])
def test_corners_given_by_hand_are_enough(side: float) -> None:
    floor = anyhow("hourglass", 4, 5)
    scene = floor.scene(side=side, turned=4.0, margin=0.9, fall_off=0.3)
    reading = read_floor(
        scene.file(),
        4,
        5,
        units=floor.units,
        colours=floor.seen_colours,
        corners=scene.corners(),
    )
    must_be_true(floor, reading)


def test_patches_like_the_cloth_beneath_do_no_harm() -> None:
    floor = anyhow("four-patch", 4, 5)
    pale = str(cloth(24)["C"])
    must_be_true(floor, read(floor, {"side": 1.0, "ground": pale}))
    must_be_true(floor, read(floor, {"side": 0.92, "ground": pale}))


def test_a_fabric_without_a_colour_is_told_by_its_neighbours() -> None:
    floor = anyhow("stacked-four-patch", 3, 4)
    colours = floor.seen_colours
    del colours["D"]
    reading = read_floor(floor.scene().file(), 3, 4, units=floor.units, colours=colours)
    must_be_true(floor, reading)


@pytest.mark.parametrize("side", [0.9, 1.0])
def test_places_are_found_empty_in_the_middle_and_at_the_corners(side: float) -> None:
    floor = anyhow("stacked-four-patch", 4, 5)
    laid = [list(row) for row in floor.laid]
    laid[0][0] = laid[2][2] = laid[3][4] = None
    some = replace(floor, laid=laid)
    must_be_true(some, read(some, {"side": side, "turned": 2.0}))


@pytest.mark.parametrize(("rows", "columns"), [(1, 4), (4, 1), (1, 1), (2, 2)])
def test_few_units_are_read_too(rows: int, columns: int) -> None:
    floor = anyhow("stacked-four-patch", rows, columns, spare=6)
    must_be_true(floor, read(floor, {"side": 0.9}))
