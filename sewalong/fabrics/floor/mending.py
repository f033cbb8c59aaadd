"""What a person says of a place: it stands, and all the rest is matched anew. The old reading stays."""

from __future__ import annotations

from msgspec.structs import replace

from sewalong.fabrics.floor.known import KnownUnit
from sewalong.fabrics.floor.result import FloorPlace, FloorReading, HowSure, Said
from sewalong.fabrics.photo.refused import PhotoRefused


def said(
    reading: FloorReading, row: int, place: int, unit: int | None, turn: int = 0
) -> FloorReading:
    """At this place lies this unit, by its place among the units that were looked for, turned so; or
    nothing (None). What was said before of the place, or of the unit elsewhere, is said no more.

    Raises PhotoRefused for a place or a unit that there is none of, or a turn it cannot have.
    """
    there(reading, row, place)
    if not reading.known:
        raise PhotoRefused(
            "Which unit lies there cannot be said before the sets are known. Say the fabric of a "
            "patch instead."
        )
    if unit is not None:
        _must_turn(_unit(reading, unit), turn)
    else:
        turn = 0
    kept = tuple(
        one
        for one in reading.said
        if (one.row, one.column) != (row, place) and (unit is None or one.unit != unit)
    )
    from sewalong.fabrics.floor.telling import units_told

    everything = (*kept, Said(row, place, unit, turn))
    return units_told(reading.seen, reading.units, dict(reading.fabrics), everything)


def patch_said(
    reading: FloorReading, row: int, place: int, patch: int, fabric: str
) -> FloorReading:
    """Patch `patch` of this place, from 1 in reading order, is of this fabric, by its letter.

    Raises PhotoRefused where the units are known, and for what there is none of.
    """
    here = there(reading, row, place)
    if reading.known:
        raise PhotoRefused("The units are known by their sets. Say which unit lies there instead.")
    if not 1 <= patch <= len(here.patches):
        raise PhotoRefused(f"A unit has patches 1 to {len(here.patches)}, not {patch}.")
    letters = [letter for letter, _ in reading.fabrics]
    if fabric not in letters:
        raise PhotoRefused(f"No fabric has the letter {fabric}. There are {', '.join(letters)}.")
    patches = tuple(
        replace(one, fabric=fabric, sure=HowSure.SURE, others=()) if number == patch else one
        for number, one in enumerate(here.patches, 1)
    )
    sure = here.sure
    if all(one.sure is HowSure.SURE for one in patches):
        sure = HowSure.SURE
    mended = replace(here, patches=patches, sure=sure, said=True)
    places = tuple(mended if one is here else one for one in reading.places)
    return replace(reading, places=places)


def there(reading: FloorReading, row: int, place: int) -> FloorPlace:
    """The place so called; raises PhotoRefused where there is none."""
    here = reading.place(row, place)
    if here is None:
        raise PhotoRefused(
            f"There is no place {row}·{place}: rows go from 1 to {reading.seen.rows}, places from "
            f"1 to {reading.seen.columns}."
        )
    return here


def _unit(reading: FloorReading, unit: int) -> KnownUnit:
    if not 0 <= unit < len(reading.units):
        raise PhotoRefused(f"There are {len(reading.units)} units, and none of them is that one.")
    return reading.units[unit]


def _must_turn(unit: KnownUnit, turn: int) -> None:
    if turn not in unit.turns:
        turns = " or ".join(map(str, unit.turns))
        raise PhotoRefused(f"Such a unit lies turned by {turns} quarters, not by {turn}.")
