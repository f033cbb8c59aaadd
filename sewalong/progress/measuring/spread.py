"""Several readings of pieces that should be alike: how far apart, and one size for all."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from msgspec import Struct

from sewalong.lengths import Length, Rounding, Unit, round_to
from sewalong.quilt.cloth.ease import REMAKE_LIMIT

FEW = Fraction(1, 4)
"""At most this share of the pieces is set aside; more, and it is the many that are so.
From memory."""


class Spread(Struct, frozen=True):
    """Readings in inches. `typical` is the middle one when they lie in order.

    `common` is the largest mark of the ruler that every piece can be trimmed to, `most_lost`
    what the largest loses by it. `set_aside` are the few readings too far under the typical
    one, as places in the order they were given (from 0); `common_without` is the size for all
    the others.
    """

    smallest: Length
    largest: Length
    typical: Length
    common: Length
    most_lost: Length
    set_aside: tuple[int, ...]
    common_without: Length

    @property
    def apart(self) -> Length:
        """The largest less the smallest."""
        return self.largest - self.smallest


def spread(readings: Sequence[Length], unit: Unit) -> Spread:
    """The spread of at least one reading, each above zero.

    A reading is set aside when it is more than `REMAKE_LIMIT` under the typical one and the others
    would lose by it.
    """
    in_order = sorted(readings)
    typical = in_order[(len(in_order) - 1) // 2]
    small = tuple(i for i, one in enumerate(readings) if one < typical * (1 - REMAKE_LIMIT))
    aside = small if len(small) <= FEW * len(readings) else ()
    kept = [one for i, one in enumerate(readings) if i not in aside]
    common = on_the_ruler(in_order[0], unit)
    return Spread(
        smallest=in_order[0],
        largest=in_order[-1],
        typical=typical,
        common=common,
        most_lost=in_order[-1] - common,
        set_aside=aside,
        common_without=on_the_ruler(min(kept), unit),
    )


def on_the_ruler(length: Length, unit: Unit) -> Length:
    """The largest mark not above it: an eighth of an inch, or a millimetre."""
    return round_to(length, unit.step, Rounding.DOWN)
