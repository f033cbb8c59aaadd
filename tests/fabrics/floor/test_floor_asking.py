"""What is asked of one place, and the reading once it is answered."""

from __future__ import annotations

from functools import cache

import pytest
from msgspec.structs import replace

from sewalong.fabrics.floor.asking import (
    colour_from_afar,
    next_asked,
    question_at,
    with_option,
)
from sewalong.fabrics.floor.known import shapes_of
from sewalong.fabrics.floor.read import read_floor
from sewalong.fabrics.floor.result import FloorReading, HowSure
from sewalong.fabrics.sight import difference
from tests.fabrics.floor.made_floors import Floor, Lying, anyhow, made


@cache
def floor() -> Floor:
    """Six units of two sets, the last of which is of a set nobody told of."""
    base = anyhow("stacked-four-patch", 2, 3, fabrics=16)
    rows = [[Lying(0, 0), Lying(1, 1), Lying(2, 2)], [Lying(3, 3), Lying(4, 0), Lying(9, 1)]]
    sets = {**base.sets, 3: base.sets[1][::-1]}
    return Floor(method=base.method, sets=sets, colours=base.colours, laid=rows)


@cache
def known() -> FloorReading:
    photo = floor().scene().file()
    return read_floor(photo, 2, 3, units=floor().units[:8], colours=floor().colours)


@cache
def by_patches() -> FloorReading:
    photo = floor().scene().file()
    shapes = shapes_of(made(floor().method))
    return read_floor(photo, 2, 3, shapes=shapes, colours=floor().colours)


def test_a_place_that_is_sure_says_what_lies_there() -> None:
    reading = known()
    question = question_at(reading, reading.places[1], {})
    assert question.words == "1·2: set 1 unit 2 turned a quarter, sure."
    assert question.options == ("set 1 unit 2 turned a quarter",)
    assert question.tells == ()


def test_the_one_that_is_not_known_is_asked_about_wherever_one_stands() -> None:
    reading = known()
    assert [next_asked(reading, at) for at in (-1, 0, 4, 5)] == [5, 5, 5, 5]
    place = reading.places[5]
    question = question_at(reading, place, {})
    assert question.words == "2·3: no unit that is known looks like it."
    assert len(question.options) == len(place.candidates) > 0
    answered = with_option(reading, place, 0)
    assert answered.places[5].lies == answered.places[5].candidates[0]
    assert (answered.places[5].said, answered.places[5].sure) == (True, HowSure.SURE)
    # The unit said to lie here lay elsewhere by what was seen: now that place is asked about.
    assert next_asked(answered, 5) == next(
        n
        for n, one in enumerate(reading.places)
        if one.lies and one.lies.unit == answered.said[0].unit
    )
    assert question_at(answered, answered.places[5], {}).words.endswith(", as you said.")
    with pytest.raises(IndexError):
        with_option(reading, place, 9)


def test_two_that_may_be_each_other_are_told_apart_by_a_patch() -> None:
    # Two sets that differ in one square, by too little to be sure.
    letters = "ABCDEFGH"
    colours = dict(zip(letters, list(floor().colours.values())[:8], strict=True))
    near = colours["A"].mixed(colours["B"], 0.06)
    like = {**colours, "Z": near}
    sets = {1: tuple(letters), 2: ("Z", *letters[1:])}
    laid = [[Lying(2, 0), Lying(3, 0)]]
    two = Floor(method="stacked-four-patch", sets=sets, colours=like, laid=laid)
    reading = read_floor(two.scene().file(), 1, 2, units=two.units, colours=like)
    place = next(one for one in reading.places if one.sure is HowSure.NOT_SURE)
    question = question_at(reading, place, {"A": "rust", "Z": "brick"})
    assert len(question.options) >= 2
    (told, *_) = question.tells
    assert told.startswith("what tells them apart is patch ")
    assert "A rust" in told
    assert "Z brick" in told
    answered = with_option(reading, place, 1).place(place.row, place.column)
    assert answered is not None
    assert answered.lies is not None
    second = place.candidates[1]
    assert (answered.lies.unit, answered.lies.turn) == (second.unit, second.turn)


def test_of_units_that_are_not_known_one_patch_after_the_other_is_asked_about() -> None:
    reading = by_patches()
    place = reading.places[0]
    question = question_at(reading, place, {})
    assert question.patch == 1
    assert question.words.startswith("1·1 patch 1 of 4: ")
    said = with_option(reading, place, 0)
    assert said.places[0].said
    assert said.places[0].patches[0].sure is HowSure.SURE


def test_the_patch_that_is_not_sure_is_asked_about_and_its_option_taken() -> None:
    reading = by_patches()
    first, second, *others = reading.places[0].patches
    doubted = replace(second, fabric="B", others=("C",), sure=HowSure.NOT_SURE)
    place = replace(reading.places[0], patches=(first, doubted, *others), sure=HowSure.NOT_SURE)
    asked = replace(reading, places=(place, *reading.places[1:]))
    question = question_at(asked, place, {"B": "brick"})
    assert question.words == "1·1 patch 2 of 4: B brick, not sure."
    assert question.options == ("B brick", "C")
    answered = with_option(asked, place, 1).places[0]
    assert answered.patches == (
        first, replace(doubted, fabric="C", others=(), sure=HowSure.SURE), *others,
    )  # fmt: skip
    assert answered.sure is HowSure.SURE


def test_a_place_looks_from_afar_as_its_patches_do_together() -> None:
    reading = by_patches()
    place = reading.places[0]

    # Linear light of sRGB (IEC 61966-2-1), a quarter of each patch.
    def linear(part: int) -> float:
        c = part / 255
        return float(c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4)

    def coded(light: float) -> float:
        return float(12.92 * light if light <= 0.0031308 else 1.055 * light ** (1 / 2.4) - 0.055)

    colour = colour_from_afar(place)
    assert colour is not None
    seen = [(one.colour.red, one.colour.green, one.colour.blue) for one in place.patches]
    wanted = [255 * coded(sum(map(linear, part)) / 4) for part in zip(*seen, strict=True)]
    got = (colour.red, colour.green, colour.blue)
    assert max(abs(a - b) for a, b in zip(wanted, got, strict=True)) <= 2
    assert difference(colour, place.patches[0].colour) > 0
    lost = known().places[5]
    assert colour_from_afar(lost) is None
