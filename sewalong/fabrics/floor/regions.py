"""The points of a place at which each patch that may lie there is looked at."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from sewalong.fabrics.photo.tones import Flags, Numbers
from sewalong.piecing.geometry import NEAR, Polygon, line_through

WELL_INSIDE = 0.35
"""Of the way from the edge of a patch to its middle that is not looked at: hands lay units a little
askew, seams bend, and a picture runs over edges (own choice)."""

_FINE = 96
"""Points across a unit by which the width of a patch is measured (own choice)."""


def cores(outlines: Sequence[Polygon], across: int) -> tuple[Flags, ...]:
    """Of each outline the points well inside, of `across` × `across` points over the unit."""
    found = []
    for outline in outlines:
        deepest = _depths(outline, _FINE).max()
        depths = _depths(outline, across)
        # The middle at least, however thin the patch is.
        found.append(depths >= min(WELL_INSIDE * deepest, depths.max()))
    return tuple(found)


def narrowest(outlines: Sequence[Polygon]) -> float:
    """How wide the narrowest patch is, as a share of the unit: across the largest disc in it."""
    return 2 * float(min(_depths(outline, _FINE).max() for outline in outlines))


def _depths(outline: Polygon, across: int) -> Numbers:
    """How far inside the outline each point lies, across × across; below 0 outside."""
    steps = (np.arange(across) + 0.5) / across
    x, y = np.meshgrid(steps, steps)
    least = np.full((across, across), np.inf)
    for at, end in enumerate(outline):
        if np.hypot(end[0] - outline[at - 1][0], end[1] - outline[at - 1][1]) > NEAR:
            line = line_through(outline[at - 1], end)
            depth = (x - line.at[0]) * line.normal[0] + (y - line.at[1]) * line.normal[1]
            least = np.minimum(least, -depth)
    return least
