"""Mattress sizes, as published, and the quilt that lies on one with a drop.

A convention, not a fact: sources differ by an inch or so, so measure the bed when it matters.
"""

from fractions import Fraction

from msgspec import Struct

from sewalong.lengths import Length
from sewalong.quilt.refusal import NumbersFault, not_below_zero
from sewalong.quilt.size import Size


class Bed(Struct, frozen=True):
    """A mattress, width and length in inches; `others` are sizes other sources give."""

    name: str
    size: Size
    source: str
    others: tuple[Size, ...] = ()


def _size(width: str, length: str) -> Size:
    return Size(Fraction(width), Fraction(length))


_COUNCIL = "Better Sleep Council (a trade body), bettersleep.org/mattress-sizes"
_FIRM = "Mattress Firm sizes, mattressfirm.com (a shop)"

BEDS: tuple[Bed, ...] = (
    Bed("crib", _size("27", "52"), _COUNCIL, (_size("28", "52"),)),
    Bed(
        "twin",
        _size("38", "75"),
        _COUNCIL,
        (_size("39", "75"), _size("39", "74"), _size("38", "74.5")),
    ),
    Bed("twin xl", _size("38", "80"), _FIRM),
    Bed(
        "full",
        _size("54", "75"),
        _FIRM,
        (_size("53", "75"), _size("54", "74"), _size("53", "74.5")),
    ),
    Bed("full xl", _size("54", "80"), "US-Mattress size information (a shop)"),
    Bed("queen", _size("60", "80"), _FIRM, (_size("60", "79.5"),)),
    Bed("king", _size("76", "80"), _FIRM, (_size("78", "80"), _size("76", "79.5"))),
    Bed("cal king", _size("72", "84"), _FIRM),
)


def bed(name: str) -> Bed:
    """The bed called `name`. Raises `NumbersFault` naming those there are."""
    wanted = " ".join(name.lower().split())
    for one in BEDS:
        if one.name == wanted:
            return one
    names = ", ".join(one.name for one in BEDS)
    raise NumbersFault(f"No bed is called '{wanted}' here. Use one of: {names}; or give a size.")


def quilt_over(mattress: Size, drop: Length) -> Size:
    """The quilt that hangs `drop` inches over each side and over the foot.

    Raises `NumbersFault` when it is below zero.
    """
    not_below_zero(drop, "drop on each side")
    return Size(mattress.width + 2 * drop, mattress.length + drop)
