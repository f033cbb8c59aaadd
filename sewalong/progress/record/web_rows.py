"""How far a web is sewn: row by row, and the seam that comes next.

Passes are taken to be sewn in order, each from row 1 on: the record knows how many seams, not which.
"""

from __future__ import annotations

from msgspec import Struct

from sewalong.progress.record.route import JOIN_ROWS
from sewalong.progress.record.state import State
from sewalong.quilt.web import IN_A_START, WEB_ROW, WEB_UNIT, added_to_a_row, passes


class WebSeam(Struct, frozen=True):
    """One seam of a web: in which pass, of how many; onto which row, of how many; all from 1."""

    number: int
    passes: int
    row: int
    rows: int

    @property
    def column(self) -> int:
        """The column whose unit it sews on."""
        return self.number + 1

    @property
    def is_first(self) -> bool:
        """Whether a pass begins with it."""
        return self.row == 1

    @property
    def is_last(self) -> bool:
        """Whether a pass ends with it."""
        return self.row == self.rows

    @property
    def left_of_pass(self) -> int:
        """Seams from this one to the end of its pass."""
        return self.rows - self.row + 1


def next_seam(state: State) -> WebSeam | None:
    """The seam that comes next; None where there is no web, or all its short seams are sewn."""
    if not state.quilt.is_web:
        return None
    rows, columns, started = state.target.rows, state.target.columns, state.piles[WEB_ROW.id]
    if started < rows:
        return WebSeam(1, passes(columns), started + 1, rows)
    units = units_in_web(state)
    fewest = min(units)
    if fewest >= columns:
        return None
    # After pass n every row holds n + 1 units.
    return WebSeam(fewest, passes(columns), units.index(fewest) + 1, rows)


def units_in_web(state: State) -> tuple[int, ...]:
    """Units sewn together in each row of the web; rows that are joined are whole."""
    whole, rows = rows_joined(state), range(1, state.target.rows + 1)
    full = added_to_a_row(state.target.columns)
    others = [row for row in rows if row not in whole]
    left = max(0, state.piles[WEB_UNIT.id] - len(whole) * full)
    each, more = divmod(left, len(others)) if others else (0, 0)
    added = dict.fromkeys(rows, full)
    added |= {row: each + (place < more) for place, row in enumerate(others)}
    started = state.piles[WEB_ROW.id]
    return tuple(IN_A_START * (row <= started) + added[row] for row in rows)


def rows_joined(state: State) -> frozenset[int]:
    """Rows that a long seam holds: those named, and from row 1 on for seams counted without names."""
    seams = state.done.get(JOIN_ROWS, 0)
    named = {row for joint in state.joints for row in joint}
    others = [row for row in range(1, state.target.rows + 1) if row not in named]
    return frozenset([*named, *others[: max(0, seams + 1 - len(named))]] if seams else ())


def whole_rows(state: State) -> int:
    """Rows of the web that hold a unit in every column."""
    return sum(units >= state.target.columns for units in units_in_web(state))


def rows_sewn_on(state: State) -> int:
    """Rows of the web that a unit was added to: their start cannot be taken apart by itself."""
    return sum(units > IN_A_START for units in units_in_web(state))


def lies_in_the_web(state: State, pile: str) -> bool:
    """Whether the pieces of a pile hang on rows of the web, so that they lie nowhere by themselves."""
    return state.quilt.is_web and pile == WEB_UNIT.id
