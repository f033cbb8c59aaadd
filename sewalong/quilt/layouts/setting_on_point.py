"""Units set on point: the size, the rows on the slant, and the triangles that fill the edges.

The edges are filled so that the straight grain runs along the outside: side triangles are cut
twice, corner to corner, from squares; corner triangles once.
"""

from fractions import Fraction
from math import ceil

from msgspec import Struct

from sewalong.lengths import Length, Rounding, Unit, round_to
from sewalong.quilt.as_fraction import as_fraction, diagonal, exactly
from sewalong.quilt.cloth.allowances import half_square_adds, quarter_square_adds
from sewalong.quilt.cloth.strips import QUARTER
from sewalong.quilt.cloth.to_cut import to_cut
from sewalong.quilt.refusal import above_zero, at_least, not_below_zero
from sewalong.quilt.set_rows import slanting
from sewalong.quilt.size import Size

EIGHTH = Fraction(1, 8)


class TriangleSquare(Struct, frozen=True):
    """The square one kind of setting triangle is cut from.

    `exact` is its side in inches by geometry, with nothing to spare. `least` is that rounded up
    to a mark of the ruler. `cut_at` is the trade's way: the seam allowances rounded up first
    (at 1/4 in to 1 1/4 and 7/8 in), then the whole rounded up, then what is cut larger on
    purpose; it is never below `least`.
    """

    exact: float
    least: Length
    cut_at: Length
    triangles: int
    squares: int
    reason: str


class OnPoint(Struct, frozen=True):
    """A top on point, finished sizes in inches.

    `rows` and `columns` count whole units along the edges; `units` also counts those between.
    `slanting` is how many units lie in each slanting row, from one corner to the other.
    """

    size: Size
    units: int
    slanting: tuple[int, ...]
    side: TriangleSquare
    corner: TriangleSquare
    reason: str


def on_point(
    rows: int,
    columns: int,
    unit: Length,
    *,
    seam: Length = QUARTER,
    fineness: Length = EIGHTH,
    larger: Length = Fraction(0),
    shown_in: Unit = Unit.INCH,
) -> OnPoint:
    """Square units that finish at `unit`, set on point.

    `fineness` is the step cutting sizes are rounded up to, in inches (an eighth; half a
    centimetre for metric rulers), and `larger` what setting squares are cut larger on purpose to
    be trimmed later. Raises `NumbersFault` for counts below one or a size not above zero.
    """
    at_least(1, rows, "rows")
    at_least(1, columns, "columns")
    above_zero(unit, "size the unit finishes at")
    not_below_zero(seam, "seam allowance")
    not_below_zero(larger, "amount cut larger")
    step = diagonal(unit)
    units = sum(slanting(rows, columns))
    size = on_point_size(rows, columns, unit)
    sides = 2 * (rows - 1) + 2 * (columns - 1)
    side = _square(
        step, quarter_square_adds(seam), fineness, larger, sides, 4, "cut twice", shown_in
    )
    corner = _square(step / 2, half_square_adds(seam), fineness, larger, 4, 2, "cut once", shown_in)
    words = (
        f"{units} {'unit' if units == 1 else 'units'}, {sides} side triangles from "
        f"{side.squares} {'square' if side.squares == 1 else 'squares'}, 4 corner triangles "
        f"from {corner.squares}; {size.show(shown_in)}"
    )
    return OnPoint(size, units, slanting(rows, columns), side, corner, words)


def on_point_size(rows: int, columns: int, unit: Length) -> Size:
    """What the top finishes at: a diagonal of the unit, finished, for every row and column."""
    step = diagonal(unit)
    return Size(as_fraction(columns * step), as_fraction(rows * step))


def _square(
    finished: float,
    adds: float,
    fineness: Length,
    larger: Length,
    triangles: int,
    from_one: int,
    cuts: str,
    unit: Unit,
) -> TriangleSquare:
    exact = finished + adds
    rounded_adds = round_to(adds, fineness, Rounding.UP)
    by_rule = round_to(finished + float(rounded_adds), fineness, Rounding.UP)
    to_be_cut = to_cut(by_rule + larger, unit)
    cut_at = to_be_cut.length
    squares = ceil(triangles / from_one)
    plural = "square" if squares == 1 else "squares"
    reason = (
        f"{squares} {plural} {cuts} corner to corner, cut at {to_be_cut.text} "
        f"(exactly {exactly(exact, unit)})"
        if squares
        else "none needed"
    )
    return TriangleSquare(
        exact, round_to(exact, fineness, Rounding.UP), cut_at, triangles, squares, reason
    )


def square_around(unit: Length) -> float:
    """The side of the square in which a unit lies on point, corners touching: its diagonal."""
    return diagonal(above_zero(unit, "size of the unit"))
