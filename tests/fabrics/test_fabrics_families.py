"""Colour families against the colours CSS calls by their names; value words against each other."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.fabrics.colours import Colour, parse_colour
from sewalong.fabrics.families import Family, family
from sewalong.fabrics.sight import value
from sewalong.fabrics.value_words import WORDS, value_words
from sewalong.quilt.file.values import colour

# CSS Color Module Level 4, named colors: each name says what everybody calls it.
NAMES = {
    Family.NEUTRAL: "white black gray darkgray lightgray dimgray whitesmoke snow ivory linen",
    Family.RED: "red darkred indianred orangered crimson firebrick mediumvioletred maroon",
    Family.PINK: "pink hotpink lightpink salmon rosybrown",
    Family.ORANGE: "orange darkorange coral tomato sandybrown",
    Family.BROWN: "sienna chocolate saddlebrown tan burlywood",
    Family.YELLOW: "yellow lightyellow gold khaki",
    Family.GREEN: "green darkgreen forestgreen lightgreen seagreen palegreen limegreen olive "
    "greenyellow",
    Family.TEAL: "teal turquoise lightseagreen cyan cadetblue",
    Family.BLUE: "blue navy skyblue lightblue royalblue steelblue midnightblue dodgerblue slateblue",
    Family.VIOLET: "violet darkviolet blueviolet purple indigo plum orchid mediumpurple",
}


@pytest.mark.parametrize(
    ("name", "expected"),
    [(name, expected) for expected, names in NAMES.items() for name in names.split()],
)
def test_a_colour_is_in_the_family_of_its_name(name: str, expected: Family) -> None:
    assert family(parse_colour(colour(name))) is expected


PARTS = st.integers(0, 255)


@given(st.builds(Colour, PARTS, PARTS, PARTS))
def test_every_colour_has_a_family(colour: Colour) -> None:
    assert family(colour) in Family


def test_value_words_are_relative_to_the_fabrics_of_the_quilt() -> None:
    assert value_words([10, 30, 50, 70, 90]) == WORDS
    assert value_words([50, 60, 70, 80, 90]) == WORDS
    assert value_words([50, 52, 55, 59]) == ("medium",) * 4
    assert value_words([]) == ()


@given(st.lists(st.floats(0, 100), min_size=2))
def test_a_lighter_fabric_never_has_a_darker_word(values: list[float]) -> None:
    words = [WORDS.index(word) for word in value_words(values)]
    assert [word for _, word in sorted(zip(values, words, strict=True))] == sorted(words)
    if max(values) - min(values) >= 10:
        assert {min(words), max(words)} == {0, 4}


def test_yellow_is_light_and_blue_dark_beside_each_other() -> None:
    yellow, blue = Colour(255, 255, 0), Colour(0, 0, 255)
    assert value_words([value(yellow), value(blue)]) == ("light", "dark")
