"""What is said of a set: worked by the published limits, on invented fabrics."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction as F

import pytest
from msgspec.structs import replace

from sewalong.fabrics.advice import Reads, one_way_in, one_way_words, seams_of_a_set, twice_in
from sewalong.fabrics.families import Family
from sewalong.fabrics.swatch import Swatch, swatches
from sewalong.piecing.contacts import contacts
from sewalong.piecing.derive import derive
from sewalong.piecing.one_way import ways_up
from sewalong.quilt.choices import Fabric

# Invented: nine fabrics of a drawer.
DRAWER = (
    Fabric("A", "rust dots", "#a5532f", 4, "small print"),
    Fabric("B", "moss sprig", "#6a6f2c", 4, "small print"),
    Fabric("C", "cream", "#f6ecd4", 8, "solid"),
    Fabric("D", "navy", "#22305c", 4, "solid"),
    Fabric("E", "navy with white dots", "#22305c", 2, "small print", "#ffffff", 30),
    Fabric("F", "birds", "#c9d8d0", 2, "one-way"),
    Fabric("G", "some dark", None, 3, value="dark"),
    Fabric("H", "a gift", None, 1),
    Fabric("I", "navy again", "#23315d", 1, "solid"),
    Fabric("Z", "a name for the method's", "#123456"),
)
SWATCHES: Mapping[str, Swatch] = {swatch.letter: swatch for swatch in swatches(DRAWER)}

PAIR = contacts(derive("paired-squares", F(5)).units, 0.25)


def reads(one: str, other: str) -> Reads:
    (met,) = seams_of_a_set(PAIR, {"A": SWATCHES[one], "B": SWATCHES[other]})
    return met.reads


def test_only_fabrics_with_squares_are_swatches() -> None:
    assert list(SWATCHES) == list("ABCDEFGHI")


def test_value_and_family_are_those_of_the_print_from_afar() -> None:
    navy, dotted = SWATCHES["D"], SWATCHES["E"]
    assert navy.value == pytest.approx(20.9, abs=0.05)
    # N021: 30 parts of white in a hundred, mixed as light mixes: L* 63.6.
    assert dotted.value == pytest.approx(63.6, abs=0.2)
    assert (navy.family, SWATCHES["B"].family) == (Family.BLUE, Family.GREEN)
    assert (navy.word, SWATCHES["C"].word, dotted.word) == ("dark", "light", "light-medium")


def test_a_value_in_a_word_is_all_that_is_known_of_some() -> None:
    assert (SWATCHES["G"].word, SWATCHES["G"].colour, SWATCHES["G"].family) == ("dark", None, None)
    assert (SWATCHES["H"].value, SWATCHES["H"].word) == (None, None)


@pytest.mark.parametrize(
    ("one", "other", "expected"),
    [
        ("A", "A", Reads.AS_ONE),
        ("D", "I", Reads.AS_ONE),
        ("H", "H", Reads.AS_ONE),
        ("A", "B", Reads.PRINTS),
        ("A", "E", Reads.PRINTS),
        ("E", "F", Reads.WELL),
        ("D", "C", Reads.STRONGLY),
        ("G", "C", Reads.WELL),
        ("G", "D", Reads.LOST),
        ("H", "C", Reads.UNKNOWN),
    ],
)
def test_how_a_seam_reads(one: str, other: str, expected: Reads) -> None:
    assert reads(one, other) is expected
    assert reads(other, one) is expected


def test_the_weakest_seam_comes_first_and_the_unknown_last() -> None:
    laid = dict(zip("ABCD", (SWATCHES[letter] for letter in "ADHC"), strict=True))
    met = seams_of_a_set(contacts(derive("four-patch", F(3)).units, 0.25), laid)
    assert ["".join(one.letters) for one in met] == ["AB", "AD", "BC", "CD"]
    assert met[0].words == (
        "A rust dots and D navy: dark-medium and dark, 24 apart: the seam shows."
    )
    assert met[-1].words == ("H a gift and C cream: not known: no colour and no value was given.")


def test_all_seams_of_a_set_are_there_with_their_lengths() -> None:
    meeting = contacts(derive("stacked-four-patch", F(5)).units, 0.25)
    laid = dict.fromkeys("ABCDEFGH", SWATCHES["C"])
    met = seams_of_a_set(meeting, laid)
    assert len(met) == 12
    assert sum(one.length for one in met) == pytest.approx(sum(one.length for one in meeting))
    assert {one.words for one in met} == {
        "C cream and C cream: both light, 0 apart: they pass for one fabric."
    }


def test_one_way_prints_and_doubles_of_a_set_are_named() -> None:
    laid = dict(zip("ABCD", (SWATCHES[letter] for letter in "FAFA"), strict=True))
    assert list(one_way_in(laid)) == ["A", "C"]
    assert [swatch.letter for swatch in twice_in(laid)] == ["F", "A"]


def test_of_the_squares_of_a_pile_it_is_not_known_which_are_alike() -> None:
    lights, darks = swatches(
        (
            Fabric("A", "lights", "#f6ecd4", 60, "assorted"),
            Fabric("B", "darks", None, 38, "assorted", value="dark"),
        )
    )
    laid = dict(zip("ABCD", (lights, lights, darks, darks), strict=True))
    assert list(twice_in(laid)) == []
    met = {
        one.letters: one.reads
        for one in seams_of_a_set(contacts(derive("four-patch", F(3)).units, 0.25), laid)
    }
    # Of one value they are lost in each other, but nobody has said that they are one fabric.
    assert met == {
        ("A", "B"): Reads.LOST,
        ("C", "D"): Reads.LOST,
        ("B", "C"): Reads.WELL,
        ("A", "D"): Reads.WELL,
    }
    unknown = swatches((Fabric("U", "scraps", None, 40, "assorted"),))[0]
    (met_unknown,) = seams_of_a_set(PAIR, {"A": unknown, "B": unknown})
    assert (met_unknown.reads, met_unknown.apart) == (Reads.UNKNOWN, None)


# N025: "Back turned like a page: the two side units have both prints one way up, the top and bottom
# units have them opposite. Never more than 2 of 4, however the units are turned."
@pytest.mark.parametrize("turned", [{}, {"B": 180}], ids=["like a page", "over its top edge"])
def test_two_one_way_prints_stand_one_way_up_in_two_of_four_units(turned: dict[str, int]) -> None:
    units = derive("paired-squares", F(5)).units
    ways = ways_up(units, 0.25, turned)
    laid = {"A": SWATCHES["F"], "B": replace(SWATCHES["F"], letter="W", name="words")}
    assert one_way_words(laid, ways) == (
        "F birds, W words: one way up in 2 of 4 units, however they are turned."
    )
    assert one_way_words({"A": SWATCHES["F"], "B": SWATCHES["C"]}, ways) == (
        "F birds: one way up in every unit, once it is turned so."
    )
    assert one_way_words({"A": SWATCHES["C"], "B": SWATCHES["D"]}, ways) is None
