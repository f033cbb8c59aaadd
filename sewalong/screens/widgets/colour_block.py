"""A fabric as a block of cells in its colour, between two edges that show on any ground."""

from __future__ import annotations

from typing import Any

from msgspec import Struct
from rich.segment import Segment
from rich.style import Style
from textual.app import App
from textual.theme import Theme

from sewalong.fabrics.colours import Colour

EDGES = 2
"""Columns that the two edges take."""

_TEXTURES = "█╳╱┄ "
"""From most ink to least, where there is no colour, or too few to show one truly."""

_TOO_FEW = ("standard", "windows")
"""What rich calls terminals of sixteen colours: the nearest of those can be another hue."""

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


def shows_colours(app: App[Any]) -> bool:
    """Whether the terminal can show a fabric in its colour."""
    return not app.no_color and app.console.color_system not in _TOO_FEW


def block(shows: Block, width: int, theme: Theme, *, in_colour: bool) -> list[Segment]:
    """The block, `width` columns and EDGES more."""
    chalk = Style(color=theme.variables["chalk"])
    return [
        Segment("▐", chalk),
        _inside(shows, width, theme, in_colour=in_colour),
        Segment("▌", chalk),
    ]


def _inside(shows: Block, width: int, theme: Theme, *, in_colour: bool) -> Segment:
    if shows.colour is None or shows.lightness is None:
        return Segment(" " * width)
    if not in_colour:
        return Segment(texture(shows.lightness, pale_ink=theme.dark) * width)
    ground = str(shows.colour)
    if not shows.only_value:
        return Segment(" " * width, Style(bgcolor=ground))
    strokes = "#000000" if shows.lightness >= _MID else "#ffffff"
    return Segment(_ONLY_VALUE * width, Style(color=strokes, bgcolor=ground))


def texture(lightness: float, *, pale_ink: bool) -> str:
    """The sign that stands for a lightness of 0 to 100. With pale ink on a dark ground more ink is
    lighter, with dark ink darker."""
    level = min(int(lightness / 100 * len(_TEXTURES)), len(_TEXTURES) - 1)
    return _TEXTURES[-1 - level] if pale_ink else _TEXTURES[level]
