"""A colour and how it is written; how it is seen stands in `sight`."""

from __future__ import annotations

import re

from msgspec import Struct

_WRITTEN = re.compile(r"#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})", re.ASCII | re.IGNORECASE)


class ColourRefused(ValueError):
    """A colour that cannot be read; the message is a sentence for the person who wrote it."""


class Colour(Struct, frozen=True):
    """An sRGB colour: red, green and blue, each 0 to 255. Raises ValueError beyond that."""

    red: int
    green: int
    blue: int

    def __post_init__(self) -> None:
        if not all(0 <= part <= 255 for part in (self.red, self.green, self.blue)):
            raise ValueError("red, green and blue go from 0 to 255")

    def __str__(self) -> str:
        return f"#{self.red:02x}{self.green:02x}{self.blue:02x}"

    def mixed(self, other: Colour, share: float) -> Colour:
        """This colour with `share` (0 to 1) of `other` in it, by plain average of sRGB parts."""
        return Colour(
            round(self.red + (other.red - self.red) * share),
            round(self.green + (other.green - self.green) * share),
            round(self.blue + (other.blue - self.blue) * share),
        )


def parse_colour(text: str) -> Colour:
    """The colour written as `#rrggbb`, in capitals or not; raises ColourRefused."""
    found = _WRITTEN.fullmatch(text.strip())
    if found is None:
        raise ColourRefused(
            f"{text!r} is not a colour. Write # and six digits from 0 to 9 and a to f, "
            "such as #2f4a7c."
        )
    return Colour(*(int(part, 16) for part in found.groups()))
