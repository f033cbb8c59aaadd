"""What is said of a set: worked by the published limits, on invented fabrics."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction as F

import pytest

from sewalong.fabrics.advice import Reads, one_way_in, seams_of_a_set, twice_in
from sewalong.fabrics.families import Family
from sewalong.fabrics.swatch import Swatch, swatches
from sewalong.piecing.contacts import contacts
from sewalong.piecing.derive import derive
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
    # 30 parts of white in a hundred, mixed as light mixes: a worked case.
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
