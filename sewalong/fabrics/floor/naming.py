"""Units that are not known: each patch taken for one of her fabrics by its colour alone."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.floor.costs import apart, lights_of
from sewalong.fabrics.floor.evening import DARKEST
from sewalong.fabrics.floor.result import HowSure
from sewalong.fabrics.floor.ways import Way
from sewalong.fabrics.photo.tones import Numbers

_LIKE, _UNLIKE = 5.0, 10.0
"""CIEDE2000: above the first it is not sure that a patch is of that fabric, above the second it is
of none. Twice and four times what passes for one fabric (own choice)."""

_CLEARLY, _CLEARLY_UNEVENED = 2.5, 6.0
"""CIEDE2000 by which any other fabric must be farther off: what passes for one fabric; and where the
light was not evened. Measured on made photographs: with light that falls off by 40 in a hundred,
one patch in a hundred was named wrong by less than that."""

_ROUNDS = 4
"""Of naming and evening by the names: what was named changes little after three (measured)."""

_SEAMS = 25.0
"""Mean squares in CIELAB by which the patches of another shape must vary more, all together, so
that it is sure which way a unit lies: a twentieth of what a dark beside a light makes (own choice)."""

Named = tuple[str | None, HowSure, tuple[str, ...]]


def shown_by_fabrics(light: Numbers, colours: Mapping[str, Colour]) -> Numbers:
    """The light, places × regions × 3, as under a lamp that shows her fabrics in the colours they
    were given: brighter or darker, and of another colour, all over alike. From the light as it is
    and from one as bright as the mean of her fabrics, what fits better."""
    fabrics = lights_of(colours)
    from_mean = np.median(fabrics.mean(axis=1)) / max(float(np.median(light.mean(axis=2))), 1e-4)
    tried = [_settled(light * start, fabrics) for start in (1.0, from_mean)]
    return min(tried, key=lambda one: one[1])[0]


def _settled(light: Numbers, fabrics: Numbers) -> tuple[Numbers, float]:
    for _ in range(_ROUNDS):
        away = apart(light, fabrics)
        wanted = np.maximum(fabrics[away.argmin(axis=2)], DARKEST)
        near = away.min(axis=2) < _UNLIKE
        if near.any():
            light = light * np.exp(
                np.median(np.log(wanted / np.maximum(light, DARKEST))[near], axis=0)
            )
    return light, float(np.median(apart(light, fabrics).min(axis=2)))


def named(away: Numbers, letters: Sequence[str], *, evened: bool) -> Named:
    """The fabric a patch is taken for, how sure that is, and others it may be. `away` are its
    differences from each, `evened` whether its light was evened."""
    clearly = _CLEARLY if evened else _CLEARLY_UNEVENED
    order = np.argsort(away, kind="stable")
    best = float(away[order[0]])
    others = tuple(
        letters[at] for at in order[1:4] if away[at] < best + clearly and away[at] < _UNLIKE
    )
    if best > _UNLIKE:
        return None, HowSure.CANNOT_TELL, ()
    sure = HowSure.NOT_SURE if others or best > _LIKE else HowSure.SURE
    return letters[order[0]], sure, others


def shape_at(spread: Numbers, ways: Sequence[Way]) -> tuple[int, bool]:
    """The way whose patches vary least within, the light of one place, and whether that is plain: a
    patch laid over a seam shows both fabrics. `spread` is that of every region."""
    within = np.array([sum(spread[region] for region, _ in way.patches) for way in ways])
    best = int(within.argmin())
    others = np.delete(within, best)
    return best, bool((others - within[best] > _SEAMS).all())
