"""Which places of the top are sewn to their row already, so that nothing is moved out of them.

Rows are taken to be sewn in order from row 1 on, each from its place 1, as cards and tags have it.
"""

from __future__ import annotations

from sewalong.progress.record.begun_rows import rows_begun, units_across
from sewalong.progress.record.route import ROW
from sewalong.progress.record.state import State
from sewalong.progress.record.wall import At
from sewalong.progress.record.web_rows import units_in_web
from sewalong.quilt.setting import SET_UNIT
from sewalong.quilt.web import WEB_ROW


def units_sewn(state: State) -> tuple[int, ...]:
    """For each row in order, how many of its units are sewn together, from its place 1 on.

    Of rows of which several pieces are begun it is not known which places they are: 0.
    """
    lengths = tuple(row.units for row in state.quilt.rows_for(state.target))
    if state.quilt.is_on_point:
        return _filled(lengths, state.piles.get(SET_UNIT.id, 0))
    if state.quilt.is_web:
        return units_in_web(state) if WEB_ROW.id in state.piles else (0,) * len(lengths)
    whole = max(0, state.piles.get(ROW.id, 0))
    across = units_across(state.route, state.quilt.method.unit)
    begun = (
        [row[0] if len(row) == 1 else 0 for row in rows_begun(state.begun, across)]
        if state.begun
        else []
    )
    rows = [*lengths[:whole], *begun]
    return tuple([*rows, *[0] * len(lengths)][: len(lengths)])


def sewn_places(state: State) -> frozenset[At]:
    """The places whose unit is sewn to another of its row."""
    return frozenset(
        (row, place)
        for row, units in enumerate(units_sewn(state), start=1)
        for place in range(1, units + 1)
    )


def _filled(lengths: tuple[int, ...], units: int) -> tuple[int, ...]:
    """So many units in rows of these lengths, each row filled before the next is begun."""
    found = []
    for length in lengths:
        found.append(max(0, min(length, units)))
        units -= length
    return tuple(found)
