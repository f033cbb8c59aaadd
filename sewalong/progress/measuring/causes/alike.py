"""Which of several readings are wrong: all of them alike, or some among right ones.

Every way to take them is kept with how likely it makes the readings, for a drifted seam and a
mis-cut piece can look alike in three readings.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from math import exp, pi, sqrt

from msgspec import Struct

from sewalong.lengths import Length
from sewalong.progress.measuring.causes.evidence import Evidence
from sewalong.progress.measuring.tape import (
    hand_noise,
    near_enough,
    reading_noise,
    seam_noise,
    together,
)

APART = 4.0
"""Standard deviations of one reading within which readings are alike: two that are lie further apart
once in two hundred times (normal distribution, the difference of two)."""

STRAY = 0.02
"""How likely a reading of its own is, by the inch: one in twenty-five, anywhere in two inches.
From memory."""

UNEVEN = 0.05
"""How likely it is that all were made so unevenly that no two need be alike. From memory."""


class Group(Struct, frozen=True):
    """Readings to be explained: their `places` (from 0) among all, and what they lack on average.

    `is_all` when it is they that are the rule, whatever the others. `uneven` is the noise of their
    mean where no two need be alike, else 0. `likely` is how likely it is that these lie so about
    their mean, and the others as they do.
    """

    places: tuple[int, ...]
    short: Length
    is_all: bool
    uneven: float
    likely: float


def bell(off: float, noise: float) -> float:
    """The density of the normal distribution."""
    return exp(-((off / noise) ** 2) / 2) / (noise * sqrt(2 * pi))


def groups(evidence: Evidence) -> Iterator[Group]:
    """The ways to take the readings: all alike; all made unevenly; the many alike and the others
    stray; those that are farthest off wrong and the others right."""
    noise = together(reading_noise(evidence.expected), hand_noise(evidence.allowances, evidence.of))
    every = tuple(range(len(evidence.readings)))
    yield _group(evidence, every, noise, is_all=True)
    if evidence.is_alone:
        return
    near = near_enough(evidence.expected)
    many = _largest(evidence, Fraction(APART * noise))
    if len(many) < len(every):
        yield _group(evidence, every, noise, is_all=True, uneven=True)
    off = abs(_mean(evidence, many) - evidence.expected)
    if len(every) / 2 <= len(many) < len(every) and off > near:
        yield _group(evidence, many, noise, is_all=True, strays=len(every) - len(many))
    far = sorted(every, key=lambda place: -abs(evidence.readings[place] - evidence.expected))
    for n in range(1, len(every)):
        wrong, others = far[:n], far[n:]
        off = abs(evidence.readings[wrong[-1]] - evidence.expected)
        if off <= near:
            return
        if evidence.readings[wrong[-1]] == evidence.readings[others[0]]:
            continue
        right = _group(evidence, others, noise, is_all=False)
        fine = together(noise / sqrt(len(others)), seam_noise(evidence.allowances))
        there = right.likely * bell(float(right.short), fine)
        yield _group(evidence, sorted(wrong), noise, is_all=False, likely=there)


def _largest(evidence: Evidence, apart: Length) -> tuple[int, ...]:
    """The most readings that lie within `apart`; of as many, those nearest to what is expected."""
    readings = evidence.readings

    def within(low: Length) -> tuple[int, ...]:
        return tuple(place for place, one in enumerate(readings) if 0 <= one - low <= apart)

    def worth(found: tuple[int, ...]) -> tuple[int, Length]:
        return len(found), -abs(_mean(evidence, found) - evidence.expected)

    return max((within(low) for low in readings), key=worth)


def _group(
    evidence: Evidence,
    places: Sequence[int],
    noise: float,
    *,
    is_all: bool,
    uneven: bool = False,
    strays: int = 0,
    likely: float = 1.0,
) -> Group:
    n, mean = len(places), _mean(evidence, places)
    offs = [float(evidence.readings[place] - mean) for place in places]
    scatter = sqrt(sum(off**2 for off in offs) / n)
    if uneven:
        noise, likely = max(noise, scatter), likely * UNEVEN
    likely *= STRAY**strays / bell(0.0, noise / sqrt(n))
    for off in offs:
        likely *= bell(off, noise)
    return Group(
        places=tuple(places),
        short=evidence.expected - mean,
        is_all=is_all,
        uneven=scatter / sqrt(n) if uneven else 0.0,
        likely=likely,
    )


def _mean(evidence: Evidence, places: Sequence[int]) -> Length:
    return sum((evidence.readings[place] for place in places), Fraction(0)) / len(places)
