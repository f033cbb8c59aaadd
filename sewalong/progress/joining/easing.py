"""How much too long or short a unit may be and still be eased in, where its edges are on the bias."""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache

from sewalong.lengths import Rounding, Unit, as_given, show
from sewalong.quilt.cloth.ease import EASE_LIMIT, most_off
from sewalong.quilt.derived import derived_if_any
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.unit_size import decided_unit

FINE = {Unit.INCH: Fraction(1, 32), Unit.CM: Fraction(1, 10)}
"""What is still seen beside a mark of the tape, in the owner's unit: half a sixteenth, or 1 mm."""


@lru_cache(maxsize=64)
def ease_words(quilt: Quilt, *, along_the_rows: bool) -> str:
    """What can be eased into one unit's length of a seam, between units of a row, or along the
    rows; empty where no outer edge of a unit stretches, or sizes cannot be had."""
    made = derived_if_any(quilt)
    if made is None or not made.has_bias_edges:
        return ""
    size = decided_unit(quilt, made)
    edge = size.width if along_the_rows else size.length
    unit = quilt.unit
    most = show(most_off(edge, EASE_LIMIT), unit, fineness=FINE[unit], rounding=Rounding.DOWN)
    return (
        f"Bias edges give: a unit up to {most} longer or shorter than the {as_given(edge, unit)} "
        f"it should be can be eased in ({float(EASE_LIMIT):.0%} of the edge, common practice). Pin "
        "both ends and the middle, lay the longer edge below, and don't pull. More than that: trim "
        "it or leave it out."
    )
