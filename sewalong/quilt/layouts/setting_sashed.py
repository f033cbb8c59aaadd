"""Units with strips between them: sashes, cornerstones, and the size row by row."""

from enum import StrEnum
from fractions import Fraction

from msgspec import Struct

from sewalong.lengths import Length, Unit, as_given
from sewalong.quilt.cloth.allowances import square_adds
from sewalong.quilt.cloth.strips import QUARTER
from sewalong.quilt.cloth.to_cut import cut_size, to_cut
from sewalong.quilt.refusal import above_zero, at_least, not_below_zero
from sewalong.quilt.setting import sashes_among
from sewalong.quilt.size import Size


class Meeting(StrEnum):
    """What lies where sashes meet."""

    CORNERSTONES = "cornerstones"
    LONG_SASHES = "long sashes between the rows"


class Sashed(Struct, frozen=True):
    """A sashed top. Sizes it finishes at, in inches; `cut_...` are sizes to cut.

    `standing` sashes lie between the columns and are as long as a unit is high; `lying` ones lie
    between the rows, a unit wide each, or the whole width of the top when `Meeting.LONG_SASHES`.
    `down_to` is how long the top is after each row of units or of sashes.
    """

    size: Size
    standing: int
    lying: int
    cornerstones: int
    cut_standing: Size
    cut_lying: Size
    cut_cornerstone: Size | None
    down_to: tuple[Length, ...]
    reason: str

    @property
    def sashes(self) -> int:
        """All sashes, whichever way they lie."""
        return self.standing + self.lying


def sashed(
    rows: int,
    columns: int,
    unit: Size,
    sash: Length,
    *,
    outer: bool = True,
    meeting: Meeting = Meeting.CORNERSTONES,
    seam: Length = QUARTER,
    shown_in: Unit = Unit.INCH,
) -> Sashed:
    """Units of one size set with sashes of one width between them, and around when `outer`.

    `unit` and `sash` are finished sizes. A sash finishes at what it is cut less its allowances,
    so that a width no ruler shows makes the top a little larger (see `to_cut`); along the units
    it is cut up to the ruler's next line. Raises `NumbersFault` for counts below one or a sash
    that is not above zero.
    """
    at_least(1, rows, "rows")
    at_least(1, columns, "columns")
    above_zero(sash, "sash")
    not_below_zero(seam, "seam allowance")
    adds = square_adds(seam)
    width = to_cut(sash + adds, shown_in)
    sash = width.length - adds
    across, down = sashes_among(columns, outer=outer), sashes_among(rows, outer=outer)
    size = sashed_size(rows, columns, unit, sash, outer=outer)
    with_stones = meeting is Meeting.CORNERSTONES
    lying = down * columns if with_stones else down
    long = unit.width if with_stones else size.width
    stones = across * down if with_stones else 0
    words = (
        f"{across * rows + lying} sashes: {across * rows} standing between the columns, {lying} "
        f"lying between the rows; {stones} cornerstones; {size.show(shown_in)}"
    )
    if width.rounded:
        words = f"{words}; sashes cut at {width.text}, finishing at {as_given(sash, shown_in)}"
    return Sashed(
        size,
        across * rows,
        lying,
        stones,
        cut_size(Size(width.length, unit.length + adds), shown_in),
        cut_size(Size(long + adds, width.length), shown_in),
        Size.square(width.length) if stones else None,
        _row_by_row(rows, unit.length, sash, outer),
        words,
    )


def sashed_size(rows: int, columns: int, unit: Size, sash: Length, *, outer: bool) -> Size:
    """What the top finishes at; `unit` and `sash` are finished sizes.

    Raises `NumbersFault` for a sash that is not above zero.
    """
    above_zero(sash, "sash")
    return Size(
        columns * unit.width + sashes_among(columns, outer=outer) * sash,
        rows * unit.length + sashes_among(rows, outer=outer) * sash,
    )


def _row_by_row(rows: int, unit: Length, sash: Length, outer: bool) -> tuple[Length, ...]:
    """How long the top is after each row, sash rows counted as rows of their own."""
    heights = [sash] if outer else []
    for row in range(rows):
        heights.append(unit)
        if outer or row < rows - 1:
            heights.append(sash)
    reached, total = [], Fraction(0)
    for height in heights:
        total += height
        reached.append(total)
    return tuple(reached)
