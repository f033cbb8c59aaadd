"""What else than the seam makes a piece too short or too long."""

from __future__ import annotations

from fractions import Fraction
from math import exp

from sewalong.progress.measuring.causes.alike import bell
from sewalong.progress.measuring.causes.priors import (
    ALL_CUT_SO,
    DRAWS_IN,
    IN_EVERY_ROW,
    MISREAD,
    ONE_MORE,
    PULLED,
    PULLED_ON_THE_BIAS,
    UNCOUNTED,
    Why,
)
from sewalong.progress.measuring.causes.weighing import Weighed, Weighing
from sewalong.progress.measuring.tape import near_enough, together

MOST_PIECES = 9
"""No more pieces too many or too few are looked for; each further one is rarer by ONE_MORE."""

MOST_STRETCH = 0.06
"""The share of its length beyond which cloth tears rather than stretches; twice it on the bias.
From memory."""

MOST_OFF = 2.0
"""Standard deviations that a reading may say more than the most that cloth stretches: one in forty
does by chance."""


def counts_weighed(at: Weighing) -> Weighed:
    """Pieces too few or too many."""
    evidence = at.evidence
    if evidence.of < 2:
        return
    usual = at.again * (1.0 if evidence.counted else UNCOUNTED) / max(1, len(evidence.adds))
    # Of unlike pieces no more than one is looked for: two could be any of many.
    most = MOST_PIECES if len(evidence.adds) == 1 else 1
    for adds in evidence.adds:
        for n in range(1, most + 1):
            share, effect = usual * ONE_MORE ** (n - 1), n * float(adds)
            if n < evidence.of:
                yield at.exact(Why.MISSING, -effect, share=share, pieces=n, adds=adds)
            yield at.exact(Why.TOO_MANY, effect, share=share, pieces=n, adds=adds)


def miscut_weighed(at: Weighing) -> Weighed:
    """One piece cut or trimmed to another size, or all of them where all readings are alike."""
    evidence, x = at.evidence, at.x - at.shift
    all_so = at.group.is_all and not evidence.is_alone
    pieces = evidence.of if all_so else 1
    scale = ALL_CUT_SO * pieces if all_so else MISREAD
    short = Fraction(-x / pieces).limit_denominator(10**6)
    largest = evidence.largest or evidence.expected / 2
    y, y_miss = at.other_way(None if all_so else 0.0)
    rare = IN_EVERY_ROW if evidence.is_one else at.again
    size = abs(x) / scale
    weight = at.prior(Why.MISCUT) * rare * size * exp(-size) / (2 * scale) * y
    if abs(short) < largest:
        yield at.cause(Why.MISCUT, cut_short=short), weight, y_miss


def swapped_weighed(at: Weighing) -> Weighed:
    """A piece of another kind, or one that lies the other way."""
    evidence = at.evidence
    near = 2 * near_enough(evidence.expected)
    others = [one for one in evidence.others if abs(one.reading - evidence.expected) > near]
    for one in others:
        way, y_effect = evidence.other_way, None
        if way is not None and one.other_way is not None:
            y_effect = float(one.other_way - way.expected)
        effect = float(one.reading - evidence.expected)
        share = 1 / len(others)
        yield at.exact(Why.SWAPPED, effect, share=share, y_effect=y_effect, like=one.words)


def stretched_weighed(at: Weighing) -> Weighed:
    """Cloth pulled longer one way; the other way it draws in a little."""
    bias, x = at.evidence.bias, at.x - at.shift
    pulled = PULLED_ON_THE_BIAS if bias else PULLED
    most = MOST_STRETCH * (2 if bias else 1)
    prior = at.prior(Why.STRETCHED) * (2 if bias else 1)
    length = float(at.evidence.expected)
    if 0 < x <= most * length + MOST_OFF * at.noise:
        y, y_miss = at.other_way(0.0, DRAWS_IN * x)
        weight = prior * 2 * bell(x, together(at.noise, pulled * length)) * y
        yield at.cause(Why.STRETCHED), weight, y_miss
    if at.evidence.other_way is None or at.y is None:
        return
    length = float(at.evidence.other_way.expected)
    if 0 < at.y <= most * length + MOST_OFF * at.y_noise:
        noise = together(at.noise, DRAWS_IN * at.y)
        y = 2 * bell(at.y, together(at.y_noise, pulled * length))
        yield at.cause(Why.STRETCHED, crosswise=True), prior * bell(x, noise) * y, abs(x) / noise


def slip_weighed(at: Weighing) -> Weighed:
    """The tape was laid between the wrong edges."""
    evidence = at.evidence
    if evidence.slip is not None:
        yield at.exact(Why.SLIP, float(evidence.slip - evidence.expected))
