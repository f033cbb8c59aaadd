"""Pixels against the polygons they were made of: areas, symmetry, seams."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.piecing.cloth import Flat
from sewalong.piecing.geometry import area, box
from sewalong.wall.picture import right_sides
from sewalong.wall.raster import Pixels, draw_line, raster
from tests.wall.drawing import METHODS, usual

SIDES = st.integers(1, 70)


def unit_pixels(unit: Flat, across: int, down: int) -> Pixels:
    return raster([right_sides(unit.patches)], unit.size, across, down)


@given(st.sampled_from(METHODS), st.integers(0, 7), SIDES, SIDES)
def test_every_fabric_has_its_share_of_pixels(
    method: str, number: int, across: int, down: int
) -> None:
    """A convex patch gains or loses at most a pixel a row and a column it reaches."""
    units = usual(method).units
    unit = units[number % len(units)]
    pixels = unit_pixels(unit, across, down)
    width, height = unit.size
    for letter in {patch.letter for patch in unit.patches}:
        shown = sum(row.count(letter) for row in pixels)
        wanted = slack = 0.0
        for patch in unit.patches:
            if patch.letter == letter:
                x0, y0, x1, y1 = box([patch.points])
                wanted += area(patch.points) / (width * height) * across * down
                slack += (x1 - x0) / width * across + (y1 - y0) / height * down + 1
        assert abs(shown - wanted) <= slack


@pytest.mark.parametrize("method", METHODS)
def test_drawn_large_the_shares_are_right_within_a_hundredth(method: str) -> None:
    for unit in usual(method).units:
        side = 151
        pixels = unit_pixels(unit, side, side)
        width, height = unit.size
        for letter in {patch.letter for patch in unit.patches}:
            shown = sum(row.count(letter) for row in pixels) / side**2
            patches = [patch.points for patch in unit.patches if patch.letter == letter]
            assert shown == pytest.approx(sum(map(area, patches)) / (width * height), abs=0.01)


@given(st.sampled_from(METHODS), SIDES, SIDES)
def test_a_unit_leaves_no_pixel_empty(method: str, across: int, down: int) -> None:
    for unit in usual(method).units:
        assert all(None not in row for row in unit_pixels(unit, across, down))


@pytest.mark.parametrize("method", ["hourglass", "four-patch-strips", "nine-patch-strips"])
@pytest.mark.parametrize("side", [2, 3, 4, 5, 8, 13, 20, 41])
def test_units_that_are_the_same_turned_by_half_are_drawn_the_same(method: str, side: int) -> None:
    for unit in usual(method).units:
        pixels = unit_pixels(unit, side, side)
        assert [row[::-1] for row in pixels[::-1]] == pixels


@pytest.mark.parametrize("side", [4, 7, 12, 20, 33, 50])
def test_flipped_corners_are_drawn_alike_at_all_four_corners(side: int) -> None:
    unit = usual("flipped-corners").units[0]
    middle = [[key == "A" for key in row] for row in unit_pixels(unit, side, side)]
    assert middle == middle[::-1]
    assert middle == [row[::-1] for row in middle]
    assert middle == [list(column) for column in zip(*middle, strict=True)]


@pytest.mark.parametrize("side", [2, 4, 6, 8, 20])
def test_an_hourglass_shows_both_fabrics_alike_however_small(side: int) -> None:
    for unit in usual("hourglass").units:
        pixels = unit_pixels(unit, side, side)
        shown = [sum(row.count(letter) for row in pixels) for letter in "AB"]
        assert shown == [side * side // 2] * 2


def test_a_half_square_in_four_pixels() -> None:
    unit = usual("half-square-two").units[0]
    assert unit_pixels(unit, 4, 4) == [list("AAAA"), list("AAAB"), list("AABB"), list("ABBB")]


def test_an_upper_layer_hides_the_lower() -> None:
    below = (((0.0, 0.0), (4.0, 0.0), (4.0, 2.0), (0.0, 2.0)), "A")
    above = (((0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0)), "b")
    assert raster([[below], [above]], (4, 2), 4, 2) == [list("bbAA")] * 2


def test_what_lies_outside_is_left_out_and_what_is_empty_stays_so() -> None:
    piece = (((-3.0, -3.0), (1.0, -3.0), (1.0, 1.0), (-3.0, 1.0)), "A")
    pixels = raster([[piece]], (2, 2), 2, 2)
    assert pixels == [["A", None], [None, None]]
    draw_line(pixels, (0, 0), (2, 2), (1, 1), "x")
    assert pixels == [["x", None], [None, None]]


@given(st.tuples(*[st.floats(-5, 25)] * 4))
def test_a_line_is_one_pixel_thick(ends: tuple[float, ...]) -> None:
    pixels: Pixels = [["A"] * 20 for _ in range(20)]
    ax, ay, bx, by = ends
    draw_line(pixels, (ax, ay), (bx, by), (1, 1), "x")
    rows = [row.count("x") for row in pixels]
    columns = [column.count("x") for column in zip(*pixels, strict=True)]
    assert max(columns if abs(bx - ax) >= abs(by - ay) else rows) <= 1
