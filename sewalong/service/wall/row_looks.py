"""The row in hand as it is looked at, place by place, for the screen that reads it out.

Loaded only where something lies on the wall.
"""

from __future__ import annotations

from msgspec import Struct

from sewalong.progress.joining.row_cards import row_press_words
from sewalong.progress.joining.row_in_hand import (
    InRow,
    row_in_hand,
    row_looked_at,
    unit_to_take,
)
from sewalong.progress.record.state import State
from sewalong.progress.record.wall import At, Lies
from sewalong.progress.wall.units import as_it_is_now
from sewalong.progress.wall.wall_words import NOTHING, lies_words, unit_words
from sewalong.service.wall.drawn import unit_pictured as drawn
from sewalong.wall.laying.move_words import ON_POINT, STRAIGHT
from sewalong.wall.picture import Picture
from sewalong.wall.top_of_sets import UnitOf

SEWN, NEXT = "sewn", "next"


class RowPage(Struct, frozen=True):
    """A row of the wall: what it is called, how it is pressed, and a line for each place: what lies
    there, and whether it is sewn or next; `short` the same without how it lies."""

    row: InRow
    title: str
    press: str
    places: tuple[str, ...]
    short: tuple[str, ...]


def first_row(state: State) -> int:
    """The row to look at first: the one in hand, else row 1; 0 where nothing is laid."""
    now = row_in_hand(state)
    return now.row if now is not None else int(state.wall.is_laid)


def row_page(state: State, row: int) -> RowPage | None:
    """None for no such row."""
    now = row_looked_at(state, row)
    if now is None:
        return None
    title = f"Row {now.row} of {len(state.wall.rows)}: {now.sewn} of {now.units} sewn"
    lying = list(enumerate(state.wall.rows[row - 1], start=1))
    return RowPage(
        now,
        title,
        row_press_words(state, now.row),
        tuple(f"{n}  {lies_words(state, lies)}{_mark(now, n)}" for n, lies in lying),
        tuple(f"{n}  {_unit(state, lies)}{_mark(now, n)}" for n, lies in lying),
    )


def _unit(state: State, lies: Lies | None) -> str:
    return NOTHING if lies is None else unit_words(state, state.wall.units[lies[0]])


def _mark(now: InRow, place: int) -> str:
    if place <= now.sewn:
        return f"  {SEWN}"
    return f"  {NEXT}" if place in now.next else ""


def above(state: State) -> str:
    """What is towards the upper edge of a unit as it is pictured."""
    towards = ON_POINT if state.quilt.is_on_point else STRAIGHT
    return f"as it lies, {towards[0]} above"


def told(state: State, at: At) -> tuple[str, ...]:
    """All that is said of the unit at a place, and whether it is sewn or next."""
    now, said = row_looked_at(state, at[0]), unit_to_take(state, at)
    mark = _mark(now, at[1]).strip() if now else ""
    return (*said, f"It is {mark}.") if said and mark else said


def unit_pictured(state: State, at: At, across: int, down: int) -> Picture | None:
    """The unit at a place as it lies, in at most so many cells; None where none lies there."""
    lies = state.wall.at(at) if state.wall.has(at) else None
    if lies is None:
        return None
    unit = as_it_is_now(state, state.wall.units[lies[0]])
    of = UnitOf(tuple(letter or None for letter in unit.squares), unit.unit)
    return drawn(state.quilt, of, lies[1], across, down)
