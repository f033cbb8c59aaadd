"""What is sewn of the top and what is in hand of it, as far as the record says, for its picture.

Rows are taken to be sewn from row 1 on, and so are seams that were counted without saying which
rows: the record knows how many, not which.
"""

from __future__ import annotations

from sewalong.progress.joining.next_joins import joining
from sewalong.progress.plan.plan import StageLine
from sewalong.progress.record.begun_rows import rows_begun, units_across
from sewalong.progress.record.joined_rows import unnumbered
from sewalong.progress.record.route import (
    ADD_BORDERS,
    ADD_CORNERS,
    ADD_SASHES,
    JOIN_ROWS,
    SEW_ROWS,
)
from sewalong.progress.record.rows_sewn import row_begun, rows_of, rows_sewn
from sewalong.progress.record.stages.on_point import ADD_SIDES
from sewalong.progress.record.stages.sashes import SEW_SASH_ROWS, cutting_stage
from sewalong.progress.record.state import State
from sewalong.progress.record.web_rows import next_seam, units_in_web
from sewalong.quilt.setting import CORNERSTONE, LONG, LYING, SET_SIDE, SET_UNIT, STANDING
from sewalong.quilt.web import SEW_WEB, START_WEB
from sewalong.wall.places import Kind
from sewalong.wall.standing import NOTHING_LIT, Lit, Sewn


def sewn_top(state: State) -> Sewn:
    """What is sewn of it."""
    return Sewn(
        units=_units(state),
        sides=_by_row(state.piles[SET_SIDE.id], [row.sides for row in rows_of(state)])
        if state.quilt.is_on_point
        else (),
        sashes=frozenset(_sashes(state, state.done.get(ADD_SASHES, 0))),
        joined=_joined(state),
        corners=state.done.get(ADD_CORNERS, 0),
        borders=state.done.get(ADD_BORDERS, 0),
    )


def said_of_the_top(state: State) -> str:
    """What its picture is called: where seams were counted without saying which, that it is a guess."""
    if unnumbered(state):
        return "the top, if its rows were joined from row 1 on"
    return "the top as it stands"


def in_hand_of_the_top(state: State, line: StageLine) -> Lit:
    """What of the top is worked on at a stage; nothing where none of it is, or it is done."""
    stage, done = line.stage.id, state.done[line.stage.id]
    if not line.to_do:
        return NOTHING_LIT
    if stage == SEW_ROWS:
        row = row_begun(state, SET_UNIT.id) if state.quilt.is_on_point else rows_sewn(state) + 1
        return Lit(rows=frozenset((row,)))
    if stage in (START_WEB, SEW_WEB):
        seam = next_seam(state)
        return Lit(rows=frozenset((seam.row,)), upto=seam.column) if seam else NOTHING_LIT
    if stage == ADD_SIDES:
        return Lit(rows=frozenset((row_begun(state, SET_SIDE.id),)), kinds=frozenset((Kind.SIDE,)))
    if stage == JOIN_ROWS:
        joins = joining(state).joins
        runs = (joins[0].above, joins[0].below) if joins else ()
        return Lit(rows=frozenset(row for a, b in runs for row in range(a, b + 1)))
    if stage == ADD_SASHES:
        return Lit(rows=frozenset(max(1, row) for row in _sashes(state, done + 1)[-1:]))
    if stage == ADD_CORNERS:
        return Lit(corner=done + 1)
    if stage == ADD_BORDERS:
        return Lit(border=done + 1)
    return Lit(kinds=frozenset(_KINDS.get(stage, ())))


_KINDS = {
    cutting_stage(STANDING): (Kind.STANDING,),
    cutting_stage(LONG): (Kind.LYING,),
    cutting_stage(LYING): (Kind.LYING,),
    cutting_stage(CORNERSTONE): (Kind.LYING,),
    SEW_SASH_ROWS: (Kind.LYING,),
}
"""What of the top a stage before it prepares."""


def _units(state: State) -> tuple[int, ...]:
    """Units sewn in each row: in whole rows all, then those begun, the fullest first."""
    if state.quilt.is_web:
        return units_in_web(state)
    rows = [row.units for row in rows_of(state)]
    if state.quilt.is_on_point:
        return _by_row(state.piles[SET_UNIT.id], rows)
    across = units_across(state.route, state.quilt.method.unit)
    begun = [sum(row) for row in rows_begun(state.begun, across)]
    whole = min(len(rows), rows_sewn(state))
    filled = [*rows[:whole], *begun, *([0] * len(rows))]
    return tuple(filled[: len(rows)])


def _by_row(there: int, rows: list[int]) -> tuple[int, ...]:
    """So many pieces dealt to the rows in order, to each as many as it holds."""
    filled = []
    for row in rows:
        filled.append(min(row, there))
        there -= filled[-1]
    return tuple(filled)


def _sashes(state: State, n: int) -> list[int]:
    """The rows along which so many sashes lie, from row 1 on, 0 for the outer edge of row 1."""
    sashing = state.quilt.sashing
    first = 0 if sashing is not None and sashing.frame else 1
    return [*range(first, first + n)]


def _joined(state: State) -> frozenset[int]:
    named = {min(joint) for joint in state.joints}
    loose = [row for row in range(1, rows_sewn(state)) if row not in named]
    return frozenset([*named, *loose[: max(0, unnumbered(state))]])
