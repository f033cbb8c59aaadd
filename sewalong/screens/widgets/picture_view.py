"""A picture in half-block cells, or in plain signs where there is no colour."""

from __future__ import annotations

from collections.abc import Mapping

from rich.segment import Segment
from rich.style import Style
from textual.geometry import Size
from textual.strip import Strip
from textual.theme import Theme
from textual.widget import Widget

from sewalong.fabrics.colours import Colour, parse_colour
from sewalong.screens.widgets.colour_block import shows_colours
from sewalong.wall.keys import CUT, GAP, LIT, MARK, OUTLINE, STITCHES, Key, cloth_letter
from sewalong.wall.palette import colour_of
from sewalong.wall.picture import Picture
from sewalong.wall.runs import rows_of_runs
from sewalong.wall.textures import textures

PALE_THREAD = Colour(255, 255, 255)
DARK_THREAD = Colour(29, 34, 51)
"""Stitches show against the screen of either look."""


def _look(theme: Theme, own: Mapping[Key, Colour] | None) -> dict[Key, Colour]:
    """The owner's colours, and the look's for what is drawn over the cloth or beside it: lines and
    what is in hand are as the number is."""
    number = parse_colour(theme.variables["number"])
    return {
        STITCHES: PALE_THREAD if theme.dark else DARK_THREAD,
        **dict.fromkeys((MARK, CUT, LIT), number),
        OUTLINE: parse_colour(theme.variables["chalk"]),
        GAP: parse_colour(str(theme.background)),
        **(own or {}),
    }


class PictureView(Widget):
    """Shows a picture at its own size. Nothing is shown until one is set."""

    DEFAULT_CSS = "PictureView { width: auto; height: auto; }"

    def __init__(self, *, id: str | None = None, classes: str | None = None) -> None:
        super().__init__(id=id, classes=classes)
        self._strips: list[Strip] = []
        self._picture: Picture | None = None
        self._own: Mapping[Key, Colour] | None = None
        self._shown: tuple[Picture | None, Mapping[Key, Colour] | None, bool, str]
        self._shown = (None, None, False, "")
        self.was_shown = False
        """Whether a picture was ever set, or said to be none."""

    def show(self, picture: Picture | None, own: Mapping[Key, Colour] | None = None) -> None:
        """Show `picture` in the owner's colours, or nothing."""
        self.was_shown = True
        self._picture, self._own = picture, own
        plain, theme = self._is_plain(picture), self.app.current_theme
        if self._shown == (picture, own, plain, theme.name):
            return
        self._shown = (picture, own, plain, theme.name)
        if picture is None:
            self._strips = []
        else:
            self._strips = _plain(picture) if plain else _coloured(picture, _look(theme, own))
        self.refresh(layout=True)

    def _is_plain(self, picture: Picture | None) -> bool:
        """Whether signs stand for what is shown: for her own fabrics too where a terminal cannot show
        their colours truly."""
        if picture is None or shows_colours(self.app):
            return self.app.no_color
        return self.app.no_color or any(map(cloth_letter, picture.keys))

    def on_mount(self) -> None:
        self.app.theme_changed_signal.subscribe(self, lambda _: self._in_another_look())

    def _in_another_look(self) -> None:
        if self.was_shown:
            self.show(self._picture, self._own)

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
