"""A whole piece cut up and sewn together again: every cut becomes a seam, and takes two allowances.

So a pieced top or block gets smaller by twice the seam allowance for each cut, whatever is between
the cuts and wherever they lie (plane geometry).
"""

from __future__ import annotations

from msgspec import Struct

from sewalong.lengths import Length, Unit, as_given
from sewalong.quilt.cloth.strips import QUARTER
from sewalong.quilt.refusal import NumbersFault, at_least, not_below_zero
from sewalong.quilt.size import Size


class CutUp(Struct, frozen=True):
    """`before` and `after` from raw edge to raw edge, in inches.

    `upright` cuts run from top to bottom and take from the width, `lying` ones from side to side.
    `pieces` lie between them, and `sewn` is the length of the seams, upright ones first.
    """

    before: Size
    after: Size
    upright: int
    lying: int
    pieces: int
    sewn: Length
    reason: str


def cut_up(
    before: Size,
    upright: int,
    lying: int,
    *,
    seam: Length = QUARTER,
    unit: Unit = Unit.INCH,
) -> CutUp:
    """What a piece comes to, cut straight across and sewn together again in the same order.

    Raises `NumbersFault` when the seams would eat it.
    """
    at_least(0, upright, "upright cuts")
    at_least(0, lying, "lying cuts")
    at_least(1, upright + lying, "cuts")
    not_below_zero(seam, "seam allowance")
    width = before.width - 2 * seam * upright
    length = before.length - 2 * seam * lying
    if min(width, length) <= 0:
        raise NumbersFault("So many seams use all of it up. Make fewer cuts or a narrower seam.")
    after = Size(width, length)
    sewn = upright * before.length + lying * width
    reason = (
        f"each cut takes two allowances, {as_given(2 * seam, unit)}: "
        f"{as_given(before.width - width, unit)} less across, "
        f"{as_given(before.length - length, unit)} less down"
    )
    pieces = (upright + 1) * (lying + 1)
    return CutUp(before, after, upright, lying, pieces, sewn, reason)


def to_cut_up(wanted: Size, upright: int, lying: int, *, seam: Length = QUARTER) -> Size:
    """The piece to begin with, raw edge to raw edge, for one that measures `wanted` afterwards."""
    at_least(0, upright, "upright cuts")
    at_least(0, lying, "lying cuts")
    not_below_zero(seam, "seam allowance")
    return Size(wanted.width + 2 * seam * upright, wanted.length + 2 * seam * lying)
