"""Colours, prints and likely doubles are found whatever the light, the camera and the file do."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sewalong.fabrics.colours import parse_colour
from sewalong.fabrics.photo.read import read_photo
from sewalong.fabrics.photo.result import Kind, ReadPhoto
from sewalong.fabrics.sight import difference
from tests.fabrics.photo.made_photos import (
    COLOURS,
    Field,
    Print,
    Scene,
    dots,
    file_of,
    laid,
    light_of,
    real_texture,
    solid,
    texture,
)

ROWS, COLUMNS = 4, 5
PAIR = dots("#2f4a7c", "#f4f0e6", 0.16, 0.3)
DOUBLED: list[list[Print]] = laid(ROWS, COLUMNS)
DOUBLED[1][3] = PAIR
DOUBLED[3][0] = PAIR
DOUBLED[3][2] = solid(COLOURS[2])
"""Two doubles: a print at 2·4 and 4·1, a solid at 1·3 and 4·3."""

LETTERS = [
    "A",
    "B",
    "C",
    "D",
    "E",
    "F",
    "G",
    "H",
    "I",
    "J",
    "K",
    "L",
    "M",
    "N",
    "O",
    "I",
    "P",
    "C",
    "Q",
    "R",
]
NOT_SOLID = {(2, 4), (4, 1)}


def scene(**how: object) -> Scene:
    return Scene(squares=DOUBLED, size=(480, 400), **how)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("how", "file", "within"),
    [
        ({}, {}, 0.5),
        ({"fall_off": 0.4}, {}, 1.0),
        ({"turned": 3.0, "margin": 0.8}, {}, 0.5),
        ({"turned": -14.0, "margin": 1.2}, {}, 0.5),
        ({"askew": 0.25, "margin": 0.9}, {}, 0.5),
        ({"noise": 4.0}, {}, 1.0),
        ({"blur": 0.8}, {}, 0.5),
        ({"jitter": 0.04}, {}, 0.5),
        ({"ground": "#17191c"}, {}, 0.5),
        ({"ground": "#2e6b4f"}, {}, 0.5),
        ({"lamp": lambda u, v: 1 / (1 + ((u - 1) ** 2 + (v - 1) ** 2) / 40)}, {}, 1.5),
        ({"lamp": lambda u, v: 1 - 0.06 * (v > 1.5)}, {}, 1.5),
        ({}, {"format": "JPEG", "quality": 60}, 2.5),
        ({}, {"format": "WEBP", "quality": 80}, 2.0),
        (
            {
                "fall_off": 0.3,
                "turned": 3.0,
                "askew": 0.15,
                "noise": 3.0,
                "jitter": 0.03,
                "margin": 0.9,
            },
            {"format": "JPEG", "quality": 60},
            2.5,
        ),
    ],
    ids=[
        "plain",
        "light falls off",
        "turned 3°",
        "turned far",
        "perspective",
        "noise",
        "soft",
        "laid by hand",
        "black cloth",
        "green mat",
        "a lamp nearby",
        "a faint shadow",
        "JPEG at 60",
        "WebP",
        "all at once, JPEG at 60",
    ],
)
def test_each_colour_is_found_and_so_are_the_doubles(
    how: Mapping[str, object], file: Mapping[str, object], within: float
) -> None:
    photo = read_photo(scene(**how).file(**file), ROWS, COLUMNS, packs=4).photo  # type: ignore[arg-type]
    assert [place.letter for place in photo.places] == LETTERS
    off = _off(photo)
    assert max(off.values()) < within
    assert {(p.row, p.column) for p in photo.places if p.kind is not Kind.SOLID} == NOT_SOLID
    by_letter = {fabric.letter: fabric for fabric in photo.fabrics}
    assert by_letter["I"].squares == by_letter["C"].squares == 8
    assert by_letter["A"].squares == 4
    assert sum(fabric.squares for fabric in photo.fabrics) == 4 * ROWS * COLUMNS


def _off(photo: ReadPhoto) -> dict[tuple[int, int], float]:
    """How far, in CIEDE2000, each solid is from the colour it was made with."""
    true = {divmod(number, COLUMNS): colour for number, colour in enumerate(COLOURS[:20])}
    true[(3, 2)] = COLOURS[2]
    return {
        (p.row, p.column): difference(p.colour, parse_colour(true[(p.row - 1, p.column - 1)]))
        for p in photo.places
        if (p.row, p.column) not in NOT_SOLID
    }


@settings(max_examples=8)
@given(
    st.floats(-8, 8), st.floats(-0.2, 0.2), st.floats(-0.3, 0.3), st.sampled_from(["PNG", "JPEG"])
)
def test_turning_perspective_and_fall_off_change_no_letter(
    turned: float, askew: float, fall_off: float, format: str
) -> None:
    made = scene(turned=turned, askew=askew, fall_off=fall_off, margin=1.0, ground="#8a8680")
    photo = read_photo(made.file(format), ROWS, COLUMNS).photo
    found = _alike([place.letter for place in photo.places])
    # Two squares of a print are found to be one most of the time, solids always (see `doubles`).
    print_apart = {*_alike(LETTERS) - {PRINTED}, *(frozenset({place}) for place in PRINTED)}
    assert found in (_alike(LETTERS), print_apart)
    assert photo.notes == ()


def _alike(letters: Sequence[str]) -> set[frozenset[int]]:
    """The places that have one letter, whichever it is."""
    return {
        frozenset(place for place, one in enumerate(letters) if one == letter) for letter in letters
    }


PRINTED = next(places for places in _alike(LETTERS) if 8 in places)
"""The two places of the one print that lies twice: the fourth of row 2 is one of them."""


@pytest.mark.parametrize("side", [0.8, 0.9, 1.0])
def test_four_corners_are_enough_even_where_no_cloth_is_between(side: float) -> None:
    made = scene(side=side, margin=0.9, turned=4.0, fall_off=0.3)
    photo = read_photo(made.file(), ROWS, COLUMNS, corners=made.corners()).photo
    assert [place.letter for place in photo.places] == LETTERS
    assert max(_off(photo).values()) < 1.5
    assert photo.notes == ()


def test_where_no_cloth_is_seen_the_light_is_left_and_that_is_said() -> None:
    made = scene(side=1.0, margin=0.56)
    left, top, right, bottom = (*made.point(-0.5, -0.5), *made.point(4.5, 3.5))
    cut = made.image().crop((int(left) + 1, int(top) + 1, int(right), int(bottom)))
    file = file_of(cut)
    wide, high = cut.size
    round_it = [(0, 0), (wide, 0), (wide, high), (0, high)]
    photo = read_photo(file, ROWS, COLUMNS, corners=round_it).photo
    assert [place.letter for place in photo.places] == LETTERS
    assert photo.notes == (
        "No plain cloth is seen around the squares, so the light was not evened.",
    )


def test_squares_like_the_cloth_beneath_are_put_by_the_others_and_named() -> None:
    squares = laid(ROWS, COLUMNS)
    squares[1][2] = squares[3][4] = solid("#cac5bb")
    photo = read_photo(Scene(squares=squares, size=(480, 400)).file(), ROWS, COLUMNS).photo
    there = photo.places[7]
    assert difference(there.colour, parse_colour("#cac5bb")) < 0.5
    assert there.letter == photo.places[19].letter
    assert photo.notes == (
        "These places can hardly be told from the cloth beneath; look whether a square lies "
        "there: 2·3, 4·5.",
    )


def test_the_lines_of_a_cutting_mat_do_not_join_the_squares() -> None:
    class OnAMat(Scene, frozen=True, kw_only=True):
        def _sampled(self, dx: float, dy: float) -> Field:
            seen = super()._sampled(dx, dy)
            wide, high = self.size
            u, v = self.to_grid(*np.meshgrid(np.arange(wide) + dx, np.arange(high) + dy))
            bare = np.abs(seen - light_of(self.ground)).sum(axis=-1) < 1e-9
            seen[bare & ((u * 5 % 1 < 0.07) | (v * 5 % 1 < 0.07))] = light_of("#c9c060")
            return seen

    made = OnAMat(squares=DOUBLED, size=(480, 400), ground="#2e6b4f")
    photo = read_photo(made.file(), ROWS, COLUMNS).photo
    assert [place.letter for place in photo.places] == LETTERS


def test_prints_are_told_by_the_size_of_their_motifs() -> None:
    fine = [dots("#2f4a7c", "#f4f0e6", pitch, 0.3) for pitch in (0.06, 0.1, 0.15, 0.2)]
    bold = [dots("#7a1f2b", "#e0b14a", pitch, 0.3) for pitch in (0.45, 0.5, 0.6, 0.7)]
    squares = [fine, bold, [solid(colour) for colour in COLOURS[:4]]]
    photo = read_photo(Scene(squares=squares, size=(560, 440), noise=3).file(), 3, 4).photo
    kinds = [place.kind for place in photo.places]
    assert kinds[:4] == [Kind.SMALL_PRINT] * 4
    assert kinds[4:8] == [Kind.LARGE_PRINT] * 4
    assert kinds[8:] == [Kind.SOLID] * 4


def test_a_print_of_two_colours_is_taken_apart_and_others_are_not() -> None:
    two = dots("#2f4a7c", "#f4f0e6", 0.25, 0.3)
    many = texture(real_texture("gravel"), "#b09070")
    squares = [[two, many], [solid("#a5532f"), solid("#6a6f2c")]]
    photo = read_photo(Scene(squares=squares, size=(400, 400)).file(), 2, 2).photo
    first, other, *plain = photo.places
    assert first.two is not None
    assert difference(first.two.ground, parse_colour("#2f4a7c")) < 2
    assert difference(first.two.second, parse_colour("#f4f0e6")) < 2
    assert first.two.share == pytest.approx(0.3, abs=0.05)
    assert other.two is None
    assert all(place.two is None for place in plain)


def test_prints_of_one_mean_colour_but_another_scale_or_spread_are_two_fabrics() -> None:
    fine, bold = (dots("#2f4a7c", "#f4f0e6", pitch, 0.3) for pitch in (0.1, 0.25))
    mixed = read_photo(Scene(squares=[[fine, bold], [fine, bold]], size=(400, 400)).file(), 2, 2)
    from_afar = str(mixed.photo.places[0].colour)
    squares = [[fine, bold], [solid(from_afar), fine]]
    photo = read_photo(Scene(squares=squares, size=(400, 400)).file(), 2, 2).photo
    assert [place.letter for place in photo.places] == ["A", "B", "C", "A"]


def test_doubles_cut_from_other_parts_of_a_print_are_mostly_found() -> None:
    rng = np.random.default_rng(5)

    def cut_anywhere(print_of: Print) -> Print:
        along, down = rng.uniform(0, 1, 2)
        return lambda u, v: print_of(u + along, v + down)

    prints = [
        dots("#2f4a7c", "#f4f0e6", 0.1, 0.3),
        dots("#7a1f2b", "#e0b14a", 0.16, 0.1),
        dots("#3d5a40", "#c7786b", 0.3, 0.3),
        dots("#6a6f2c", "#f0e2a0", 0.22, 0.3),
    ]
    squares = [[cut_anywhere(print_of) for _ in range(4)] for print_of in prints]
    photo = read_photo(Scene(squares=squares, size=(480, 480)).file("JPEG"), 4, 4).photo
    rows = [{place.letter for place in photo.places[4 * row : 4 * row + 4]} for row in range(4)]
    assert not set.intersection(*rows)
    assert len(rows[0]) == len(rows[1]) == 1
    assert all(len(row) <= 2 for row in rows)


def test_real_textures_are_prints_of_their_own_and_found_again_from_another_piece() -> None:
    # Grey photographs of brick, grass and gravel that scikit-image ships, dyed.
    grass, gravel, brick = map(real_texture, ("grass", "gravel", "brick"))
    squares = [
        [texture(grass[:250], "#7d9f69"), texture(gravel, "#b09070"), texture(brick, "#a5532f")],
        [texture(brick, "#6a6f9c"), texture(grass[250:], "#7d9f69"), solid("#b09070")],
    ]
    made = Scene(squares=squares, size=(560, 400), noise=2, fall_off=0.2)
    photo = read_photo(made.file("JPEG", quality=80), 2, 3).photo
    assert [place.letter for place in photo.places] == ["A", "B", "C", "D", "A", "E"]
    kinds = [place.kind for place in photo.places]
    assert kinds[5] is Kind.SOLID
    assert Kind.SOLID not in kinds[:5]


def test_a_picture_without_colours_is_read_and_that_is_said() -> None:
    grey = scene().image().convert("L")
    photo = read_photo(file_of(grey), ROWS, COLUMNS).photo
    assert "The picture has no colours, so only light and dark were read." in photo.notes
    assert all(p.colour.red == p.colour.green == p.colour.blue for p in photo.places)


@pytest.mark.parametrize(("rows", "columns"), [(1, 4), (4, 1), (2, 2)])
def test_small_grids_are_read_too(rows: int, columns: int) -> None:
    size = (140 * columns + 40, 140 * rows + 40)
    made = Scene(squares=laid(rows, columns), size=size, turned=3)
    photo = read_photo(made.file(), rows, columns).photo
    for place, colour in zip(photo.places, COLOURS, strict=False):
        assert difference(place.colour, parse_colour(colour)) < 0.5
