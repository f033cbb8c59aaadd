"""What a person says of places that a photograph left unsure: 2.3=7/2, 2.3=nothing, 2.3/1=A."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.cli.frame.errors import CommandError
from sewalong.cli.wall.typed_places import place_typed
from sewalong.fabrics.floor.mending import there
from sewalong.fabrics.floor.result import FloorReading
from sewalong.progress.record.state import State
from sewalong.service.wall.floor_photographs import said_at


def answered(state: State, reading: FloorReading, answers: Sequence[str]) -> FloorReading:
    """The reading with every answer, one after the other. Raises CommandError for what is none, and
    PhotoRefused and Refused as `said_at`."""
    for answer in answers:
        where, equals, what = answer.partition("=")
        if not equals:
            raise CommandError("--said takes a place and what lies there, such as 2.3=7/2")
        reading = _one(state, reading, where.strip(), what.strip())
    return reading


def _one(state: State, reading: FloorReading, where: str, what: str) -> FloorReading:
    place, slash, patch = where.partition("/")
    here = there(reading, *place_typed(place))
    return said_at(state, reading, here, what, patch if slash else None)
