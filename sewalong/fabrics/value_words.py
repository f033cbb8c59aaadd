"""The five words makers have for value, each relative to the fabrics of one quilt."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.quilt.choices import VALUES

WORDS = VALUES
"""From the darkest on. Most cloth is printed in mediums."""

ALIKE = 10.0
"""Lightness from the darkest to the lightest under which all are mediums: half of what makes a
pattern begin to be readable (20 in L*, NASA Ames, colorusage.arc.nasa.gov, design_lum_0)."""


def value_words(values: Sequence[float]) -> tuple[str, ...]:
    """The word for each of these lightnesses (0 to 100), in five bands of the same width between
    the darkest of them and the lightest: a fabric is light beside darks and dark beside lights."""
    if not values:
        return ()
    low, high = min(values), max(values)
    if high - low < ALIKE:
        return ("medium",) * len(values)
    band = (high - low) / len(WORDS)
    return tuple(WORDS[min(int((value - low) / band), len(WORDS) - 1)] for value in values)
