"""The ways units may lie in a row, and the patches that may be seen there."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from sewalong.fabrics.floor.known import KnownUnit, turned
from sewalong.piecing.geometry import Polygon, centre


class Way(Struct, frozen=True):
    """A unit as it may lie: its place in the sequence of units, the quarter turns in which it looks
    so, and of each patch the number of its region and its fabric, in the order of the regions."""

    unit: int
    turns: tuple[int, ...]
    patches: tuple[tuple[int, str], ...]


def outlines_of(units: Sequence[KnownUnit]) -> tuple[Polygon, ...]:
    """The different outlines that patches of these units have, in all turns, shares of a unit; in
    reading order of their middles."""
    found: dict[_Corners, Polygon] = {}
    for unit in units:
        for quarters in unit.turns:
            for patch in unit.patches:
                outline = turned(patch.outline, quarters)
                found.setdefault(_corners(outline), outline)
    return tuple(sorted(found.values(), key=_in_reading_order))


def ways_of(units: Sequence[KnownUnit], outlines: Sequence[Polygon]) -> tuple[Way, ...]:
    """Every way that each unit may lie, unit by unit; turns in which it looks the same are one."""
    number = {_corners(outline): at for at, outline in enumerate(outlines)}
    found = []
    for at, unit in enumerate(units):
        looks: dict[tuple[tuple[int, str], ...], tuple[int, ...]] = {}
        for quarters in unit.turns:
            patches = tuple(
                sorted(
                    (number[_corners(turned(patch.outline, quarters))], patch.fabric)
                    for patch in unit.patches
                )
            )
            looks[patches] = (*looks.get(patches, ()), quarters)
        found += [Way(at, turns, patches) for patches, turns in looks.items()]
    return tuple(found)


_Corners = frozenset[tuple[float, float]]


def _corners(outline: Polygon) -> _Corners:
    return frozenset((round(x, 3), round(y, 3)) for x, y in outline)


def _in_reading_order(outline: Polygon) -> tuple[float, float]:
    x, y = centre(outline)
    return round(y, 3), round(x, 3)
