"""Every form of a length that is read, and what it is read as."""

from fractions import Fraction

import pytest

from sewalong.lengths import INCH_MM, YARD, Length, Unit, parse

MM = 1 / INCH_MM

TWO_AND_A_HALF = [
    "2 1/2",
    "2-1/2",
    "2–1/2",
    "2‐1/2",
    "2‑1/2",
    "2½",
    "2 ½",
    "2-½",
    '2½"',
    '2 ½"',
    '2 1/2 "',
    "2½″",
    "2½”",
    "2½“",
    "2½''",
    "2½’’",
    "2½′′",
    "2½ in",
    "2½in",
    "2½ in.",
    "2½ IN",
    "2½ ins",
    "2½ inch",
    "2 1/2 Inches",
    "2½-inch",
    "2.5-in",
    "2 1⁄2",
    "2 1∕2",
    "2 1 / 2",
    "2  1/2",
    "  2 1/2\t",
    "2\u00a01/2\u202fin",
    "2 2/4",
    "2.5",
    "2.50 in",
    "2,5",
    "02.5",
    "63.5 mm",
    "63,5mm",
    "63 1/2 mm",
    "6.35cm",
    "6,35 cm",
    "6.35 Centimetres",
    "6.35 centimeters",
    "0.0635 m",
    "0,0635 meters",
    ".0635 metre",
    "5/72 yd",
]


@pytest.mark.parametrize("text", TWO_AND_A_HALF)
def test_two_and_a_half_inches_is_read_however_it_is_written(text: str) -> None:
    assert parse(text) == Fraction(5, 2)


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("5", Fraction(5)),
        ("1/4", Fraction(1, 4)),
        ("0 1/4", Fraction(1, 4)),
        (".25", Fraction(1, 4)),
        ("3/2", Fraction(3, 2)),
        ("9/8", Fraction(9, 8)),
        ("11/16", Fraction(11, 16)),
        ("10/8", Fraction(5, 4)),
        ("1 yd", Fraction(36)),
        ("1/2 yd", Fraction(18)),
        ("1/2yd", Fraction(18)),
        ("½ yard", Fraction(18)),
        ("1 1/4 yards", Fraction(45)),
        ("2 yds.", Fraction(72)),
        ("0.5 m", 500 * MM),
        ("2,5 cm", 25 * MM),
        ("5 1/2 mm", Fraction(11, 2) * MM),
        ("2½ cm", 25 * MM),
        ("0,125", Fraction(1, 8)),
        ("2,25", Fraction(9, 4)),
        ("2,1255", Fraction(21255, 10000)),
        ("1234,567 mm", Fraction(1234567, 1000) * MM),
        ("0 1/2", Fraction(1, 2)),
        ("1.000", Fraction(1)),
        ("1000", Fraction(1000)),
        ("25.4 m", Fraction(1000)),
        ("21½", Fraction(43, 2)),
        ("5 6/7", Fraction(41, 7)),
    ],
)
def test_each_form_is_read_exactly(text: str, inches: Length) -> None:
    assert parse(text) == inches


@pytest.mark.parametrize(
    ("vulgar", "typed"),
    [
        ("½", "1/2"),
        ("⅓", "1/3"),
        ("⅔", "2/3"),
        ("¼", "1/4"),
        ("¾", "3/4"),
        ("⅕", "1/5"),
        ("⅖", "2/5"),
        ("⅗", "3/5"),
        ("⅘", "4/5"),
        ("⅙", "1/6"),
        ("⅚", "5/6"),
        ("⅐", "1/7"),
        ("⅛", "1/8"),
        ("⅜", "3/8"),
        ("⅝", "5/8"),
        ("⅞", "7/8"),
        ("⅑", "1/9"),
        ("⅒", "1/10"),
    ],
)
def test_a_fraction_in_one_character_is_the_typed_fraction(vulgar: str, typed: str) -> None:
    assert parse(vulgar) == parse(typed) == Fraction(typed)
    assert parse(f"3{vulgar}") == parse(f"3 {typed}") == 3 + Fraction(typed)


def test_a_bare_number_is_in_the_owners_unit() -> None:
    assert parse("6.35", Unit.CM) == parse("2.5", Unit.INCH) == Fraction(5, 2)
    assert parse("6,35", Unit.CM) == Fraction(5, 2)


def test_a_written_unit_wins_over_the_owners() -> None:
    assert parse("2½ in", Unit.CM) == parse("6.35 cm", Unit.INCH) == Fraction(5, 2)
    assert parse("1 yd", Unit.CM) == YARD
