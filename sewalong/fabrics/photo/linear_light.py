"""From the numbers in a picture to light and back, as sRGB has it."""

from __future__ import annotations

from collections.abc import Iterable

from sewalong.fabrics.colours import Colour


def to_light(part: float) -> float:
    """Light, 0 to 1, of a red, green or blue part of 0 to 255. Source: IEC 61966-2-1."""
    share = part / 255
    return share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4


def to_part(light: float) -> int:
    """The part, 0 to 255, that shows so much light; less than none is none, more than 1 is 1."""
    inside = min(max(light, 0.0), 1.0)
    share = inside * 12.92 if inside <= 0.0031308 else 1.055 * inside ** (1 / 2.4) - 0.055
    return round(share * 255)


def colour_of(light: Iterable[float]) -> Colour:
    """The colour of red, green and blue light, each 0 to 1."""
    red, green, blue = (to_part(float(part)) for part in light)
    return Colour(red, green, blue)


def average(colours: Iterable[Colour]) -> Colour:
    """What these colours are together, mixed as light mixes. Raises ValueError for none."""
    lights = [
        tuple(to_light(part) for part in (colour.red, colour.green, colour.blue))
        for colour in colours
    ]
    if not lights:
        raise ValueError("there is no colour")
    return colour_of(sum(parts) / len(lights) for parts in zip(*lights, strict=True))
