"""Squares that measure less than their label, from pinked edges, washing or a bad printer.

They are used at one common size, and what that does to a unit and to a row is said before any
are sewn.
"""

from collections.abc import Callable, Sequence
from fractions import Fraction

from msgspec import Struct

from sewalong.lengths import Length, Unit, as_given
from sewalong.quilt.as_fraction import exactly
from sewalong.quilt.cloth.to_cut import cut_down
from sewalong.quilt.refusal import NumbersFault, above_zero, at_least
from sewalong.quilt.size import Size

UnitOf = Callable[[Length], float | Fraction]
"""The size of a unit, in inches, made from squares of a given side: the method works it out."""


def common_size(measured: Sequence[Size], unit: Unit = Unit.INCH) -> Length:
    """The largest square on a ruler that every measured piece can be cut to: the shortest side of
    all, or the line below it.

    Raises `NumbersFault` when nothing was measured, or not even one line is left.
    """
    at_least(1, len(measured), "measured squares")
    shortest = min(min(one.width, one.length) for one in measured)
    return above_zero(cut_down(shortest, unit), "common size")


class Shrunk(Struct, frozen=True):
    """Squares of `label` used at `common`, in inches. Each unit is smaller by `unit_loses`, a row
    of `in_row` by `row_loses`."""

    label: Length
    common: Length
    loses: Length
    unit_at_label: float
    unit: float
    unit_loses: float
    in_row: int
    row_loses: float
    reason: str


def shrunk(
    label: Length,
    common: Length,
    unit_of: UnitOf,
    in_row: int,
    shown_in: Unit = Unit.INCH,
) -> Shrunk:
    """What squares of one size instead of another do to the unit and the row.

    Also tells apart two readings of a pinked edge: the valley as `common`, the peak as `label`.
    Raises `NumbersFault` when `common` is above `label` or either is not above zero.
    """
    above_zero(label, "size on the label")
    above_zero(common, "common size")
    at_least(1, in_row, "units in a row")
    if common > label:
        raise NumbersFault(
            f"The common size {as_given(common, shown_in)} is more than {as_given(label, shown_in)} "
            "on the label. Cut them to the label, or give the larger size as the label."
        )
    at_label, now = float(unit_of(label)), float(unit_of(common))
    lost = at_label - now
    words = (
        f"squares at {as_given(common, shown_in)}, not {as_given(label, shown_in)}: the unit is "
        f"{exactly(now, shown_in)}, not {exactly(at_label, shown_in)}; a row of {in_row} loses "
        f"{exactly(lost * in_row, shown_in)}"
    )
    return Shrunk(label, common, label - common, at_label, now, lost, in_row, lost * in_row, words)


class Recut(Struct, frozen=True):
    """The work of cutting squares down: two cuts each, since two edges may stay."""

    pieces: int
    edges: int
    cuts: int


def recut(pieces: int) -> Recut:
    """What cutting `pieces` squares to a smaller size takes. Raises `NumbersFault` below one."""
    at_least(1, pieces, "pieces")
    return Recut(pieces, 4 * pieces, 2 * pieces)


def printed_at(should_be: Length, measured: Length) -> Fraction:
    """The scale a sheet was printed at, from its test square; 1 when the printer was true.

    Multiply any size on the sheet by it. Raises `NumbersFault` when either is not above zero.
    """
    return above_zero(measured, "measured test square") / above_zero(should_be, "test square")
