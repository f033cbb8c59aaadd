"""Two lengths in one line, and lengths said back as they were typed."""

from __future__ import annotations

from fractions import Fraction as F

import pytest

from sewalong.lengths import (
    CENTIMETRE,
    LengthFault,
    Unit,
    as_given,
    parse_across_and_down,
)


@pytest.mark.parametrize(
    ("typed", "across", "down"),
    [
        ("60 x 80", F(60), F(80)),
        ("60X80", F(60), F(80)),
        ("4 1/2 × 2 1/2", F(9, 2), F(5, 2)),
        ("60 * 80", F(60), F(80)),
        ("6 1/4", F(25, 4), F(25, 4)),
        (" 60 x 80 cm ", 60 * CENTIMETRE, 80 * CENTIMETRE),
        ("60 cm x 80 cm", 60 * CENTIMETRE, 80 * CENTIMETRE),
        ("60 in x 80 cm", F(60), 80 * CENTIMETRE),
        ('60 x 80"', F(60), F(80)),
        ("60 cm x 80", 60 * CENTIMETRE, 80 * CENTIMETRE),
    ],
)
def test_across_and_down(typed: str, across: F, down: F) -> None:
    assert parse_across_and_down(typed) == (across, down)


def test_bare_numbers_are_in_the_owners_unit() -> None:
    assert parse_across_and_down("10 x 20", Unit.CM) == (10 * CENTIMETRE, 20 * CENTIMETRE)
    assert parse_across_and_down("10 x 20 in", Unit.CM) == (F(10), F(20))


def test_three_lengths_are_refused_with_what_to_write() -> None:
    with pytest.raises(LengthFault) as fault:
        parse_across_and_down("1 x 2 x 3")
    assert str(fault.value) == (
        "'1 x 2 x 3' has more than two lengths. Write across x down: 60 x 80."
    )


@pytest.mark.parametrize(
    ("inches", "said"),
    [
        (F(41, 16), "2 9/16 in"),
        (F(81, 32), "2 17/32 in"),
        (F(161, 64), "2 33/64 in"),
        (F(22, 3), "7 1/3 in"),
        (F(25, 7), "3 4/7 in"),
        (F(19, 9), "2 1/9 in"),
        (F(13, 6), "2 1/6 in"),
        (F("2.533"), "2.533 in"),
        (F("2.5333"), "2 1/2 in"),
        (F(5), "5 in"),
    ],
)
def test_inches_are_said_as_they_were_typed(inches: F, said: str) -> None:
    assert as_given(inches) == said
    assert as_given(inches, symbol=False) == said.removesuffix(" in")


@pytest.mark.parametrize(
    ("centimetres", "said"),
    [("6.35", "6.35 cm"), ("6.4", "6.4 cm"), ("12.125", "12.125 cm"), ("6.33333", "6.3 cm")],
)
def test_centimetres_are_said_as_they_were_typed(centimetres: str, said: str) -> None:
    length = F(centimetres) * CENTIMETRE
    assert as_given(length, Unit.CM) == said
    assert as_given(length, Unit.CM, symbol=False) == said.removesuffix(" cm")


@pytest.mark.parametrize(
    ("length", "unit", "said"),
    [
        (2.515625, Unit.INCH, "2 33/64 in"),
        (2.5625, Unit.INCH, "2 9/16 in"),
        (2.533, Unit.INCH, "2 1/2 in"),
        (6.35 / 2.54, Unit.CM, "6.35 cm"),
        (6.3333 / 2.54, Unit.CM, "6.3 cm"),
    ],
)
def test_what_was_worked_out_is_said_to_the_64th_or_tenth_of_a_millimetre(
    length: float, unit: Unit, said: str
) -> None:
    assert as_given(length, unit) == said
