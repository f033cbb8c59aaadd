"""Cloth to buy: what is needed, rounded up to how cloth is sold, with the slack that gives."""

from msgspec import Struct

from sewalong.lengths import METRE, YARD, Length, Unit, as_given, cloth_length, round_up_cloth
from sewalong.quilt.refusal import above_zero


class Purchase(Struct, frozen=True):
    """Lengths along the cloth, in inches: `buy` is `need` and its `slack`."""

    need: Length
    buy: Length
    slack: Length
    reason: str


def to_buy(need: Length, unit: Unit = Unit.INCH) -> Purchase:
    """The next eighth of a yard, or tenth of a metre for an owner who works in centimetres.

    Nothing is added for shrinking or for squaring up the end of the cloth: the slack is all
    there is for those, and it may be none. Raises `NumbersFault` when nothing is needed.
    """
    above_zero(need, "cloth needed")
    buy = round_up_cloth(need, unit)
    slack = buy - need
    sold_by, symbol = (YARD, "yd") if unit is Unit.INCH else (METRE, "m")
    in_shop = f"{as_given(need, unit)} of cloth, {float(need / sold_by):.2f} {symbol}"
    over = f"{as_given(slack, unit)} slack" if slack else "no slack"
    return Purchase(need, buy, slack, f"{in_shop}: buy {cloth_length(need, unit)}, {over}")
