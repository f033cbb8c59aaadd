"""Rounding a length to a step: up for a cut, down for a trim, to the nearest for reading."""

from enum import StrEnum
from fractions import Fraction
from math import isfinite

FLOAT_NOISE = Fraction(1, 10**9)
"""How near a step a float must be, in inches, to count as that step."""


class Rounding(StrEnum):
    """Which way a length goes when it lies between two steps."""

    UP = "up"
    DOWN = "down"
    NEAREST = "nearest"


def round_to(length: Fraction | float, fineness: Fraction, rounding: Rounding) -> Fraction:
    """The whole number of steps of `fineness` that `length` comes to, as an exact length.

    Both are in the same unit (inches, everywhere in this program). UP goes to the next step
    above and DOWN to the next below, also for a difference that is less than nothing. NEAREST
    sends a length half-way between two steps to the one further from zero, so that a difference
    and its opposite print alike.

    A `Fraction` is taken as it stands. A float is a computed diagonal, which carries the noise
    of its computation: 5 comes out as 5.000000000001, and rounding that up would ask for an
    eighth too much cloth. So a float within 1e-9 in of a step is that step, and one as near to
    half-way is half-way. A billionth of an inch is far below anything cut and far above the
    noise (about 1e-13 at the longest length the program takes).

    Raises `ValueError` when `fineness` is not above zero, or a float is not a finite number.
    """
    if fineness <= 0:
        raise ValueError(f"fineness must be above zero, not {fineness}")
    if not isinstance(length, float):
        return _whole_steps(length, fineness, rounding) * fineness
    if not isfinite(length):
        raise ValueError(f"a length must be a finite number, not {length}")
    exact = Fraction(length)
    half_step = _whole_steps(exact, fineness / 2, Rounding.NEAREST) * fineness / 2
    if abs(half_step - exact) <= FLOAT_NOISE:
        exact = half_step
    return _whole_steps(exact, fineness, rounding) * fineness


def _whole_steps(length: Fraction, fineness: Fraction, rounding: Rounding) -> int:
    """How many steps of `fineness` there are in `length`, in whole numbers as they are quicker.

    Half-way to the nearest goes away from zero (Python's own rounding goes to the even).
    """
    many = length.numerator * fineness.denominator
    one = length.denominator * fineness.numerator
    match rounding:
        case Rounding.UP:
            return -(-many // one)
        case Rounding.DOWN:
            return many // one
        case Rounding.NEAREST:
            away = (2 * abs(many) + one) // (2 * one)
            return away if many >= 0 else -away
