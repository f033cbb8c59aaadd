"""What cannot be read is refused, with the reason, where it is and what to do next."""

from __future__ import annotations

import contextlib
import sys

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from sewalong.fabrics.photo.read import read_photo
from sewalong.fabrics.photo.refused import PhotoRefused
from tests.fabrics.photo.made_photos import (
    Lamp,
    Scene,
    below,
    file_of,
    laid,
    lamp_at,
    wild_blocks,
    wild_corners,
)

ROWS, COLUMNS = 4, 5


def scene(**how: object) -> Scene:
    how.setdefault("size", (470, 395))
    return Scene(squares=laid(ROWS, COLUMNS), **how)  # type: ignore[arg-type]


def refusal(made: Scene | bytes, rows: int = ROWS, columns: int = COLUMNS, **how: object) -> str:
    file = made.file() if isinstance(made, Scene) else made
    with pytest.raises(PhotoRefused) as refused:
        read_photo(file, rows, columns, **how)  # type: ignore[arg-type]
    said = str(refused.value)
    assert said.endswith(".")
    return said


@pytest.mark.parametrize(
    ("lamp", "where"),
    [
        (below(1.2, 0.1), "through rows 2 to 3, places 1 to 5"),
        (below(2.5), "through rows 3 to 4, places 1 to 5"),
        (below(-0.5, to=0.3), ""),
        (below(1.5, to=0.85), "through rows 2 to 3, places 1 to 5"),
        (lambda u, v: 1 - 0.4 / (1 + np.exp(-8 * (v - 1.4))), "through row 2, places 1 to 5"),
        (lambda u, v: np.where(u > 2.4, 0.6, 1.0), "through rows 1 to 4, place 3"),
        (lambda u, v: np.where(np.abs(v - 1) < 0.3, 0.6, 1.0), "through row 2, places 1 to 5"),
        (
            lambda u, v: np.where(np.hypot(u - 5, v - 4) < 2.6, 0.6, 1.0),
            "through rows 3 to 4, places 4 to 5",
        ),
    ],
    ids=[
        "slanting",
        "between rows",
        "nearly all, deep",
        "light",
        "soft",
        "down the rows",
        "over the middle of one row",
        "of a head",
    ],
)
def test_an_edge_of_shadow_is_refused_and_where_it_runs_is_said(lamp: Lamp, where: str) -> None:
    said = refusal(scene(lamp=lamp))
    assert "edge of shadow" in said
    assert where in said
    assert "Move the lamp" in said


@pytest.mark.parametrize(("strength", "width"), [(0.4, 0.3), (1.0, 0.15), (1.0, 0.6), (5.0, 0.1)])
def test_glare_on_the_cloth_is_refused_and_where_it_is_is_said(
    strength: float, width: float
) -> None:
    said = refusal(scene(ground="#707880", lamp=lamp_at(3.5, 2, strength, width)))
    assert said.startswith(("Light glares on the cloth", "The cloth beneath is washed out"))
    assert "row 3" in said or "rows 2 to 4" in said
    assert "place" in said


def test_glare_that_whitens_a_square_is_refused() -> None:
    said = refusal(scene(lamp=lamp_at(3, 1, 60, 0.02), ground="#707880"))
    assert said.startswith("Light glares on the squares at row 2, place 4:")


def test_a_picture_that_is_far_too_light_is_refused() -> None:
    said = refusal(scene(lamp=lambda u, v: 2.5 + 0 * u))
    assert "plain white" in said or "washed out white" in said


@pytest.mark.parametrize("blur", [2.8, 4, 7, 12])
def test_blur_is_refused_with_how_much_there_is(blur: float) -> None:
    said = refusal(scene(blur=blur))
    assert said.startswith("The picture is blurred: edges are ")
    assert "Hold the camera still" in said


def test_blur_in_one_direction_as_of_a_moving_hand_is_refused() -> None:
    picture = np.asarray(scene().image()).astype(float)
    moved = np.mean([np.roll(picture, by, axis=1) for by in range(14)], axis=0)
    assert "blurred" in refusal(file_of(Image.fromarray(moved.astype(np.uint8))))


@pytest.mark.parametrize(
    ("rows", "columns", "said"),
    [
        (4, 6, "4 rows of 5 were found, not 4 rows of 6. Give the grid as it lies"),
        (3, 5, "4 rows of 5 were found, not 3 rows of 5."),
        (5, 4, "not 5 rows of 4. Turn the picture, or give the grid as 4x5."),
        (4, 1, "4 rows of 5 were found, not 4 rows of 1."),
    ],
)
def test_another_grid_is_refused_with_what_was_found(rows: int, columns: int, said: str) -> None:
    assert said in refusal(scene(), rows, columns)


def test_squares_that_cannot_be_told_apart_are_refused() -> None:
    assert "Lay them apart, a finger of cloth between them" in refusal(scene(side=1.0))
    empty = Scene(squares=[[lambda u, v: np.full((*u.shape, 3), 0.55)]], size=(400, 300))
    assert "can be told from the cloth beneath" in refusal(empty.file(), 2, 3)


def test_squares_thrown_about_are_refused() -> None:
    said = refusal(scene(side=0.5, jitter=0.25, size=(600, 500)))
    assert "straight rows" in said or "were found, not" in said


def test_cloth_that_is_not_plain_is_refused() -> None:
    noise = np.random.default_rng(3).integers(0, 255, (40, 50, 3), dtype=np.uint8)
    patches = Image.fromarray(noise).resize((500, 400), Image.Resampling.NEAREST)
    assert refusal(file_of(patches)).startswith("No plain cloth is seen all round the squares.")


def test_too_few_pixels_are_refused_with_how_many_are_needed() -> None:
    assert "31 pixels wide; 40 are needed" in refusal(scene(size=(220, 182)))
    assert refusal(scene(size=(190, 160))).startswith("The picture leaves 38 pixels for a square")
    assert "only 60 by 50 pixels" in refusal(scene(size=(60, 50)))


def test_squares_cut_off_by_the_edge_are_refused() -> None:
    made = scene(margin=0.9)
    wide, high = made.size
    cut = file_of(made.image().crop((0, 0, wide - 110, high)))
    corners = [(60.0, 50.0), (558.0, 50.0), (558.0, 420.0), (60.0, 420.0)]
    assert refusal(cut)
    assert "outside the picture" in refusal(cut, corners=corners)


@pytest.mark.parametrize(
    ("corners", "said"),
    [
        ([(0, 0), (100, 0), (100, 100)], "Give four corners"),
        ([(0, 0), (100, 0), (100, 100), (float("nan"), 100)], "Give four corners"),
        ([(0, 0), (0, 300), (300, 300), (300, 0)], "do not go round the squares"),
        ([(0, 0), (300, 300), (300, 0), (0, 300)], "do not go round the squares"),
        ([(5, 5), (5, 5), (5, 5), (5, 5)], "do not go round the squares"),
        ([(0, 0), (9000, 0), (9000, 300), (0, 300)], "outside the picture, which is 470 by 395"),
        ([(0, 0), (90, 0), (90, 90), (0, 90)], "pixels wide; 40 are needed"),
    ],
)
def test_corners_that_cannot_be_are_refused(corners: object, said: str) -> None:
    assert said in refusal(scene(), corners=corners)


@pytest.mark.parametrize(
    ("rows", "columns", "packs"), [(0, 5, 1), (5, 0, 1), (41, 5, 1), (5, 41, 1), (4, 5, 0)]
)
def test_numbers_that_cannot_be_are_refused(rows: int, columns: int, packs: int) -> None:
    refusal(b"", rows, columns, packs=packs)


@pytest.mark.parametrize("missing", ["PIL", "numpy"])
def test_without_its_libraries_it_says_what_to_install(
    missing: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, missing, None)
    assert "sewalong[photo]" in refusal(b"")


@settings(max_examples=25)
@given(st.integers(0, 10_000))
def test_pictures_of_anything_at_all_are_read_or_refused_and_nothing_else(seed: int) -> None:
    rng = np.random.default_rng(seed)
    pixels = wild_blocks(rng)
    corners = wild_corners(rng, pixels, 0.5)
    with contextlib.suppress(PhotoRefused):
        read_photo(file_of(Image.fromarray(pixels)), 2, 2, corners=corners)
