"""Lengths and amounts as people say them, fine enough for a seam."""

from __future__ import annotations

from fractions import Fraction

from sewalong.lengths import Length, Unit, show_some

_FINE = {Unit.INCH: Fraction(1, 16), Unit.CM: Fraction(1, 10)}


def plainly(length: Length, unit: Unit) -> str:
    """A difference or a reading, to the nearest sixteenth of an inch or millimetre."""
    return show_some(length, unit, _FINE[unit])


def finely(length: Length, unit: Unit) -> str:
    """A seam, to the nearest 64th of an inch or tenth of a millimetre."""
    return show_some(length, unit, unit.finest)
