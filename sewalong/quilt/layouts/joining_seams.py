"""How long the seams are that join units into rows, rows into a top, and borders onto it."""

from sewalong.lengths import Length
from sewalong.quilt.as_fraction import as_fraction
from sewalong.quilt.cloth.borders import BorderNumbers, Corners
from sewalong.quilt.cloth.thread import SeamRun
from sewalong.quilt.layouts.setting_straight import straight_top
from sewalong.quilt.refusal import at_least
from sewalong.quilt.size import Size


def row_seams(rows: int, columns: int, unit: Size) -> SeamRun:
    """Units into rows: one seam as long as a unit is high between every two. Unfinished sizes.

    Raises `NumbersFault` for counts below one.
    """
    at_least(1, rows, "rows")
    at_least(1, columns, "columns")
    return SeamRun("units into rows", unit.length, rows * (columns - 1))


def top_seams(rows: int, columns: int, unit: Size, seam: Length) -> SeamRun:
    """Rows into a top: one seam across the whole width between every two rows."""
    width = straight_top(rows, columns, unit, seam).width
    return SeamRun("rows into a top", width, rows - 1)


def border_seams(border: BorderNumbers) -> SeamRun:
    """One border sewn on: four seams, and the four slanting ones when it is mitred.

    The strips' own joins are a few inches in all and are left to the waste.
    """
    inner, outer = border.inner, border.outer
    match border.plan.corners:
        case Corners.SIDES_FIRST:
            length = 2 * (inner.length + outer.width)
        case Corners.ENDS_FIRST:
            length = 2 * (inner.width + outer.length)
        case Corners.MITRED:
            slant = as_fraction(float(border.width) * 2**0.5)
            length = inner.around + 4 * slant
    return SeamRun("a border", length, 1)


def binding_seams(top: Size) -> SeamRun:
    """Binding sewn on by machine once round; the hand sewing of the other edge is not counted."""
    return SeamRun("binding", top.around, 1)
