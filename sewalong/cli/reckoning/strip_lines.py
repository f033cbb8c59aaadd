"""How strips and cloth to buy are told, for whatever is reckoned."""

from __future__ import annotations

from collections.abc import Iterator

from sewalong.lengths import Unit, cloth_length
from sewalong.quilt.cloth.narrower import so_many_down_to
from sewalong.quilt.cloth.purchase import Purchase
from sewalong.quilt.cloth.strips import Strips
from sewalong.quilt.worksheet.line import Line, plural


def buy_line(purchase: Purchase, unit: Unit) -> Line:
    """What to ask for in the shop."""
    return Line("buy", cloth_length(purchase.need, unit), purchase.reason, float(purchase.buy))


def strip_lines(strips: Strips, unit: Unit) -> Iterator[Line]:
    """The strips, and the cloth for them."""
    yield Line(
        "strips",
        f"{plural(strips.count, 'strip')} of {strips.width_text}",
        f"{strips.reason}; {so_many_down_to(strips.narrowest, unit)}",
        float(strips.cloth),
    )
    yield buy_line(strips.purchase, unit)
