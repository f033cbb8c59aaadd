"""The seams of the centre, from units to a whole: in rows, in sash rows, and along the rows."""

from __future__ import annotations

from msgspec import Struct

from sewalong.quilt.cloth.thread import SeamRun
from sewalong.quilt.cloth.to_cut import to_cut
from sewalong.quilt.layouts.centre import centre
from sewalong.quilt.layouts.joining_seams import row_seams, top_seams
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.size import Size


class CentreSeams(Struct, frozen=True):
    """What is sewn between pieces of a row, between those of a sash row, along rows to put sashes
    on them, and along rows to join them. None where there are none."""

    rows: SeamRun
    sash_rows: SeamRun | None
    sashes: SeamRun | None
    joins: SeamRun

    @property
    def runs(self) -> tuple[SeamRun, ...]:
        """All there are, in working order."""
        found = (self.rows, self.sash_rows, self.sashes, self.joins)
        return tuple(run for run in found if run is not None and run.times)


def centre_seams(quilt: Quilt, target: Target, unit: Size) -> CentreSeams:
    """The seams of `target` from units that size to their raw edges.

    Raises `NumbersFault` when the seams would eat units or sashes.
    """
    rows, columns, sashing = target.rows, target.columns, quilt.setting
    in_rows = row_seams(rows, columns, unit)
    if sashing is None:
        return CentreSeams(in_rows, None, None, top_seams(rows, columns, unit, quilt.seam))
    beside, sash_rows = sashing.among(columns), sashing.among(rows)
    across = columns + beside - 1
    width = centre(quilt, target, unit).width
    sewn = None
    if sashing.cornerstones is not None:
        cut = to_cut(sashing.cut, quilt.unit).length
        sewn = SeamRun("sash rows", cut, sash_rows * across)
    return CentreSeams(
        SeamRun("units and sashes into rows", unit.length, rows * across),
        sewn,
        SeamRun("sashes along rows", width, sash_rows),
        SeamRun(top_seams(rows, columns, unit, quilt.seam).stage, width, rows - 1),
    )
