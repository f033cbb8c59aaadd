"""Fabrics can be told apart by hue and, without it, by lightness; borders and backs as well."""

from __future__ import annotations

from itertools import combinations, pairwise
from math import hypot
from string import ascii_uppercase

import pytest

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.sight import contrast, difference, lab, value
from sewalong.wall.keys import CORNERSTONE, SASH, SETTING, STITCHES, border_key, wrong_side
from sewalong.wall.palette import FABRICS, colour_of

FIRST_NINE = ascii_uppercase[:9]


def least_difference(letters: str) -> float:
    return min(difference(FABRICS[a], FABRICS[b]) for a, b in combinations(letters, 2))


def lightness_steps(letters: str) -> list[float]:
    levels = sorted(value(FABRICS[letter]) for letter in letters)
    return [b - a for a, b in pairwise(levels)]


def test_every_letter_has_a_colour() -> None:
    assert "".join(FABRICS) == ascii_uppercase


# CIEDE2000 is made so that about 1 is just seen side by side. The floors are our own choice: ten
# times that across a picture for all, twice as much for those that meet in one unit.
def test_all_fabrics_differ_and_those_of_one_unit_differ_most() -> None:
    assert least_difference(ascii_uppercase) > 10
    assert least_difference(FIRST_NINE) > 20


def test_lightness_alone_tells_them_apart() -> None:
    assert min(lightness_steps(ascii_uppercase)) > 2
    assert min(lightness_steps(FIRST_NINE)) > 7


def test_a_is_dark_b_medium_and_c_light_as_strip_methods_use_them() -> None:
    a, b, c = (value(FABRICS[letter]) for letter in "ABC")
    assert a + 30 < b < c - 10


def test_neighbouring_borders_and_sashes_with_cornerstones_stand_out() -> None:
    for number in range(1, 6):
        one, next_one = colour_of(border_key(number)), colour_of(border_key(number + 1))
        assert abs(value(one) - value(next_one)) > 20
    for key, other in combinations((SASH, CORNERSTONE, border_key(1)), 2):
        apart = value(colour_of(key)) - value(colour_of(other))
        assert abs(apart) > 20
    assert abs(value(colour_of(SETTING)) - value(colour_of(border_key(1)))) > 20


# WCAG 2.x SC 1.4.11: 3 for what is not text.
@pytest.mark.parametrize("letter", ascii_uppercase)
def test_stitches_show_on_the_darker_fabrics_and_differ_from_all(letter: str) -> None:
    back = colour_of(wrong_side(letter))
    assert difference(colour_of(STITCHES), back) > 15
    if value(back) < 60:
        assert contrast(colour_of(STITCHES), back) > 3


@pytest.mark.parametrize("letter", ascii_uppercase)
def test_a_wrong_side_is_greyer_than_its_right_side(letter: str) -> None:
    face, back = colour_of(letter), colour_of(wrong_side(letter))
    assert difference(face, back) > 5
    assert hypot(*lab(back)[1:]) < hypot(*lab(face)[1:])


def test_the_owners_own_colours_come_first_and_the_back_follows() -> None:
    green = Colour(40, 160, 60)
    assert colour_of("A", {"A": green}) == green
    assert colour_of("a", {"A": green}) == colour_of("a", {"A": green, "B": green})
    assert colour_of("a", {"A": green}) != colour_of("a")
    assert colour_of("a", {"A": green, "a": green}) == green
    assert colour_of("fig plum", {"fig plum": green}) == green


def test_a_key_that_nobody_knows_has_no_colour() -> None:
    with pytest.raises(KeyError):
        colour_of("fig plum")
    assert colour_of(SETTING)
