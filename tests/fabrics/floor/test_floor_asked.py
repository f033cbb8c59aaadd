"""What cannot be told is asked about and never guessed; what a person says stands, and the rest
follows."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import pytest
from msgspec.structs import replace

from sewalong.fabrics.colours import Colour, parse_colour
from sewalong.fabrics.floor.floor_words import floor_lines, place_lines, question_lines
from sewalong.fabrics.floor.mending import said
from sewalong.fabrics.floor.read import read_floor
from sewalong.fabrics.floor.result import FloorReading, HowSure
from sewalong.fabrics.photo.refused import PhotoRefused
from sewalong.fabrics.sight import difference
from tests.fabrics.floor.made_floors import Floor, Lying, anyhow, cloth, shown

PLAIN = {
    "A": parse_colour("#a5532f"),
    "B": parse_colour("#2f4a7c"),
    "C": parse_colour("#f4f0e6"),
    "D": parse_colour("#6a6f2c"),
    "E": parse_colour("#e0b14a"),
    "F": parse_colour("#8c3b56"),
    "G": parse_colour("#4f7f82"),
    "H": parse_colour("#1f2a38"),
}
"""Invented solids, well apart."""


def four_patches(
    sets: Sequence[str], colours: Mapping[str, Colour], places: Sequence[int]
) -> Floor:
    """One unit of each of these sets, in one row and as made; `places` say which lies where."""
    return Floor(
        method="four-patch",
        sets={number: tuple(letters) for number, letters in enumerate(sets, 1)},
        colours=colours,
        laid=[[Lying(unit, 0) for unit in places]],
    )


def read(floor: Floor, **how: object) -> FloorReading:
    rows, columns = floor.size
    how.setdefault("noise", 3.0)
    file = floor.scene(**how).file("JPEG", quality=60)
    return read_floor(file, rows, columns, units=floor.units, colours=floor.colours)


def sure(reading: FloorReading) -> list[str]:
    return [place.sure.value for place in reading.places]


@pytest.mark.parametrize("spare", [False, True])
def test_two_units_that_look_alike_are_asked_about(spare: bool) -> None:
    like_b = parse_colour("#334f81")
    assert difference(PLAIN["B"], like_b) < 2.5
    colours = {**PLAIN, "I": like_b}
    places = [2, 0, 3] if spare else [2, 0, 3, 1]
    floor = four_patches(["ABCD", "AICD", "EFGH", "CEHG"], colours, places)
    reading = read(floor)
    assert sure(reading) == ["sure", "not sure", "sure", "not sure"][: len(places)]
    asked = reading.places[1]
    assert {one.unit for one in asked.candidates} == {0, 1}
    assert all(0 <= one.worse < 7.5 for one in asked.candidates)
    assert question_lines(reading, {"B": "navy", "I": "ink"})[:2] in (
        (
            "row 1 place 2: is it set 1 unit 1 as made, or set 2 unit 1 as made?",
            "row 1 place 2: what tells them apart is patch 2, B navy or I ink.",
        ),
        (
            "row 1 place 2: is it set 2 unit 1 as made, or set 1 unit 1 as made?",
            "row 1 place 2: what tells them apart is patch 2, I ink or B navy.",
        ),
    )


def test_a_turn_that_can_hardly_be_seen_is_asked_about() -> None:
    colours = {**PLAIN, "I": parse_colour("#a8562f")}
    reading = read(four_patches(["ABIB", "CDEF", "FGHC"], colours, [0, 1, 2]))
    assert sure(reading) == ["not sure", "sure", "sure"]
    asked = reading.places[0]
    assert [(one.unit, one.turn) for one in asked.candidates] in (
        [(0, 0), (0, 2)],
        [(0, 2), (0, 0)],
    )


def test_turns_are_said_and_what_a_quarter_is() -> None:
    floor = four_patches(["ABCD", "EFGH", "CEHG"], PLAIN, [0, 1, 2])
    floor = replace(floor, laid=[[Lying(0, 1), Lying(2, 2), Lying(1, 3)]])
    reading = read(floor)
    assert place_lines(reading, {}) == (
        "row 1 place 1: set 1 unit 1 turned a quarter, sure",
        "row 1 place 2: set 3 unit 1 turned half way round, sure",
        "row 1 place 3: set 2 unit 1 turned three quarters, sure",
    )
    assert floor_lines(reading) == (
        "3 of 3 places are sure.",
        "A quarter turn brings the edge towards row 1 towards the end of the row.",
    )
    assert question_lines(reading, {}) == ()


def test_what_is_said_stands_and_the_other_follows() -> None:
    colours = {**PLAIN, "I": parse_colour("#334f81")}
    floor = four_patches(["ABCD", "AICD", "EFGH", "CEHG"], colours, [2, 0, 3, 1])
    reading = read(floor)
    mended = said(reading, 1, 2, 0)
    assert sure(mended) == ["sure"] * 4
    assert [place.lies.unit for place in mended.places if place.lies] == [2, 0, 3, 1]
    assert [place.said for place in mended.places] == [False, True, False, False]
    assert place_lines(mended, {})[1] == "row 1 place 2: set 1 unit 1 as made, said"
    other = said(reading, 1, 2, 1)
    assert [place.lies.unit for place in other.places if place.lies] == [2, 1, 3, 0]
    # Said of another place since, it is said of the first no more.
    moved = said(mended, 1, 4, 0)
    assert [place.lies.unit for place in moved.places if place.lies] == [2, 1, 3, 0]
    assert [(one.column, one.unit) for one in moved.said] == [(4, 0)]
    assert reading.said == ()


def test_what_is_said_stands_though_the_picture_shows_otherwise() -> None:
    floor = four_patches(["ABCD", "EFGH", "CEHG"], PLAIN, [0, 1, 2])
    reading = said(read(floor), 1, 1, 1, 3)
    first, second, third = reading.places
    assert (first.lies, first.said) == (first.candidates[0], True)
    assert (first.candidates[0].unit, first.candidates[0].turn) == (1, 3)
    # The only unit left is not like what lies there.
    assert second.sure is HowSure.CANNOT_TELL
    assert third.sure is HowSure.SURE


def test_an_empty_place_is_seen_and_said() -> None:
    laid = [[Lying(2, 1), None, Lying(0, 3)], [Lying(1, 0), Lying(3, 2), Lying(4, 0)]]
    floor = replace(anyhow("stacked-four-patch", 2, 3), laid=laid)
    reading = read(floor, side=0.9)
    place = reading.places[1]
    assert (place.sure, place.lies and place.lies.unit) == (HowSure.SURE, None)
    assert place_lines(reading, {})[1] == "row 1 place 2: nothing, sure"
    assert sure(reading) == ["sure"] * 6
    back = said(reading, 1, 2, 7, 2)
    assert back.places[1].lies is not None
    assert back.places[1].lies.unit == 7
    assert said(back, 1, 2, None).places[1].lies == place.lies


def test_units_of_sets_that_are_not_known_cannot_be_told() -> None:
    floor = four_patches(["ABCD", "EFGH", "CEHG", "HDBF"], PLAIN, [0, 1, 2, 3])
    file = floor.scene().file()
    reading = read_floor(file, 1, 4, units=floor.units[:3], colours=floor.colours)
    assert sure(reading) == ["sure", "sure", "sure", "cannot tell"]
    lost = reading.places[3]
    assert lost.lies is None
    assert lost.patches == ()
    assert floor_lines(reading) == ("3 of 4 places are sure.", "1 place cannot be told.")
    asked, nearest = question_lines(reading, {})
    assert asked == "row 1 place 4: no unit that is known looks like it, so what lies there?"
    assert nearest.startswith("row 1 place 4: set ")
    assert nearest.endswith(" comes nearest.")


def test_units_that_are_the_same_are_not_asked_about_but_said_to_be() -> None:
    floor = anyhow("half-square-eight", 2, 4)
    reading = read(floor)
    assert sure(reading) == ["sure"] * 8
    assert all(len(place.same) == 7 for place in reading.places)
    assert len({place.lies.unit for place in reading.places if place.lies}) == 8
    assert place_lines(reading, {})[0].endswith(", sure, one of 8 that look the same")


def test_turns_in_which_a_unit_looks_the_same_are_all_given() -> None:
    floor = four_patches(["ABAB", "CDEF"], PLAIN, [0, 1])
    reading = read(floor)
    assert reading.places[0].turns == (0, 2)
    assert reading.places[1].turns == (0,)
    assert sure(reading) == ["sure", "sure"]


def test_a_unit_with_a_square_nobody_knows_is_not_taken_for_another() -> None:
    floor = four_patches(["ABCD", "ABCD", "EFGH"], PLAIN, [0, 1, 2])
    sets = {1: ("A", "B", "C"), 2: ("A", "B", "C"), 3: tuple("EFGH")}
    less = replace(floor, sets=sets)
    reading = read_floor(floor.scene().file(), 1, 3, units=less.units, colours=floor.colours)
    assert sure(reading) == ["not sure", "not sure", "sure"]
    assert all(place.same == () for place in reading.places)
    assert {place.lies.unit for place in reading.places if place.lies} == {0, 1, 2}


def test_the_fewest_differences_in_all_decide_and_not_the_nearest_at_each_place() -> None:
    # Both places are nearest to the second unit; only together is it plain which lies where.
    colours = {**PLAIN, "I": parse_colour("#43629a"), "J": parse_colour("#587ab8")}
    floor = four_patches(["ABCD", "AICD"], colours, [0, 1])
    seen = replace(floor, colours={**colours, "B": colours["I"], "I": colours["J"]})
    file = seen.scene().file()
    reading = read_floor(file, 1, 2, units=floor.units, colours=colours)
    assert [one.candidates[0].unit for one in reading.places] == [0, 1]


@pytest.mark.parametrize(
    ("row", "place", "unit", "turn", "told"),
    [
        (3, 1, 0, 0, r"There is no place 3·1: rows go from 1 to 1, places from 1 to 3\."),
        (1, 0, 0, 0, r"There is no place 1·0"),
        (1, 1, 3, 0, r"There are 3 units, and none of them is that one\."),
        (1, 1, -1, 0, r"There are 3 units"),
        (1, 1, 0, 4, r"turned by 0 or 1 or 2 or 3 quarters, not by 4\."),
    ],
)
def test_what_cannot_be_said_is_refused(
    row: int, place: int, unit: int, turn: int, told: str
) -> None:
    reading = read(four_patches(["ABCD", "EFGH", "CEHG"], PLAIN, [0, 1, 2]))
    with pytest.raises(PhotoRefused, match=told):
        said(reading, row, place, unit, turn)


def test_of_near_fabrics_what_is_sure_is_true() -> None:
    """Low contrast: many are asked about, and none is wrong that is said to be sure."""
    close = cloth(24, 2.0)
    letters = list(close)
    base = close[letters[0]]
    near = {
        key: Colour(*(min(255, part + step) for part in (base.red, base.green, base.blue)))
        for step, key in zip(range(0, 48, 2), letters, strict=True)
    }
    floor = replace(anyhow("stacked-four-patch", 4, 5, spare=6), colours=near)
    reading = read(floor, noise=4.0, fall_off=0.2)
    laid = [one for row in floor.laid for one in row]
    told = [
        shown(place) == floor.shows(one)
        for one, place in zip(laid, reading.places, strict=True)
        if place.sure is HowSure.SURE
    ]
    assert all(told)
    assert len(told) < 20
