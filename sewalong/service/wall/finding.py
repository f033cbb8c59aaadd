"""A unit in hand found on the wall by the fabrics that show in it: where it belongs."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from sewalong.progress.record.state import State
from sewalong.progress.record.wall import At, LaidUnit
from sewalong.progress.wall.wall_words import fabrics_shown


class WhereAUnitIs(Struct, frozen=True):
    """A unit, by its number on the wall, and the place it lies at; None for a spare."""

    number: int
    unit: LaidUnit
    at: At | None


def units_with(state: State, letters: Sequence[str]) -> tuple[WhereAUnitIs, ...]:
    """The units in which all of these fabrics show, in reading order, spares last."""
    wanted = set(letters)
    found = [
        WhereAUnitIs(number, unit, state.wall.where(number))
        for number, unit in enumerate(state.wall.units)
        if wanted <= set(fabrics_shown(state, unit))
    ]
    return tuple(sorted(found, key=lambda one: (one.at is None, one.at or (0, 0), one.number)))
