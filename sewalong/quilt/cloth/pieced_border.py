"""A border pieced of units: how many, and the spacer that makes them come out even."""

from math import ceil

from msgspec import Struct

from sewalong.lengths import Length, Unit, as_given
from sewalong.quilt.as_fraction import exactly
from sewalong.quilt.cloth.allowances import square_adds
from sewalong.quilt.cloth.strips import QUARTER
from sewalong.quilt.cloth.to_cut import to_cut
from sewalong.quilt.refusal import above_zero


class PiecedBorder(Struct, frozen=True):
    """Finished lengths in inches. `spacer` goes on each of the two ends of the edge, as a plain
    strip that finishes at that width; `cut` is what to cut it at, both zero when none is needed.
    A spacer that had to be rounded up to be cut makes the edge longer than its units by as much."""

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
        words = f"{units} units come to {as_given(length, unit)}, just the edge"
        return PiecedBorder(units, length, spacer, spacer, words)
    cut = to_cut(spacer + square_adds(seam), unit)
    left = 2 * (cut.length - square_adds(seam) - spacer)
    ease = f", {exactly(left, unit)} to ease in" if left else ""
    words = (
        f"{units} units come to {as_given(length, unit)}, {as_given(length - edge, unit)} more "
        f"than the edge: a strip cut at {cut.text} each side, finishing at "
        f"{as_given(spacer + left / 2, unit)}{ease}"
    )
    return PiecedBorder(units, length, spacer + left / 2, cut.length, words)
