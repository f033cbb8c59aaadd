"""Cloth as it is sold: in yards by the eighth, or in metres by the tenth, never too little."""

from fractions import Fraction

from sewalong.lengths.printing import decimal, mixed
from sewalong.lengths.rounding import Rounding, round_to
from sewalong.lengths.units import METRE, YARD, Length, Unit


def round_up_yards(length: Fraction | float) -> Length:
    """The length to buy, in inches: the next eighth of a yard (4 1/2 in)."""
    return round_to(length, YARD / 8, Rounding.UP)


def round_up_metres(length: Fraction | float) -> Length:
    """The length to buy, in inches: the next tenth of a metre (10 cm)."""
    return round_to(length, METRE / 10, Rounding.UP)


def show_yards(length: Fraction | float) -> str:
    """A length in inches as yards to buy, rounded up: `1 1/4 yd`."""
    return f"{mixed(round_up_yards(length) / YARD)} yd"


def show_metres(length: Fraction | float) -> str:
    """A length in inches as metres to buy, rounded up: `1.2 m`."""
    return f"{decimal(round_up_metres(length) / METRE)} m"


def round_up_cloth(length: Fraction | float, unit: Unit = Unit.INCH) -> Length:
    """The length to buy, in inches, for an owner who works in `unit`.

    What is bought less what is needed is the slack.
    """
    return round_up_yards(length) if unit is Unit.INCH else round_up_metres(length)


def cloth_length(length: Fraction | float, unit: Unit = Unit.INCH) -> str:
    """A length in inches as cloth to buy, rounded up: `1 1/4 yd` or, for centimetres, `1.2 m`."""
    return show_yards(length) if unit is Unit.INCH else show_metres(length)
