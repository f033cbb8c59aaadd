"""Why a piece measures what it does: the seam, a piece too few, or something else altogether."""

from __future__ import annotations

from enum import StrEnum
from fractions import Fraction

from msgspec import Struct

from sewalong.lengths import Length
from sewalong.progress.measuring.verdict import near_enough
from sewalong.progress.record.measurable import RATE_NOISE, Measured

MOST_DRIFT = Fraction(1, 2)
"""The share of the allowance by which a seam can be off and still be meant as that seam: an
eighth on a quarter inch. Beyond it, something else is the matter. Common practice."""

ABOUT_A_PIECE = Fraction(15, 100)
"""How near a shortfall must come to whole pieces, as a share of one, to be taken for them.
From memory."""


class Why(StrEnum):
    """What a measurement points to."""

    RIGHT = "as it should be"
    WIDE = "the seam is too wide"
    NARROW = "the seam is too narrow"
    MISSING = "a piece is missing"
    TOO_MANY = "a piece too many"
    CUT = "it was cut so"
    OTHER = "no seam can do this"


class Cause(Struct, frozen=True):
    """`short` is below zero for what is over. `off_each` is how much each allowance would be too
    wide (above zero) or too narrow if the seam alone were at fault, `seam` the allowance
    really taken then; None where no seam decides the size. `pieces` is how many are missing
    or too many. All lengths in inches.
    """

    why: Why
    short: Length
    off_each: Length | None
    seam: Length | None
    pieces: int = 0

    @property
    def is_seam(self) -> bool:
        """Whether the seam can be at fault."""
        return self.why in (Why.WIDE, Why.NARROW)


def cause_of(piece: Measured, reading: Length, seam: Length) -> Cause:
    """What a reading of `piece` points to when `seam` was meant to be sewn.

    The shortfall is shared out over every allowance it crosses; a shortfall of whole pieces
    is not drift, and neither is a seam of half as much again or less than half.
    """
    short = piece.expected - reading
    off = _shared_out(short, piece.allowances)
    real = None if off is None else seam + off
    if abs(short) <= near_enough(piece.expected):
        return Cause(Why.RIGHT, short, off, real)
    pieces = _whole_pieces(piece, short)
    if pieces:
        why = Why.MISSING if short > 0 else Why.TOO_MANY
        return Cause(why, short, off, real, pieces)
    if off is None:
        return Cause(Why.CUT, short, off, real)
    if abs(off) > MOST_DRIFT * seam:
        return Cause(Why.OTHER, short, off, real)
    return Cause(Why.WIDE if short > 0 else Why.NARROW, short, off, real)


def _shared_out(short: Length, allowances: float) -> Length | None:
    if allowances < RATE_NOISE:
        return None
    whole = round(allowances)
    if abs(allowances - whole) < RATE_NOISE:
        return short / whole
    return Fraction(float(short) / allowances).limit_denominator(10**6)


def _whole_pieces(piece: Measured, short: Length) -> int:
    """How many whole pieces the difference comes to; 0 when it is not about that."""
    if piece.each is None or piece.of < 2:
        return 0
    pieces = round(abs(short) / piece.each)
    if short > 0 and pieces >= piece.of:
        return 0
    off = abs(abs(short) - pieces * piece.each)
    return pieces if off <= max(ABOUT_A_PIECE * piece.each, near_enough(piece.expected)) else 0
