"""So many hours, as a range: a belief about a time that is still to come."""

from __future__ import annotations

from collections.abc import Sequence
from math import exp
from statistics import NormalDist

from msgspec import Struct

HELD = 0.80
"""The chance with which the true time lies in the stated range."""

_STEPS = 60


class Hours(Struct, frozen=True):
    """`low` to `high` holds the truth in 80 of 100 cases, `middle` is as likely over as under."""

    low: float
    middle: float
    high: float


class LogNormal(Struct, frozen=True):
    """A time whose logarithm is normal, with the `chance` that this is the right one of several."""

    chance: float
    mean: float
    spread: float


def range_of(likely: Sequence[LogNormal]) -> Hours:
    """The range of a time that is one of `likely`, whose chances add up to 1."""
    tail = (1 - HELD) / 2
    return Hours(quantile(likely, tail), quantile(likely, 0.5), quantile(likely, 1 - tail))


def quantile(likely: Sequence[LogNormal], p: float) -> float:
    """The time within which it is done with chance `p`, by halving an interval that holds it."""
    far = abs(NormalDist().inv_cdf(p)) + 1
    low = min(one.mean - far * one.spread for one in likely)
    high = max(one.mean + far * one.spread for one in likely)
    normal = NormalDist()
    for _ in range(_STEPS):
        middle = (low + high) / 2
        within = sum(one.chance * normal.cdf((middle - one.mean) / one.spread) for one in likely)
        low, high = (middle, high) if within < p else (low, middle)
    return exp(middle)
