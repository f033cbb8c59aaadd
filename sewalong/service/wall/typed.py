"""A wall typed row by row: each unit by its set and number, by its letter, or by its patches."""

from __future__ import annotations

import re
from collections import Counter

from sewalong.lengths.fault import quoted
from sewalong.progress.acts.wall import LayWall
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State
from sewalong.progress.record.wall import OF_NO_SET, LaidUnit, Lies
from sewalong.progress.sets.read_squares import fabric_typed
from sewalong.progress.wall.units import units_by_letter, units_to_lay
from sewalong.quilt.derived import derived

EMPTY = ("-", ".")
"""What is typed for a place where nothing lies."""

_OF_A_SET = re.compile(r"([1-9][0-9]{0,5})/([1-9][0-9]{0,5})(?:/([0-3]))?", re.ASCII)
_LETTER = re.compile("[A-Z]{1,2}", re.ASCII)

HOW = (
    "Type a row on each line, its units apart by spaces: 7/2 is unit 2 of set 7, 7/2/1 the same a "
    "quarter turned, A a unit known by one letter, A+B+C+D one by its patches, - an empty place."
)


def lay_as_typed(state: State, text: str) -> LayWall:
    """The act by which units lie as they were typed, by the rules of before. Raises Refused for what
    cannot be read; whether it fits the layout is looked at when it is recorded."""
    rows = [_words(state, line) for line in text.splitlines() if line.strip()]
    lengths = tuple(row.units for row in state.quilt.rows_for(state.target))
    if tuple(map(len, rows)) != lengths:
        raise Refused(_other_rows(rows, lengths))
    laid = [[_unit(state, word) for word in row] for row in rows]
    typed = Counter(one[0] for row in laid for one in row if one is not None)
    # Of sets, and of plain squares, it is known what else there is.
    known = units_to_lay(state)
    there = known if any(unit in typed for unit in known) else ()
    units = [*there, *(typed - Counter(there)).elements()]
    numbers: dict[LaidUnit, list[int]] = {}
    for number, unit in enumerate(units):
        numbers.setdefault(unit, []).append(number)
    lies = [[_next_of(numbers, one) for one in row] for row in laid]
    wall = state.wall
    return LayWall(
        tuple(units), tuple(map(tuple, lies)), wall.touch, wall.stacks, wall.rim, how="typed"
    )


def _words(state: State, line: str) -> list[str]:
    words = [one.strip() for one in line.split(",")] if "," in line else line.split()
    words = [word for word in words if word]
    if len(words) == 1 and len(words[0]) > 1 and re.fullmatch("[A-Z.-]+", words[0], re.ASCII):
        # "ABCA": each unit one letter, where this is no letter of two.
        known = {fabric.letter for fabric in state.quilt.fabrics}
        return words if words[0] in known else [*words[0]]
    return words


def _unit(state: State, word: str) -> tuple[LaidUnit, int] | None:
    """A unit and its quarter turns; None for an empty place."""
    if word in EMPTY:
        return None
    if found := set_and_unit(word):
        return unit_of_a_set(state, *found[:2]), found[2] or 0
    if "+" in word:
        return unit_by_patches(state, word), 0
    letter = _letter(state, word)
    if state.quilt.counted_fabrics and len(derived(state.quilt).letters) == 1:
        return LaidUnit(OF_NO_SET, 0, (letter,)), 0
    return units_by_letter([letter])[0], 0


def set_and_unit(typed: str) -> tuple[int, int, int | None] | None:
    """ "7/2", or with its quarter turns "7/2/1": set and unit from 1; None for what is none."""
    found = _OF_A_SET.fullmatch(typed.strip())
    if found is None:
        return None
    return int(found[1]), int(found[2]), None if found[3] is None else int(found[3])


def unit_of_a_set(state: State, number: int, unit: int) -> LaidUnit:
    """Unit `unit` of set `number`, from 1. Raises Refused where there is none."""
    there = units_to_lay(state)
    found = next((one for one in there if (one.set, one.unit) == (number, unit - 1)), None)
    if found is None:
        raise Refused(
            f"There is no unit {number}/{unit}. Name it by its set and its number in the set, as "
            "“sewalong sets” has them."
        )
    return found


def unit_by_patches(state: State, word: str) -> LaidUnit:
    """A unit by the fabrics of its patches, in reading order: "A+B+C+D". Raises Refused where they
    are none of a unit."""
    made = derived(state.quilt)
    places = [patch.letter for patch in made.units[0].finished(float(made.seam))]
    typed = [_letter(state, part) for part in word.split("+")]
    if len(typed) != len(places):
        raise Refused(
            f"{quoted(word)} has {len(typed)} patches, and a unit has {len(places)}. Name them in "
            "reading order."
        )
    shown = dict(zip(places, typed, strict=True))
    return LaidUnit(OF_NO_SET, 0, tuple(shown.get(place, "") for place in made.letters))


def _letter(state: State, word: str) -> str:
    if state.quilt.counted_fabrics:
        return fabric_typed(state.quilt, word)
    if not _LETTER.fullmatch(word):
        raise Refused(f"{quoted(word)} is no unit. {HOW}")
    return word


def _next_of(numbers: dict[LaidUnit, list[int]], one: tuple[LaidUnit, int] | None) -> Lies | None:
    if one is None:
        return None
    unit, turns = one
    return numbers[unit].pop(0), turns


def _other_rows(rows: list[list[str]], lengths: tuple[int, ...]) -> str:
    if len(rows) != len(lengths):
        return (
            f"{len(rows)} row{' is' if len(rows) == 1 else 's are'} typed, and the layout has "
            f"{len(lengths)}. {HOW}"
        )
    row = next(
        n for n, (one, wanted) in enumerate(zip(rows, lengths, strict=True)) if len(one) != wanted
    )
    return (
        f"Row {row + 1} has {len(rows[row])} unit{'' if len(rows[row]) == 1 else 's'}, and "
        f"{lengths[row]} lie in it. {HOW}"
    )
