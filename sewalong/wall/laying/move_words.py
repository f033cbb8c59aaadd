"""Moves in words for somebody kneeling at the wall: row and place, and which edge goes where."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from sewalong.quilt.setting import SetOnPoint, Setting
from sewalong.wall.laying.edges import turned_sides
from sewalong.wall.laying.grid import At
from sewalong.wall.laying.laying import Laying
from sewalong.wall.laying.moves import Move, moved
from sewalong.wall.laying.units import WallUnit

STRAIGHT = ("row 1", "the end of the row", "the last row", "the start of the row")
ON_POINT = ("the start of the row", "the next row", "the end of the row", "the row before")
"""What a unit's sides are towards, in the order of `edges.SIDES`, where it is not turned. On point
by the rows on the slant, as they are sewn."""


def place_words(at: At) -> str:
    """ "row 2 place 3" """
    return f"row {at[0]} place {at[1]}"


def turn_words(quarters: int, setting: Setting | None = None) -> str:
    """ "turn {} a quarter: its edge towards row 1 comes towards the end of the row", for the word of
    what is turned; empty where nothing is."""
    towards = _towards(setting)
    by = quarters % 4
    if by == 0:
        return ""
    if by == 2:
        return "turn {} half way round"
    return f"turn {{}} a quarter: its edge towards {towards[0]} comes towards {towards[by]}"


def _towards(setting: Setting | None) -> tuple[str, ...]:
    return ON_POINT if isinstance(setting, SetOnPoint) else STRAIGHT


def move_words(
    move: Move,
    before: Laying,
    units: Sequence[WallUnit],
    called: Mapping[str, str] | None = None,
) -> str:
    """One move in a sentence, said of the laying before it; `called` has letter and name of each
    fabric. A spare is known by what it shows towards row 1 where it comes to lie."""
    here, setting = place_words(move.at), before.setting
    if move.spare is not None:
        spare = _spare_words(units[move.spare], move.turns, setting, called or {})
        return f"Bring {spare} to {here}; what lay there is a spare."
    if move.other is None:
        turned = turn_words(move.turns - _turns(before, move.at), setting)
        return f"{here.capitalize()}: {turned.format('it')}."
    first = turn_words(move.other_turns - _turns(before, move.at), setting)
    second = turn_words(move.turns - _turns(before, move.other), setting)
    said = [f"{here.capitalize()} with {place_words(move.other)}"]
    said += [
        turned.format(which)
        for which, turned in (("the first", first), ("the second", second))
        if turned
    ]
    return f"{'; '.join(said)}."


def _turns(laying: Laying, at: At) -> int:
    put = laying.at(at)
    return put.turns if put is not None else 0


def _spare_words(
    unit: WallUnit, turns: int, setting: Setting | None, called: Mapping[str, str]
) -> str:
    upper = max(turned_sides(unit.sides, turns)[0], key=lambda span: span.end - span.start).fabric
    name = called.get(upper, upper)
    if unit.plain is not None:
        return f"a spare of {name}"
    return f"a spare with {name} towards {_towards(setting)[0]}"


def moves_words(
    moves: Sequence[Move],
    before: Laying,
    units: Sequence[WallUnit],
    called: Mapping[str, str] | None = None,
) -> tuple[str, ...]:
    """Moves one after the other, each said of what lies there by then."""
    said = []
    laying = before
    for move in moves:
        said.append(move_words(move, laying, units, called))
        laying = moved(laying, move)
    return tuple(said)
