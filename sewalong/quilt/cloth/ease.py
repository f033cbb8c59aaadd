"""Two edges that should match and do not: how far apart, and whether easing can hide it."""

from fractions import Fraction

from msgspec import Struct

from sewalong.lengths import Length, Unit, as_given
from sewalong.quilt.refusal import above_zero

EASE_LIMIT = Fraction(2, 100)
"""The share of its length an edge is taken to ease into another. Common practice: 1/8 in on
9 1/2 in is eased, 1/4 in is not."""

REMAKE_LIMIT = Fraction(3, 100)
"""The share by which a unit may be off before it is remade (a French workshop's rule:
4.5 mm on 15 cm, boutsdechiffons.logipatch.com)."""


class Ease(Struct, frozen=True):
    """`difference` is what the edge has more than the piece it joins (below zero: less).

    `share` is the difference by the length of the piece, always zero or more.
    """

    difference: Length
    share: Fraction
    within: bool
    reason: str


def ease(edge: Length, to: Length, unit: Unit = Unit.INCH) -> Ease:
    """How an edge of one length goes onto a piece of another, each in inches.

    Raises `NumbersFault` when either is not above zero.
    """
    above_zero(edge, "edge")
    above_zero(to, "length it is joined to")
    difference = edge - to
    share = abs(difference) / to
    within = share <= EASE_LIMIT
    percent = f"{float(share * 100):.1f} %"
    if difference == 0:
        words = "they match"
    else:
        way = "over" if difference > 0 else "short"
        judged = "ease it in" if within else "too much to ease"
        words = f"{as_given(abs(difference), unit)} {way}, {percent}: {judged}"
    return Ease(difference, share, within, words)


def most_off(size: Length, limit: Fraction = REMAKE_LIMIT) -> Length:
    """How far a unit of this size may be off before it is remade, at a share of its size."""
    return above_zero(size, "size") * limit
