"""The four corners of units that lie edge to edge: where they end and the cloth beneath begins."""

from __future__ import annotations

from itertools import combinations

import numpy as np

from sewalong.fabrics.photo.finding.blobs import without_lines
from sewalong.fabrics.photo.finding.grid import Corner
from sewalong.fabrics.photo.tones import Flags, Numbers

_TRIED = 24
"""Points of a side through each two of which a line is tried (own choice)."""

_BESIDE = 0.05
"""Of a unit: as far may its edge lie off the line through the edges of all (own choice: hands lay
them so)."""

_ON_THE_LINE = 0.4
"""Share of a side's points that must lie on its line; the others may be patches like the cloth
beneath, a foot, or the next side (own choice)."""


def outer_corners(mask: Flags, scale: float, unit: float) -> list[Corner] | None:
    """The corners of the one thing that these pixels make up, first of row 1, then round it; None
    where its sides are not straight. `unit` is about the side of a unit in pixels of the mask,
    `scale` how many of the stored picture one of them is; the corners are in those."""
    kept = without_lines(mask)
    sides = [
        _side(kept.T, unit),  # Along row 1, for each column its first pixel.
        _side(kept[:, ::-1], unit),
        _side(kept.T[:, ::-1], unit),
        _side(kept, unit),
    ]
    if any(side is None for side in sides):
        return None
    high, wide = mask.shape
    top, far, low, near = (side for side in sides if side is not None)
    far, low = (-far[0], wide - far[1]), (-low[0], high - low[1])
    return [
        _meeting(top, near, scale),
        _meeting(top, far, scale),
        _meeting(low, far, scale),
        _meeting(low, near, scale),
    ]


_Line = tuple[float, float]
"""Slope and offset: how far across, for how far along."""


def _side(mask: Flags, unit: float) -> _Line | None:
    """The line that most of the rows of this mask begin on."""
    rows = np.flatnonzero(mask.any(axis=1))
    if len(rows) < unit / 2:
        return None
    along = rows.astype(np.float64) + 0.5
    across = mask[rows].argmax(axis=1).astype(np.float64)
    within = max(1.5, _BESIDE * unit)
    some = np.linspace(0, len(along) - 1, min(_TRIED, len(along))).astype(int)
    best: Flags = np.zeros(len(along), dtype=bool)
    for one, other in combinations(some, 2):
        slope = (across[other] - across[one]) / (along[other] - along[one])
        if abs(slope) > 1:
            continue
        on = np.abs(across - across[one] - slope * (along - along[one])) < within
        if on.sum() > best.sum():
            best = on
    if best.sum() < _ON_THE_LINE * len(along):
        return None
    slope, offset = _through(along[best], across[best])
    return slope, offset


def _through(along: Numbers, across: Numbers) -> _Line:
    slope, offset = np.polyfit(along, across, 1)
    return float(slope), float(offset)


def _meeting(level: _Line, upright: _Line, scale: float) -> Corner:
    """Where y = level(x) and x = upright(y) meet."""
    (a, b), (c, d) = level, upright
    y = (a * d + b) / (1 - a * c)
    return (c * y + d) * scale, y * scale
