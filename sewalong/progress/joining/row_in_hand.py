"""The row in hand of a top that is laid: which unit is sewn to it next, and how that lies.

Rows are sewn in order, each from its place 1 on. Loaded only where something lies on the wall.
"""

from __future__ import annotations

from msgspec import Struct

from sewalong.progress.record.events.wall import place_called
from sewalong.progress.record.sewn_places import units_sewn
from sewalong.progress.record.state import State
from sewalong.progress.record.wall import At
from sewalong.progress.record.web_rows import next_seam
from sewalong.progress.wall.wall_words import fabric_words, lies_words
from sewalong.quilt.web import IN_A_START


class InRow(Struct, frozen=True):
    """The row in hand, from 1, and how many of its `units` are `sewn` together from place 1 on.

    `next` are the places whose units the next seam takes, the first two of a row not begun; none
    where several pieces of the row are sewn, as nobody can say then which places they are.
    """

    row: int
    units: int
    sewn: int
    next: tuple[int, ...]


def row_in_hand(state: State) -> InRow | None:
    """None where nothing is laid, or every row is sewn."""
    if not state.wall.is_laid:
        return None
    seam = next_seam(state)
    sewn = units_sewn(state)
    if state.quilt.is_web:
        if seam is None:
            return None
        units = state.target.columns
        there = sewn[seam.row - 1]
        return InRow(seam.row, units, there, _places(there, units))
    for number, (there, row) in enumerate(zip(sewn, state.wall.rows, strict=False), start=1):
        if there < len(row):
            return InRow(number, len(row), there, _next(state, there, len(row)))
    return None


def _next(state: State, sewn: int, units: int) -> tuple[int, ...]:
    if state.quilt.is_on_point:
        # Each unit of such a row is counted by itself, the first as well.
        return (sewn + 1,)
    if not sewn and state.begun:
        # Of a row begun that is one piece it is known how many are sewn.
        return ()
    return _places(sewn, units)


def _places(sewn: int, units: int) -> tuple[int, ...]:
    return tuple(range(1, min(IN_A_START, units) + 1)) if not sewn else (sewn + 1,)


def row_facts(state: State) -> tuple[str, ...]:
    """How far the row in hand is, and the unit that comes next, a sentence each; none where there is
    no row in hand."""
    now = row_in_hand(state)
    if now is None:
        return ()
    if not now.next:
        return (f"Row {now.row} is sewn in several pieces, so nobody can say which place is next.",)
    begun = f"Row {now.row}: {now.sewn} of {now.units} sewn." if now.sewn else f"Row {now.row}."
    return (begun, *next_unit_facts(state))


def next_unit_words(state: State) -> str:
    """The same in one line; empty where nobody knows."""
    return " ".join(next_unit_facts(state))


def next_unit_facts(state: State) -> tuple[str, ...]:
    """ "Next place 5: unit 2 of set 7, F moss towards row 1.", and a second sentence where two are
    sewn together; none where nobody knows."""
    now = row_in_hand(state)
    if now is None or not now.next:
        return ()
    row = state.wall.rows[now.row - 1]
    said = [f"place {place}: {lies_words(state, row[place - 1])}" for place in now.next]
    words = ("Next", *["Then"] * len(said))
    return tuple(f"{word} {one}." for word, one in zip(words, said, strict=False))


def row_looked_at(state: State, row: int) -> InRow | None:
    """Any row of the wall, from 1; `next` is of the row in hand only. None for no such row."""
    if not 1 <= row <= len(state.wall.rows):
        return None
    now = row_in_hand(state)
    if now is not None and now.row == row:
        return now
    units = len(state.wall.rows[row - 1])
    return InRow(row, units, units_sewn(state)[row - 1], ())


def unit_to_take(state: State, at: At) -> tuple[str, ...]:
    """All that is said of the unit at a place, to be read aloud; none for no such place."""
    if not state.wall.has(at):
        return ()
    lies = state.wall.at(at)
    where = f"{place_called(at).capitalize()}: {lies_words(state, lies)}."
    if lies is None:
        return (where, "Put a spare there on the wall, or sew what you take: the count goes on.")
    unit = state.wall.units[lies[0]]
    return (where,) if not unit.set else (where, f"{fabric_words(state, unit)}.")
