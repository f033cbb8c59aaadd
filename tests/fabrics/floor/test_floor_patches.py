"""Units that are not known: their patches are named as her fabrics by colour, and the turn is only told
as far as the shape shows it."""

from __future__ import annotations

from collections.abc import Mapping

import pytest
from msgspec.structs import replace

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.floor.floor_words import floor_lines, place_lines, question_lines
from sewalong.fabrics.floor.known import shapes_of
from sewalong.fabrics.floor.mending import patch_said, said
from sewalong.fabrics.floor.read import read_floor
from sewalong.fabrics.floor.result import FloorReading, HowSure
from sewalong.fabrics.photo.refused import PhotoRefused
from tests.fabrics.floor.made_floors import METHODS, Floor, Lying, anyhow, made, shown
from tests.fabrics.floor.test_floor_units import EVERYTHING, JPEG, cut_out
from tests.fabrics.photo.made_photos import file_of


def read(
    floor: Floor, how: Mapping[str, object], file: Mapping[str, object] = JPEG
) -> FloorReading:
    rows, columns = floor.size
    photo = floor.scene(**how).file(**file)  # type: ignore[arg-type]
    shapes = shapes_of(made(floor.method))
    return read_floor(photo, rows, columns, shapes=shapes, colours=floor.seen_colours)


@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("how", [{"side": 1.0}, EVERYTHING], ids=["plain", "all at once"])
def test_patches_of_every_method_are_named_where_it_is_sure(
    method: str, how: Mapping[str, object]
) -> None:
    floor = anyhow(method, 4, 5)
    reading = read(floor, how)
    sure = 0
    for one, place in zip((one for row in floor.laid for one in row), reading.places, strict=True):
        assert one is not None
        wanted = floor.shows(one)
        assert one.turn in place.turns
        assert place.lies is None
        assert shown(place).keys() == wanted.keys()
        for patch, fabric in zip(place.patches, shown(place).items(), strict=True):
            assert wanted[fabric[0]] in (patch.fabric, *patch.others)
            if patch.sure is HowSure.SURE:
                assert patch.fabric == wanted[fabric[0]]
                sure += 1
    assert sure >= 0.9 * sum(len(place.patches) for place in reading.places)


@pytest.mark.parametrize(
    ("method", "turns"),
    [
        ("stacked-four-patch", (0, 1, 2, 3)),
        ("nine-patch", (0, 1, 2, 3)),
        ("nine-patch-quartered", None),
        ("half-square-two", None),
    ],
)
def test_the_turn_is_told_as_far_as_the_shape_shows_it(
    method: str, turns: tuple[int, ...] | None
) -> None:
    reading = read(anyhow(method, 2, 3), {"side": 0.9})
    assert "Which unit lies where is not known" in reading.notes[-1]
    for place in reading.places:
        assert place.turns == turns or (turns is None and len(place.turns) < 4)


@pytest.mark.parametrize(("fall_off", "least"), [(0.0, 0.8), (0.4, 0.4)])
def test_without_cloth_around_them_the_light_is_left_and_that_is_said_and_less_is_sure(
    fall_off: float, least: float
) -> None:
    floor = anyhow("stacked-four-patch", 4, 5, seed=4)
    file, corners = cut_out(floor, fall_off=fall_off)
    shapes = shapes_of(made(floor.method))
    reading = read_floor(file, 4, 5, shapes=shapes, colours=floor.colours, corners=corners)
    assert reading.notes[0] == (
        "No plain cloth is seen around the units, so the light was not evened."
    )
    sure = 0
    for one, place in zip((one for row in floor.laid for one in row), reading.places, strict=True):
        wanted = floor.shows(one)
        for patch, (at, fabric) in zip(place.patches, shown(place).items(), strict=True):
            if patch.sure is HowSure.SURE:
                assert fabric == wanted[at]
                sure += 1
    assert sure >= least * 80


def test_units_that_are_not_square_are_read_between_corners() -> None:
    floor = anyhow("flying-geese-four", 4, 4)
    level = [[Lying(one.unit, one.turn // 2 * 2) for one in row if one] for row in floor.laid]
    geese = replace(floor, laid=level)
    # Laid in square places, and the picture made wider: a goose is twice as wide as it is long.
    scene = geese.scene(side=0.95, size=(400, 400))
    wider = scene.image().resize((740, 400))
    corners = [(1.85 * x, y) for x, y in scene.corners()]
    shapes = shapes_of(made("flying-geese-four"))
    file = file_of(wider)
    reading = read_floor(file, 4, 4, shapes=shapes, colours=geese.colours, corners=corners)
    for one, place in zip((one for row in level for one in row), reading.places, strict=True):
        assert shown(place) == geese.shows(one)
        assert place.turns == (one.turn,)


def test_a_fabric_that_she_has_not_given_is_not_guessed_and_near_ones_are_asked_about() -> None:
    floor = anyhow("four-patch", 2, 3, fabrics=12)
    colours = dict(floor.colours)
    strange = floor.sets[1][0]
    gone = colours.pop(strange)
    near = floor.sets[2][0]
    colours["Z"] = Colour(*(part + 3 for part in _parts(colours[near])))
    photo = floor.scene(side=0.9).file()
    shapes = shapes_of(made("four-patch"))
    reading = read_floor(photo, 2, 3, shapes=shapes, colours=colours)
    laid = [one for row in floor.laid for one in row]
    unknown = asked = 0
    for one, place in zip(laid, reading.places, strict=True):
        assert one is not None
        wanted = list(floor.shows(one).items())
        for at, fabric in wanted:
            patch = next(p for p in place.patches if _middle(p.outline) == at)
            if fabric == strange:
                assert patch.sure is not HowSure.SURE
                unknown += 1
            if fabric == near:
                assert (patch.sure, {patch.fabric, *patch.others}) == (
                    HowSure.NOT_SURE,
                    {near, "Z"},
                )
                asked += 1
    assert unknown
    assert asked
    assert gone not in colours.values()
    lines = question_lines(reading, {near: "the blue"})
    assert len(lines) == unknown + asked
    assert any(
        f"is it {near} the blue, or Z?" in line or f"is it Z, or {near} the blue?" in line
        for line in lines
    )


def _parts(colour: Colour) -> tuple[int, int, int]:
    return colour.red, colour.green, colour.blue


def _middle(outline: tuple[tuple[float, float], ...]) -> tuple[float, float]:
    x, y = (sum(part) / len(outline) for part in zip(*outline, strict=True))
    return round(x, 2), round(y, 2)


def test_the_fabric_of_a_patch_can_be_said() -> None:
    floor = anyhow("four-patch", 1, 2)
    reading = read(floor, {"side": 0.9})
    unsure = replace(
        reading,
        places=(
            replace(
                reading.places[0],
                sure=HowSure.NOT_SURE,
                patches=(
                    replace(reading.places[0].patches[0], sure=HowSure.NOT_SURE, others=("B",)),
                    *reading.places[0].patches[1:],
                ),
            ),
            reading.places[1],
        ),
    )
    assert floor_lines(unsure)[:2] == ("1 of 2 places are sure.", "1 place to be asked about.")
    mended = patch_said(unsure, 1, 1, 1, "B")
    assert mended.places[0].patches[0].fabric == "B"
    assert mended.places[0].sure is HowSure.SURE
    assert mended.places[0].said
    assert place_lines(mended, {"B": "navy"})[0] == "row 1 place 1 patch 1: B navy, sure"
    for row, place, patch, fabric, told in (
        (2, 1, 1, "B", "There is no place 2·1"),
        (1, 1, 5, "B", "A unit has patches 1 to 4, not 5."),
        (1, 1, 1, "ZZ", "No fabric has the letter ZZ."),
    ):
        with pytest.raises(PhotoRefused, match=told):
            patch_said(reading, row, place, patch, fabric)
    with pytest.raises(PhotoRefused, match="before the sets are known"):
        said(reading, 1, 1, 0)
