"""Which layouts do not contradict what is sewn: a target must be within reach."""

from __future__ import annotations

from sewalong.progress.record.begun_rows import rows_begun
from sewalong.progress.record.limits import are
from sewalong.progress.record.on_the_top import joined_rows, last_on_the_top, unpick_rows_first
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.route import ADD_SASHES, JOIN_ROWS, ROW
from sewalong.progress.record.stages.sashes import between_rows
from sewalong.progress.record.state import State
from sewalong.quilt.rules import MOST_ROWS
from sewalong.quilt.setting import SET_SIDE, SET_UNIT
from sewalong.quilt.web import WEB_ROW, WEB_UNIT, added_to_a_row, why_no_web


def must_be_within_reach(
    state: State, rows: int, columns: int, *, as_web: bool | None = None
) -> None:
    """Raise Refused for a layout that contradicts what is sewn, or is wanted already.

    `as_web`: whether it is to be put together as a web; None where that stays as it is.
    """
    if not (1 <= rows <= MOST_ROWS and 1 <= columns <= MOST_ROWS):
        raise Refused(f"Rows and columns are numbers from 1 to {MOST_ROWS}.")
    if (rows, columns) == (state.target.rows, state.target.columns):
        raise Refused(f"The target is {state.target} already.")
    _slanting_rows_stay(state)
    if state.quilt.is_web if as_web is None else as_web:
        _can_be_a_web(rows, columns)
    if state.quilt.is_web:
        _the_web_stays(state, rows, columns)
    sewn = state.piles.get(ROW.id, 0)
    if sewn and columns != state.target.columns:
        raise Refused(
            f"{ROW.noun.count(sewn)} of {state.target.columns} {are(sewn)} sewn already. "
            f"{unpick_rows_first(state, f'{state.target.columns} across')}"
        )
    _rows_begun_stay(state, rows, columns)
    _between_them_must_fit(state, rows, columns)
    past_joining = last_on_the_top(
        state, after=state.route.stage(JOIN_ROWS) or state.route.stage(ADD_SASHES)
    )
    if past_joining is not None:
        raise Refused(
            f"The top has been through {past_joining.label} already. Unpick that first, "
            f"or keep {state.target}."
        )
    last = max((second for _, second in state.joints), default=0)
    if last > rows:
        raise Refused(
            f"Rows {last - 1} and {last} are joined already. Unpick that first, "
            f"or keep {last} rows."
        )
    in_the_top = joined_rows(state)
    if in_the_top > rows:
        raise Refused(
            f"{ROW.noun.count(in_the_top)} are joined already. "
            f"Unpick {in_the_top - rows} first, or keep {in_the_top} rows."
        )


def _slanting_rows_stay(state: State) -> None:
    """Raise Refused where anything is in a row on point: another layout has other rows."""
    if not state.quilt.is_on_point:
        return
    for pile in (SET_UNIT, SET_SIDE):
        there = state.piles[pile.id]
        if there:
            raise Refused(
                f"{pile.noun.count(there)} {are(there)} sewn already, and another layout has rows "
                f"of other lengths. Unpick {'it' if there == 1 else 'them'} first, or keep "
                f"{state.target}."
            )


def _can_be_a_web(rows: int, columns: int) -> None:
    if sentence := why_no_web(None, rows, columns):
        raise Refused(sentence)


def _the_web_stays(state: State, rows: int, columns: int) -> None:
    """Raise Refused where another layout has no place for what is sewn of the web.

    Once units are added the number of rows is the length of a pass, by which the record knows which
    row is next.
    """
    started, added = state.piles[WEB_ROW.id], state.piles[WEB_UNIT.id]
    was = state.target
    if added and rows != was.rows:
        raise Refused(
            f"{WEB_UNIT.noun.count(added)} {are(added)} sewn on already, in passes of {was.rows}. "
            f"Unpick {'it' if added == 1 else 'them'} first, or keep {was.rows} rows."
        )
    if started > rows:
        raise Refused(
            f"{WEB_ROW.noun.count(started)} already. Unpick {started - rows} first, or keep "
            f"{ROW.noun.count(started)}."
        )
    room = rows * added_to_a_row(columns)
    if added > room:
        raise Refused(
            f"{WEB_UNIT.noun.count(added)} {are(added)} sewn on already, and {rows} rows of "
            f"{columns} take {room or 'none'}. Unpick {added - room} first, or keep {was}."
        )
    if state.done.get(JOIN_ROWS, 0) and columns != was.columns:
        raise Refused(
            f"Rows of {was.columns} are joined already. Unpick that first, or keep {was.columns} "
            "across."
        )


def _between_them_must_fit(state: State, rows: int, columns: int) -> None:
    """Raise Refused where what lies between the rows would not fit another layout."""
    sashing = state.quilt.sashing
    if sashing is None:
        return
    if sentence := sashing.why_not(columns):
        raise Refused(sentence)
    pile = state.route.piles[between_rows(sashing).id]
    there = state.piles[pile.id]
    if there and columns != state.target.columns:
        raise Refused(
            f"{pile.noun.count(there)} {are(there)} as long as {state.target.columns} across "
            "already. Unpick or spoil those first, or recount them to none; or keep "
            f"{state.target.columns} across."
        )
    on, fit = state.done.get(ADD_SASHES, 0), sashing.among(rows)
    if on > fit:
        raise Refused(
            f"{on} sashes are sewn along rows already, and {ROW.noun.count(rows)} "
            f"{'takes' if rows == 1 else 'take'} {fit or 'none'}. Unpick {on - fit} first, or "
            f"keep {state.target}."
        )


def _rows_begun_stay(state: State, rows: int, columns: int) -> None:
    """A piece of a row begun must be shorter than a row, and no more rows begun than are to sew."""
    if not state.begun:
        return
    longest = max(units for _, units in state.begun)
    if longest >= columns:
        raise Refused(
            f"A row is begun with {longest} units sewn together. Say what is still sewn of it, or "
            f"keep more than {longest} across."
        )
    rows_to_be = state.piles[ROW.id] + len(rows_begun(state.begun, columns))
    if rows_to_be > rows:
        raise Refused(
            f"{ROW.noun.count(rows_to_be)} {are(rows_to_be)} sewn or begun already. Say what is "
            f"still sewn of those begun, or keep {ROW.noun.count(rows_to_be)}."
        )
