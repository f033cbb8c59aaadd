"""The back: how large, which way its seams run, and whether so many panels really reach."""

from enum import StrEnum
from fractions import Fraction
from math import ceil

from msgspec import Struct

from sewalong.lengths import Length, Unit, as_given
from sewalong.quilt.cloth.narrower import so_many_down_to
from sewalong.quilt.cloth.purchase import Purchase, to_buy
from sewalong.quilt.cloth.strips import USABLE
from sewalong.quilt.cloth.to_cut import to_cut
from sewalong.quilt.refusal import NumbersFault, above_zero, not_below_zero
from sewalong.quilt.size import Size

MARGIN = Fraction(4)
"""Added on each side of the top, in inches. Published margins run from 2 to 6 in a side."""

BACK_SEAM = Fraction(1, 2)
"""Allowance of the seams in the back, in inches (common practice: wider than in the top)."""


class Seams(StrEnum):
    """Which way the seams of the back run."""

    LENGTHWISE = "along the length"
    CROSSWISE = "across the width"


class BackingWay(Struct, frozen=True):
    """One way to piece it, lengths in inches: `panels` of `panel` each, which sewn together reach
    `reach`, of which `over` is more than needed. So many panels do down to `narrowest` of usable
    width."""

    seams: Seams
    panels: int
    panel: Length
    reach: Length
    over: Length
    narrowest: Length
    cloth: Length
    purchase: Purchase
    reason: str


class Backing(Struct, frozen=True):
    """The back of a top. `best` takes less cloth than `other` by `saves` inches; when both take
    the same, it is the one with fewer panels, then the one with lengthwise seams."""

    size: Size
    margin: Length
    best: BackingWay
    other: BackingWay
    saves: Length
    reason: str


def panels_reach(panels: int, usable: Length, seam: Length = BACK_SEAM) -> Length:
    """What panels sewn side by side come to: each seam takes an allowance from both."""
    return panels * usable - 2 * seam * (panels - 1)


def backing(
    top: Size,
    *,
    margin: Length = MARGIN,
    usable: Length = USABLE,
    seam: Length = BACK_SEAM,
    unit: Unit = Unit.INCH,
) -> Backing:
    """The back for a top given from raw edge to raw edge, both ways, the cheaper one first.

    `margin` is added on each of the four sides. Raises `NumbersFault` for cloth no wider than
    its own seam.
    """
    not_below_zero(margin, "margin")
    size = top.grown(margin)
    lengthwise = _way(Seams.LENGTHWISE, size.width, size.length, usable, seam, unit)
    crosswise = _way(Seams.CROSSWISE, size.length, size.width, usable, seam, unit)
    best, other = lengthwise, crosswise
    if (crosswise.cloth, crosswise.panels) < (lengthwise.cloth, lengthwise.panels):
        best, other = crosswise, lengthwise
    saves = other.cloth - best.cloth
    saved = (
        f"saves {as_given(saves, unit)} of cloth" if saves else "no more cloth than the other way"
    )
    words = (
        f"{size.show(unit)} with {as_given(margin, unit)} each side; seams {best.seams.value}: "
        f"{best.reason}; {saved}"
    )
    return Backing(size, margin, best, other, saves, words)


def _way(
    seams: Seams, across: Length, along: Length, usable: Length, seam: Length, unit: Unit
) -> BackingWay:
    above_zero(usable, "usable width")
    loss = 2 * not_below_zero(seam, "seam allowance of the back")
    if loss >= usable:
        raise NumbersFault("The cloth is no wider than its own seam. Check the usable width.")
    panel = to_cut(along, unit).length
    panels = max(1, ceil((across - loss) / (usable - loss)))
    narrowest = (across + loss * (panels - 1)) / panels
    reach = panels_reach(panels, usable, seam)
    cloth = panels * panel
    plural = "panel" if panels == 1 else "panels"
    words = (
        f"{panels} {plural} of {as_given(panel, unit)} reach {as_given(reach, unit)} "
        f"of the {as_given(across, unit)} needed, {so_many_down_to(narrowest, unit)}"
    )
    return BackingWay(
        seams, panels, panel, reach, reach - across, narrowest, cloth, to_buy(cloth, unit), words
    )


class BackingCheck(Struct, frozen=True):
    """Whether cloth in hand makes the back. `short` is the length still to buy for the cheaper
    way, and zero when it is enough."""

    enough: bool
    short: Length
    need: BackingWay
    reason: str


def backing_from(
    cloth: Length,
    top: Size,
    *,
    margin: Length = MARGIN,
    usable: Length = USABLE,
    seam: Length = BACK_SEAM,
    unit: Unit = Unit.INCH,
) -> BackingCheck:
    """Whether `cloth` inches of this width cover the top and the margin, seams either way.

    Raises `NumbersFault` as `backing` does.
    """
    above_zero(cloth, "cloth in hand")
    best = backing(top, margin=margin, usable=usable, seam=seam, unit=unit).best
    short = max(best.cloth - cloth, Fraction(0))
    verdict = f"{as_given(short, unit)} short" if short else "enough"
    words = f"{as_given(cloth, unit)} in hand, {verdict}: {best.reason}"
    return BackingCheck(short == 0, short, best, words)
