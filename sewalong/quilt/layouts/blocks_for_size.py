"""From the size a quilt is to have to its blocks: set straight, with sashes, or on point.

Every setting grows by the same step with each block, so the rows that cover a length and the
rows that lie within it follow from the size of one and of two (plane geometry).
"""

from __future__ import annotations

from enum import StrEnum
from fractions import Fraction

from msgspec import Struct

from sewalong.lengths import Length, Unit
from sewalong.quilt.cloth.strips import QUARTER
from sewalong.quilt.layouts.counts_for_length import counts_for_length
from sewalong.quilt.layouts.fit import Fit, fit
from sewalong.quilt.layouts.setting_on_point import on_point
from sewalong.quilt.layouts.setting_sashed import sashed
from sewalong.quilt.refusal import NumbersFault, not_below_zero
from sewalong.quilt.size import Size


class Setting(StrEnum):
    """How blocks are set."""

    STRAIGHT = "straight"
    SASHED = "with sashes"
    ON_POINT = "on point"


class Blocks(Struct, frozen=True):
    """So many blocks in rows by columns; on point `blocks` counts those between the rows too.

    `size` is what the top finishes at with its borders, and `fit` how it meets the size wanted.
    `fills` says what else lies between and around the blocks.
    """

    setting: Setting
    rows: int
    columns: int
    blocks: int
    size: Size
    fit: Fit
    fills: str


class BlocksForSize(Struct, frozen=True):
    """The fewest blocks that cover a size, and the most that lie within it, if any do."""

    covering: Blocks
    within: Blocks | None


class Sash(Struct, frozen=True):
    """Sashes that finish at `width`, around the outside as well when `outer`."""

    width: Length
    outer: bool = True


def blocks_for_size(
    wanted: Size,
    block: Size,
    *,
    sash: Sash | None = None,
    on_the_point: bool = False,
    border: Length = Fraction(0),
    seam: Length = QUARTER,
    unit: Unit = Unit.INCH,
) -> BlocksForSize:
    """The rows and columns for a size wanted, from blocks that finish at `block`.

    `border` is what borders add on each side, finished. With a `sash` they are set with sashes;
    with `on_the_point` the block must be square. Raises `NumbersFault` when a border leaves no
    room for blocks, or a block is not square that should be.
    """
    not_below_zero(border, "border")
    if min(wanted.width, wanted.length) <= 2 * border:
        raise NumbersFault("The borders alone are as large as that. Give narrower borders.")
    centre = wanted.grown(-border)
    if on_the_point:
        if block.width != block.length:
            raise NumbersFault("Only square blocks are set on point here. Give one length.")

        def built(rows: int, columns: int) -> tuple[Size, int, str]:
            top = on_point(rows, columns, block.width, seam=seam, shown_in=unit)
            fills = f"{top.side.triangles} side and {top.corner.triangles} corner triangles"
            return top.size, top.units, fills

        setting = Setting.ON_POINT
    elif sash is not None:

        def built(rows: int, columns: int) -> tuple[Size, int, str]:
            top = sashed(
                rows, columns, block, sash.width, outer=sash.outer, seam=seam, shown_in=unit
            )
            return (
                top.size,
                rows * columns,
                f"{top.sashes} sashes and {top.cornerstones} cornerstones",
            )

        setting = Setting.SASHED
    else:

        def built(rows: int, columns: int) -> tuple[Size, int, str]:
            return block.times(columns, rows), rows * columns, ""

        setting = Setting.STRAIGHT

    def laid(rows: int, columns: int) -> Blocks:
        size, blocks, fills = built(rows, columns)
        bordered = size.grown(border)
        return Blocks(setting, rows, columns, blocks, bordered, fit(bordered, wanted, unit), fills)

    across = counts_for_length(lambda n: built(1, n)[0].width, centre.width)
    down = counts_for_length(lambda n: built(n, 1)[0].length, centre.length)
    within = laid(down[1], across[1]) if down[1] and across[1] else None
    return BlocksForSize(laid(down[0], across[0]), within)
