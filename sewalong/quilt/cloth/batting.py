"""Batting as it is sold: the smallest that covers a top, or the largest top one allows.

Sizes are conventions; makers and shops differ, so the label on the roll decides.
"""

from collections.abc import Sequence
from fractions import Fraction

from msgspec import Struct

from sewalong.lengths import Length, Unit, as_given
from sewalong.quilt.cloth.backing import MARGIN
from sewalong.quilt.refusal import NumbersFault, not_below_zero
from sewalong.quilt.size import Size


class Batting(Struct, frozen=True):
    """One size on sale, width and length in inches."""

    name: str
    size: Size
    source: str


_CHART = "Honey Be Good, Common quilt and batting sizes (2012), and two more with the same sizes"
_BASICS = "Project 12 Quilts, Quilting basics: standard quilt sizes (2012)"
_PRIMITIVE = "Primitive Quilts & Projects, Quilt size measurements"


def _batting(name: str, width: int, length: int, source: str) -> Batting:
    return Batting(name, Size(Fraction(width), Fraction(length)), source)


BATTINGS: tuple[Batting, ...] = (
    _batting("craft", 34, 45, _BASICS),
    _batting("crib", 45, 60, _CHART),
    _batting("twin", 72, 90, _CHART),
    _batting("twin, long", 72, 96, _PRIMITIVE),
    _batting("full", 81, 96, _CHART),
    _batting("queen", 90, 108, _CHART),
    _batting("queen, wide", 96, 108, _PRIMITIVE),
    _batting("king", 120, 120, _CHART),
)
"""The sizes most often listed. Give your own list where the shop has others."""


NEARLY = Fraction(1)
"""How much less margin, each side, is worth telling when the next smaller batting does with it, in
inches (published margins differ by more)."""


class BattingChoice(Struct, frozen=True):
    """`batting` is the smallest that covers, or None when none listed does. `turned` says that it
    has to be laid on its side; `over` is what it has more across and down, as it is laid.

    `smaller` is a smaller one that nearly does: it covers the top with `smaller_margin` on each
    side. None when none comes near.
    """

    need: Size
    batting: Batting | None
    turned: bool
    over: tuple[Length, Length]
    smaller: Batting | None
    smaller_margin: Length
    reason: str


def smallest_batting(
    top: Size,
    *,
    margin: Length = MARGIN,
    unit: Unit = Unit.INCH,
) -> BattingChoice:
    """The batting of least area that covers the top and `margin` on each side, either way round.

    Raises `NumbersFault` when the margin is below zero.
    """
    need = top.grown(not_below_zero(margin, "margin"))
    by_area = sorted(BATTINGS, key=lambda one: one.size.width * one.size.length)
    covering = next((one for one in by_area if _allows(one.size, top) >= margin), None)
    short = by_area if covering is None else by_area[: by_area.index(covering)]
    smaller, allows = _nearest(short, top, margin)
    nearly = ""
    if smaller is not None:
        nearly = (
            f"; with {as_given(margin - allows, unit)} less margin each side "
            f"{smaller.name}, {smaller.size.show(unit)}, does"
        )
    if covering is None:
        words = f"no listed batting covers {need.show(unit)}: buy it from the roll, or join two"
        none = (Fraction(0), Fraction(0))
        return BattingChoice(need, None, False, none, smaller, allows, words + nearly)
    turned = not covering.size.covers(need)
    laid = covering.size.turned if turned else covering.size
    over = (laid.width - need.width, laid.length - need.length)
    words = (
        f"{covering.name}, {covering.size.show(unit)}{' on its side' if turned else ''}, for "
        f"{need.show(unit)}: {as_given(over[0], unit)} over across, "
        f"{as_given(over[1], unit)} over down{nearly}"
    )
    return BattingChoice(need, covering, turned, over, smaller, allows, words)


def _allows(batting: Size, top: Size) -> Length:
    """The margin a batting leaves on each side of a top, the better way round; below zero when it
    does not even cover the top."""
    return max(
        min(laid.width - top.width, laid.length - top.length) / 2
        for laid in (batting, batting.turned)
    )


def _nearest(short: Sequence[Batting], top: Size, margin: Length) -> tuple[Batting | None, Length]:
    """Of those too small for the margin, the one that nearly does, and the margin it allows."""
    allowed = [(_allows(one.size, top), one) for one in short]
    near = [each for each in allowed if each[0] >= max(Fraction(0), margin - NEARLY)]
    if not near:
        return None, Fraction(0)
    allows, one = max(near, key=lambda each: each[0])
    return one, allows


def largest_top(batting: Size, margin: Length = MARGIN, unit: Unit = Unit.INCH) -> Size:
    """The largest top a batting allows with `margin` on each side, as it lies.

    Raises `NumbersFault` when the margins leave nothing.
    """
    not_below_zero(margin, "margin")
    if min(batting.width, batting.length) <= 2 * margin:
        raise NumbersFault(
            f"{batting.show(unit)} of batting leaves no top with {as_given(margin, unit)} "
            "each side. Take a smaller margin or a larger batting."
        )
    return batting.grown(-margin)
