"""How likely the readings of a group are under a cause that foretells them."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import sqrt

from sewalong.progress.measuring.causes.alike import Group, bell
from sewalong.progress.measuring.causes.cause import Cause
from sewalong.progress.measuring.causes.evidence import Evidence, OtherWay
from sewalong.progress.measuring.causes.priors import ONCE_MORE, PRIORS, Why
from sewalong.progress.measuring.tape import hand_noise, reading_noise, seam_noise, together

SEAM_READ = 0.012
"""The noise of an allowance read at the back: mostly within a 64th of an inch either way.
From memory."""

ANYTHING = 0.5
"""Density, by the inch, of what a cause says nothing of: anywhere in two inches. From memory."""

Weighed = Iterator[tuple[Cause, float, float]]
"""A cause, its weight, and by how many standard deviations the readings miss it."""


class Weighing:
    """The readings of a group as one number: `x` is how much they are over on average, `fine` its
    noise, and `noise` the same where the seam proves right but is not quite it."""

    def __init__(self, evidence: Evidence, group: Group) -> None:
        self.evidence, self.group = evidence, group
        self.a = evidence.allowances
        self.x = -float(group.short)
        expected, n = evidence.expected, len(group.places)
        # Readings that are all the same were rounded the same way, so their mean is no finer.
        marks = len({evidence.readings[place] for place in group.places})
        tape = reading_noise(expected) / sqrt(marks)
        self.fine = together(tape, hand_noise(self.a, evidence.of) / sqrt(n), group.uneven)
        self.shift, self.noise = 0.0, together(self.fine, seam_noise(self.a))
        if evidence.seam_read is not None:
            self.shift = -self.a * float(evidence.seam_read - evidence.seam)
            self.noise = together(self.fine, self.a * SEAM_READ)
        # What happens to one piece alone happens to several alike less often each time.
        self.again = 1.0 if group.is_all else ONCE_MORE ** (n - 1)
        self.y, self.y_noise = _read(evidence.other_way)

    def prior(self, why: Why) -> float:
        """How common the cause is where so many of the readings are wrong."""
        prior = PRIORS[why]
        if self.evidence.is_alone:
            return prior.alone
        return prior.alike if self.group.is_all else prior.some

    def exact(self, why: Why, effect: float, *, share: float = 1.0,
              y_effect: float | None = 0.0, **more: object) -> tuple[Cause, float, float]:  # fmt: skip
        """A cause under which the piece is over by exactly `effect`."""
        off = self.x - self.shift - effect
        y, y_miss = self.other_way(y_effect)
        weight = self.prior(why) * share * bell(off, self.noise) * y
        return self.cause(why, **more), weight, max(abs(off) / self.noise, y_miss)

    def other_way(self, effect: float | None, noise: float = 0.0) -> tuple[float, float]:
        """How likely the other way's readings are under an effect that way (None: any)."""
        if self.y is None:
            return 1.0, 0.0
        if effect is None:
            return ANYTHING, 0.0
        noise = together(self.y_noise, noise)
        return bell(self.y - effect, noise), abs(self.y - effect) / noise

    def cause(self, why: Why, **more: object) -> Cause:
        """A cause of this group's readings."""
        group = self.group
        uneven = group.uneven > 0
        return Cause(why, group.short, group.places, group.is_all, uneven, **more)  # type: ignore[arg-type]


def _read(way: OtherWay | None) -> tuple[float | None, float]:
    """How much the other way is over on average, and its noise."""
    if way is None or not way.readings:
        return None, 0.0
    n = len(way.readings)
    off = float(sum(way.readings, Fraction(0)) / n - way.expected)
    hand = together(hand_noise(way.allowances) / sqrt(n), seam_noise(way.allowances))
    return off, together(reading_noise(way.expected), hand)
