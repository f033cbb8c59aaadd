"""Cloth as it is sold: in yards by the eighth, or in metres by the tenth, never too little."""

from fractions import Fraction

from sewalong.lengths.printing import decimal, mixed
from sewalong.lengths.rounding import Rounding, round_to
from sewalong.lengths.units import METRE, YARD, Length, Unit


def round_up_cloth(length: Fraction | float, unit: Unit = Unit.INCH) -> Length:
    """The length to buy, in inches, for an owner who works in `unit`: the next eighth of a yard
    (4 1/2 in), or the next tenth of a metre (10 cm).

    What is bought less what is needed is the slack.
    """
    return round_to(length, YARD / 8 if unit is Unit.INCH else METRE / 10, Rounding.UP)


def cloth_length(length: Fraction | float, unit: Unit = Unit.INCH) -> str:
    """A length in inches as cloth to buy, rounded up: `1 1/4 yd` or, for centimetres, `1.2 m`."""
    bought = round_up_cloth(length, unit)
    return f"{mixed(bought / YARD)} yd" if unit is Unit.INCH else f"{decimal(bought / METRE)} m"
