"""Lengths and amounts as people say them, fine enough for a seam."""

from __future__ import annotations

from fractions import Fraction

from sewalong.lengths import Length, Rounding, Unit, round_to, show, show_some

_FINE = {Unit.INCH: Fraction(1, 16), Unit.CM: Fraction(1, 10)}
_FINER = {
    Unit.INCH: (Fraction(1, 16), Fraction(1, 32), Fraction(1, 64)),
    Unit.CM: (Fraction(1, 10), Fraction(1, 100)),
}


def plainly(length: Length, unit: Unit) -> str:
    """A difference or a reading, to the nearest sixteenth of an inch or millimetre."""
    return show_some(length, unit, _FINE[unit])


def finely(length: Length, unit: Unit) -> str:
    """A seam, to the nearest 64th of an inch or tenth of a millimetre."""
    return show_some(length, unit, unit.finest)


def told_apart(one: Length, other: Length, unit: Unit) -> tuple[str, str, str]:
    """Two lengths that differ and their difference, as fine as it takes to read as different; the
    difference is that of the two as they read."""
    for fine in _FINER[unit]:
        a, b = (round_to(length, fine * unit.length, Rounding.NEAREST) for length in (one, other))
        if a != b:
            break
    else:
        mark = show(unit.finest * unit.length, unit, fineness=unit.finest)
        return finely(one, unit), finely(other, unit), f"less than {mark}"
    return show(a, unit, fineness=fine), show(b, unit, fineness=fine), show(abs(a - b), unit,
                                                                          fineness=fine)  # fmt: skip
