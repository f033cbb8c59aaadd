"""Learning by doing: the unit model of what goes by the name of Wright's 80 % curve.

A rate of 0.8 means that every doubling of the number made brings the time of the single last
one down to 80 %: a record holds the time of single counts. In Wright's own words (T. P. Wright,
1936) it is the average of all made so far (cumulative average). The same rate means different
times, so a source has to be asked which it means.

Rates are between 0.5 and 1; times come out in whatever unit the first one is given in.
"""

from __future__ import annotations

from math import log, log2

PRACTISED = 10
"""The guesses are for hands that have done so many counts of a stage before (from memory);
the few borders of a quilt so are guessed somewhat longer, its hundreds of pairs shorter."""

SMALL_STEP = 0.01
"""How far the slope is moved to see what it changes."""


def exponent(rate: float) -> float:
    """The exponent b of x**-b that a rate stands for: 0.322 for 0.8, 0 for 1.

    Raises ValueError for a rate of zero or less, or above 1.
    """
    if not 0 < rate <= 1:
        raise ValueError("a learning rate lies above 0 and is 1 at most")
    return -log2(rate)


def unit_time(first: float, rate: float, n: int) -> float:
    """Unit model: the time of the `n`-th."""
    return float(first * float(n) ** -exponent(rate))


def curve_sum(b: float, before: int, n: int) -> float:
    """The sum of x**-b for the `n` counts x after the first `before`."""
    return float(sum(float(x) ** -b for x in range(before + 1, before + n + 1)))


def against_practised(b: float, before: int, n: int) -> float:
    """Logarithm of how much longer than a practised one the `n` counts (at least 1) after the
    first `before` take on average."""
    return log(curve_sum(b, before, n) / n / unit_time(1.0, 2**-b, PRACTISED))


def lean(b: float, before: int, n: int) -> float:
    """How much that logarithm moves with the exponent."""
    more, less = b + SMALL_STEP, b - SMALL_STEP
    return (against_practised(more, before, n) - against_practised(less, before, n)) / (
        2 * SMALL_STEP
    )
