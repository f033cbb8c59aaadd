"""Learning by doing: the two models that both go by the name of Wright's 80 % curve.

A rate of 0.8 means that every doubling of the number made brings *something* down to 80 %.
In Wright's own words it is the average of all made so far (cumulative average): "the factor
by which the average labor cost in any quantity shall be multiplied in order to determine
the average labor cost for a quantity of twice that number" (T. P. Wright, 1936). In the
other, unit, model it is the time of the single last one. The same rate means different
times, so a source has to be asked which it means.

The forecast uses the unit model: a record holds the time of single counts. Rates are
between 0.5 and 1; times come out in whatever unit the first one is given in.
"""

from __future__ import annotations

from math import log2


def exponent(rate: float) -> float:
    """The exponent b of x**-b that a rate stands for: 0.322 for 0.8, 0 for 1.

    Raises ValueError for a rate of zero or less, or above 1.
    """
    if not 0 < rate <= 1:
        raise ValueError("a learning rate lies above 0 and is 1 at most")
    return -log2(rate)


def rate_from_two(first: float, second: float) -> float:
    """The rate by cumulative average, from the times of the first and of the second one."""
    return (first + second) / (2 * first)


def average_of(first: float, rate: float, n: int) -> float:
    """Cumulative-average model: the average time of the first `n`."""
    return float(first * float(n) ** -exponent(rate))


def total_of(first: float, rate: float, n: int) -> float:
    """Cumulative-average model: the time of the first `n` together; 0 for none."""
    return n * average_of(first, rate, n) if n else 0.0


def increment(first: float, rate: float, before: int, n: int) -> float:
    """Cumulative-average model: the time of those after the first `before`, up to `n`."""
    return total_of(first, rate, n) - total_of(first, rate, before)


def unit_time(first: float, rate: float, n: int) -> float:
    """Unit model: the time of the `n`-th."""
    return float(first * float(n) ** -exponent(rate))


def unit_total(first: float, rate: float, n: int) -> float:
    """Unit model: the time of the first `n` together."""
    return first * curve_sum(exponent(rate), 0, n)


def curve_sum(b: float, before: int, n: int) -> float:
    """The sum of x**-b for the `n` counts x after the first `before`."""
    return float(sum(float(x) ** -b for x in range(before + 1, before + n + 1)))
