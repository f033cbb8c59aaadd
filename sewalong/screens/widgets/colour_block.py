"""A fabric as a block of cells in its colour, between two edges that show on any ground."""

from __future__ import annotations

from msgspec import Struct
from rich.segment import Segment
from rich.style import Style
from textual.theme import Theme

from sewalong.fabrics.colours import Colour

EDGES = 2
"""Columns that the two edges take."""

_TEXTURES = "█╳╱┄ "
"""From dark to light, where there is no colour."""

_ONLY_VALUE = "╱"
"""Strikes through a grey that stands for a value alone: the colour is not known."""

_MID = 50.0
"""Lightness from which dark strokes show better than pale ones."""


class Block(Struct, frozen=True):
    """What a block shows: a colour and its lightness, both None where nothing is known of it.

    `only_value`: no colour was said, and the grey stands for light or dark alone.
    """

    colour: Colour | None
    lightness: float | None
    only_value: bool = False


def block(shows: Block, width: int, theme: Theme, *, no_colour: bool) -> list[Segment]:
    """The block, `width` columns and EDGES more."""
    chalk = Style(color=theme.variables["chalk"])
    return [
        Segment("▐", chalk),
        _inside(shows, width, no_colour=no_colour),
        Segment("▌", chalk),
    ]


def _inside(shows: Block, width: int, *, no_colour: bool) -> Segment:
    if shows.colour is None or shows.lightness is None:
        return Segment(" " * width)
    if no_colour:
        return Segment(texture(shows.lightness) * width)
    ground = str(shows.colour)
    if not shows.only_value:
        return Segment(" " * width, Style(bgcolor=ground))
    strokes = "#000000" if shows.lightness >= _MID else "#ffffff"
    return Segment(_ONLY_VALUE * width, Style(color=strokes, bgcolor=ground))


def texture(lightness: float) -> str:
    """The sign that stands for a lightness of 0 to 100 where there is no colour."""
    return _TEXTURES[min(int(lightness / 100 * len(_TEXTURES)), len(_TEXTURES) - 1)]
