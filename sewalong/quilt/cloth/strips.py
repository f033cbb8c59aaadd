"""Strips cut across the cloth and joined end to end to reach a length."""

from enum import StrEnum
from fractions import Fraction
from math import ceil

from msgspec import Struct

from sewalong.lengths import Length, Unit, as_given
from sewalong.quilt.cloth.purchase import Purchase, to_buy
from sewalong.quilt.cloth.to_cut import to_cut
from sewalong.quilt.refusal import NumbersFault, above_zero, not_below_zero

USABLE = Fraction(40)
"""Usable width of the cloth, in inches, when nobody has measured it. Published widths run from
38 to 44 in."""

QUARTER = Fraction(1, 4)
"""Seam allowance, in inches, unless the owner's own is given."""


class Join(StrEnum):
    """How strips are joined into one."""

    NONE = "not counted"
    """The joins are left out of the reckoning, as most published rules do."""
    STRAIGHT = "straight"
    DIAGONAL = "diagonal"


def join_loss(join: Join, width: Length, seam: Length) -> Length:
    """What one join takes from the joined length, in inches.

    Straight: an allowance from both strips. Diagonal: two strips laid across each other and
    sewn corner to corner lose the width of a strip between them (plane geometry: each edge ends
    at a different place, and both come out at a + b - width).
    """
    match join:
        case Join.NONE:
            return Fraction(0)
        case Join.STRAIGHT:
            return 2 * seam
        case Join.DIAGONAL:
            return width


class Strips(Struct, frozen=True):
    """So many strips. `width` is the width they are cut at and `width_text` that in words, with any
    rounding said. `joined` is how long they come out when joined, `cloth` the length of
    cloth they are cut from; `narrowest` is the usable width down to which the count holds."""

    count: int
    need: Length
    width: Length
    width_text: str
    usable: Length
    joined: Length
    cloth: Length
    narrowest: Length
    purchase: Purchase
    reason: str


def strips_for(
    need: Length,
    width: Length,
    *,
    usable: Length = USABLE,
    join: Join = Join.STRAIGHT,
    seam: Length = QUARTER,
    unit: Unit = Unit.INCH,
) -> Strips:
    """The fewest strips of `width`, each `usable` long, that join to at least `need` (inches).

    The width is taken as it is cut (see `to_cut`).

    Raises `NumbersFault` for a length that is not above zero, or a join that takes a whole strip.
    """
    above_zero(need, "length needed")
    above_zero(width, "strip width")
    above_zero(usable, "usable width")
    cut = to_cut(width, unit)
    width = cut.length
    loss = join_loss(join, width, not_below_zero(seam, "seam allowance"))
    if need > usable and loss >= usable:
        raise NumbersFault(
            f"A join takes {as_given(loss, unit)} and the strips are only {as_given(usable, unit)} "
            "long. Cut narrower strips or use wider cloth."
        )
    share = need / usable if need <= usable else (need - loss) / (usable - loss)
    count = ceil(share)
    joined = count * usable - (count - 1) * loss
    narrowest = (need + (count - 1) * loss) / count
    lost = f" less {as_given(loss, unit)} a join" if loss and count > 1 else ""
    plural = "strip" if count == 1 else "strips"
    reason = (
        f"{count} {plural}: {as_given(need, unit)} at {as_given(usable, unit)} usable{lost}, "
        f"{float(share):.1f}"
    )
    cloth = count * width
    return Strips(
        count,
        need,
        width,
        cut.text,
        usable,
        joined,
        cloth,
        narrowest,
        to_buy(cloth, unit),
        reason,
    )
