"""Lengths and amounts as people say them, fine enough for a seam."""

from __future__ import annotations

from fractions import Fraction

from sewalong.lengths import Length, Unit, show

_FINE = {Unit.INCH: Fraction(1, 16), Unit.CM: Fraction(1, 10)}
_FINEST = {Unit.INCH: Fraction(1, 64), Unit.CM: Fraction(1, 100)}


def plainly(length: Length, unit: Unit) -> str:
    """A difference or a reading, to the nearest sixteenth of an inch or millimetre."""
    return _never_nought(length, unit, _FINE[unit])


def finely(length: Length, unit: Unit) -> str:
    """A seam, to the nearest 64th of an inch or tenth of a millimetre."""
    return _never_nought(length, unit, _FINEST[unit])


def _never_nought(length: Length, unit: Unit, fine: Fraction) -> str:
    """The length at a step, or that it is less than the step: never a bare nought."""
    if 0 < abs(length) < fine * unit.length / 2:
        return f"less than {show(fine * unit.length, unit, fineness=fine)}"
    return show(length, unit, fineness=fine)
