"""The forms a screen prints: characters with no colour, and runs of like cells."""

from __future__ import annotations

from itertools import pairwise
from string import ascii_uppercase

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.wall.keys import (
    CORNERSTONE,
    SASH,
    SETTING,
    STITCHES,
    border_key,
    border_number,
    wrong_side,
)
from sewalong.wall.picture import EMPTY, Picture, from_pixels
from sewalong.wall.pieces import piece_picture
from sewalong.wall.runs import LOWER, SAME, UPPER, rows_of_runs
from sewalong.wall.textures import NOTHING, legend, texture_of, textures
from sewalong.wall.tops import top_picture
from tests.wall.drawing import METHODS, cells, unit_picture, usual

KNOWN = [
    *ascii_uppercase,
    *map(wrong_side, ascii_uppercase),
    *map(border_key, range(1, 11)),
    *(STITCHES, SASH, CORNERSTONE, SETTING),
]
KEYS = st.sampled_from(["A", "B", "C", "a", "border 1", STITCHES, None])
PICTURES = st.integers(1, 12).flatmap(
    lambda wide: st.lists(
        st.lists(KEYS, min_size=wide, max_size=wide), min_size=1, max_size=12
    ).map(from_pixels)
)


def test_no_two_keys_share_a_texture_and_all_are_plain() -> None:
    marks = [texture_of(key) or "" for key in KNOWN]
    assert len(set(marks)) == len(marks)
    assert all(len(mark) == 1 and " " < mark <= "~" for mark in marks)


@pytest.mark.parametrize("method", METHODS)
def test_textures_tell_the_fabrics_of_every_pile_apart(method: str) -> None:
    derivation = usual(method)
    for pile in derivation.piles:
        picture = piece_picture(derivation, pile, 24, 12)
        shown = set("".join(textures(picture))) - {NOTHING}
        assert shown == set(legend(picture).values())
        assert len(shown) == len(picture.keys)


def test_a_half_square_in_characters() -> None:
    assert textures(unit_picture(usual("half-square-two"), 8, 4)) == [
        "########",
        "######++",
        "####++++",
        "##++++++",
    ]


def test_a_thin_border_is_not_lost_between_two_rows() -> None:
    lines = textures(top_picture(usual("plain-squares"), 9, 9, across=30, down=15, borders=(1,)))
    assert set(lines[0]) == {"1"}
    assert set(lines[-1]) == {"1"}


def test_stitches_win_and_nothing_loses() -> None:
    rows = [["A", STITCHES, "A", None, "A", "B"], [STITCHES, "A", None, "A", "B", "B"]]
    assert textures(from_pixels(rows)) == ["--###+"]


def test_a_key_that_shows_little_wins_over_one_that_shows_a_lot() -> None:
    rows = [["A", "A", "A", "A"], ["A", "A", "A", "B"]]
    assert textures(from_pixels(rows)) == ["###+"]


def test_keys_of_the_callers_own_get_characters_of_their_own() -> None:
    picture = from_pixels([["fig plum", "oat", "A"]])
    marks = legend(picture)
    assert len(set(marks.values())) == 3
    assert textures(picture) == [marks["fig plum"] + marks["oat"] + "#"]


@given(PICTURES)
def test_one_character_for_each_cell(picture: Picture) -> None:
    lines = textures(picture)
    assert [len(line) for line in lines] == [picture.across] * picture.down
    for line, row in zip(lines, cells(picture), strict=True):
        for mark, cell in zip(line, row, strict=True):
            allowed = {texture_of(key) for key in cell if key is not None} or {NOTHING}
            assert mark in allowed


@given(PICTURES)
def test_runs_say_what_the_cells_say_and_neighbours_differ(picture: Picture) -> None:
    for runs, row in zip(rows_of_runs(picture), cells(picture), strict=True):
        read: list[tuple[str | None, str | None]] = []
        for run in runs:
            mark = run.text[0]
            assert run.text == mark * len(run.text)
            cell = {
                SAME: (run.ground, run.ground),
                UPPER: (run.ink, run.ground),
                LOWER: (run.ground, run.ink),
            }[mark]
            read += [cell] * len(run.text)
        assert read == row
        assert all(a != b for a, b in pairwise(runs))


def test_the_whole_row_of_one_fabric_is_one_run() -> None:
    runs = rows_of_runs(unit_picture(usual("plain-squares"), 20, 10))
    assert [len(row) for row in runs] == [1] * 10
    assert runs[0][0] == (SAME * 20, None, "A")


def test_an_empty_picture_has_no_rows() -> None:
    assert rows_of_runs(EMPTY) == []
    assert textures(EMPTY) == []


def test_borders_are_numbered_from_1() -> None:
    assert border_number(border_key(12)) == 12
    assert border_number("A") is None
    with pytest.raises(ValueError, match="from 1"):
        border_key(0)
