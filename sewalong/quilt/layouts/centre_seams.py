"""The seams of the centre, from units to a whole: in rows, in sash rows, and along the rows."""

from __future__ import annotations

from itertools import pairwise

from msgspec import Struct

from sewalong.lengths import Length
from sewalong.quilt.cloth.thread import SeamRun
from sewalong.quilt.cloth.to_cut import to_cut
from sewalong.quilt.layouts.centre import centre
from sewalong.quilt.layouts.joining_seams import row_seams, top_seams
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.set_rows import CORNERS
from sewalong.quilt.setting import Sashing
from sewalong.quilt.size import Size


class CentreSeams(Struct, frozen=True):
    """What is sewn between the units of a row, to its ends, between the pieces of a sash row,
    along rows to put sashes on them, along rows to join them, and across the corners. None where
    there are none. Rows on point differ in length: `joins` has the usual one, on average."""

    rows: SeamRun
    joins: SeamRun
    sides: SeamRun | None = None
    sash_rows: SeamRun | None = None
    sashes: SeamRun | None = None
    corners: SeamRun | None = None

    @property
    def runs(self) -> tuple[SeamRun, ...]:
        """All there are, in working order."""
        found = (self.rows, self.sides, self.sash_rows, self.sashes, self.joins, self.corners)
        return tuple(run for run in found if run is not None and run.times)


def centre_seams(quilt: Quilt, target: Target, unit: Size) -> CentreSeams:
    """The seams of `target` from units that size to their raw edges.

    Raises `NumbersFault` when the seams would eat units or sashes.
    """
    if quilt.sashing is not None:
        return _sashed(quilt, quilt.sashing, target, unit)
    if quilt.is_on_point:
        return _on_point(quilt, target, unit)
    rows, columns = target.rows, target.columns
    return CentreSeams(row_seams(rows, columns, unit), top_seams(rows, columns, unit, quilt.seam))


def _sashed(quilt: Quilt, sashing: Sashing, target: Target, unit: Size) -> CentreSeams:
    rows, beside = target.rows, sashing.among(target.columns)
    sash_rows, across = sashing.among(rows), target.columns + beside - 1
    width = centre(quilt, target, unit).width
    sewn = None
    if sashing.cornerstones is not None:
        cut = to_cut(sashing.cut, quilt.unit).length
        sewn = SeamRun("sash rows", cut, sash_rows * across)
    return CentreSeams(
        rows=SeamRun("units and sashes into rows", unit.length, rows * across),
        sash_rows=sewn,
        sashes=SeamRun("sashes along rows", width, sash_rows),
        joins=SeamRun("rows into a top", width, rows - 1),
    )


def _on_point(quilt: Quilt, target: Target, unit: Size) -> CentreSeams:
    """A seam between two rows runs along all units and triangles of the longer, or of both where
    they are as long and one lies a unit further on; plane geometry."""
    rows = quilt.rows_for(target)
    along = [Length(one.units + other.units, 2) + 1 for one, other in pairwise(rows)]
    finished, ends = unit.width - 2 * quilt.seam, 2 * quilt.seam
    usual = sum(along, Length(0)) / len(along) * finished + ends if along else Length(0)
    return CentreSeams(
        rows=SeamRun("units into slanting rows", unit.width, sum(row.units - 1 for row in rows)),
        sides=SeamRun("side triangles", unit.width, sum(row.sides for row in rows)),
        joins=SeamRun("slanting rows into a top, on average", usual, len(along)),
        corners=SeamRun("corner triangles", unit.width, CORNERS),
    )
