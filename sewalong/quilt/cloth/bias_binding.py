"""Binding on the bias, cut as one long strip from a square sewn into a tube.

The square is cut corner to corner, the two triangles are sewn into a slanting sheet, its ends
are sewn together one strip apart, and the tube is cut round and round.
"""

from math import sqrt

from msgspec import Struct

from sewalong.lengths import Length, Rounding, Unit, as_given, show
from sewalong.quilt.as_fraction import ROOT_TWO, exactly
from sewalong.quilt.cloth.strips import QUARTER
from sewalong.quilt.cloth.to_cut import to_cut
from sewalong.quilt.refusal import above_zero, not_below_zero
from sewalong.quilt.size import Size


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
    """Whole loops and the length they give, in inches, from a square of this side."""
    return bias_tube(Size.square(side), strip, seam)


def bias_tube(piece: Size, strip: Length, seam: Length = QUARTER) -> tuple[int, float]:
    """Whole loops and the length they give, in inches, from a piece sewn into a tube.

    Plane geometry: a corner is cut off at 45 degrees and sewn to the other end, which takes two
    allowances from the longer side; what is left of it is divided into strips, each strip width
    times root 2 along the edge. A loop is the shorter side times root 2, less the two allowances
    of the tube's seam, which lie at a slant across it.
    """
    above_zero(strip, "strip width")
    not_below_zero(seam, "seam allowance")
    across, along = sorted((float(piece.width), float(piece.length)))
    taken = 2 * float(seam)
    loops = int(max(0.0, along - taken) / ROOT_TWO / float(strip))
    loop = (across - taken) * ROOT_TWO
    return (loops, loops * loop) if loops and loop > 0 else (0, 0.0)


def bias_binding(
    need: Length,
    strip: Length,
    *,
    seam: Length = QUARTER,
    unit: Unit = Unit.INCH,
) -> BiasBinding:
    """The smallest square, in whole inches or centimetres, that gives `need` inches of bias.

    The strip is taken as it is cut.
    Raises `NumbersFault` for lengths not above zero.
    """
    step = unit.length
    strip = to_cut(strip, unit).length
    by_area = side_by_area(need, strip)
    side = max(1, int(by_area / float(step))) * step
    loops, gives = bias_from(side, strip, seam)
    while gives < float(need):
        side += step
        loops, gives = bias_from(side, strip, seam)
    words = (
        f"a square of {as_given(side, unit)} gives {loops} loops of {as_given(strip, unit)}, "
        f"{show(gives, unit, rounding=Rounding.DOWN)} of {as_given(need, unit)} needed "
        f"(by area alone {exactly(by_area, unit)})"
    )
    return BiasBinding(need, strip, by_area, side, loops, gives, words)
