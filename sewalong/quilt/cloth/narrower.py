"""What changes when the cloth turns out narrower than it was taken to be: where the next step lies.

Usable width is guessed before the selvedges are off, and a quarter of an inch can cost a whole
strip. So everything that is cut across the cloth says down to which width its count holds.
"""

from math import ceil

from sewalong.lengths import Length, Rounding, Unit, as_given, direction, show
from sewalong.quilt.cloth.to_cut import ruler_line


def narrower(count: int, along: Length, per_strip: int, unit: Unit = Unit.INCH) -> str:
    """In words, for `count` pieces that lie `per_strip` to a strip, each `along` inches of it: the
    usable width below which a strip gives one less, and what that costs."""
    strips = ceil(count / per_strip)
    limit = width_text(per_strip * along, unit)
    if per_strip == 1:
        return f"none can be cut below {limit} usable"
    below = ceil(count / (per_strip - 1))
    if below != strips:
        return f"one a strip less below {limit} usable, then {below} strips"
    return (
        f"one a strip less below {limit} usable, the same number of strips down to "
        f"{width_text(ceil(count / strips) * along, unit)}"
    )


def so_many_down_to(width: Length, unit: Unit = Unit.INCH) -> str:
    """`so many down to 38 1/2 in usable`, for strips or panels that are joined."""
    return f"so many down to {width_text(width, unit)} usable"


def width_text(width: Length, unit: Unit) -> str:
    """The least usable width in words, rounded up, so that what holds there is true."""
    fine = ruler_line(unit) / 2 / unit.length
    if direction(width, unit, fineness=fine) == "exact":
        return as_given(width, unit)
    return show(width, unit, fineness=fine * 2, rounding=Rounding.UP)
