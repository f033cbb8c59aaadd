"""How fast this owner gets faster: one exponent of the unit learning curve for all stages."""

from __future__ import annotations

from collections.abc import Sequence
from math import log

from msgspec import Struct

from sewalong.progress.pace.evidence import evidence_of
from sewalong.progress.pace.session_samples import Spell

USUAL_SLOPE = 0.12
"""Before the record knows: each doubling brings a piece's time to 92 %. From memory."""

SLOPE_SPREAD = 0.08
"""How far owners lie from that, as a standard deviation. From memory."""


class Slope(Struct, frozen=True):
    """The exponent b of x**-b for the x-th piece of a stage, and how sure it is."""

    b: float
    variance: float


def slope_from(spells: Sequence[Spell]) -> Slope:
    """The slope after `spells`: a straight line through logarithms, with a normal prior.

    Every stage has a height of its own; only stages with two spells or more say anything.
    A spell counts as made at the middle of its pieces.
    """
    precision = 1 / SLOPE_SPREAD**2
    weighted = USUAL_SLOPE * precision
    for stage in {spell.stage for spell in spells}:
        points = [
            (evidence_of(spell.n), log(spell.before + (spell.n + 1) / 2), log(spell.each))
            for spell in spells
            if spell.stage == stage
        ]
        weight = sum(w for w, _, _ in points)
        middle = sum(w * x for w, x, _ in points) / weight
        precision += sum(w * (x - middle) ** 2 for w, x, _ in points)
        weighted -= sum(w * (x - middle) * y for w, x, y in points)
    return Slope(max(0.0, weighted / precision), 1 / precision)
