"""The unit lengths are kept in, the units they are written in, and what one is of the other.

Every length in the program is an exact `Fraction` of an inch. By the international yard and
pound agreement of 1959 one inch is exactly 25.4 mm and one yard exactly 0.9144 m (36 inches),
as NIST Handbook 44, Appendix C, has it.
"""

from enum import StrEnum
from fractions import Fraction

Length = Fraction
"""An exact number of inches."""

INCH = Fraction(1)

INCH_MM = Fraction("25.4")
"""Millimetres in an inch, exactly."""

INCH_CM = INCH_MM / 10
"""Centimetres in an inch, exactly."""

MILLIMETRE = 1 / INCH_MM
"""One millimetre, in inches."""

CENTIMETRE = 1 / INCH_CM
"""One centimetre, in inches."""

METRE = 1000 / INCH_MM
"""One metre, in inches."""

YARD = Fraction(36)
"""One yard, in inches."""

LONGEST = Fraction(1000)
"""The longest length a person can mean, in inches (about 28 yards): more is a slip of the hand."""


_EIGHTH = Fraction(1, 8)
_SIXTY_FOURTH = Fraction(1, 64)
_HUNDREDTH = Fraction(1, 100)


class Unit(StrEnum):
    """The unit a quilt's owner works in."""

    INCH = "inch"
    CM = "cm"

    @property
    def symbol(self) -> str:
        """What stands behind a number in this unit: `in` or `cm`."""
        return "in" if self is Unit.INCH else "cm"

    @property
    def length(self) -> Length:
        """One of this unit, in inches."""
        return INCH if self is Unit.INCH else CENTIMETRE

    @property
    def step(self) -> Length:
        """The step lengths are printed at unless told otherwise, in inches.

        An eighth of an inch, which is what rulers for cutting cloth are marked in; or a
        millimetre.
        """
        return _EIGHTH if self is Unit.INCH else MILLIMETRE

    @property
    def finest(self) -> Fraction:
        """The step for what is finer than a ruler, such as a seam allowance, in this unit: a 64th
        of an inch, or a tenth of a millimetre."""
        return _SIXTY_FOURTH if self is Unit.INCH else _HUNDREDTH

    @property
    def trim_step(self) -> Length:
        """The step units are trimmed to, in inches: an eighth of an inch, or half a centimetre."""
        return _EIGHTH if self is Unit.INCH else CENTIMETRE / 2


def to_cm(length: Length) -> Fraction:
    """The same length as an exact number of centimetres."""
    return length * INCH_CM


def from_cm(centimetres: Fraction) -> Length:
    """A number of centimetres as an exact number of inches."""
    return centimetres * CENTIMETRE
