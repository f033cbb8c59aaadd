"""A border pieced of units: how many, and the spacer that makes them come out even."""

from math import ceil

from msgspec import Struct

from sewalong.lengths import Length, Unit, show
from sewalong.quilt.cloth.allowances import square_adds
from sewalong.quilt.cloth.strips import QUARTER
from sewalong.quilt.refusal import above_zero


class PiecedBorder(Struct, frozen=True):
    """Finished lengths in inches. `spacer` goes on each of the two ends of the edge, as a plain
    strip that finishes at that width; `cut` is what to cut it at, both zero when none is needed."""

    units: int
    length: Length
    spacer: Length
    cut: Length
    reason: str


def pieced_border(
    edge: Length, unit_size: Length, seam: Length = QUARTER, unit: Unit = Unit.INCH
) -> PiecedBorder:
    """The fewest units that reach along `edge`, and the plain strip on each side of the top that
    lengthens the edge to meet them. Both are finished sizes.

    (units * size - edge) / 2 on each side. Raises `NumbersFault` when a size is not above zero.
    """
    above_zero(edge, "edge")
    above_zero(unit_size, "unit")
    units = ceil(edge / unit_size)
    length = units * unit_size
    spacer = (length - edge) / 2
    if spacer == 0:
        words = f"{units} units come to {show(length, unit)}, just the edge"
        return PiecedBorder(units, length, spacer, spacer, words)
    cut = spacer + square_adds(seam)
    words = (
        f"{units} units come to {show(length, unit)}, {show(length - edge, unit)} more than the "
        f"edge: a strip cut at {show(cut, unit)} each side, finishing at {show(spacer, unit)}"
    )
    return PiecedBorder(units, length, spacer, cut, words)
