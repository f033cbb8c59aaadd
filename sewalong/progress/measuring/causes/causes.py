"""Every cause that fits the readings within what a tape can show, the likeliest first.

Each cause says what would be read under it. How well that fits the readings, by the noise of tape
and hand, times how common the cause is (`PRIORS`) gives how likely it is; a cause that no tape
could confuse with the readings is left out.
"""

from __future__ import annotations

from msgspec.structs import replace

from sewalong.progress.measuring.causes.alike import Group, groups
from sewalong.progress.measuring.causes.cause import Cause
from sewalong.progress.measuring.causes.evidence import Evidence
from sewalong.progress.measuring.causes.other_hypotheses import (
    counts_weighed,
    miscut_weighed,
    slip_weighed,
    stretched_weighed,
    swapped_weighed,
)
from sewalong.progress.measuring.causes.priors import Why
from sewalong.progress.measuring.causes.seam_hypothesis import seam_weighed
from sewalong.progress.measuring.causes.weighing import Weighed, Weighing
from sewalong.progress.record.measurable import RATE_NOISE

FITS = 3.5
"""Standard deviations beyond which a cause does not fit: one in two thousand does by chance."""

UNLIKELY = 0.005
"""The share below which a cause is not worth a word. From memory."""

OTHERS = (counts_weighed, miscut_weighed, swapped_weighed, stretched_weighed, slip_weighed)


def causes(evidence: Evidence) -> tuple[Cause, ...]:
    """The causes that fit, the likeliest first; only OTHER where none does.

    Where readings lie apart, both are weighed: that all are wrong alike, and that some are wrong
    among right ones.
    """
    weighed = [
        (cause, weight * group.likely)
        for group in groups(evidence)
        for cause, weight, miss in _weighed(evidence, group)
        if miss <= FITS
    ]
    whole = sum(weight for _, weight in weighed)
    if not whole and evidence.other_way is not None and evidence.other_way.readings:
        # Both ways may be wrong, each for its own reason.
        return causes(replace(evidence, other_way=replace(evidence.other_way, readings=())))
    if not whole:
        return (Weighing(evidence, next(groups(evidence))).cause(Why.OTHER),)
    kinds: dict[tuple[object, ...], Cause] = {}
    # Of the ways to take the readings, the one that makes a cause likeliest is told.
    for cause, weight in sorted(weighed, key=lambda one: -one[1]):
        key = (cause.why, cause.pieces, cause.adds, cause.like, cause.crosswise)
        so_far = kinds.get(key, replace(cause, likely=0.0))
        kinds[key] = replace(so_far, likely=so_far.likely + weight / whole)
    found = [cause for cause in kinds.values() if cause.likely > UNLIKELY]
    return tuple(sorted(found, key=lambda cause: -cause.likely))


def _weighed(evidence: Evidence, group: Group) -> Weighed:
    at = Weighing(evidence, group)
    if abs(evidence.allowances) > RATE_NOISE:
        yield from seam_weighed(at)
    if evidence.allowances < 0:
        # An allowance is nothing but seam.
        return
    for weighed in OTHERS:
        yield from weighed(at)
