"""How many seams a person sews again where a piece is resewn."""

from __future__ import annotations

from sewalong.progress.record.measurable import Measured, made_of, untrimmed
from sewalong.quilt.layouts.centre import sashes_in_a_line
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.set_rows import CORNERS
from sewalong.quilt.unit_size import is_trimmed

SIDES = 4
"""Seams of one border: one on each side of the top."""


def seams_sewn(quilt: Quilt, target: Target, piece: Measured) -> int:
    """Seams sewn in one such piece: three in a four-patch, eight in a nine-patch.

    Every seam makes one piece of two, so there is one fewer than there are pieces: patches of a
    unit, units, sashes, cornerstones and triangles of a centre. In rows and tops the seams within
    the units count too, unless these were trimmed to size since.
    """
    piles = made_of(quilt).piles
    if piece.kind in piles:
        return piles[piece.kind].seams
    sewn_in_units = not is_trimmed(quilt) and untrimmed(quilt, "across").allowances
    unit = piles[quilt.method.unit].seams if sewn_in_units else 0
    if piece.kind == "row":
        return piece.of * unit + side_by_side(quilt, target, piece) - 1
    if piece.kind == "column" and quilt.is_on_point:
        # Slanting rows differ in length, and their ends have triangles.
        rows = quilt.rows_for(target)[: piece.of]
        return sum(row.units * (unit + 1) + row.sides for row in rows) - 1
    if piece.kind == "column":
        units = piece.of * target.columns
        return (
            units * unit
            + _set_straight(quilt, target, side_by_side(quilt, target, piece), piece.of)
            - 1
        )
    units = quilt.units_for(target)
    if quilt.is_on_point:
        sides = sum(row.sides for row in quilt.rows_for(target))
        pieces = units + sides + CORNERS
    else:
        down = target.rows + sashes_in_a_line(quilt, target.rows, whole=True)
        pieces = _set_straight(quilt, target, down, target.rows)
    borders = SIDES * len(quilt.borders) if piece.kind == "top" else 0
    return units * unit + pieces - 1 + borders


def side_by_side(quilt: Quilt, target: Target, piece: Measured) -> int:
    """Units and sashes side by side along a row, a column, a centre or a top."""
    part = piece.id.partition(":")[2]
    all_rows = piece.kind == "column" and part == str(target.rows)
    whole = piece.kind in ("centre", "top") or not part or all_rows
    return piece.of + sashes_in_a_line(quilt, piece.of, whole=whole)


def _set_straight(quilt: Quilt, target: Target, down: int, rows: int) -> int:
    """Pieces of so many rows with the sashes between them: `down` one above the other."""
    across = target.columns + sashes_in_a_line(quilt, target.columns, whole=True)
    sashing = quilt.sashing
    stones = sashing is not None and sashing.cornerstones is not None
    return rows * across + (down - rows) * (across if stones else 1)
