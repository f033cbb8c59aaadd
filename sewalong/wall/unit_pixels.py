"""How few pixels show what a unit is: below that its pattern would be a false one."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import pairwise

from sewalong.piecing.cloth import Flat, Patch
from sewalong.wall.raster import Pixels, raster

MOST = 16
"""No unit is asked for more pixels than this, however small its patches are."""

SLANTED = 4
"""Pixels from which on a slanted seam looks like one."""


def least_across(units: Sequence[Flat]) -> int:
    """Pixels across from which on every patch of every one of the units shows."""
    return max(least_for(unit, lambda wide, flat: numbered(flat, wide), 1) for unit in units)


def least_for(unit: Flat, drawn: Callable[[int, Flat], Pixels], step: int) -> int:
    """The fewest pixels, in whole steps, at which `drawn` shows every patch of the unit.

    `drawn` is given the unit with each patch of a fabric of its own.
    """
    own = Flat(tuple(Patch(p.points, f"{n:04}", p.grain) for n, p in enumerate(unit.patches)))
    first = SLANTED if any(_is_slanted(patch) for patch in unit.patches) else 1
    for pixels in range(step * -(-first // step), MOST, step):
        if len({key for row in drawn(pixels, own) for key in row} - {None}) == len(own.patches):
            return pixels
    return MOST


def numbered(unit: Flat, wide: int) -> Pixels:
    """The unit `wide` pixels across, its shape kept."""
    return raster(
        [[(patch.points, patch.letter) for patch in unit.patches]],
        unit.size,
        wide,
        high_for(unit.size, wide),
    )


def high_for(unit: tuple[float, float], wide: int) -> int:
    """The pixels down nearest to the shape of a unit of that size that is so many across."""
    return max(1, round(wide * unit[1] / unit[0]))


def _is_slanted(patch: Patch) -> bool:
    corners = (*patch.points, patch.points[0])
    return any(min(abs(a - c), abs(b - d)) > 1e-6 for (a, b), (c, d) in pairwise(corners))
