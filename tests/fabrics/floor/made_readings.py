"""A reading of units that are not known, as it comes of a photograph of which no patch is sure."""

from __future__ import annotations

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.floor.result import FloorPlace, FloorReading, HowSure, Seen, SeenPatch

CORNER = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0))


def not_sure(rows: int, columns: int) -> FloorReading:
    """So many places of four patches, each A or perhaps B."""
    patch = SeenPatch(CORNER, Colour(165, 83, 47), "A", HowSure.NOT_SURE, ("B",))
    places = tuple(
        FloorPlace(row, column, HowSure.NOT_SURE, (), (patch,) * 4)
        for row in range(1, rows + 1)
        for column in range(1, columns + 1)
    )
    notes = ("No plain cloth is seen around the units, so the light was not evened.",)
    seen = Seen(rows, columns, (), (), (), (), evened=False)
    return FloorReading(seen, (), False, (), places, (), notes)
