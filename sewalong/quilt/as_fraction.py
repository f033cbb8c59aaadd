"""A computed diagonal as an exact length, so that everything after it can be reckoned exactly."""

from fractions import Fraction
from math import isfinite, sqrt

from sewalong.lengths import CENTIMETRE, Length, Unit
from sewalong.quilt.refusal import NumbersFault

ROOT_TWO = sqrt(2)

_DENOMINATOR = 10**6


def as_fraction(inches: float | Fraction) -> Length:
    """The simple fraction next to a computed number of inches, within a millionth of an inch.

    A diagonal of a diagonal comes out as 9.499999999999998; taken as it stands, rounding up
    would ask for cloth nobody needs. A `Fraction` is given back as it came.

    Raises `NumbersFault` when the number is not finite.
    """
    if isinstance(inches, Fraction):
        return inches
    if not isfinite(inches):
        raise NumbersFault("That does not come to a length. Check the sizes it was made from.")
    return Fraction(inches).limit_denominator(_DENOMINATOR)


def diagonal(side: Length) -> float:
    """The diagonal of a square, in inches (plane geometry: side times the root of two)."""
    return float(side) * ROOT_TWO


def exactly(inches: float | Fraction, unit: Unit = Unit.INCH) -> str:
    """A computed size with decimals, for reading beside the size to cut: `9.692 in`, `24.62 cm`."""
    if unit is Unit.INCH:
        return f"{float(inches):.3f} in"
    return f"{float(inches) / float(CENTIMETRE):.2f} cm"
