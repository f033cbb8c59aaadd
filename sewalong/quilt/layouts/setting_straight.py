"""Units set edge to edge, and how the top changes with the seam really sewn."""

from msgspec import Struct

from sewalong.lengths import Length, Unit, as_given
from sewalong.quilt.cloth.row import row_length
from sewalong.quilt.size import Size


def straight_top(rows: int, columns: int, unit: Size, seam: Length) -> Size:
    """The top from raw edge to raw edge, from the unfinished size of one unit.

    Raises `NumbersFault` when the seams would eat the units.
    """
    return Size(row_length(columns, unit.width, seam), row_length(rows, unit.length, seam))


class OwnSeam(Struct, frozen=True):
    """The top as planned and as her own seam makes it, raw edge to raw edge.

    `across` and `down` are what the top loses; below zero it grows.
    """

    planned: Size
    sewn: Size
    across: Length
    down: Length
    reason: str


def with_own_seam(planned: Size, sewn: Size, unit: Unit = Unit.INCH) -> OwnSeam:
    """What the measured seam does to the whole top, from its size as planned and so sewn.

    The unfinished unit changes as well when it is itself pieced, and both follow that.
    """
    across, down = planned.width - sewn.width, planned.length - sewn.length
    reason = (
        f"{sewn.show(unit)} instead of {planned.show(unit)}: "
        f"{_change(across, unit)} across, {_change(down, unit)} down"
    )
    return OwnSeam(planned, sewn, across, down, reason)


def _change(lost: Length, unit: Unit) -> str:
    if lost == 0:
        return "the same"
    return f"{as_given(abs(lost), unit)} {'less' if lost > 0 else 'more'}"
