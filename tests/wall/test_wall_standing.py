"""A top as it stands: what is sewn is filled in, what is in hand is lit, the rest is outline."""

from __future__ import annotations

import pytest

from sewalong.wall.keys import GAP, LIT, OUTLINE, SEWN, SEWN_NEXT, border_key, dim
from sewalong.wall.on_point import Slanting
from sewalong.wall.picture import Picture
from sewalong.wall.places import Kind, Laid, Place
from sewalong.wall.standing import Lit, Sewn, standing_picture
from sewalong.wall.tops import Level, Sashes, Turned
from tests.wall.drawing import usual

PLAIN = usual("plain-squares")
THREE = Level(PLAIN, 3, 4, None, (2.0,))
"""Three rows of four, and a border."""


def keys_at(laid: Laid, picture: Picture, kind: Kind, row: int, column: int = 0) -> set[str | None]:
    """What is drawn where a piece lies; of column 0 any."""
    return {
        picture.pixels[y][x]
        for y, line in enumerate(laid.places)
        for x, place in enumerate(line)
        if place.kind is kind and place.row == row and column in (0, place.column)
    }


def test_units_sewn_are_filled_in_and_the_others_are_outlined() -> None:
    laid = THREE.laid(60, 30)
    picture = standing_picture(laid, Sewn(units=(4, 2, 0)))
    assert keys_at(laid, picture, Kind.UNIT, 2, 2) == {"A"}
    assert keys_at(laid, picture, Kind.UNIT, 2, 3) == {OUTLINE, None}
    assert keys_at(laid, picture, Kind.UNIT, 3) == {OUTLINE, None}
    assert keys_at(laid, picture, Kind.BORDER, 1) == {OUTLINE, None}
    # Row 1 is not joined to row 2 yet.
    assert keys_at(laid, picture, Kind.UNIT, 1) == {"A", GAP}


@pytest.mark.parametrize(
    ("pixels", "drawn"),
    [
        # Four units of so many pixels, and a mark for each pixel of an outline.
        (4, ["########", "#...#..#", "#...#..#", "#...#..#", "########", "#...#..#", "#...#..#", "########"]),
        (3, ["######", "#..#.#", "#..#.#", "######", "#..#.#", "######"]),
        # Two by two pixels would be all outline: their first corners stand for them.
        (2, ["####", "#..#", "#.##", "####"]),
        (1, ["##", "##"]),
    ],
)  # fmt: skip
def test_units_are_outlined_where_they_begin_and_the_top_all_round(
    pixels: int, drawn: list[str]
) -> None:
    laid = Level(PLAIN, 2, 2, None).laid(2 * pixels, pixels, with_pattern=False)
    picture = standing_picture(laid, Sewn(units=(0, 0)))
    marks = ["".join("#" if key == OUTLINE else "." for key in row) for row in picture.pixels]
    assert marks == drawn


def test_a_unit_beside_a_thin_border_closes_its_outline_itself() -> None:
    laid = Level(PLAIN, 1, 1, None, (0.5,)).laid(10, 5)
    picture = standing_picture(laid, Sewn(units=(0,)))
    unit = [
        (x, y)
        for y, row in enumerate(laid.places)
        for x, one in enumerate(row)
        if one.kind is Kind.UNIT
    ]
    x0, y0, x1, y1 = min(unit)[0], min(y for _, y in unit), max(unit)[0], max(y for _, y in unit)
    for x, y in unit:
        edge = x in (x0, x1) or y in (y0, y1)
        assert (picture.pixels[y][x] == OUTLINE) is edge


def test_the_gap_between_rows_closes_when_they_are_joined() -> None:
    laid = THREE.laid(60, 30)
    apart, joined = (
        standing_picture(laid, Sewn(units=(4, 4, 4), joined=frozenset(rows)))
        for rows in ((), (1, 2))
    )
    assert GAP in apart.keys
    assert GAP not in joined.keys
    one = standing_picture(laid, Sewn(units=(4, 4, 4), joined=frozenset((1,))))
    assert GAP not in keys_at(laid, one, Kind.UNIT, 1)
    assert GAP in keys_at(laid, one, Kind.UNIT, 2)


def test_when_all_is_sewn_it_is_the_picture_of_the_whole_top() -> None:
    for top, all_sewn in (
        (THREE, Sewn((4, 4, 4), joined=frozenset((1, 2)), borders=4)),
        (
            Level(PLAIN, 2, 2, None, (), Sashes(1.5)),
            Sewn((2, 2), sashes=frozenset((0, 1, 2)), joined=frozenset((1,))),
        ),
        (
            Slanting(PLAIN, 2, 2, None, (2.0,)),
            Sewn((1, 3, 1), (2, 0, 2), joined=frozenset((1, 2)), corners=4, borders=4),
        ),
    ):
        laid = top.laid(60, 30)
        assert standing_picture(laid, all_sewn) == laid.picture


def test_the_row_in_hand_is_lit_and_those_sewn_are_dim() -> None:
    laid = THREE.laid(60, 30)
    picture = standing_picture(laid, Sewn(units=(4, 0, 0)), Lit(rows=frozenset((2,))))
    assert dim("A") in keys_at(laid, picture, Kind.UNIT, 1)
    assert "A" not in keys_at(laid, picture, Kind.UNIT, 1)
    assert keys_at(laid, picture, Kind.UNIT, 2) == {"A"}
    assert keys_at(laid, picture, Kind.UNIT, 3) == {OUTLINE, None}


def test_of_the_row_in_hand_of_a_web_the_units_to_come_stay_outlines() -> None:
    """Pass 2, row 2: its third unit is being sewn on, and the fourth is still to come."""
    laid = THREE.laid(60, 30)
    picture = standing_picture(laid, Sewn(units=(3, 2, 2)), Lit(rows=frozenset((2,)), upto=3))
    assert keys_at(laid, picture, Kind.UNIT, 2, 3) == {"A"}
    assert keys_at(laid, picture, Kind.UNIT, 2, 4) == {OUTLINE, None}
    assert dim("A") in keys_at(laid, picture, Kind.UNIT, 1, 3)
    assert keys_at(laid, picture, Kind.UNIT, 3, 3) == {OUTLINE, None}


def test_without_room_for_patches_rows_are_bars_and_none_is_left_out() -> None:
    top = Level(usual("stacked-four-patch"), 9, 8, None)
    assert not top.shows_its_pattern(20, 5)
    laid = top.laid(20, 5, with_pattern=False)
    assert {place.row for line in laid.places for place in line} == set(range(1, 10))
    picture = standing_picture(laid, Sewn(units=(8, 8, *[0] * 7)), Lit(rows=frozenset((3,))))
    assert keys_at(laid, picture, Kind.UNIT, 1) == {SEWN}
    assert keys_at(laid, picture, Kind.UNIT, 2) == {SEWN_NEXT}
    assert keys_at(laid, picture, Kind.UNIT, 3) == {LIT}
    # A pixel high, it would be nothing but outline: only the edge of the top is drawn.
    assert keys_at(laid, picture, Kind.UNIT, 5) == {OUTLINE, None}


@pytest.mark.parametrize("corners", Turned)
def test_the_sides_of_a_border_are_four_and_the_first_two_lie_opposite(corners: Turned) -> None:
    laid = Level(PLAIN, 4, 4, None, (3.0,), corners=corners).laid(40, 20)
    high, wide = len(laid.places), len(laid.places[0])
    middles = {
        "ends": {laid.places[0][wide // 2].column, laid.places[-1][wide // 2].column},
        "sides": {laid.places[high // 2][0].column, laid.places[high // 2][-1].column},
    }
    first = "ends" if corners is Turned.ENDS_FIRST else "sides"
    other = {"ends": "sides", "sides": "ends"}[first]
    assert middles[first] == {1, 2}
    assert middles[other] == {3, 4}
    # The two that come last run over the ends of the first.
    corner = laid.places[0][0].column
    assert corner in middles["sides" if corners is Turned.ENDS_FIRST else "ends"]


def test_the_side_in_hand_is_lit_beside_those_sewn() -> None:
    laid = THREE.laid(60, 30)
    sewn = Sewn((4, 4, 4), joined=frozenset((1, 2)), borders=1)
    picture = standing_picture(laid, sewn, Lit(border=2))
    drawn = [keys_at(laid, picture, Kind.BORDER, 1, side) for side in (1, 2, 3, 4)]
    key = border_key(1)
    assert drawn == [{dim(key)}, {key}, {OUTLINE, None}, {OUTLINE, None}]


def test_sashes_are_part_of_their_rows_and_those_between_rows_are_not() -> None:
    laid = Level(PLAIN, 3, 3, None, (), Sashes(1.5)).laid(60, 30)
    places = {place for line in laid.places for place in line}
    assert {place.row for place in places if place.kind is Kind.LYING} == {0, 1, 2, 3}
    standing = {(place.row, place.column) for place in places if place.kind is Kind.STANDING}
    assert standing == {(row, column) for row in (1, 2, 3) for column in (0, 1, 2, 3)}
    picture = standing_picture(laid, Sewn((3, 0, 0), sashes=frozenset((0, 1))))
    assert OUTLINE not in keys_at(laid, picture, Kind.STANDING, 1)
    assert OUTLINE in keys_at(laid, picture, Kind.STANDING, 2)
    assert OUTLINE not in keys_at(laid, picture, Kind.LYING, 1)
    assert OUTLINE in keys_at(laid, picture, Kind.LYING, 2)


@pytest.mark.parametrize(("rows", "columns"), [(1, 1), (2, 2), (3, 4), (4, 3), (5, 2)])
def test_on_point_the_rows_are_those_that_are_sewn(rows: int, columns: int) -> None:
    """As many rows, and units and triangles in each, as `set_rows` has; the four corners."""
    from sewalong.quilt.set_rows import set_rows
    from sewalong.quilt.setting import SetOnPoint

    laid = Slanting(PLAIN, rows, columns, None).laid(80, 40)
    places = {place for line in laid.places for place in line}
    for number, row in enumerate(set_rows(SetOnPoint("grey"), rows, columns), start=1):
        units = {place.column for place in places if place[:2] == (Kind.UNIT, number)}
        sides = {place.column for place in places if place[:2] == (Kind.SIDE, number)}
        assert units == set(range(1, row.units + 1))
        assert len(sides) == row.sides
    corners = {place.row for place in places if place.kind is Kind.CORNER}
    assert corners == {1, 2, 3, 4}
    assert Place(Kind.CORNER, 1) == laid.places[0][0]
    assert Place(Kind.CORNER, 4) == laid.places[-1][-1]
