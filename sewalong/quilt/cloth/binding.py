"""Binding cut on the straight grain: length, strips and cloth, from new cloth or a remnant."""

from fractions import Fraction

from msgspec import Struct

from sewalong.lengths import Length, Unit, as_given
from sewalong.quilt.cloth.strips import QUARTER, USABLE, Join, Strips, join_loss, strips_for
from sewalong.quilt.cloth.to_cut import to_cut
from sewalong.quilt.refusal import NumbersFault, above_zero, not_below_zero
from sewalong.quilt.size import Size

STRIP = Fraction(5, 2)
"""Width to cut binding at, in inches, when none is given; published strips run from 2 1/4 in."""

ALLOWANCE = Fraction(12)
"""Added to the way round for corners and the last join, in inches. Published allowances are 0,
10, 12, 16, 20 and 24 in."""


class Binding(Struct, frozen=True):
    """Lengths in inches: `length` is the way `around` and the `allowance`, and
    `around_reason` says only that, without the strips."""

    around: Length
    allowance: Length
    length: Length
    strips: Strips
    around_reason: str
    reason: str


def binding_length(top: Size, allowance: Length = ALLOWANCE) -> Length:
    """How much binding a quilt of this size takes, in inches."""
    return top.around + not_below_zero(allowance, "allowance for corners and the join")


def binding(
    top: Size,
    *,
    strip: Length = STRIP,
    allowance: Length = ALLOWANCE,
    usable: Length = USABLE,
    join: Join = Join.DIAGONAL,
    seam: Length = QUARTER,
    unit: Unit = Unit.INCH,
) -> Binding:
    """Straight binding for a quilt trimmed to `top`.

    Strips are counted whole before they are multiplied by their width. Raises `NumbersFault` for
    lengths that cannot be.
    """
    length = binding_length(top, allowance)
    strips = strips_for(length, strip, usable=usable, join=join, seam=seam, unit=unit)
    around = f"{as_given(top.around, unit)} around and {as_given(allowance, unit)} allowance"
    return Binding(top.around, allowance, length, strips, around, f"{around}; {strips.reason}")


class Remnant(Struct, frozen=True):
    """What binding a piece of cloth gives: `strips` cut along its longer side or its shorter,
    whichever gives more. `over` is below zero when it is short."""

    strips: int
    each: Length
    gives: Length
    over: Length
    enough: bool
    reason: str


def binding_from_remnant(
    piece: Size,
    need: Length,
    *,
    strip: Length = STRIP,
    join: Join = Join.DIAGONAL,
    seam: Length = QUARTER,
    unit: Unit = Unit.INCH,
) -> Remnant:
    """Whether straight strips from a left-over piece join to `need` inches.

    Raises `NumbersFault` when not one strip can be cut from it.
    """
    above_zero(need, "length needed")
    above_zero(strip, "strip width")
    strip = to_cut(strip, unit).length
    loss = join_loss(join, strip, seam)
    ways = [
        _cut(piece.width, piece.length, strip, loss),
        _cut(piece.length, piece.width, strip, loss),
    ]
    gives, count, each = max(ways)
    if count == 0:
        raise NumbersFault(
            f"Not one strip of {as_given(strip, unit)} can be cut from {piece.show(unit)}. "
            "Use a larger piece or a narrower strip."
        )
    over = gives - need
    plural = "strip" if count == 1 else "strips"
    verdict = f"{as_given(over, unit)} over" if over >= 0 else f"{as_given(-over, unit)} short"
    words = f"{count} {plural} of {as_given(each, unit)} join to {as_given(gives, unit)}: {verdict}"
    return Remnant(count, each, gives, over, over >= 0, words)


def _cut(along: Length, across: Length, strip: Length, loss: Length) -> tuple[Length, int, Length]:
    """(joined length, strips, length of each) for strips that run `along`."""
    count = int(across // strip)
    # A strip no longer than its join adds nothing, and one more would shorten the binding.
    if along <= loss:
        count = min(count, 1)
    joined = count * along - max(0, count - 1) * loss
    return joined, count, along
