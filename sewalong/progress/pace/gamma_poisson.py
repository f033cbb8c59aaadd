"""A rate that is not known: gamma belief, Poisson counts, and the time the next k will take.

Pieces come at a rate of so many a minute, as a Poisson process; the belief about the rate
is a gamma distribution with shape `pieces` and rate `minutes`, as if so many pieces had
been watched for so many minutes. Watching more simply adds (the conjugate update). The
time of the next k pieces is then a gamma with an unknown rate: `minutes` times a beta
prime with parameters k and `pieces`. That this time is over t is the same as that fewer
than k pieces come within t, and that number is negative binomial.

Neither `pieces` nor k has to be whole. Textbook results; the tests hold them to an
independent implementation.
"""

from __future__ import annotations

from math import exp, inf, lgamma, log, log1p
from statistics import NormalDist

from msgspec import Struct

_SMALL = 1e-300
_STEPS = 10_000


class Rate(Struct, frozen=True):
    """A belief about a rate, worth `pieces` watched for `minutes`; both above zero."""

    pieces: float
    minutes: float

    def told(self, pieces: float, minutes: float) -> Rate:
        """The belief after `pieces` more in `minutes` more."""
        return Rate(self.pieces + pieces, self.minutes + minutes)

    def mean(self, k: float) -> float:
        """Expected minutes of the next `k` pieces; infinite for a belief of 1 piece or less."""
        return k * self.minutes / (self.pieces - 1) if self.pieces > 1 else inf

    def variance(self, k: float) -> float:
        """Variance of that time; infinite for a belief of 2 pieces or less."""
        if self.pieces <= 2:
            return inf
        square = self.minutes**2 * k * (k + 1) / ((self.pieces - 1) * (self.pieces - 2))
        return square - self.mean(k) ** 2

    def within(self, k: float, minutes: float) -> float:
        """The chance that the next `k` pieces take no more than `minutes`."""
        if minutes <= 0:
            return 0.0
        return incomplete_beta(k, self.pieces, minutes / (minutes + self.minutes))

    def quantile(self, k: float, p: float) -> float:
        """The minutes within which the next `k` pieces are done with chance `p`.

        Found by halving an interval that holds it; `p` lies between 0 and 1, both left out,
        otherwise ValueError.
        """
        if not 0 < p < 1:
            raise ValueError("a chance lies between 0 and 1")
        low, high = self._around(k, p)
        while high - low > 1e-9:
            middle = (low + high) / 2
            low, high = (middle, high) if self.within(k, exp(middle)) < p else (low, middle)
        return exp((low + high) / 2)

    def _around(self, k: float, p: float) -> tuple[float, float]:
        """Logarithms of two times with the quantile between them, near a log-normal guess."""
        spread = (1 / k + 1 / self.pieces) ** 0.5
        guess = log(k * self.minutes / self.pieces) + NormalDist().inv_cdf(p) * spread
        low, high, step = guess - spread / 8, guess + spread / 8, spread / 8
        while self.within(k, exp(low)) > p:
            low, step = low - step, step * 2
        while self.within(k, exp(high)) < p:
            high, step = high + step, step * 2
        return low, high


def incomplete_beta(a: float, b: float, x: float) -> float:
    """The regularized incomplete beta function I_x(a, b), for `a` and `b` above zero.

    By its continued fraction (modified Lentz), turned round where that converges faster.
    """
    if x <= 0:
        return 0.0
    if x >= 1:
        return 1.0
    front = exp(lgamma(a + b) - lgamma(a) - lgamma(b) + a * log(x) + b * log1p(-x))
    if x < (a + 1) / (a + b + 2):
        return front * _fraction(a, b, x) / a
    return 1 - front * _fraction(b, a, 1 - x) / b


def _fraction(a: float, b: float, x: float) -> float:
    c = 1.0
    d = 1 / _away_from_zero(1 - (a + b) * x / (a + 1))
    value = d
    for m in range(1, _STEPS):
        for term in (
            m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m)),
            -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1)),
        ):
            d = 1 / _away_from_zero(1 + term * d)
            c = _away_from_zero(1 + term / c)
            value *= d * c
        if abs(d * c - 1) < 1e-13:
            return value
    raise ArithmeticError("the continued fraction did not settle")


def _away_from_zero(value: float) -> float:
    return value if abs(value) > _SMALL else _SMALL
