"""Colours as an eye sees them: lightness, difference, from afar, without red, green or blue.

Loaded only where colour work is done: the library takes four starts of a plain command to load.
"""

from __future__ import annotations

from enum import StrEnum

import coloraide

from sewalong.fabrics.colours import Colour

_LAB = "lab-d65"
"""CIE L*a*b* under daylight, the white that sRGB has."""


class Sight(StrEnum):
    """Colour vision without one of the three kinds of cones, in the terms of its field."""

    WITHOUT_RED = "protan"
    WITHOUT_GREEN = "deutan"
    WITHOUT_BLUE = "tritan"


def lab(colour: Colour) -> tuple[float, float, float]:
    """CIE 1976 L*a*b* under D65: lightness 0 to 100, green to red, blue to yellow."""
    lightness, a, b = _of(colour).convert(_LAB).coords()
    return (lightness, a, b)


def value(colour: Colour) -> float:
    """What makers call value: CIE lightness L*, 0 (black) to 100 (white)."""
    return lab(colour)[0]


def grey(lightness: float) -> Colour:
    """The grey of this lightness L*, 0 to 100: a fabric with its value and nothing else."""
    return _from(coloraide.Color(_LAB, [lightness, 0.0, 0.0]))


def difference(one: Colour, other: Colour) -> float:
    """The CIEDE2000 difference. Under about 2.5 they pass for one fabric; it says nothing of
    contrast. Source: Sharma, Wu and Dalal 2005, doi 10.1002/col.20070."""
    return _of(one).delta_e(_of(other), method="2000")


def contrast(one: Colour, other: Colour) -> float:
    """Ratio of luminances, 1 to 21, whichever comes first. Source: WCAG 2.2, "contrast ratio"."""
    return _of(one).contrast(_of(other), method="wcag21")


def from_afar(ground: Colour, second: Colour, share: float) -> Colour:
    """A print as one colour: `share` (0 to 1) of `second` on `ground`, mixed as light mixes."""
    return _from(_of(ground).mix(_of(second), share, space="srgb-linear"))


def seen(colour: Colour, sight: Sight) -> Colour:
    """The colour that `colour` looks like to somebody of this sight.

    A simulation after Brettel, Viénot and Mollon 1997 and its simplification of 1999, as the
    library has them; other models differ a little.
    """
    return _from(_of(colour).filter(sight.value))


def _of(colour: Colour) -> coloraide.Color:
    parts = [part / 255 for part in (colour.red, colour.green, colour.blue)]
    return coloraide.Color("srgb", parts)


def _from(colour: coloraide.Color) -> Colour:
    inside = colour.convert("srgb").fit(method="clip")
    red, green, blue = (round(part * 255) for part in inside.coords())
    return Colour(red, green, blue)
