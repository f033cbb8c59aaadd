"""How many seams a person sews again where a piece is resewn."""

from __future__ import annotations

from sewalong.progress.record.measurable import Measured, decided, made_of, untrimmed
from sewalong.quilt.layouts.centre import sashes_in_a_line
from sewalong.quilt.layouts.centre_seams import centre_seams
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.set_rows import set_rows
from sewalong.quilt.unit_size import is_trimmed

SIDES = 4
"""Seams of one border: one on each side of the top."""


def seams_sewn(quilt: Quilt, target: Target, piece: Measured) -> int:
    """Seams sewn in one such piece: three in a four-patch, eight in a nine-patch, one less than it
    has patches. In rows and tops those within the units count too, unless these were trimmed to
    size since.
    """
    piles = made_of(quilt).piles
    head = piece.id.partition(":")[0]
    if head in piles:
        return piles[head].seams
    unit = 0 if is_trimmed(quilt) or not untrimmed(quilt, "across").allowances else (
        piles[quilt.method.unit].seams)  # fmt: skip
    if head == "row":
        sashes = sashes_in_a_line(quilt, piece.of, whole=piece.id == "row")
        return piece.of * unit + piece.of + sashes - 1
    if head == "column" and quilt.is_on_point:
        rows = set_rows(quilt.setting, target.rows, target.columns)[: piece.of]
        return sum(row.units * (unit + 1) + row.sides for row in rows) - 1
    inner = Target(piece.of, target.columns) if head == "column" else target
    borders = SIDES * len(quilt.borders) if head == "top" else 0
    joins = centre_seams(quilt, inner, decided(quilt)).runs
    return quilt.units_for(inner) * unit + sum(run.times for run in joins) + borders
