"""How lengths print in both units, and that the way they were rounded is told truly."""

from fractions import Fraction
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.lengths import (
    CENTIMETRE,
    Rounding,
    Unit,
    direction,
    from_cm,
    parse,
    show,
    show_some,
    show_stated,
    to_cm,
)

UNITS = st.sampled_from(Unit)
ROUNDINGS = st.sampled_from(Rounding)
FINENESS = st.sampled_from(
    [Fraction(1, n) for n in (1, 2, 3, 4, 8, 10, 16, 32, 100)] + [Fraction(5)]
)
LENGTHS = st.one_of(
    st.fractions(min_value=-1000, max_value=1000, max_denominator=10_000),
    st.floats(min_value=-1000, max_value=1000),
)


def one(unit: Unit) -> Fraction:
    """One of `unit` in inches, told apart from the program's own table of units."""
    return Fraction(1) if unit is Unit.INCH else Fraction(100, 254)


@pytest.mark.parametrize(
    ("length", "text"),
    [
        (Fraction(5, 2), "2 1/2 in"),
        (Fraction(5), "5 in"),
        (Fraction(7, 8), "7/8 in"),
        (Fraction(0), "0 in"),
        (Fraction(-1, 8), "-1/8 in"),
        (Fraction(-5, 2), "-2 1/2 in"),
        (Fraction(1, 100), "0 in"),
        (Fraction(-1, 100), "0 in"),
        (Fraction(999999, 1000000), "1 in"),
        (5 * sqrt(2), "7 1/8 in"),
        (1200.0, "1200 in"),
    ],
)
def test_inches(length: Fraction | float, text: str) -> None:
    assert show(length) == text


@pytest.mark.parametrize(
    ("centimetres", "text"),
    [
        ("6.4", "6.4 cm"),
        ("6.35", "6.4 cm"),
        ("6.34", "6.3 cm"),
        ("6", "6 cm"),
        ("10", "10 cm"),
        ("0.3", "0.3 cm"),
        ("0", "0 cm"),
        ("0.01", "0 cm"),
        ("-0.01", "0 cm"),
        ("-0.3", "-0.3 cm"),
        ("-12.5", "-12.5 cm"),
    ],
)
def test_centimetres(centimetres: str, text: str) -> None:
    assert show(from_cm(Fraction(centimetres)), Unit.CM) == text


def test_fineness_is_given_in_the_unit_printed() -> None:
    length = Fraction("2.2")
    assert show(length, fineness=Fraction(1, 16)) == "2 3/16 in"
    assert show(length, fineness=Fraction(1, 4)) == "2 1/4 in"
    assert show(length, Unit.CM, fineness=Fraction(1, 2)) == "5.5 cm"
    assert show(length, Unit.CM, fineness=Fraction(1, 4)) == "5.5 cm"
    assert show(Fraction("2.3"), Unit.CM, fineness=Fraction(1, 4)) == "5.75 cm"
    assert show(length, Unit.CM, fineness=Fraction(1)) == "6 cm"


@pytest.mark.parametrize("text", ["0.04", "6.375", "0.5", "12.16", "-0.008"])
def test_as_many_decimals_as_the_number_has(text: str) -> None:
    assert show(from_cm(Fraction(text)), Unit.CM, fineness=Fraction(1, 1000)) == f"{text} cm"


def test_centimetres_no_decimal_ends_on_are_written_as_a_fraction() -> None:
    assert show(from_cm(Fraction(19, 3)), Unit.CM, fineness=Fraction(1, 3)) == "6 1/3 cm"


def test_the_unit_can_be_left_off() -> None:
    assert show(Fraction(5, 2), symbol=False) == "2 1/2"
    assert show(from_cm(Fraction("6.4")), Unit.CM, symbol=False) == "6.4"
    assert show_stated(Fraction("5.9"), symbol=False) == "5 7/8 (rounded down)"


def test_the_way_it_was_rounded_stands_behind_it() -> None:
    # 5.864 in: what a unit from 5 in four-patches finishes at.
    assert show_stated(5.864) == "5 7/8 in (rounded up)"
    assert show_stated(5.864, rounding=Rounding.DOWN) == "5 3/4 in (rounded down)"
    assert show_stated(Fraction(47, 8)) == "5 7/8 in"
    assert show_stated(5.875 + 1e-12, rounding=Rounding.UP) == "5 7/8 in"
    assert show_stated(Fraction(5, 2), Unit.CM, rounding=Rounding.DOWN) == "6.3 cm (rounded down)"


def test_what_a_zero_hides_is_told() -> None:
    assert show_stated(Fraction(1, 100)) == "0 in (rounded down)"
    assert show_stated(Fraction(-1, 100)) == "0 in (rounded up)"
    assert direction(Fraction(0)) == "exact"


@pytest.mark.parametrize("sign", [1, -1])
def test_what_is_more_than_nothing_never_reads_as_nought(sign: int) -> None:
    sixteenth = Fraction(1, 16)
    assert show_some(sign * Fraction(1, 33), Unit.INCH, sixteenth) == "less than 1/16 in"
    assert show_some(sign * Fraction(1, 32), Unit.INCH, sixteenth).endswith("1/16 in")
    assert "less" not in show_some(sign * Fraction(1, 32), Unit.INCH, sixteenth)
    assert show_some(sign * CENTIMETRE / 30, Unit.CM, Fraction(1, 10)) == "less than 0.1 cm"
    assert show_some(Fraction(0), Unit.INCH, sixteenth) == "0 in"


def test_the_steps_of_a_ruler_and_finer() -> None:
    assert Unit.INCH.finest == Fraction(1, 64)
    assert Unit.CM.finest == Fraction(1, 100)
    assert (Unit.INCH.step, Unit.INCH.trim_step) == (Fraction(1, 8), Fraction(1, 8))
    assert (Unit.CM.step, Unit.CM.trim_step) == (CENTIMETRE / 10, CENTIMETRE / 2)


@given(st.integers(min_value=1, max_value=8000))
def test_what_is_printed_in_eighths_is_read_back_the_same(eighths: int) -> None:
    length = Fraction(eighths, 8)
    assert parse(show(length)) == length
    assert parse(show(length, symbol=False)) == length
    assert show(parse(show(length))) == show(length)


@given(st.integers(min_value=1, max_value=25400))
def test_what_is_printed_in_millimetres_is_read_back_the_same(millimetres: int) -> None:
    length = millimetres / Fraction("25.4")
    assert parse(show(length, Unit.CM)) == length
    assert parse(show(length, Unit.CM, symbol=False), Unit.CM) == length


@given(st.integers(min_value=1, max_value=150), UNITS, FINENESS)
def test_every_step_of_every_fineness_is_read_back_the_same(
    steps: int, unit: Unit, fineness: Fraction
) -> None:
    length = steps * fineness * one(unit)
    assert parse(show(length, unit, fineness=fineness)) == length
    assert direction(length, unit, fineness=fineness) == "exact"


@given(LENGTHS, UNITS, FINENESS, ROUNDINGS)
def test_showing_moves_a_length_by_less_than_a_step_and_the_way_it_says(
    length: Fraction | float, unit: Unit, fineness: Fraction, rounding: Rounding
) -> None:
    text = show(length, unit, fineness=fineness, rounding=rounding, symbol=False)
    shown = sum((Fraction(part) for part in text.lstrip("-").split()), Fraction(0)) * one(unit)
    moved = (-shown if text.startswith("-") else shown) - Fraction(length)
    noise = Fraction(1, 10**9) if isinstance(length, float) else Fraction(0)

    assert abs(moved) < fineness * one(unit)
    match direction(length, unit, fineness=fineness, rounding=rounding):
        case "rounded up":
            assert moved > 0
            assert rounding is not Rounding.DOWN
        case "rounded down":
            assert moved < 0
            assert rounding is not Rounding.UP
        case way:
            assert way == "exact"
            assert abs(moved) <= noise


@given(LENGTHS, UNITS)
def test_a_nought_never_has_a_sign(length: Fraction | float, unit: Unit) -> None:
    assert not show(length, unit).startswith("-0 ")


def test_centimetres_and_inches_are_exact_of_each_other() -> None:
    assert to_cm(Fraction(5, 2)) == Fraction("6.35")
    assert from_cm(Fraction("6.35")) == Fraction(5, 2)
    assert to_cm(CENTIMETRE) == 1
