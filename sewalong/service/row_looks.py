"""The row in hand as it is looked at, place by place, for the screen that reads it out.

Loaded only where something lies on the wall.
"""

from __future__ import annotations

from msgspec import Struct

from sewalong.piecing.cloth import Flat, turned
from sewalong.piecing.geometry import turn
from sewalong.progress.joining.press_directions import press_words
from sewalong.progress.joining.row_in_hand import InRow, row_in_hand, unit_to_take
from sewalong.progress.record.state import State
from sewalong.progress.record.wall import BY_LETTER
from sewalong.progress.wall.units import as_it_is_now
from sewalong.progress.wall.wall_words import lies_words
from sewalong.quilt.derived import derived_if_any
from sewalong.wall.picture import Picture, picture_of
from sewalong.wall.set_picture import in_fabrics

SEWN, NEXT = "sewn", "next"


class RowPage(Struct, frozen=True):
    """The row in hand: what it is called, how it is pressed, and a line for each place: what lies
    there, and whether it is sewn or next."""

    row: InRow
    title: str
    press: str
    places: tuple[str, ...]


def row_page(state: State) -> RowPage | None:
    """None where no row is in hand."""
    now = row_in_hand(state)
    if now is None:
        return None
    rows = len(state.wall.rows)
    title = f"Row {now.row} of {rows}: {now.sewn} of {now.units} sewn"
    places = tuple(
        f"{place}  {lies_words(state, lies)}{_mark(now, place)}"
        for place, lies in enumerate(state.wall.rows[now.row - 1], start=1)
    )
    press = press_words(now.row, sashed=state.quilt.sashing is not None)
    return RowPage(now, title, press, places)


def _mark(now: InRow, place: int) -> str:
    if place <= now.sewn:
        return f"  {SEWN}"
    return f"  {NEXT}" if place in now.next else ""


def told(state: State, place: int) -> tuple[str, ...]:
    """All that is said of the unit at a place of the row, and whether it is sewn or next."""
    now, said = row_in_hand(state), unit_to_take(state, place)
    mark = _mark(now, place).strip() if now else ""
    return (*said, f"It is {mark}.") if said and mark else said


def unit_pictured(state: State, place: int, across: int, down: int) -> Picture | None:
    """The unit at a place of the row as it lies, in at most so many cells; None where none lies
    there, or nothing is known of it but a letter."""
    now, made = row_in_hand(state), derived_if_any(state.quilt)
    lies = state.wall.at((now.row, place)) if now and state.wall.has((now.row, place)) else None
    if lies is None or made is None:
        return None
    unit = as_it_is_now(state, state.wall.units[lies[0]])
    if unit.unit == BY_LETTER:
        return None
    squares = tuple(letter or None for letter in unit.squares)
    flat = Flat(in_fabrics(made, squares, unit.unit).finished(float(made.seam)))
    return picture_of(turned(flat, turn(2 * lies[1])) if lies[1] else flat, across, down)
