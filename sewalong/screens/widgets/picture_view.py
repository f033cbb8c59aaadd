"""A picture in half-block cells, or in plain signs where there is no colour."""

from __future__ import annotations

from collections.abc import Mapping

from rich.segment import Segment
from rich.style import Style
from textual.geometry import Size
from textual.strip import Strip
from textual.widget import Widget

from sewalong.fabrics.colours import Colour, parse_colour
from sewalong.wall.keys import CUT, GAP, LIT, MARK, OUTLINE, STITCHES, Key
from sewalong.wall.palette import colour_of
from sewalong.wall.picture import Picture
from sewalong.wall.runs import rows_of_runs
from sewalong.wall.textures import textures

PALE_THREAD = Colour(255, 255, 255)
DARK_THREAD = Colour(29, 34, 51)
"""Stitches show against the screen of either look."""


_OF_THE_LOOK = {"number": (MARK, CUT, LIT), "chalk": (OUTLINE,), "background": (GAP,)}
"""By variable of the theme, what is drawn in it: lines and what is in hand as the number is."""


class PictureView(Widget):
    """Shows a picture at its own size. Nothing is shown until one is set."""

    DEFAULT_CSS = "PictureView { width: auto; height: auto; }"

    def __init__(self, *, id: str | None = None, classes: str | None = None) -> None:
        super().__init__(id=id, classes=classes)
        self._strips: list[Strip] = []
        self._shown: tuple[Picture | None, bool, bool] = (None, False, True)
        self.was_shown = False
        """Whether a picture was ever set, or said to be none."""

    def show(self, picture: Picture | None, own: Mapping[Key, Colour] | None = None) -> None:
        """Show `picture` in the owner's colours, or nothing."""
        self.was_shown = True
        plain, dark = self.app.no_color, self.app.current_theme.dark
        if self._shown == (picture, plain, dark):
            return
        self._shown = (picture, plain, dark)
        thread = PALE_THREAD if dark else DARK_THREAD
        look = {
            key: parse_colour(self.app.theme_variables[name])
            for name, keys in _OF_THE_LOOK.items()
            for key in keys
        }
        own = {STITCHES: thread, **look, **(own or {})}
        if picture is None:
            self._strips = []
        else:
            self._strips = _plain(picture) if plain else _coloured(picture, own)
        self.refresh(layout=True)

    def get_content_width(self, container: Size, viewport: Size) -> int:
        return max((strip.cell_length for strip in self._strips), default=0)

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        return len(self._strips)

    def render_line(self, y: int) -> Strip:
        width = self.size.width
        if y >= len(self._strips):
            return Strip.blank(width, self.rich_style)
        return (
            self._strips[y].apply_style(self.rich_style).adjust_cell_length(width, self.rich_style)
        )


def _plain(picture: Picture) -> list[Strip]:
    return [Strip([Segment(line)]) for line in textures(picture)]


def _coloured(picture: Picture, own: Mapping[Key, Colour] | None) -> list[Strip]:
    def colour(key: Key | None) -> str | None:
        return None if key is None else str(colour_of(key, own))

    return [
        Strip(
            [
                Segment(run.text, Style(color=colour(run.ink), bgcolor=colour(run.ground)))
                for run in row
            ]
        )
        for row in rows_of_runs(picture)
    ]
