"""Several lengths in one line: what parts them, and which unit each is in."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.lengths import INCH_MM, LengthFault, Unit, parse, parse_several

MM = 1 / INCH_MM
CM = 10 * MM


def test_commas_part_lengths_and_so_do_semicolons() -> None:
    assert parse_several("9 1/2, 9 5/8") == (F(19, 2), F(77, 8))
    assert parse_several("9 1/2; 9 5/8") == (F(19, 2), F(77, 8))
    assert parse_several("9.5,9 5/8;9½") == (F(19, 2), F(77, 8), F(19, 2))


def test_one_length_is_a_line_of_one() -> None:
    assert parse_several("9 1/2") == (F(19, 2),)


@pytest.mark.parametrize("text", ["9, 9½", "9,, 9½", ", 9, 9½", "9, 9½,", "9; ,9½ ;", " 9 , 9½ "])
def test_what_stands_empty_between_two_commas_is_passed_over(text: str) -> None:
    assert parse_several(text) == (F(9), F(19, 2))


@pytest.mark.parametrize(
    "text", ["15.9, 16.1 cm", "15.9; 16.1 cm", "159, 161 mm", "15.9, 16.1 CM."]
)
@pytest.mark.parametrize("unit", list(Unit))
def test_the_unit_behind_the_last_is_that_of_all(text: str, unit: Unit) -> None:
    assert parse_several(text, unit) == (159 * MM, 161 * MM)


@pytest.mark.parametrize("text", ['9 1/2, 9 5/8"', "9 1/2, 9 5/8 in", "9½, 9⅝″", "9½, 9⅝ inches"])
def test_an_inch_quilt_and_a_metric_one_read_inches_alike(text: str) -> None:
    for unit in Unit:
        assert parse_several(text, unit) == (F(19, 2), F(77, 8))


def test_without_a_unit_the_lengths_are_in_the_quilts_own() -> None:
    assert parse_several("15, 16", Unit.INCH) == (F(15), F(16))
    assert parse_several("15, 16", Unit.CM) == (15 * CM, 16 * CM)


def test_each_keeps_the_unit_of_its_own() -> None:
    assert parse_several("6 3/8 in, 162 mm") == (F(51, 8), 162 * MM)
    assert parse_several("162 mm, 6 3/8 in") == (162 * MM, F(51, 8))
    assert parse_several("162 mm, 6 3/8") == (162 * MM, F(51, 8))
    assert parse_several("16 cm, 6 1/2 in, 7", Unit.CM) == (16 * CM, F(13, 2), 7 * CM)


@pytest.mark.parametrize(
    "unit_behind", ["mm", "cm", "m", "metre", "meters", "centimetres", "centimeter", "Millimetres"]
)
def test_a_comma_between_digits_is_a_decimal_comma_before_every_metric_unit(
    unit_behind: str,
) -> None:
    one = parse(f"1 {unit_behind}")
    assert parse_several(f"1,5 {unit_behind}") == (F(3, 2) * one,)
    assert parse_several(f"1,5, 1,7 {unit_behind}") == (F(3, 2) * one, F(17, 10) * one)


def test_a_decimal_comma_needs_no_unit_in_a_metric_quilt() -> None:
    assert parse_several("15,9", Unit.CM) == (159 * MM,)
    assert parse_several("15,9, 16,1", Unit.CM) == (159 * MM, 161 * MM)
    assert parse_several("15,9; 16,1", Unit.CM) == (159 * MM, 161 * MM)


def test_in_inches_a_comma_between_digits_parts_two_lengths() -> None:
    assert parse_several("9,10") == (F(9), F(10))
    assert parse_several("9,10 in", Unit.CM) == (F(9), F(10))


def test_a_decimal_comma_is_told_by_the_units_of_its_own_length() -> None:
    assert parse_several("15,9 cm, 6 1/4 in") == (159 * MM, F(25, 4))
    assert parse_several("6 1/4 in, 15,9 cm") == (F(25, 4), 159 * MM)
    assert parse_several("15,9 cm; 6,7") == (159 * MM, F(6), F(7))


@pytest.mark.parametrize("text", ["15,9,16,1", "15,9 16,1", "15.9,16.1"])
def test_decimal_commas_that_run_together_are_refused_and_not_guessed_at(text: str) -> None:
    with pytest.raises(LengthFault, match="more than one point or comma"):
        parse_several(text, Unit.CM)


def test_millimetres_that_may_be_thousands_are_refused() -> None:
    with pytest.raises(LengthFault, match=r"may be 159161 or 159[.]161"):
        parse_several("159,161 mm")


@pytest.mark.parametrize("text", ["", "  ", ",", " ; ", ",,"])
def test_a_line_with_nothing_in_it_is_refused(text: str) -> None:
    with pytest.raises(LengthFault, match=r"No (length is given|number was found)"):
        parse_several(text)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("9, nine", "not a unit known here"),
        ("nine, 9", "No number was found in 'nine'"),
        ("9, 0", "read as zero"),
        ("9, -3", "less than zero"),
        ("9, 2000", "too long"),
        ("16, 17 feet", "feet"),
        ("9 1/2 9 5/8", "more than"),
        ("cm", "No number was found in 'cm'"),
    ],
)
def test_one_that_is_no_length_refuses_the_whole_line(text: str, says: str) -> None:
    with pytest.raises(LengthFault) as fault:
        parse_several(text)
    assert says in fault.value.sentence


lengths = st.integers(1, 4000).map(lambda tenths: F(tenths, 10))


@given(st.lists(lengths, min_size=1, max_size=6), st.sampled_from([", ", "; ", ";", " , "]))
def test_what_is_written_is_read_as_it_was_meant(read: list[F], between: str) -> None:
    with_points = between.join(f"{float(n)}" for n in read)
    with_commas = between.join(f"{float(n)}".replace(".", ",") for n in read)
    assert parse_several(f"{with_commas} cm") == tuple(n * CM for n in read)
    assert parse_several(with_commas, Unit.CM) == tuple(n * CM for n in read)
    assert parse_several(with_points) == tuple(read)


def test_a_full_stop_behind_the_unit_leaves_a_decimal_comma_one() -> None:
    assert parse_several("15,9 cm.", Unit.INCH) == parse_several("15.9 cm", Unit.INCH)
