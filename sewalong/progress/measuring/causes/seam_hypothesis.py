"""Every seam too wide or too narrow: by another foot, or by drift."""

from __future__ import annotations

from fractions import Fraction

from sewalong.lengths import Length
from sewalong.progress.measuring.causes.alike import bell
from sewalong.progress.measuring.causes.feet import Foot, other_feet
from sewalong.progress.measuring.causes.priors import BY_DRIFT, DRIFT, Why
from sewalong.progress.measuring.causes.weighing import Weighed, Weighing
from sewalong.progress.measuring.tape import HAND, together
from sewalong.progress.record.measurable import RATE_NOISE
from sewalong.quilt.as_fraction import as_fraction

NAMED = 2.0
"""Standard deviations within which a seam is called by a foot, and its range is given: 19 in 20 lie
in it."""

DOUBTFUL = 0.25
"""A foot is named though drift is likelier, up to four times: a person can look at the foot. From
memory."""

LEAST_SEAM, MOST_SEAM = Fraction(1, 32), Fraction(5, 8)
"""Nobody sews seams outside these, in inches. Common practice."""


def seam_weighed(at: Weighing) -> Weighed:
    """The seam that gives such readings, where one does that people sew."""
    evidence, a = at.evidence, at.a
    each = shared_out(at.group.short, a)
    seam = evidence.seam + each
    if not LEAST_SEAM <= seam <= MOST_SEAM:
        return
    room = Fraction(NAMED * at.fine / abs(a)).limit_denominator(10**4)
    feet = _feet(at)
    if evidence.seam_read is None:
        drifts = (share * bell(at.x, together(at.fine, a * by)) for share, by in DRIFT)
        drift, miss = BY_DRIFT * sum(drifts), 0.0
        weight = drift + sum(there for _, there in feet)
    else:
        weight = drift = bell(at.x - at.shift, at.noise)
        miss = abs(at.x - at.shift) / at.noise
    y_rate = 0.0 if evidence.other_way is None else evidence.other_way.allowances / a
    y, y_miss = at.other_way(at.x * y_rate, at.fine * abs(y_rate))
    known = evidence.seam_read is not None
    named = [
        foot
        for foot, there in feet
        if (known or there > DOUBTFUL * drift) and _is_near(at, seam, foot)
    ]
    cause = at.cause(
        Why.WIDE if each > 0 else Why.NARROW,
        seam=seam,
        least=seam - room,
        most=seam + room,
        off_each=each,
        foot=named[0] if named and not at.group.uneven else None,
    )
    yield cause, at.prior(Why.WIDE) * weight * y, max(miss, y_miss)


def shared_out(short: Length, allowances: float) -> Length:
    """What each allowance takes too much where all together lack `short`."""
    whole = round(allowances)
    if abs(allowances - whole) < RATE_NOISE:
        return short / whole
    return as_fraction(float(short) / allowances)


def _feet(at: Weighing) -> list[tuple[Foot, float]]:
    """Other feet with how likely the readings are by them, the likeliest first."""
    found = []
    for foot in other_feet(at.evidence.seam, at.evidence.unit):
        off = at.x + at.a * float(foot.seam - at.evidence.seam)
        there = bell(off, together(at.fine, at.a * HAND))
        found.append((foot, (1 - BY_DRIFT) * foot.share * there))
    return sorted(found, key=lambda one: -one[1])


def _is_near(at: Weighing, seam: Length, foot: Foot) -> bool:
    """Whether a tape could not tell this foot from what the readings come to."""
    meant = at.evidence.seam
    near = abs(float(foot.seam - seam)) <= NAMED * together(at.fine / at.a, HAND)
    return near and (foot.seam > meant) == (seam > meant)
