"""The seams a presser foot or a line of the needle plate gives."""

from __future__ import annotations

from fractions import Fraction

from msgspec import Struct

from sewalong.lengths import CENTIMETRE, Length, Unit


class Foot(Struct, frozen=True):
    """A seam allowance in inches that people have a foot or a line for, in the unit it is called by;
    `share` is how often it is the one among those that are not the patchwork foot."""

    seam: Length
    called_in: Unit
    share: float


_MILLIMETRE = CENTIMETRE / 10

FEET = (
    Foot(Fraction(3, 8), Unit.INCH, 0.30),
    Foot(Fraction(5, 16), Unit.INCH, 0.22),
    Foot(Fraction(3, 16), Unit.INCH, 0.18),
    Foot(Fraction(1, 8), Unit.INCH, 0.10),
    Foot(Fraction(1, 2), Unit.INCH, 0.06),
    Foot(Fraction(1, 4), Unit.INCH, 0.04),
    Foot(10 * _MILLIMETRE, Unit.CM, 0.04),
    Foot(7 * _MILLIMETRE, Unit.CM, 0.03),
    Foot(5 * _MILLIMETRE, Unit.CM, 0.03),
)
"""Common practice: the ordinary foot is 3/8 in or 7 mm from needle to edge, an edge foot 1/8 in, and
plates are ruled in eighths or in 5 and 10 mm. The shares are from memory, for an owner of inches."""

_FOR_CENTIMETRES = {Unit.INCH: 0.5, Unit.CM: 6.0}
"""How many times as often it is one of these for an owner of centimetres. From memory."""

SAME = Fraction(1, 50)
"""A foot as near as this to the seam meant is that seam, in inches: 5 mm and 3/16 in are one, 7 mm
and 1/4 in are two. From memory."""


def other_feet(seam: Length, unit: Unit) -> tuple[Foot, ...]:
    """The feet that give another seam than the one meant, for an owner who works in `unit`; their
    shares add up to 1."""
    others = [foot for foot in FEET if abs(foot.seam - seam) > SAME]
    weigh = {foot: _weight(foot, unit) for foot in others}
    whole = sum(weigh.values())
    return tuple(Foot(foot.seam, foot.called_in, weigh[foot] / whole) for foot in others)


def _weight(foot: Foot, unit: Unit) -> float:
    return foot.share * (_FOR_CENTIMETRES[foot.called_in] if unit is Unit.CM else 1.0)
