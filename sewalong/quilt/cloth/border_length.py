"""The length to cut a border at, from the real top measured in three places.

Both rules are published, and on a top that has stretched they differ by an inch or more, so the
rule is a setting and is said with the result.
"""

from collections.abc import Sequence
from enum import StrEnum
from fractions import Fraction

from msgspec import Struct

from sewalong.lengths import Length, Rounding, Unit, as_given, round_to, show
from sewalong.quilt.refusal import NumbersFault, above_zero, at_least

SPREAD_LIMIT = Fraction(1, 2)
"""How far the measurements may differ, in inches, before the piecing is looked at. Published
limits are 1/2 in and 3/4 in."""


class LengthRule(StrEnum):
    """Which of the measurements the border follows."""

    MEAN = "mean of the measurements"
    MIDDLE = "through the middle"


class BorderLength(Struct, frozen=True):
    """`length` to cut. `spread` is the longest measurement less the shortest.

    `to_ease` has, for each measurement, what the top has more than the border (below zero: what
    it has to give). `most` is the largest of these as a share of the length. `warning` is empty
    while the spread is within the limit.
    """

    length: Length
    exact: Length
    rule: LengthRule
    spread: Length
    to_ease: tuple[Length, ...]
    most: Fraction
    warning: str
    reason: str


def border_length(
    measured: Sequence[Length],
    rule: LengthRule = LengthRule.MEAN,
    *,
    limit: Length = SPREAD_LIMIT,
    fineness: Length | None = None,
    unit: Unit = Unit.INCH,
) -> BorderLength:
    """From the measurements in order across the top: one edge, the middle, the other edge.

    Rounded to the nearest `fineness`, in inches: an eighth or a millimetre unless given.
    Raises `NumbersFault` for fewer than two measurements, or for the middle of an even number.
    """
    at_least(2, len(measured), "measurements")
    fineness = unit.step if fineness is None else fineness
    for one in measured:
        above_zero(one, "measurement")
    if rule is LengthRule.MIDDLE:
        if len(measured) % 2 == 0:
            raise NumbersFault(
                "Going through the middle needs a measurement of the middle. Measure both edges "
                "and the middle, or use the mean."
            )
        exact = measured[len(measured) // 2]
    else:
        exact = sum(measured, Fraction(0)) / len(measured)
    length = above_zero(round_to(exact, fineness, Rounding.NEAREST), "border")
    spread = max(measured) - min(measured)
    to_ease = tuple(one - length for one in measured)
    most = max(abs(one) for one in to_ease) / length
    fine = fineness / unit.length
    places = ", ".join(as_given(one, unit, symbol=False) for one in measured)
    followed = "through the middle" if rule is LengthRule.MIDDLE else "mean"
    reason = (
        f"{show(length, unit, fineness=fine)}, {followed} of {places}; "
        f"they differ by {as_given(spread, unit)}"
    )
    return BorderLength(
        length, exact, rule, spread, to_ease, most, _warning(spread, limit, most, unit), reason
    )


def _warning(spread: Length, limit: Length, most: Fraction, unit: Unit) -> str:
    if spread <= limit:
        return ""
    return (
        f"The measurements differ by {as_given(spread, unit)}, more than {as_given(limit, unit)}, "
        f"and up to {float(most * 100):.1f} % would have to be eased. Look for a seam to take in or "
        "let out, or a stretched edge, before cutting the border."
    )
