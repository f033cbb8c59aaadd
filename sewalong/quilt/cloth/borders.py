"""Borders: how long each strip is, what the top measures after each, and the cloth they take."""

from collections.abc import Sequence
from enum import StrEnum
from fractions import Fraction

from msgspec import Struct

from sewalong.lengths import Length, Rounding, Unit, as_given, round_to
from sewalong.quilt.as_fraction import ROOT_TWO
from sewalong.quilt.cloth.strips import QUARTER, USABLE, Join, Strips, strips_for
from sewalong.quilt.cloth.to_cut import to_cut
from sewalong.quilt.refusal import NumbersFault, above_zero, not_below_zero
from sewalong.quilt.size import Size

EIGHTH = Fraction(1, 8)

MITRE_SPARE = Fraction(2)
"""Added to the outer length of a mitred strip, in inches, to be cut off at the corners. Published
advice differs: 2 in on a 4 in border, 6 in on a 5 in border."""


class Corners(StrEnum):
    """How a border turns the corner."""

    SIDES_FIRST = "sides first"
    ENDS_FIRST = "top and bottom first"
    MITRED = "mitred"


class BorderPlan(Struct, frozen=True):
    """One border as it is wanted: the width its strips are cut at, in inches."""

    cut: Length
    corners: Corners = Corners.SIDES_FIRST

    @classmethod
    def finishing_at(
        cls, width: Length, seam: Length = QUARTER, corners: Corners = Corners.SIDES_FIRST
    ) -> "BorderPlan":
        """From the width it finishes at on each side: one allowance more on both edges."""
        return cls(above_zero(width, "border width") + 2 * seam, corners)


class Mitre(Struct, frozen=True):
    """The length of one mitred strip, in inches.

    `least` reaches from corner to corner of the bordered top, raw edge to raw edge: the minimum
    that rules give. `whole_seam` keeps the full allowance of the mitred seam to its very end,
    0.7 in more at 1/4 in seams. `advised` is the finished outer length and the spare, and never
    less than a whole seam takes.
    """

    least: Length
    whole_seam: float
    advised: Length


class BorderNumbers(Struct, frozen=True):
    """One border, lengths in inches.

    `inner` and `outer` are the top from raw edge to raw edge before and after it; `outer`
    finishes at `finishes_at` once bound. `each_side` and `each_end` are the lengths to cut two
    strips each; both are the advised length for a mitred border, whose `mitre` tells them apart.
    """

    plan: BorderPlan
    width: Length
    inner: Size
    outer: Size
    finishes_at: Size
    each_side: Length
    each_end: Length
    side_mitre: Mitre | None
    end_mitre: Mitre | None
    strips: Strips
    reason: str


def mitre(edge: Length, width: Length, seam: Length = QUARTER) -> Mitre:
    """One mitred strip for an edge that finishes at `edge`, of a border `width` wide finished.

    Least: edge + 2 * width + 2 * seam. For a whole seam, 2 * seam * root 2 more, since the
    allowance lies on the slant. Raises `NumbersFault` for lengths that cannot be.
    """
    above_zero(edge, "edge")
    above_zero(width, "border width")
    outer = edge + 2 * width
    least = outer + 2 * seam
    whole = float(least) + 2 * float(seam) * ROOT_TWO
    return Mitre(least, whole, max(outer + MITRE_SPARE, round_to(whole, EIGHTH, Rounding.UP)))


def border(
    top: Size,
    plan: BorderPlan,
    *,
    seam: Length = QUARTER,
    usable: Length = USABLE,
    join: Join = Join.STRAIGHT,
    unit: Unit = Unit.INCH,
) -> BorderNumbers:
    """One border on a top given from raw edge to raw edge.

    Its width and its lengths are taken as they are cut (see `to_cut`).
    The strips are joined into one and the four lengths cut from it. Raises `NumbersFault` when
    the seams would eat the border or the top.
    """
    not_below_zero(seam, "seam allowance")
    width = to_cut(above_zero(plan.cut, "border strip"), unit).length - 2 * seam
    if width <= 0:
        raise NumbersFault(
            f"A border cut at {as_given(plan.cut, unit)} is used up by its two seams. Cut it wider."
        )
    if min(top.width, top.length) <= 2 * seam:
        raise NumbersFault("The top is used up by its own seams. Give its size from edge to edge.")
    outer = top.grown(width)
    side_mitre = end_mitre = None
    match plan.corners:
        case Corners.SIDES_FIRST:
            each_side, each_end = top.length, outer.width
        case Corners.ENDS_FIRST:
            each_side, each_end = outer.length, top.width
        case Corners.MITRED:
            side_mitre = mitre(top.length - 2 * seam, width, seam)
            end_mitre = mitre(top.width - 2 * seam, width, seam)
            each_side, each_end = side_mitre.advised, end_mitre.advised
    each_side, each_end = (to_cut(length, unit).length for length in (each_side, each_end))
    need = 2 * (each_side + each_end)
    strips = strips_for(need, plan.cut, usable=usable, join=join, seam=seam, unit=unit)
    words = (
        f"{plan.corners.value}: 2 sides of {as_given(each_side, unit)}, top and bottom of "
        f"{as_given(each_end, unit)}; {strips.reason}"
    )
    return BorderNumbers(
        plan,
        width,
        top,
        outer,
        outer.grown(-seam),
        each_side,
        each_end,
        side_mitre,
        end_mitre,
        strips,
        words,
    )


def borders(
    top: Size,
    plans: Sequence[BorderPlan],
    *,
    seam: Length = QUARTER,
    usable: Length = USABLE,
    join: Join = Join.STRAIGHT,
    unit: Unit = Unit.INCH,
) -> tuple[BorderNumbers, ...]:
    """Any number of borders, the innermost first; each lies on the top the one before it made."""
    found: list[BorderNumbers] = []
    for plan in plans:
        one = border(
            found[-1].outer if found else top,
            plan,
            seam=seam,
            usable=usable,
            join=join,
            unit=unit,
        )
        found.append(one)
    return tuple(found)
