"""From what the camera saw, and what a person said, to what lies where."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.floor.costs import apart, lights_of, way_costs, ways_in
from sewalong.fabrics.floor.evening import evened
from sewalong.fabrics.floor.known import KnownUnit
from sewalong.fabrics.floor.matching import Matched, matched
from sewalong.fabrics.floor.naming import named, shape_at, shown_by_fabrics
from sewalong.fabrics.floor.result import (
    Candidate,
    FloorPlace,
    FloorReading,
    HowSure,
    Said,
    Seen,
    SeenPatch,
)
from sewalong.fabrics.floor.smooth import must_fall_smoothly
from sewalong.fabrics.floor.ways import Way, ways_of
from sewalong.fabrics.photo.linear_light import colour_of
from sewalong.fabrics.photo.refused import PhotoRefused
from sewalong.fabrics.photo.tones import Numbers
from sewalong.piecing.geometry import centre

_BY_UNITS = (
    "No plain cloth is seen around the units, so the light was evened by the fabrics in them."
)
_NOT_EVENED = "No plain cloth is seen around the units, so the light was not evened."
_TURNS_NOT_TOLD = (
    "Which unit lies where is not known, so its turn is only told as far as its shape shows it."
)


def units_told(
    seen: Seen,
    units: tuple[KnownUnit, ...],
    colours: Mapping[str, Colour],
    said: tuple[Said, ...] = (),
) -> FloorReading:
    """Units that are known by their sets. Raises PhotoRefused where light falls too unevenly."""
    light = np.array(seen.light)
    ways = ways_of(units, seen.outlines)
    arrays = ways_in(ways, len(seen.outlines), colours)
    even = evened(light, arrays, _points(seen), smoothly=not seen.evened)
    if not seen.evened:
        must_fall_smoothly(even.dark.reshape(seen.rows, seen.columns))
    costs = way_costs(even.light, arrays)
    by_place = {(one.row - 1) * seen.columns + one.column - 1: one for one in said}
    asked = [place for place in range(len(light)) if place not in by_place]
    but = frozenset(one.unit for one in said if one.unit is not None)
    found = dict(
        zip(
            asked,
            matched(costs[asked], [seen.bare[place] for place in asked], ways, but),
            strict=True,
        )
    )
    _must_be_these(list(found.values()), seen)
    found |= {place: _as_said(one, ways) for place, one in by_place.items()}
    places = tuple(
        _place(seen, number, found[number], ways, even.light[number], number in by_place)
        for number in range(len(light))
    )
    notes = () if seen.evened else (_BY_UNITS,)
    return FloorReading(seen, units, True, tuple(colours.items()), places, said, notes)


def patches_told(
    seen: Seen, shapes: tuple[KnownUnit, ...], colours: Mapping[str, Colour]
) -> FloorReading:
    """Units of which only the shapes are known: each patch is named by its colour."""
    light = shown_by_fabrics(np.array(seen.light), colours)
    ways = _shapes(ways_of(shapes, seen.outlines))
    away = apart(light, lights_of(colours))
    letters = tuple(colours)
    places = []
    for number in range(len(light)):
        best, plain = shape_at(np.array(seen.spread[number]), ways)
        way = ways[best]
        patches = []
        for region, _ in way.patches:
            fabric, sure, others = named(away[number, region], letters, evened=seen.evened)
            colour = colour_of(light[number, region])
            patches.append(SeenPatch(seen.outlines[region], colour, fabric, sure, others))
        sure = _least([patch.sure for patch in patches] + [HowSure.NOT_SURE] * (not plain))
        places.append(FloorPlace(*_at(seen, number), sure, (), tuple(patches), turns=way.turns))
    notes = (_TURNS_NOT_TOLD,) if seen.evened else (_NOT_EVENED, _TURNS_NOT_TOLD)
    return FloorReading(seen, shapes, False, tuple(colours.items()), tuple(places), (), notes)


_MOST_STRANGE = 0.6
"""Share of the places at which no unit that is known lies, from which on the grid or the sets must be
others (own choice)."""

_FEWEST = 4
"""Places from which on such a share says something (own choice)."""


def _must_be_these(found: Sequence[Matched], seen: Seen) -> None:
    strange = sum(one.sure is HowSure.CANNOT_TELL for one in found)
    if len(found) >= _FEWEST and strange > _MOST_STRANGE * len(found):
        raise PhotoRefused(
            f"At {strange} of {len(found)} places lies no unit of these sets. Look whether "
            f"{seen.rows} rows of {seen.columns} lie there, and whether these are their sets."
        )


def _shapes(ways: Sequence[Way]) -> list[Way]:
    """One of each different look, with all turns of all units that have it."""
    found: dict[tuple[tuple[int, str], ...], Way] = {}
    for way in ways:
        before = found.get(way.patches)
        turns = way.turns if before is None else tuple(sorted({*before.turns, *way.turns}))
        found[way.patches] = Way(way.unit, turns, way.patches)
    return list(found.values())


def _as_said(said: Said, ways: Sequence[Way]) -> Matched:
    way = next(
        (n for n, way in enumerate(ways) if way.unit == said.unit and said.turn in way.turns), None
    )
    return Matched(HowSure.SURE, (Candidate(said.unit, said.turn, 0.0),), (), way)


def _place(
    seen: Seen, number: int, found: Matched, ways: Sequence[Way], light: Numbers, said: bool
) -> FloorPlace:
    way = None if found.way is None else ways[found.way]
    patches = tuple(
        SeenPatch(seen.outlines[region], colour_of(light[region]), fabric or None, found.sure)
        for region, fabric in (() if way is None else way.patches)
    )
    turns = (0,) if way is None else way.turns
    return FloorPlace(
        *_at(seen, number), found.sure, found.candidates, patches, found.same, turns, said
    )


def _at(seen: Seen, number: int) -> tuple[int, int]:
    row, column = divmod(number, seen.columns)
    return row + 1, column + 1


def _least(every: Sequence[HowSure]) -> HowSure:
    order = list(HowSure)
    return max(every, key=order.index)


def _points(seen: Seen) -> Numbers:
    """Where each outline of each place lies, places × outlines × 2, shares of the whole."""
    inside = np.array([centre(outline) for outline in seen.outlines])
    column, row = np.meshgrid(np.arange(seen.columns), np.arange(seen.rows))
    corners = np.stack([column.ravel(), row.ravel()], axis=-1)
    found: Numbers = (corners[:, None] + inside) / [seen.columns, seen.rows]
    return found
