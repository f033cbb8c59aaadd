"""Colour families, for balance only: which fabrics somebody sorting by colour would put together."""

from __future__ import annotations

import math
from enum import StrEnum

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.sight import lab


class Family(StrEnum):
    """Everyday words; the limits between them are this program's own choice."""

    NEUTRAL = "neutral"
    RED = "red"
    PINK = "pink"
    ORANGE = "orange"
    BROWN = "brown"
    YELLOW = "yellow"
    GREEN = "green"
    TEAL = "teal"
    BLUE = "blue"
    VIOLET = "violet"


_GREYISH = 12.0
"""Chroma under which a colour counts as none."""

_HUES = (
    (50.0, Family.RED),
    (85.0, Family.ORANGE),
    (115.0, Family.YELLOW),
    (170.0, Family.GREEN),
    (215.0, Family.TEAL),
    (306.5, Family.BLUE),
    (340.0, Family.VIOLET),
    (360.0, Family.RED),
)
"""Where each family ends, in degrees of CIE hue."""

_PALE = 60.0
"""Lightness from which a red is a pink."""

_BROWN_BELOW = 60.0
_BROWN_GREYER = 40.0
"""An orange darker or greyer than this is a brown."""

_DARK_YELLOW = 60.0
_OLIVE = 95.0
"""A yellow darker than that is sorted with the greens (olive, moss), or with the browns."""


def family(colour: Colour) -> Family:
    """The colour family of a fabric, as seen from afar."""
    lightness, a, b = lab(colour)
    chroma = math.hypot(a, b)
    if chroma < _GREYISH:
        return Family.NEUTRAL
    hue = math.degrees(math.atan2(b, a)) % 360
    found = next(family for end, family in _HUES if hue < end)
    if found is Family.RED and lightness >= _PALE:
        return Family.PINK if not 35 <= hue < 50 else Family.ORANGE
    if found is Family.ORANGE and (lightness < _BROWN_BELOW or chroma < _BROWN_GREYER):
        return Family.BROWN
    if found is Family.YELLOW and lightness < _DARK_YELLOW:
        return Family.GREEN if hue >= _OLIVE else Family.BROWN
    return found
