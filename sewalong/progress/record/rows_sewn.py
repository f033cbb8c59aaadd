"""Rows as the record knows them: counted as such, or on point and in a web by what lies in them."""

from __future__ import annotations

from collections.abc import Mapping

from sewalong.piecing.method import Pile
from sewalong.progress.record.begun_rows import units_in
from sewalong.progress.record.route import ROW
from sewalong.progress.record.stages.on_point import side_triangles
from sewalong.progress.record.state import State
from sewalong.progress.record.web_rows import whole_rows
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.set_rows import SetRow
from sewalong.quilt.setting import SET_SIDE, SET_UNIT
from sewalong.quilt.web import IN_A_START, WEB_ROW, WEB_UNIT, added_to_a_row


def rows_pile(quilt: Quilt) -> Pile:
    """What is sewn into rows lies in this pile: whole rows, on point their units, or a web."""
    if quilt.is_web:
        return WEB_ROW
    return SET_UNIT if quilt.is_on_point else ROW


def rows_of(state: State) -> tuple[SetRow, ...]:
    """The rows of the target, in order."""
    return state.quilt.rows_for(state.target)


def rows_wanted(state: State) -> int:
    """How many rows the target has; on point those on the slant."""
    return len(rows_of(state))


def rows_sewn(state: State) -> int:
    """Whole rows. On point those that what is sewn fills, taken to be sewn from row 1 on."""
    if state.quilt.is_web:
        return whole_rows(state)
    if not state.quilt.is_on_point:
        return state.piles[ROW.id]
    units, sides, whole = state.piles[SET_UNIT.id], state.piles[SET_SIDE.id], 0
    for row in rows_of(state):
        units, sides = units - row.units, sides - row.sides
        if units < 0 or sides < 0:
            break
        whole += 1
    return whole


def row_begun(state: State, pile: str) -> int:
    """The row on point that the next piece for `pile` goes into, from row 1 on; 0 when none."""
    there = state.piles[pile]
    for number, row in enumerate(rows_of(state), start=1):
        there -= row.units if pile == SET_UNIT.id else row.sides
        if there < 0:
            return number
    return 0


def units_in_rows(state: State) -> int:
    """Units that are sewn into rows, whole or begun."""
    if state.quilt.is_web:
        return IN_A_START * state.piles[WEB_ROW.id] + state.piles[WEB_UNIT.id]
    if state.quilt.is_on_point:
        return state.piles[SET_UNIT.id]
    return state.piles[ROW.id] * state.target.columns + units_in(state.begun)


def wanted_in_rows(quilt: Quilt, target: Target) -> Mapping[str, int]:
    """By pile, the pieces that make all rows of a target."""
    if quilt.is_web:
        added = target.rows * added_to_a_row(target.columns)
        return {WEB_ROW.id: target.rows, WEB_UNIT.id: added}
    if not quilt.is_on_point:
        return {ROW.id: target.rows}
    return {SET_UNIT.id: quilt.units_for(target), SET_SIDE.id: side_triangles(quilt, target)}
