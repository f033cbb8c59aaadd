"""Fabrics in rows and as others see them: worked cases, and what must always hold."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.fabrics.by_value import by_value
from sewalong.fabrics.colours import Colour
from sewalong.fabrics.looked_at import AS_IT_IS, View, shown_in, taken_for_one, taken_words
from sewalong.fabrics.sight import Sight, grey, value
from sewalong.fabrics.swatch import Swatch, swatches
from sewalong.fabrics.swatch_words import swatch_words
from sewalong.quilt.choices import ASSORTED, VALUES, Fabric

PILES = (
    Fabric("A", "darks", None, 38, ASSORTED, value="dark"),
    Fabric("B", "lights", None, 60, ASSORTED, value="light"),
    Fabric("C", "from the tin", None, 7),
)
COLOURED = (
    Fabric("A", "rust", "#a5532f", 4, "small print"),
    Fabric("B", "moss", "#6a6f2c", 1),
    Fabric("C", "gold", "#e0b14a", 4),
)


@given(st.floats(0, 100))
def test_the_grey_of_a_value_has_that_value_and_no_colour(lightness: float) -> None:
    shown = grey(lightness)
    assert max(shown.red, shown.green, shown.blue) - min(shown.red, shown.green, shown.blue) <= 1
    # A step of 1 in 255 of a grey is less than 0.5 of L*.
    assert value(shown) == pytest.approx(lightness, abs=0.5)


def test_yellow_and_blue_are_two_greys() -> None:
    # Case N019 of the practice cases: L* 97.1 and 32.3, where "colour taken out" makes them alike.
    both = swatches((Fabric("A", "y", "#ffff00", 1), Fabric("B", "b", "#0000ff", 1)))
    in_grey = View(in_grey=True)
    light, dark = (shown_in(in_grey, one) for one in both)
    assert light
    assert dark
    assert value(light) == pytest.approx(97.1, abs=0.5)
    assert value(dark) == pytest.approx(32.3, abs=0.5)


def test_a_pile_without_a_colour_is_the_grey_of_its_value_and_one_without_either_is_nothing() -> (
    None
):
    dark, light, unknown = swatches(PILES)
    for view in (AS_IT_IS, View(in_grey=True), View(sight=Sight.WITHOUT_RED)):
        assert shown_in(view, dark) == grey(dark.value or 0)
        assert shown_in(view, unknown) is None
    assert (shown_in(AS_IT_IS, light) or Colour(0, 0, 0)).red > 200


def test_the_views_go_round_and_say_what_they_are() -> None:
    views = [AS_IT_IS]
    for _ in range(4):
        views.append(views[-1].next_sight())
    assert views[4] == AS_IT_IS
    assert [view.words for view in views[:4]] == [
        "",
        "as somebody without red cones sees it",
        "as somebody without green cones sees it",
        "as somebody without blue cones sees it",
    ]
    assert "(L*)" in views[1].grey_or_not().words
    assert views[1].grey_or_not().grey_or_not() == AS_IT_IS
    assert View(in_grey=True).next_sight() == views[1]


def test_rust_and_moss_may_be_taken_for_each_other_and_gold_for_none() -> None:
    # Case N022 of the practice cases: 44.6 apart for most eyes, 2.5 without green cones.
    found = swatches(COLOURED)
    without_green = View(sight=Sight.WITHOUT_GREEN)
    assert [(a.name, b.name) for a, b in taken_for_one(found, without_green)] == [("rust", "moss")]
    assert taken_words(found, without_green) == ("A rust and B moss may be taken for each other.",)
    brick = swatches((*COLOURED, Fabric("D", "brick", "#b03a2e", 4)))
    short, *pairs = taken_words(brick, without_green)
    assert short == "3 pairs may be taken for each other, soonest B moss and D brick."
    assert len(pairs) == 3
    assert pairs[0] == "May be taken for each other: B moss and D brick."
    assert taken_for_one(found, AS_IT_IS) == ()
    assert taken_words(found, AS_IT_IS) == taken_words(found, View(in_grey=True)) == ()
    without_blue = View(sight=Sight.WITHOUT_BLUE)
    assert taken_words(found, without_blue) == ("No two of them would be taken for each other.",)


def test_rows_are_by_value_the_lightest_first_and_within_it_by_family() -> None:
    rows = by_value(swatches((*COLOURED, Fabric("D", "cream", "#f4f0e6", 2))))
    assert [(row.value, row.family, [one.letter for one in row.swatches]) for row in rows] == [
        ("light", "neutral", ["D"]),
        ("medium", "orange", ["C"]),
        ("dark", "red", ["A"]),
        ("dark", "green", ["B"]),
    ]
    assert [(row.value, row.family) for row in by_value(swatches(PILES))] == [
        ("light", None),
        ("dark", None),
        ("value not said", None),
    ]


def test_within_a_row_the_lightest_comes_first() -> None:
    greys = ("#e8e8e8", "#f6f6f6", "#111111", "#f0f0f0")
    fabrics = [Fabric(letter, letter, grey, 1) for letter, grey in zip("ABCD", greys, strict=True)]
    first, last = by_value(swatches(fabrics))
    assert [one.letter for one in first.swatches] == ["B", "D", "A"]
    assert [one.letter for one in last.swatches] == ["C"]


def test_greys_are_taken_for_one_by_how_far_they_are_apart_alone() -> None:
    # Greys are greys to everybody; CIEDE2000 of the mid grey and these is about 2.7, 4.6 and 6.1.
    near = swatches([Fabric("A", "a", "#777777", 1), Fabric("B", "b", "#7e7e7e", 1)])
    nearly = swatches([Fabric("A", "a", "#777777", 1), Fabric("B", "b", "#838383", 1)])
    apart = swatches([Fabric("A", "a", "#777777", 1), Fabric("B", "b", "#878787", 1)])
    for sight in Sight:
        found = [len(taken_for_one(two, View(sight=sight))) for two in (near, nearly, apart)]
        assert found == [1, 1, 0]


FABRICS = st.lists(
    st.builds(
        Fabric,
        st.just("A"),
        st.just("x"),
        st.one_of(st.none(), st.sampled_from(["#a5532f", "#6a6f2c", "#e0b14a", "#f4f0e6"])),
        st.integers(1, 9),
        value=st.one_of(st.none(), st.sampled_from(VALUES)),
    ),
    max_size=9,
)


@given(FABRICS)
def test_every_fabric_is_in_one_row(fabrics: Sequence[Fabric]) -> None:
    found = swatches(fabrics)
    rows = by_value(found)
    assert sorted(map(repr, found)) == sorted(repr(one) for row in rows for one in row.swatches)
    assert all(row.swatches for row in rows)


def test_a_fabric_in_words_says_what_is_not_known() -> None:
    rust, moss, _ = swatches(COLOURED)
    assert swatch_words(rust) == (
        "A rust: 4 squares, small print, #a5532f from afar, dark (value 45 of 100), red."
    )
    assert swatch_words(moss).startswith("B moss: 1 square, #6a6f2c")
    dark, _, unknown = swatches(PILES)
    assert (
        swatch_words(dark) == "A darks: 38 squares, assorted, dark as you said, colour not known."
    )
    assert swatch_words(unknown) == "C from the tin: 7 squares, value not known."


def test_a_swatch_is_made_of_counted_fabrics_alone() -> None:
    assert swatches((Fabric("A", "what the method calls so"),)) == ()
    assert all(isinstance(one, Swatch) for one in swatches(PILES))
