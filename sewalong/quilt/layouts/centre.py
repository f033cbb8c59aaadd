"""The centre of a top: its units as they are set, before any border. The one size of it."""

from __future__ import annotations

from sewalong.lengths import Length, Unit
from sewalong.quilt.cloth.row import row_of
from sewalong.quilt.cloth.strips import QUARTER
from sewalong.quilt.cloth.to_cut import to_cut
from sewalong.quilt.layouts.setting_on_point import OnPoint, on_point, on_point_size
from sewalong.quilt.layouts.setting_sashed import Meeting, Sashed, sashed, sashed_size
from sewalong.quilt.layouts.setting_straight import straight_top
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.setting import Sashing, SetOnPoint, Setting
from sewalong.quilt.size import Size


def centre(quilt: Quilt, target: Target, unit: Size, seam: Length | None = None) -> Size:
    """The centre from raw edge to raw edge, of units that size to their raw edges.

    `seam` is the allowance it is sewn with, the quilt's own where None. Raises `NumbersFault`
    when the seams would eat units or sashes.
    """
    seam = quilt.seam if seam is None else seam
    if quilt.setting is None:
        return straight_top(target.rows, target.columns, unit, seam)
    finished = unit.grown(-seam)
    size = finished_centre(
        quilt.setting, target.rows, target.columns, finished, seam=seam, shown_in=quilt.unit
    )
    return size.grown(seam)


def finished_centre(
    setting: Setting | None,
    rows: int,
    columns: int,
    unit: Size,
    *,
    seam: Length = QUARTER,
    shown_in: Unit = Unit.INCH,
) -> Size:
    """What the centre finishes at, of units that finish at `unit`; raises as `centre` does, and
    for units on point that are not square."""
    if setting is None:
        return unit.times(columns, rows)
    if isinstance(setting, SetOnPoint):
        return on_point_size(rows, columns, square_side(unit))
    sash = to_cut(setting.cut, shown_in).length - 2 * seam
    return sashed_size(rows, columns, unit, sash, outer=setting.frame)


def square_side(unit: Size) -> Length:
    """The side of a unit set on point. Raises `NumbersFault` where it is not square."""
    if unit.width != unit.length:
        raise NumbersFault("Only square units are set on point here. Set these straight.")
    return unit.width


def triangles_of(quilt: Quilt, setting: SetOnPoint, target: Target, unit: Size) -> OnPoint:
    """The triangles around a centre on point; `unit` runs to the raw edges. Raises as `centre`."""
    return on_point(
        target.rows,
        target.columns,
        square_side(unit.grown(-quilt.seam)),
        seam=quilt.seam,
        fineness=quilt.unit.trim_step,
        larger=setting.larger,
        shown_in=quilt.unit,
    )


def sashes_of(quilt: Quilt, setting: Sashing, target: Target, unit: Size) -> Sashed:
    """The sashes and cornerstones of the centre; `unit` runs to the raw edges."""
    meeting = Meeting.LONG_SASHES if setting.cornerstones is None else Meeting.CORNERSTONES
    return sashed(
        target.rows,
        target.columns,
        unit.grown(-quilt.seam),
        setting.cut - 2 * quilt.seam,
        outer=setting.frame,
        meeting=meeting,
        seam=quilt.seam,
        shown_in=quilt.unit,
    )


def in_a_line(
    quilt: Quilt, unit: Length, units: int, seam: Length | None = None, *, whole: bool
) -> Length:
    """The length of so many units sewn side by side as they are set, raw edge to raw edge.

    With sashes, those between them, and where the line is `whole` a frame's at both ends.
    `unit` is a unit along it, to the raw edges. Raises as `centre` does.
    """
    seam = quilt.seam if seam is None else seam
    pieces = (unit,) * units
    if quilt.sashing is not None:
        cut = to_cut(quilt.sashing.cut, quilt.unit).length
        pieces += (cut,) * sashes_in_a_line(quilt, units, whole=whole)
    return row_of(pieces, seam)


def sashes_in_a_line(quilt: Quilt, units: int, *, whole: bool) -> int:
    """Sashes among so many units side by side; none where there are no sashes."""
    sashing = quilt.sashing
    if sashing is None:
        return 0
    return sashing.among(units) if whole else units - 1
