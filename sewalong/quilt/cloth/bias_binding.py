"""Binding on the bias, cut as one long strip from a square sewn into a tube.

The square is cut corner to corner, the two triangles are sewn into a slanting sheet, its ends
are sewn together one strip apart, and the tube is cut round and round.
"""

from fractions import Fraction
from math import sqrt

from msgspec import Struct

from sewalong.lengths import Length, Unit, as_given
from sewalong.quilt.as_fraction import ROOT_TWO, exactly
from sewalong.quilt.cloth.strips import QUARTER
from sewalong.quilt.refusal import NumbersFault, above_zero, not_below_zero


class BiasBinding(Struct, frozen=True):
    """`side` of the square that gives at least `need`; `by_area` is what the published rule says.

    The rule (length times strip width is the area, as in a Quiltingboard thread on binding math)
    forgets the seams of the tube and the last strip that is not whole, so it can come out short.
    """

    need: Length
    strip: Length
    by_area: float
    side: Length
    loops: int
    gives: float
    reason: str


def side_by_area(need: Length, strip: Length) -> float:
    """The side of a square with the area of the binding: the root of length times width."""
    return sqrt(float(above_zero(need, "length needed") * above_zero(strip, "strip width")))


def bias_from(side: Length, strip: Length, seam: Length = QUARTER) -> tuple[int, float]:
    """Whole loops and the length they give, in inches, from a square of this side.

    Plane geometry: the sheet is side / root 2 high, so it holds that by the strip width in whole
    loops; each is side * root 2 long, less what two seams lying at a slant across it take, which
    is 2 * seam * root 2 each.
    """
    above_zero(side, "side of the square")
    above_zero(strip, "strip width")
    not_below_zero(seam, "seam allowance")
    loops = int(float(side) / ROOT_TWO / float(strip))
    loop = (float(side) - 4 * float(seam)) * ROOT_TWO
    return (loops, loops * loop) if loops and loop > 0 else (0, 0.0)


def bias_binding(
    need: Length,
    strip: Length,
    *,
    seam: Length = QUARTER,
    fineness: Length = Fraction(1),
    unit: Unit = Unit.INCH,
) -> BiasBinding:
    """The smallest square, in steps of `fineness` (inches), that gives `need` inches of bias.

    Raises `NumbersFault` for lengths not above zero.
    """
    above_zero(fineness, "step")
    by_area = side_by_area(need, strip)
    side = max(1, int(by_area / float(fineness))) * fineness
    loops, gives = bias_from(side, strip, seam)
    while gives < float(need):
        side += fineness
        loops, gives = bias_from(side, strip, seam)
    words = (
        f"a square of {as_given(side, unit)} gives {loops} loops, {as_given(gives, unit)} of "
        f"{as_given(need, unit)} needed (by area alone {exactly(by_area, unit)})"
    )
    return BiasBinding(need, strip, by_area, side, loops, gives, words)


class BiasRemnant(Struct, frozen=True):
    """What a left-over piece gives on the bias, from the largest square in it."""

    side: Length
    loops: int
    gives: float
    enough: bool
    reason: str


def bias_from_remnant(
    shorter_side: Length,
    need: Length,
    strip: Length,
    *,
    seam: Length = QUARTER,
    unit: Unit = Unit.INCH,
) -> BiasRemnant:
    """Whether the square in a left-over piece gives `need` inches.

    Raises `NumbersFault` when not one loop can be cut from it.
    """
    above_zero(need, "length needed")
    loops, gives = bias_from(shorter_side, strip, seam)
    if loops == 0:
        raise NumbersFault(
            f"A square of {as_given(shorter_side, unit)} gives no whole loop of {as_given(strip, unit)}. "
            "Use a larger piece, a narrower strip, or cut the binding on the straight grain."
        )
    enough = gives >= float(need)
    off = abs(gives - float(need))
    words = (
        f"a square of {as_given(shorter_side, unit)} gives {loops} loops, {as_given(gives, unit)}: "
        f"{as_given(off, unit)} {'over' if enough else 'short'}"
    )
    return BiasRemnant(shorter_side, loops, gives, enough, words)
