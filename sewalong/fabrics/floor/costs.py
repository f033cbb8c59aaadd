"""How unlike every unit, however turned, is to what is seen at every place."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.floor.ways import Way
from sewalong.fabrics.photo.differences import differences
from sewalong.fabrics.photo.tones import TO_LIGHT, Numbers, lab

Indices = NDArray[np.intp]
Costs = NDArray[np.float32]

_MOST = 20.0
"""CIEDE2000 that one patch counts at most: it may be folded over or hidden (own choice)."""

_NOT_KNOWN = 8.0
"""CIEDE2000 counted for a patch whose fabric has no colour: enough to prefer a unit that is seen to
be right (own choice)."""


class Ways(Struct, frozen=True):
    """The ways units may lie as arrays, ways × patches: the region of each patch, and its fabric as
    a row of `light`, in linear red, green and blue. The row after the last is of no known colour,
    and the region after the last is of no patch."""

    regions: Indices
    fabrics: Indices
    light: Numbers


def ways_in(ways: Sequence[Way], outlines: int, colours: Mapping[str, Colour]) -> Ways:
    """The ways with the colours of the fabrics in them."""
    number = {fabric: at for at, fabric in enumerate(colours)}
    most = max(len(way.patches) for way in ways)
    regions = np.full((len(ways), most), outlines)
    fabrics = np.full((len(ways), most), len(colours))
    for at, way in enumerate(ways):
        for patch, (region, fabric) in enumerate(way.patches):
            regions[at, patch] = region
            fabrics[at, patch] = number.get(fabric, len(colours))
    return Ways(regions, fabrics, lights_of(colours))


def lights_of(colours: Mapping[str, Colour]) -> Numbers:
    """Linear light of each of these colours, n × 3."""
    parts = [[one.red, one.green, one.blue] for one in colours.values()]
    return TO_LIGHT[np.array(parts, dtype=np.intp).reshape(-1, 3)].astype(np.float64)


def apart(light: Numbers, fabrics: Numbers) -> Numbers:
    """CIEDE2000 of the light of each patch, places × regions × 3, from each fabric's, n × 3."""
    seen = lab(np.clip(light, 0, 1).astype(np.float32))[:, :, None, :]
    return differences(seen, lab(fabrics.astype(np.float32))[None, None])


def way_costs(light: Numbers, ways: Ways) -> Costs:
    """The squares of the differences of all patches of each way together, places × ways."""
    places, regions = light.shape[:2]
    # Of many units there are many ways: half the room, and fine enough.
    squared = np.zeros((places, regions + 1, len(ways.light) + 1), dtype=np.float32)
    squared[:, :regions, :-1] = np.minimum(apart(light, ways.light), _MOST) ** 2
    squared[:, :regions, -1] = _NOT_KNOWN**2
    total = np.zeros((places, len(ways.regions)), dtype=np.float32)
    for region, fabric in zip(ways.regions.T, ways.fabrics.T, strict=True):
        total += squared[:, region, fabric]
    return total
