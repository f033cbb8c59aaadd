"""The inch, the yard and conversions against published values and against `pint`.

Sources, each beside what it says:
- "1 in = 25.4 mm exact": NIST Handbook 44 Appendix C / SP 811; International Yard and Pound
  Agreement 1959. https://docslib.org/doc/6734737/appendix-c-general-tables-of-units-of-measurement
- "1 yd = 0.9144 m exact": the same; https://en.wikipedia.org/wiki/Yard?oldid=704108643
- "36 in = 91 cm; 40.1 in = 101.9 cm": NIST LC 1137, as quoted at
  http://daysontheweb.blogspot.com/2006/10/nist-metric-information-an_116135405415359333.html
- the table of eighths and sixteenths in millimetres: arithmetic, no source.
"""

from fractions import Fraction

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.lengths import (
    INCH_CM,
    INCH_MM,
    METRE,
    MILLIMETRE,
    YARD,
    Unit,
    parse,
    show,
    to_cm,
)

REGISTRY: pint.UnitRegistry[Fraction] = pint.UnitRegistry(non_int_type=Fraction)
PINT_NAMES = {"in": "inch", "yd": "yard", "mm": "millimeter", "cm": "centimeter", "m": "meter"}


def by_pint(number: Fraction, unit: str) -> Fraction:
    """That many of a unit in inches, as `pint` has it, exactly."""
    inches = REGISTRY.Quantity(number, PINT_NAMES[unit]).to("inch").magnitude
    assert isinstance(inches, Fraction)
    return inches


def test_an_inch_is_exactly_25_4_millimetres() -> None:
    assert Fraction("25.4") == INCH_MM
    assert Fraction("2.54") == INCH_CM
    assert parse("25.4 mm") == 1


def test_a_yard_is_exactly_0_9144_metres() -> None:
    assert Fraction("0.9144") * METRE == YARD
    assert parse("0.9144 m") == parse("1 yd") == 36


def test_published_roundings_to_centimetres() -> None:
    assert show(Fraction(36), Unit.CM, fineness=Fraction(1)) == "91 cm"
    assert show(Fraction("40.1"), Unit.CM) == "101.9 cm"
    assert to_cm(Fraction(36)) == Fraction("91.44")
    assert to_cm(Fraction("40.1")) == Fraction("101.854")


@pytest.mark.parametrize(
    ("inches", "millimetres"),
    [
        ("1/16", "1.5875"),
        ("1/8", "3.175"),
        ("3/16", "4.7625"),
        ("1/4", "6.35"),
        ("5/16", "7.9375"),
        ("3/8", "9.525"),
        ("1/2", "12.7"),
        ("5/8", "15.875"),
        ("3/4", "19.05"),
        ("7/8", "22.225"),
        ("1", "25.4"),
        ("1 1/4", "31.75"),
        ("2 1/2", "63.5"),
        ("5", "127.0"),
        ("10", "254.0"),
    ],
)
def test_inches_in_millimetres(inches: str, millimetres: str) -> None:
    assert parse(f"{inches} in") == parse(f"{millimetres} mm")
    assert parse(inches) / MILLIMETRE == Fraction(millimetres)


@given(
    st.integers(min_value=1, max_value=20),
    st.integers(min_value=1, max_value=15),
    st.sampled_from(sorted(PINT_NAMES)),
)
def test_a_mixed_number_in_any_unit_is_what_pint_makes_of_it(
    whole: int, sixteenths: int, unit: str
) -> None:
    number = whole + Fraction(sixteenths, 16)
    assert parse(f"{whole} {sixteenths}/16 {unit}") == by_pint(number, unit)


@given(
    st.decimals(min_value="0.01", max_value="25", places=2),
    st.sampled_from(sorted(PINT_NAMES)),
    st.sampled_from(".,"),
)
def test_a_decimal_in_any_unit_is_what_pint_makes_of_it(
    number: Fraction, unit: str, mark: str
) -> None:
    text = f"{number:.2f}".replace(".", mark)
    assert parse(f"{text}{unit}") == by_pint(Fraction(number), unit)
