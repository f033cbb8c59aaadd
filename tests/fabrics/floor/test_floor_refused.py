"""Photographs of units that cannot be read are refused as those of a pack are: why, where, what to do."""

from __future__ import annotations

import contextlib
import sys

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from sewalong.fabrics.floor.known import shapes_of
from sewalong.fabrics.floor.read import read_floor
from sewalong.fabrics.photo.refused import PhotoRefused
from tests.fabrics.floor.made_floors import anyhow, made
from tests.fabrics.floor.test_floor_units import cut_out
from tests.fabrics.photo.made_photos import (
    Scene,
    below,
    file_of,
    lamp_at,
    wild_blocks,
    wild_corners,
)

ROWS, COLUMNS = 4, 5
FLOOR = anyhow("stacked-four-patch", ROWS, COLUMNS)


def refusal(photo: Scene | bytes, rows: int = ROWS, columns: int = COLUMNS, **how: object) -> str:
    file = photo.file() if isinstance(photo, Scene) else photo
    how.setdefault("units", FLOOR.units)
    how.setdefault("colours", FLOOR.colours)
    with pytest.raises(PhotoRefused) as refused:
        read_floor(file, rows, columns, **how)  # type: ignore[arg-type]
    told = str(refused.value)
    assert told.endswith(".")
    assert "square" not in told
    return told


@pytest.mark.parametrize(
    ("side", "where"),
    [(0.88, "runs through rows 2 to 3"), (1.0, "or a strong light lies over the cloth beneath")],
)
def test_an_edge_of_shadow_on_the_cloth_is_refused(side: float, where: str) -> None:
    told = refusal(FLOOR.scene(side=side, lamp=below(1.2, 0.1)))
    assert told.startswith(f"An edge of shadow {where}")
    assert "Move the lamp" in told


@pytest.mark.parametrize("method", ["stacked-four-patch", "half-square-two", "nine-patch"])
def test_an_edge_of_shadow_over_units_without_cloth_is_refused(method: str) -> None:
    floor = anyhow(method, ROWS, COLUMNS)
    file, corners = cut_out(floor, lamp=below(1.5, 0.1))
    told = refusal(file, corners=corners, units=floor.units)
    assert "An edge of shadow runs through rows 2 to 3, places 1 to 5" in told


def test_light_that_glares_on_units_without_cloth_is_refused() -> None:
    file, corners = cut_out(FLOOR, lamp=lamp_at(3, 1, 1.5, 0.6))
    told = refusal(file, corners=corners)
    assert told.startswith("Light glares on the units at rows 1 to ")


def test_light_that_glares_on_the_cloth_is_refused() -> None:
    told = refusal(FLOOR.scene(side=0.85, ground="#707880", lamp=lamp_at(3.5, 2, 1.0, 0.15)))
    assert told.startswith(("Light glares on the cloth", "The cloth beneath is washed out"))


def test_units_washed_out_white_are_refused() -> None:
    told = refusal(FLOOR.scene(ground="#707880", lamp=lamp_at(3, 1, 60, 0.04)))
    assert told.startswith("Light glares on the units at row 2, place 4:")


@pytest.mark.parametrize("blur", [9, 14])
def test_blur_is_refused_with_how_much_there_is(blur: float) -> None:
    assert refusal(FLOOR.scene(side=1.0, blur=blur)).startswith(
        "The picture is blurred: edges are "
    )


@pytest.mark.parametrize("side", [0.88, 1.0])
@pytest.mark.parametrize(
    ("rows", "columns", "told"),
    [
        (4, 6, "4 rows of 5 were found, not 4 rows of 6. Give the grid as it lies"),
        (4, 4, "4 rows of 5 were found, not 4 rows of 4."),
        (3, 5, "4 rows of 5 were found, not 3 rows of 5."),
        (5, 4, "not 5 rows of 4. Turn the picture, or give the grid as 4x5."),
    ],
)
def test_another_grid_is_refused_with_what_was_found(
    side: float, rows: int, columns: int, told: str
) -> None:
    assert told in refusal(FLOOR.scene(side=side), rows, columns)


def test_another_grid_is_refused_between_corners_too() -> None:
    scene = FLOOR.scene(side=1.0)
    told = refusal(scene, 4, 6, corners=scene.corners())
    assert "4 rows of 5 were found" in told
    one_row = anyhow("stacked-four-patch", 1, 4)
    scene = one_row.scene(side=1.0)
    told = refusal(scene, 1, 1, corners=scene.corners(), units=one_row.units)
    assert "In such a grid each unit would be 4.0 times as wide as it is." in told


def test_units_of_other_sets_are_refused() -> None:
    others = anyhow("stacked-four-patch", ROWS, COLUMNS, seed=9)
    told = refusal(FLOOR.scene(side=0.9), units=others.units)
    assert " of 20 places lies no unit of these sets. Look whether 4 rows of 5 lie there" in told


def test_too_few_pixels_are_refused_with_how_many_are_needed() -> None:
    assert "pixels wide; 40 are needed" in refusal(FLOOR.scene(size=(215, 180)))
    nine = anyhow("nine-patch-quartered", ROWS, COLUMNS)
    told = refusal(nine.scene(size=(285, 240)), units=nine.units)
    assert told.startswith("The narrowest patch of a unit is only 11 pixels wide; 12 are needed.")


def test_units_thrown_about_or_on_a_ground_that_is_not_plain_are_refused() -> None:
    refusal(FLOOR.scene(side=0.5, jitter=0.25, size=(600, 500)))
    noise = np.random.default_rng(3).integers(0, 255, (40, 50, 3), dtype=np.uint8)
    wild = Image.fromarray(noise).resize((500, 400), Image.Resampling.NEAREST)
    assert refusal(file_of(wild)).startswith("No plain cloth is seen all round the units.")


@pytest.mark.parametrize(("rows", "columns"), [(0, 5), (5, 41)])
def test_a_grid_that_cannot_be_is_refused(rows: int, columns: int) -> None:
    assert "The grid has from 1 to 40" in refusal(b"", rows, columns)


def test_without_units_or_colours_it_says_what_is_wanted() -> None:
    assert "There are no units to look for yet." in refusal(b"", units=())
    assert "No fabric has a colour yet" in refusal(b"", colours={})
    assert "No fabric has a colour yet" in refusal(b"", colours={"ZZ": FLOOR.colours["A"]})


@pytest.mark.parametrize("missing", ["PIL", "numpy"])
def test_without_its_libraries_it_says_what_to_install(
    missing: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, missing, None)
    assert "sewalong[photo]" in refusal(b"")


@settings(max_examples=20)
@given(st.integers(0, 10_000), st.booleans())
def test_pictures_of_anything_at_all_are_read_or_refused_and_nothing_else(
    seed: int, known: bool
) -> None:
    rng = np.random.default_rng(seed)
    pixels = wild_blocks(rng)
    corners = wild_corners(rng, pixels, 0.8)
    looked_for = {"units": FLOOR.units} if known else {"shapes": shapes_of(made(FLOOR.method))}
    with contextlib.suppress(PhotoRefused):
        read_floor(
            file_of(Image.fromarray(pixels)),
            2,
            2,
            colours=FLOOR.colours,
            corners=corners,
            **looked_for,
        )
