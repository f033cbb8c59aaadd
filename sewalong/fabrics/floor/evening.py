"""Light evened by the units themselves: a fabric of known colour says how light it is where it lies."""

from __future__ import annotations

import numpy as np
from msgspec import Struct

from sewalong.fabrics.floor.costs import Costs, Indices, Ways, way_costs
from sewalong.fabrics.photo.surface import fit
from sewalong.fabrics.photo.tones import Flags, Numbers, luminance

_LIFTS = np.arange(-0.75, 0.76, 0.15)
"""By how much the light of a place may be off, as its logarithm: from half to twice. Steps of it
change a middle value by 3 in L* (own choice)."""

_ROUNDS = 3
"""Of finding units and evening by them: what was found changes little after two (measured)."""

_FEWEST = 24
"""Patches from which on a bent surface can be told from a mistake or two (own choice)."""

DARKEST = 0.004
"""Linear light under which a part of a colour says nothing of the lamp's (own choice)."""


_CLEARLY = 50.0
"""Squares of CIEDE2000 by which what lies at a place must fit worse in any other light, so that it
says how light it is there: one patch off by 7, three times what passes for one fabric (own
choice)."""

_OTHER_LIFT = 2
"""Steps of `_LIFTS` from which on a light is another (own choice)."""


class Evened(Struct, frozen=True):
    """The light of every patch, places × regions × 3, as under a lamp that shows the fabrics in the
    colours they were given; and for each place the logarithm of how dark the lamp was there, before
    anything was evened, not a number where the units do not say."""

    light: Numbers
    dark: Numbers


def evened(light: Numbers, ways: Ways, points: Numbers, *, smoothly: bool) -> Evened:
    """`points` are where the regions lie, places × regions × 2, each share of the whole 0 to 1.

    All light is first brought to the mean of the fabrics, part by part: all units lie there. Then
    each place has the unit and the light that suit it best together, and a smooth surface through
    what these say is taken off; with `smoothly` false only its level.
    """
    light = light * _to_mean(light, ways)
    least = np.full((len(light), len(ways.regions)), np.inf, dtype=np.float32)
    by_lift: list[Costs] = []
    for lift in _LIFTS:
        costs = way_costs(light * np.exp(lift), ways)
        np.minimum(least, costs, out=least)
        by_lift.append(costs.min(axis=1))
    best = least.argmin(axis=1)
    dark = _dark(_off(light, ways, best), np.stack(by_lift))
    for number in range(_ROUNDS):
        if number:
            best = way_costs(light, ways).argmin(axis=1)
        light = light * _lift(light, ways, best, points, smoothly=smoothly)[..., None]
        light = light * _cast(light, ways, best)
    return Evened(light, dark)


def _dark(off: Numbers, by_lift: Costs) -> Numbers:
    """The usual darkness of the patches of each place, where only one light suits: `by_lift` has
    the least costs, lifts × places."""
    own = by_lift.argmin(axis=0)
    other = np.abs(np.arange(len(by_lift))[:, None] - own) > _OTHER_LIFT
    clear = np.where(other, by_lift, np.inf).min(axis=0) - by_lift.min(axis=0) > _CLEARLY
    clear &= np.isfinite(off).any(axis=1)
    dark = np.full(len(off), np.nan)
    dark[clear] = np.nanmedian(off[clear], axis=1)
    return dark


def _to_mean(light: Numbers, ways: Ways) -> Numbers:
    known = ways.fabrics < len(ways.light)
    wanted = ways.light[ways.fabrics[known]].mean(axis=0)
    seen = light[:, np.unique(ways.regions[known])].mean(axis=(0, 1))
    found: Numbers = wanted / np.maximum(seen, DARKEST)
    return found


def _pairs(light: Numbers, ways: Ways, best: Indices) -> tuple[Numbers, Numbers, Flags]:
    """Of each patch of the best ways, places × patches: the light seen, its fabric's, and whether
    that is known."""
    regions, fabrics = ways.regions[best], ways.fabrics[best]
    known = fabrics < len(ways.light)
    places = np.arange(len(light))[:, None]
    seen = light[places, np.where(known, regions, 0)]
    return seen, ways.light[np.where(known, fabrics, 0)], known


def _off(light: Numbers, ways: Ways, best: Indices) -> Numbers:
    """The logarithm of how much darker than its fabric each patch is; not a number where that is
    not known."""
    seen, wanted, known = _pairs(light, ways, best)
    bright, aim = (
        np.maximum(luminance(part.astype(np.float32)), DARKEST) for part in (seen, wanted)
    )
    return np.where(known, np.log(aim / bright), np.nan)


def _lift(light: Numbers, ways: Ways, best: Indices, points: Numbers, *, smoothly: bool) -> Numbers:
    """By how much to make each region lighter, places × regions."""
    off = _off(light, ways, best)
    known = np.isfinite(off)
    if not smoothly or known.sum() < _FEWEST:
        return np.full(light.shape[:2], np.exp(np.median(off[known])) if known.any() else 1.0)
    places = np.arange(len(light))[:, None]
    at = points[places, np.where(known, ways.regions[best], 0)][known]
    surface, _ = fit(at[:, 0], at[:, 1], np.exp(off[known]), 1.0, 1.0)
    found: Numbers = np.exp(surface.log_at(points[..., 0], points[..., 1]))
    return found


def _cast(light: Numbers, ways: Ways, best: Indices) -> Numbers:
    """By how much to change red, green and blue, the colour of the lamp, its brightness apart."""
    seen, wanted, known = _pairs(light, ways, best)
    seen, wanted = seen[known], wanted[known]
    use = (np.minimum(seen, wanted) > DARKEST).all(axis=-1)
    if not use.any():
        return np.ones(3)
    off = np.median(np.log(wanted[use] / seen[use]), axis=0)
    found: Numbers = np.exp(off - off.mean())
    return found
