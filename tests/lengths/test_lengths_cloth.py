"""Cloth as it is sold: yards by the eighth and metres by the tenth, never too little.

The steps are common practice at the cutting counter.
"""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.lengths import (
    Unit,
    cloth_length,
    round_up_cloth,
)

LENGTHS = st.fractions(min_value=0, max_value=1000, max_denominator=1000)


@pytest.mark.parametrize(
    ("inches", "yards"),
    [
        (Fraction(45), "1 1/4 yd"),
        (Fraction(36), "1 yd"),
        (Fraction(36) + Fraction(1, 100), "1 1/8 yd"),
        (Fraction(1), "1/8 yd"),
        (Fraction(55, 2), "7/8 yd"),
        (Fraction(27), "3/4 yd"),
        (Fraction(0), "0 yd"),
    ],
)
def test_yards(inches: Fraction, yards: str) -> None:
    assert cloth_length(inches, Unit.INCH) == yards


@pytest.mark.parametrize(
    ("centimetres", "metres"),
    [("120", "1.2 m"), ("120.1", "1.3 m"), ("100", "1 m"), ("5", "0.1 m"), ("0", "0 m")],
)
def test_metres(centimetres: str, metres: str) -> None:
    inches = Fraction(centimetres) / Fraction("2.54")
    assert cloth_length(inches, Unit.CM) == metres


def test_binding_of_eleven_strips_needs_more_than_three_quarters_of_a_yard() -> None:
    # Common practice, by arithmetic: 11 strips of 2 1/2 in are 27 1/2 in, over the 27 in of 3/4 yd.
    need = 11 * Fraction(5, 2)
    assert cloth_length(need) == "7/8 yd"
    assert round_up_cloth(need) - need == 4


def test_a_diagonal_does_not_ask_for_an_eighth_more_by_noise() -> None:
    assert cloth_length(36.00000000000001) == "1 yd"
    assert cloth_length(100 / 2.54, Unit.CM) == "1 m"


@given(LENGTHS)
def test_what_is_bought_is_enough_and_less_than_a_step_over(length: Fraction) -> None:
    yards = round_up_cloth(length, Unit.INCH)
    assert length <= yards < length + Fraction(9, 2)
    assert (yards / Fraction(9, 2)).denominator == 1

    tenth = Fraction(1000, 254)
    metres = round_up_cloth(length, Unit.CM)
    assert length <= metres < length + tenth
    assert (metres / tenth).denominator == 1
