"""A place of units that are not known, as a unit of the method: which of its patches is of which fabric."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from sewalong.fabrics.floor.known import UNKNOWN, units_of_sets
from sewalong.fabrics.floor.result import FloorPlace, FloorReading, HowSure
from sewalong.fabrics.floor.ways import ways_of
from sewalong.piecing.derive import Derivation


class ShownAs(Struct, frozen=True):
    """A unit that would look so: its number from 0 in the order of making, its quarter turns, and the
    fabric of each of the method's letters in it, UNKNOWN where none is like it.

    Units of one shape differ by their squares alone, so the first of its shape is named.
    """

    unit: int
    turn: int
    fabrics: Mapping[str, str]


def shown_as(made: Derivation, reading: FloorReading, place: FloorPlace) -> ShownAs:
    """The unit of the method that a place shows. A letter that shows in two patches is of the fabric
    that is surer of the two."""
    outlines = reading.seen.outlines
    seen = {outlines.index(patch.outline): patch for patch in place.patches}
    # Each patch called by the method's letter, so that a way says which letter lies where.
    lettered = units_of_sets(made, {1: tuple(made.letters)})
    for way in ways_of(lettered, outlines):
        if {region for region, _ in way.patches} == set(seen):
            found: dict[str, str] = {}
            sure: dict[str, HowSure] = {}
            for region, letter in way.patches:
                patch = seen[region]
                if letter not in found or _surer(patch.sure, sure[letter]):
                    found[letter], sure[letter] = patch.fabric or UNKNOWN, patch.sure
            return ShownAs(way.unit, way.turns[0], found)
    raise ValueError("the place has the shape of no unit of the method")


def _surer(one: HowSure, other: HowSure) -> bool:
    order = list(HowSure)
    return order.index(one) < order.index(other)
