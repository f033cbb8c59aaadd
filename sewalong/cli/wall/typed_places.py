"""Places of the wall and units as they are typed: 2.3, 2·3, 7/2."""

from __future__ import annotations

import re

from sewalong.cli.frame.errors import CommandError
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State
from sewalong.progress.record.wall import OF_NO_SET, At
from sewalong.progress.sets.read_squares import fabric_typed
from sewalong.service.wall.typed import set_and_unit, unit_by_patches

_NUMBER = "([0-9]{1,5})"
_PLACE = re.compile(rf"(?:row\s*)?{_NUMBER}\s*(?:[.·:]|place)\s*{_NUMBER}(?:/([0-3]))?", re.ASCII)
_LETTERS = re.compile("[A-Z]{1,2}", re.ASCII)


def place_typed(typed: str) -> At:
    """ "2.3", "2·3" or "row 2 place 3"; raises CommandError for what is none."""
    at, turns = place_and_turns(typed)
    if turns:
        raise CommandError(f"“{typed[:20]}” is more than a place. Such as 2.3")
    return at


def place_and_turns(typed: str) -> tuple[At, int]:
    """The same with quarter turns behind: "2.3/1"."""
    found = _PLACE.fullmatch(typed.strip().casefold())
    if found is None:
        raise CommandError(
            f"“{typed[:20]}” is no place. Write its row and its place in the row, such as 2.3"
        )
    return (int(found[1]), int(found[2])), int(found[3] or 0)


def spare_typed(state: State, typed: str) -> tuple[int, int]:
    """The number on the wall of the spare meant, and its quarter turns: by set and unit, "7/2", or by
    the letter or name of a unit of one fabric, or by those of its patches, "A+B+C+D". Raises
    CommandError where no spare is meant, Refused where the patches are no unit's."""
    wall = state.wall
    spares = [(number, wall.units[number]) for number in wall.spares()]
    of_a_set = set_and_unit(typed)
    if of_a_set is not None:
        set_, unit, turns = of_a_set
        found = [n for n, one in spares if (one.set, one.unit) == (set_, unit - 1)]
    elif "+" in typed:
        wanted, turns = unit_by_patches(state, typed).squares, 0
        found = [n for n, one in spares if one.set == OF_NO_SET and one.squares == wanted]
    else:
        letter, turns = _letter(state, typed), 0
        found = [n for n, one in spares if one.set == OF_NO_SET and one.squares == (letter,)]
    if found:
        return found[0], turns or 0
    raise CommandError(
        f"“{typed[:20]}” is no spare. Name one by its set and unit, such as 7/2, by its fabric, or by "
        "those of its patches, A+B+C+D; sewalong wall tells which are spare."
    )


def _letter(state: State, typed: str) -> str:
    if _LETTERS.fullmatch(typed):
        return typed
    try:
        return fabric_typed(state.quilt, typed)
    except Refused:
        return ""
