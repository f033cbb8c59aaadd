"""The parts that a photograph is read with, each against something independent."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from scipy import ndimage  # type: ignore[import-untyped]

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.photo.finding.blobs import blobs, without_lines
from sewalong.fabrics.photo.finding.grid import Grid
from sewalong.fabrics.photo.finding.homography import Homography, fitted, square_on
from sewalong.fabrics.photo.finding.lattice import mapped, settled
from sewalong.fabrics.photo.light import gaps, only_around
from sewalong.fabrics.photo.linear_light import average, colour_of, to_light, to_part
from sewalong.fabrics.photo.picture import Picture
from sewalong.fabrics.photo.surface import Surface, fit
from sewalong.fabrics.photo.tones import TO_LIGHT, averaged, lab, lightness, luminance, parts
from sewalong.fabrics.sight import from_afar
from sewalong.fabrics.sight import lab as lab_of_one

PART = st.integers(0, 255)
SEED = st.integers(0, 10_000)


@given(PART, PART, PART)
def test_many_pixels_are_seen_as_one_colour_is(red: int, green: int, blue: int) -> None:
    # Against coloraide, through `sight`.
    light = TO_LIGHT[[red, green, blue]]
    assert lab(light) == pytest.approx(lab_of_one(Colour(red, green, blue)), abs=0.01)
    assert lightness(light) == pytest.approx(lab(light)[0], abs=1e-9)
    assert parts(light).tolist() == [red, green, blue]
    assert colour_of(light) == Colour(red, green, blue)
    assert luminance(light) == pytest.approx(
        float(np.dot(light, [0.2126, 0.7152, 0.0722])), abs=1e-3
    )


@given(PART)
def test_light_and_part_are_each_other_turned_round(part: int) -> None:
    assert to_part(to_light(part)) == part
    assert to_part(-1) == 0
    assert to_part(2) == 255


def test_light_is_that_of_the_standard() -> None:
    # IEC 61966-2-1, the linear part and the power; 188 shows half the light of white.
    assert to_light(255) == 1
    assert to_light(10) == pytest.approx(10 / 255 / 12.92)
    assert to_part(0.5) == 188


@given(st.builds(Colour, PART, PART, PART), st.builds(Colour, PART, PART, PART))
def test_two_colours_average_as_a_print_of_halves_does(one: Colour, other: Colour) -> None:
    # Against coloraide's mix in linear light.
    ours, theirs = average([one, other]), from_afar(one, other, 0.5)
    assert abs(ours.red - theirs.red) <= 1
    assert abs(ours.green - theirs.green) <= 1
    assert abs(ours.blue - theirs.blue) <= 1


def test_of_no_colour_there_is_no_average() -> None:
    with pytest.raises(ValueError, match="no colour"):
        average([])


def test_what_is_over_at_the_edge_is_left_when_pixels_are_averaged() -> None:
    light = np.arange(5 * 7 * 3, dtype=np.float32).reshape(5, 7, 3)
    assert averaged(light, 2).shape == (2, 3, 3)
    assert averaged(light, 2)[0, 0].tolist() == light[:2, :2].mean(axis=(0, 1)).tolist()


@settings(max_examples=30)
@given(SEED, st.floats(0.2, 0.7))
def test_blobs_are_those_that_another_library_labels(seed: int, share: float) -> None:
    mask = np.random.default_rng(seed).random((23, 31)) < share
    label, count = ndimage.label(mask)
    found = blobs(mask)
    assert len(found.areas) == count
    order = np.arange(1, count + 1)
    middles = np.array(ndimage.center_of_mass(mask, label, order)).reshape(-1, 2)[:, ::-1] + 0.5
    theirs = sorted(zip(np.bincount(label.ravel())[1:], *middles.T.round(6), strict=True))
    ours = sorted(zip(found.areas, *found.middles.T.round(6), strict=True))
    assert np.allclose(ours, theirs)


@pytest.mark.parametrize(
    ("shape", "square"),
    [("square", True), ("turned", True), ("long", False), ("disc", False), ("cross", False)],
)
def test_squares_are_told_from_other_shapes(shape: str, square: bool) -> None:
    y, x = np.indices((60, 60)) - 29.5
    inside = {
        "square": (abs(x) < 20) & (abs(y) < 20),
        "turned": abs(x) + abs(y) < 27,
        "long": (abs(x) < 20) & (abs(y) < 11),
        "disc": np.hypot(x, y) < 24,
        "cross": (abs(x) < 20) & (abs(y) < 6) | (abs(y) < 20) & (abs(x) < 6),
    }[shape]
    assert blobs(inside).squarish().tolist() == [square]


def test_lines_go_and_what_is_wider_stays_as_it_was() -> None:
    mask = np.zeros((40, 60), dtype=bool)
    mask[10:30, 8:22] = mask[10:30, 35:50] = True
    lined = mask.copy()
    lined[18:20] = True
    lined[:, 28] = True
    assert np.array_equal(without_lines(lined), mask)
    # As another library opens it.
    ragged = np.random.default_rng(1).random((50, 50)) < 0.8
    theirs = ndimage.binary_opening(ragged, np.ones((3, 3)))
    assert np.array_equal(without_lines(ragged)[2:-2, 2:-2], theirs[2:-2, 2:-2])


def askew(seed: int) -> Homography:
    rng = np.random.default_rng(seed)
    angle = rng.uniform(-0.4, 0.4)
    turn = 50 * np.array([[np.cos(angle), -np.sin(angle)], [np.sin(angle), np.cos(angle)]])
    matrix = np.eye(3)
    matrix[:2, :2] = turn @ (np.eye(2) + rng.uniform(-0.05, 0.05, (2, 2)))
    matrix[:2, 2] = rng.uniform(100, 300, 2)
    matrix[2, :2] = rng.uniform(-0.02, 0.02, 2)
    return Homography(matrix)


CELLS = np.stack(np.meshgrid(np.arange(7.0), np.arange(6.0)), axis=-1).reshape(-1, 2)


@settings(max_examples=30)
@given(SEED)
def test_a_grid_seen_askew_is_found_from_its_points(seed: int) -> None:
    true = askew(seed)
    seen = true(CELLS)
    assert fitted(CELLS, seen)(CELLS) == pytest.approx(seen, abs=1e-6)
    assert fitted(CELLS[[0, 6, 35, 41]], seen[[0, 6, 35, 41]])(CELLS) == pytest.approx(
        seen, abs=1e-6
    )
    assert true.back(seen) == pytest.approx(CELLS, abs=1e-9)
    middle = np.array([3.0, 2.0])
    cell = true(middle + np.array([[-0.5, -0.5], [0.5, -0.5], [0.5, 0.5], [-0.5, 0.5]]))
    x, y = cell.T
    area = abs(np.dot(x, np.roll(y, 1)) - np.dot(y, np.roll(x, 1))) / 2  # The shoelace formula.
    assert true.pitch(middle) == pytest.approx(area**0.5, rel=0.02)


def test_a_row_of_points_is_laid_on_squares() -> None:
    seen = np.array([[10.0, 20], [40, 60], [70, 100]])
    on = square_on(np.array([[0.0, 0], [1, 0], [2, 0]]), seen)
    assert on(np.array([[0.0, 0], [0, 1]])) == pytest.approx(np.array([[10, 20], [-30, 50]]))


@settings(max_examples=30)
@given(SEED, st.sets(st.integers(0, 41), max_size=14))
@example(0, {0, 10, 16, 18, 21, 24, 25})  # The one in the middle lies by itself.
def test_squares_find_their_rows_though_some_are_missing_and_in_any_order(
    seed: int, missing: set[int]
) -> None:
    rng = np.random.default_rng(seed)
    kept = rng.permutation([number for number in range(42) if number not in missing])
    cells = CELLS[kept]
    seen = askew(seed)(cells + rng.uniform(-0.04, 0.04, cells.shape))
    at = settled(seen)
    assert at is not None
    _, found, near = at
    assert near.all()
    shift = cells[0] - found[0]
    assert np.array_equal(found + shift, cells)


def test_three_squares_in_a_line_and_one_beside_say_nothing_of_perspective() -> None:
    cells = np.array([[0.0, 0], [1, 0], [2, 0], [2, 1]])
    on = mapped(cells, 100 * cells + [[50, 50], [51, 50], [50, 52], [50, 50]])
    assert on is not None
    assert on(np.array([[0.0, 1]])) == pytest.approx(np.array([[50, 150]]), abs=5)


@pytest.mark.parametrize(
    "points", [np.empty((0, 2)), np.array([[3.0, 4.0]]), np.array([[3.0, 4.0]] * 5)]
)
def test_where_there_is_no_grid_none_is_found(
    points: np.ndarray[tuple[int, int], np.dtype[np.float64]],
) -> None:
    assert settled(points) is None


def test_ground_lies_between_the_squares_and_around_them_and_only_around_where_they_touch() -> None:
    # Two rows of three, a step of 20 pixels, the first middle at (30, 30).
    map_of = Homography(np.array([[20.0, 0, 30], [0, 20, 30], [0, 0, 1]]))
    grid = Grid(map_of, CELLS.reshape(6, 7, 2)[:2, :3], 0.8, np.ones((2, 3), dtype=bool))
    picture = Picture(np.zeros((80, 100, 3), dtype=np.float32), 1.0)
    between, sides = gaps(picture, grid)
    outside = only_around(picture, grid)
    for x, y, is_between, is_outside in (
        (30, 30, False, False),  # The middle of the first square.
        (40, 30, True, False),  # Between it and the next.
        (50, 40, True, False),  # Between the rows.
        (30, 18, True, True),  # Over the first row.
        (82, 30, True, True),  # Beyond its end.
        (70, 62, True, True),  # Below the last row.
        (30, 10, False, False),  # Too far from the squares.
        (96, 30, False, False),
    ):
        assert (between[y, x], outside[y, x]) == (is_between, is_outside), (x, y)
    assert [sides[18, 30], sides[30, 40 - 1], sides[62, 70], sides[50, 19]] == [0, 1, 22, 15]


@settings(max_examples=30)
@given(SEED, st.lists(st.floats(-0.3, 0.3), min_size=6, max_size=6))
def test_light_is_found_though_a_fifth_of_the_ground_is_covered(
    seed: int, factors: list[float]
) -> None:
    rng = np.random.default_rng(seed)
    x, y = rng.uniform(0, 800, 4000), rng.uniform(0, 600, 4000)
    true = Surface(np.array(factors), 800, 600)
    light = np.exp(true.log_at(x, y) + rng.normal(0, 0.01, 4000))
    light[:800] *= rng.uniform(0.1, 0.7, 800)
    found, lit = fit(x, y, light, 800, 600)
    assert found.factors == pytest.approx(true.factors, abs=0.01)
    assert lit[800:].mean() > 0.95
    assert lit[:800].mean() < 0.05
