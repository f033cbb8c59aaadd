"""How many seams a person sews again where a piece is resewn."""

from __future__ import annotations

from sewalong.progress.record.measurable import Measured, made_of, untrimmed
from sewalong.quilt.quilt import Quilt, Target
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
        return piece.of * unit + piece.of - 1
    rows = piece.of if head == "column" else target.rows
    columns = target.columns
    borders = SIDES * len(quilt.borders) if head == "top" else 0
    return rows * (columns * unit + columns - 1) + rows - 1 + borders
