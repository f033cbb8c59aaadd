"""A card for each row, to be pinned on its first unit: which row it is, which edge goes up, and which
way its seams are pressed."""

from __future__ import annotations

from msgspec import Struct

from sewalong.progress.joining.press_directions import press_words
from sewalong.progress.joining.row_tags import row_label
from sewalong.progress.record.rows_sewn import rows_of, rows_sewn
from sewalong.progress.record.state import State
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
    """The cards of all rows of the target, in order."""
    rows = rows_of(state)
    return tuple(_card(state, number, row, len(rows)) for number, row in enumerate(rows, start=1))


def _card(state: State, number: int, row: SetRow, rows: int) -> RowCard:
    noun = state.route.piles[state.quilt.method.unit].noun
    outer = "the outer corner" if state.quilt.is_on_point else "the outer edge"
    return RowCard(
        number=number,
        label=row_label(number),
        row=f"row {number} of {rows}",
        up=f"towards row {number - 1}" if number > 1 else outer,
        down=f"towards row {number + 1}" if number < rows else outer,
        holds=f"{noun.count(row.units)}{_SIDES[row.sides]}",
        press=press_words(number, sashed=state.quilt.sashing is not None),
        is_sewn=number <= rows_sewn(state),
    )
