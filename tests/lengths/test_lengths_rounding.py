"""Rounding to a step: exact for fractions, guarded against the noise of floats."""

from fractions import Fraction
from math import ceil, floor, inf, nan, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.lengths import Rounding, round_to

EIGHTH = Fraction(1, 8)
LENGTHS = st.fractions(min_value=-1000, max_value=1000, max_denominator=10_000)
STEPS = st.sampled_from(
    [Fraction(1, 16), EIGHTH, Fraction(1, 4), Fraction(1, 2), Fraction(1), Fraction(5, 127)]
)


@pytest.mark.parametrize(
    ("length", "rounding", "rounded"),
    [
        (Fraction(5), Rounding.UP, Fraction(5)),
        (Fraction(5), Rounding.DOWN, Fraction(5)),
        (Fraction("5.01"), Rounding.UP, Fraction(41, 8)),
        (Fraction("5.12"), Rounding.DOWN, Fraction(5)),
        (Fraction("5.07"), Rounding.NEAREST, Fraction(41, 8)),
        (Fraction("5.06"), Rounding.NEAREST, Fraction(5)),
        (Fraction(1, 16), Rounding.NEAREST, EIGHTH),
        (Fraction(3, 16), Rounding.NEAREST, Fraction(1, 4)),
        (Fraction(-1, 16), Rounding.NEAREST, -EIGHTH),
        (Fraction(-1, 16), Rounding.UP, Fraction(0)),
        (Fraction(-1, 16), Rounding.DOWN, -EIGHTH),
    ],
)
def test_to_an_eighth(length: Fraction, rounding: Rounding, rounded: Fraction) -> None:
    assert round_to(length, EIGHTH, rounding) == rounded


@given(LENGTHS, STEPS)
def test_up_and_down_are_the_next_steps(length: Fraction, step: Fraction) -> None:
    assert round_to(length, step, Rounding.UP) == ceil(length / step) * step
    assert round_to(length, step, Rounding.DOWN) == floor(length / step) * step


@given(LENGTHS, STEPS)
def test_nearest_is_never_more_than_half_a_step_away(length: Fraction, step: Fraction) -> None:
    nearest = round_to(length, step, Rounding.NEAREST)
    assert abs(nearest - length) <= step / 2
    assert (nearest / step).denominator == 1
    assert round_to(-length, step, Rounding.NEAREST) == -nearest


@given(LENGTHS, STEPS, st.sampled_from(Rounding))
def test_rounding_twice_changes_nothing(
    length: Fraction, step: Fraction, rounding: Rounding
) -> None:
    once = round_to(length, step, rounding)
    assert round_to(once, step, rounding) == once


@given(
    st.integers(min_value=-8000, max_value=8000),
    STEPS,
    st.sampled_from(Rounding),
    st.floats(min_value=-9e-10, max_value=9e-10),
)
def test_a_float_as_good_as_on_a_step_is_that_step(
    steps: int, step: Fraction, rounding: Rounding, noise: float
) -> None:
    assert round_to(float(steps * step) + noise, step, rounding) == steps * step


def test_the_noise_of_a_diagonal_does_not_ask_for_an_eighth_more() -> None:
    # sqrt(2) * sqrt(2) * 1.5 is 3.0000000000000004 in floats.
    there_and_back = sqrt(2) * sqrt(2) * 1.5
    assert there_and_back > 3
    assert round_to(there_and_back, EIGHTH, Rounding.UP) == 3
    assert round_to(5.000000000001, EIGHTH, Rounding.UP) == 5
    assert round_to(4.999999999999, EIGHTH, Rounding.DOWN) == 5


def test_a_float_off_the_step_by_more_than_noise_is_rounded() -> None:
    assert round_to(5.0001, EIGHTH, Rounding.UP) == Fraction(41, 8)
    assert round_to(5.0000000011, EIGHTH, Rounding.UP) == Fraction(41, 8)
    assert round_to(4.9999, EIGHTH, Rounding.DOWN) == Fraction(39, 8)


def test_a_fraction_is_never_taken_for_noise() -> None:
    hair_over = 5 + Fraction(1, 10**12)
    assert round_to(hair_over, EIGHTH, Rounding.UP) == Fraction(41, 8)


def test_noise_beside_half_way_goes_as_half_way_goes() -> None:
    assert round_to(0.0625 - 1e-12, EIGHTH, Rounding.NEAREST) == EIGHTH
    assert round_to(0.0625 + 1e-12, EIGHTH, Rounding.NEAREST) == EIGHTH
    assert round_to(0.0625 - 1e-12, EIGHTH, Rounding.DOWN) == 0
    assert round_to(0.0625 + 1e-12, EIGHTH, Rounding.UP) == EIGHTH
    assert round_to(-0.0625 + 1e-12, EIGHTH, Rounding.NEAREST) == -EIGHTH


def test_a_whole_number_of_python_is_taken_too() -> None:
    assert round_to(5, EIGHTH, Rounding.UP) == 5


@pytest.mark.parametrize("fineness", [Fraction(0), Fraction(-1, 8)])
def test_a_step_must_be_above_zero(fineness: Fraction) -> None:
    with pytest.raises(ValueError, match="above zero"):
        round_to(Fraction(1), fineness, Rounding.UP)


@pytest.mark.parametrize("length", [inf, -inf, nan])
def test_a_float_must_be_a_number(length: float) -> None:
    with pytest.raises(ValueError, match="finite"):
        round_to(length, EIGHTH, Rounding.UP)
