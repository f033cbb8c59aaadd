"""A card for each row, to be pinned on its first unit: which row it is, which edge goes up, and which
way its seams are pressed."""

from __future__ import annotations

from msgspec import Struct

from sewalong.progress.joining.press_directions import Way, press_words, row_way
from sewalong.progress.joining.row_tags import row_label
from sewalong.progress.record.route import JOIN_ROWS, TopStage
from sewalong.progress.record.rows_sewn import rows_of, rows_sewn
from sewalong.progress.record.state import State
from sewalong.progress.wall.wall_words import lies_words, pressed_under
from sewalong.quilt.set_rows import SetRow

_SIDES = ("", ", and a side triangle at one end", ", and a side triangle at both ends")


class RowCard(Struct, frozen=True):
    """`label` is the letter R and the number (see `row_tags`), `row` says it in words. `up` and `down`
    are where its two long edges go, `holds` what lies in it. `first` and `last` name its end units,
    empty where nobody knows them yet."""

    number: int
    label: str
    row: str
    up: str
    down: str
    holds: str
    press: str
    first: str = ""
    last: str = ""
    is_sewn: bool = False


def row_cards(state: State) -> tuple[RowCard, ...]:
    """The cards of all rows of the target, in order; none once all of them are joined."""
    joins = state.route.stage(JOIN_ROWS)
    if isinstance(joins, TopStage) and state.done[JOIN_ROWS] >= joins.steps:
        return ()
    rows = rows_of(state)
    return tuple(_card(state, number, row, len(rows)) for number, row in enumerate(rows, start=1))


def _card(state: State, number: int, row: SetRow, rows: int) -> RowCard:
    first, last = _ends(state, number)
    noun = state.route.piles[state.quilt.method.unit].noun
    outer = "the outer corner" if state.quilt.is_on_point else "the outer edge"
    return RowCard(
        number=number,
        label=row_label(number),
        row=f"row {number} of {rows}",
        up=f"towards row {number - 1}" if number > 1 else outer,
        down=f"towards row {number + 1}" if number < rows else outer,
        holds=f"{noun.count(row.units)}{_SIDES[row.sides]}",
        press=row_press_words(state, number),
        first=first,
        last=last,
        is_sewn=number <= rows_sewn(state),
    )


def _ends(state: State, number: int) -> tuple[str, str]:
    """The units at both ends of a row as they lie on the wall, empty where nothing does."""
    if not state.wall.is_laid:
        return "", ""
    row = state.wall.rows[number - 1]
    first, last = ("" if lies is None else lies_words(state, lies) for lies in (row[0], row[-1]))
    return first, last


def row_press_words(state: State, number: int) -> str:
    """Which way its seams are to be pressed; of a row that was pressed under another number, or
    turned end for end since, which way they lie."""
    sashed = state.quilt.sashing is not None
    under = pressed_under(state)[number - 1] if state.wall.is_laid else number
    if sashed or under == number:
        return press_words(number, sashed=sashed)
    way, since = row_way(abs(under)), ""
    if under < 0:
        way = Way.FROM_THE_START if way is Way.TO_THE_START else Way.TO_THE_START
        since = ", turned end for end since"
    return f"Pressed as row {abs(under)}{since}: its seams lie {way}."
