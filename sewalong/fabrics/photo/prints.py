"""What the pixels of one square say of its print: solid or not, of which scale, of which colours."""

from __future__ import annotations

import numpy as np

from sewalong.fabrics.photo.linear_light import colour_of
from sewalong.fabrics.photo.result import Kind, TwoColours
from sewalong.fabrics.photo.tones import Light, Numbers, averaged, lab

SOLID_WITHIN = 3.5
"""Spread in CIELAB up to which a square is a solid. Measured on made pictures: noise of 4 in 255
and JPEG at 60 leave solids under 3; dots on a tenth of the cloth that differ from it by 20 are 6."""

_FINE = 16
"""Blocks across the middle of a square in which it is looked at: finer is noise (own choice)."""

_BLOCKS = 6
"""Blocks across three quarters of a square, an eighth of its side each, by which scale is told."""

_LARGE, _SMALL = 0.45, 0.2
"""Share of the variance that is left between those blocks: above the first motifs are larger than
a block, below the second smaller; between them it is not told. Measured on checks and dots."""

_TWO = 0.85
"""Share of the variance that two colours must account for to be all there is (own choice)."""
_LEAST_SHARE = 0.05
_LEAST_APART = 15.0
"""In CIELAB: nearer than that they are one colour, woven or worn (own choice)."""


def calmed(light: Light, across: int) -> Light:
    """These pixels averaged to at least `across` blocks across, if they are finer."""
    return averaged(light, max(1, min(light.shape[:2]) // across))


def spread(light: Light, across: int = _FINE) -> float:
    """How far the pixels vary about their mean, in CIELAB, root mean square, averaged to about
    `across` of them across."""
    return float(np.sqrt(_variance(lab(calmed(light, across)))))


def kind(light: Light, varies: float) -> Kind:
    """The kind of print, from three quarters of its side and the spread of its middle."""
    if varies <= SOLID_WITHIN:
        return Kind.SOLID
    tones = lab(light)
    by = len(tones) // _BLOCKS
    cut = tones[: by * _BLOCKS, : by * _BLOCKS]
    blocks = cut.reshape(_BLOCKS, by, _BLOCKS, by, 3).mean(axis=(1, 3))
    left = _variance(blocks) / _variance(cut)
    if left > _LARGE:
        return Kind.LARGE_PRINT
    return Kind.SMALL_PRINT if left < _SMALL else Kind.PRINT


def two_colours(light: Light) -> TwoColours | None:
    """The two colours of a print that has just two, else None."""
    pixels = calmed(light, 2 * _FINE).reshape(-1, 3)
    tones = lab(pixels)
    middle = tones.mean(axis=0)
    main = np.linalg.svd(tones - middle, full_matrices=False)[2][0]
    second = (tones - middle) @ main > 0
    for _ in range(10):
        if not 0 < second.sum() < len(second):
            return None
        ends = [tones[~second].mean(axis=0), tones[second].mean(axis=0)]
        second = _squared(tones - ends[1]) < _squared(tones - ends[0])
    if 2 * second.sum() > len(second):
        second = ~second
    share = float(second.mean())
    if share < _LEAST_SHARE:
        return None
    groups = (tones[~second], tones[second])
    within = sum(float(_squared(group - group.mean(axis=0)).sum()) for group in groups)
    apart = float(np.sqrt(_squared(groups[0].mean(axis=0) - groups[1].mean(axis=0))))
    if apart < _LEAST_APART or 1 - within / _squared(tones - middle).sum() < _TWO:
        return None
    ground, other = (np.median(pixels[which], axis=0) for which in (~second, second))
    return TwoColours(colour_of(ground), colour_of(other), round(share, 2))


def spreads(light: Light) -> Numbers:
    """The spread with the pixels averaged more and more: small motifs are gone before large."""
    return np.array([spread(light, across) for across in (_FINE, _FINE // 2, _FINE // 4)])


def tones_by_share(light: Light) -> Numbers:
    """The L* that 5, 10 ... 95 in a hundred of the pixels stay under."""
    found: Numbers = np.percentile(lab(calmed(light, _FINE))[..., 0], np.arange(5, 100, 5))
    return found


def _variance(tones: Numbers) -> float:
    return float(_squared(tones - tones.mean(axis=(0, 1))).mean())


def _squared(away: Numbers) -> Numbers:
    found: Numbers = (away**2).sum(axis=-1)
    return found
