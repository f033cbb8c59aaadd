"""A block made larger or smaller: only what finishes is multiplied, never the seam allowances.

Squares cut at 2 1/2 in finish at 2 in; doubled they finish at 4 in and are cut at 4 1/2 in, not 5.
"""

from __future__ import annotations

from enum import StrEnum
from fractions import Fraction

from msgspec import Struct

from sewalong.lengths import CENTIMETRE, Length, Rounding, Unit, as_given, round_to
from sewalong.quilt.cloth.allowances import half_square_adds, quarter_square_adds, square_adds
from sewalong.quilt.cloth.strips import QUARTER
from sewalong.quilt.cloth.to_cut import ToCut, to_cut
from sewalong.quilt.refusal import NumbersFault, above_zero


class Piece(StrEnum):
    """What is cut, and so what was added to its finished size."""

    STRAIGHT = "square or strip"
    HALF = "square for two triangles, cut once"
    QUARTERS = "square for four triangles, cut twice"


class Scaled(Struct, frozen=True):
    """One side of a piece, in inches: cut at `before`, of which `adds` is seam, it finishes at
    `finished`; `times` as large it is cut as `cut` says."""

    before: Length
    adds: Length
    finished: Length
    times: Fraction
    cut: ToCut
    reason: str


def scaled(
    before: Length,
    times: Fraction,
    *,
    piece: Piece = Piece.STRAIGHT,
    seam: Length = QUARTER,
    unit: Unit = Unit.INCH,
) -> Scaled:
    """What a piece cut at `before` is cut at for a block `times` as large.

    For triangles the trade's rounded allowances are taken off and put on (7/8 and 1 1/4 in at
    1/4 in seams), since sizes in patterns have them. Raises `NumbersFault` when the piece is all
    seam.
    """
    above_zero(times, "number of times")
    adds = piece_adds(piece, seam, unit)
    finished = above_zero(before, "size cut") - adds
    if finished <= 0:
        raise NumbersFault(
            f"A piece cut at {as_given(before, unit)} is all seam allowance. Check its size, and "
            "which kind of piece it is."
        )
    cut = to_cut(finished * times + adds, unit)
    larger = f"; as cut it finishes at {as_given(cut.length - adds, unit)}" if cut.rounded else ""
    reason = (
        f"{as_given(before, unit)} less {as_given(adds, unit)} of seam finishes at "
        f"{as_given(finished, unit)}; {as_given(finished * times, unit)} and the seam{larger}"
    )
    return Scaled(before, adds, finished, times, cut, reason)


def piece_adds(piece: Piece, seam: Length, unit: Unit) -> Length:
    """What is added to the finished size to cut it, rounded up for triangles as patterns do: to an
    eighth of an inch, or a millimetre."""
    if piece is Piece.STRAIGHT:
        return square_adds(seam)
    exact = half_square_adds(seam) if piece is Piece.HALF else quarter_square_adds(seam)
    return round_to(exact, Fraction(1, 8) if unit is Unit.INCH else CENTIMETRE / 10, Rounding.UP)
