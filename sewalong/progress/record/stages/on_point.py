"""The stages of pieces that a setting on point brings: triangles cut, units sewn into slanting rows.

Those rows differ in length, so the record counts what lies in them, unit by unit and triangle by
triangle: a unit unpicked or spoiled is then one unit, whichever row it was in. The minutes are
common practice, first guesses only.
"""

from __future__ import annotations

from sewalong.piecing.method import Hazard, Noun, Pieces, Pile, Stage, Station
from sewalong.progress.record.stages.sashes import cutting_stage
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.setting import CORNER, SET_SIDE, SET_UNIT, SIDE

ADD_SIDES = "add-side-triangles"
FROM_A_SQUARE = {SIDE.id: 4, CORNER.id: 2}
"""Triangles of one square: cut twice corner to corner, or once."""


def point_piles() -> tuple[Pile, ...]:
    """The piles between the units and the top."""
    return (SIDE, CORNER, SET_UNIT, SET_SIDE)


def side_triangles(quilt: Quilt, target: Target) -> int:
    """Those at the ends of all rows."""
    return sum(row.sides for row in quilt.rows_for(target))


def slanting_rows(quilt: Quilt, target: Target, *, sew_rows: str) -> tuple[Stage, ...]:
    """Triangles cut, units sewn into rows and triangles onto their ends; `sew_rows` is the id of
    the stage of rows in every setting."""
    corners = _cut(
        CORNER,
        "Cut each square once, corner to corner: the square corner's edges are on the straight grain.",
        (Hazard.CUTTER,),
    )
    units = Stage(
        id=sew_rows,
        label="sew rows",
        station=Station.MACHINE,
        takes=(Pieces(quilt.method.unit, 1),),
        makes=Pieces(SET_UNIT.id, 1),
        counts=quilt.method.pile(quilt.method.unit).noun,
        hazards=(Hazard.NEEDLE, Hazard.PINS, Hazard.IRON),
        do="Tag the first unit of a row; sew them edge to edge, right sides together; count each one sewn on.",
        check="tag on the row's first unit; each unit the right way up",
        minutes=1.5,
    )
    if not side_triangles(quilt, target):
        return (corners, units)
    sides = _cut(
        SIDE,
        "Cut each square twice, corner to corner: the long edges are then on the straight grain.",
        (Hazard.CUTTER, Hazard.CROSS_CUT),
    )
    ends = Stage(
        id=ADD_SIDES,
        label="add triangles",
        station=Station.MACHINE,
        takes=(Pieces(SIDE.id, 1),),
        makes=Pieces(SET_SIDE.id, 1),
        counts=SIDE.noun,
        hazards=(Hazard.NEEDLE, Hazard.PINS, Hazard.IRON),
        do="Lay its square corner on the unit's inner corner, long edge outwards; the point runs "
        "past the row. Press it outwards.",
        check="Short edges are on the bias: pinned, not pulled.",
        minutes=1.5,
    )
    return (sides, corners, units, ends)


def _cut(pile: Pile, do: str, hazards: tuple[Hazard, ...]) -> Stage:
    return Stage(
        id=cutting_stage(pile),
        label=f"cut {'triangles' if pile is SIDE else 'corners'}",
        station=Station.MAT,
        takes=(),
        makes=Pieces(pile.id, FROM_A_SQUARE[pile.id]),
        counts=Noun("square", "squares"),
        hazards=hazards,
        do=do,
        check="The edges just cut are on the bias: lay them flat, don't pull.",
        minutes=1.0,
    )
