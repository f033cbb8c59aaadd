"""A picture with a line of words below it, as large as there is room."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from textual.app import ComposeResult
from textual.containers import Vertical

from sewalong.fabrics.colours import Colour
from sewalong.screens.widgets.literal_text import Words
from sewalong.screens.widgets.picture_view import PictureView
from sewalong.wall.keys import Key
from sewalong.wall.picture import Picture

Draw = Callable[[int, int], Picture | None]

WORDS = 2
"""Lines kept for the words, where there are any."""

LEAST = (12, 3)
"""Columns and lines from which a picture tells anything."""


class Captioned(Vertical):
    """The picture is drawn anew whenever there is other room; nothing is where it is not shown."""

    def __init__(self, *, id: str) -> None:
        super().__init__(id=id)
        self._draw: Draw = lambda across, down: None
        self._own: Mapping[Key, Colour] = {}
        self._words = ""

    def compose(self) -> ComposeResult:
        yield PictureView()
        yield Words(classes="caption")

    def show(self, draw: Draw, own: Mapping[Key, Colour], words: str) -> None:
        """Show what `draw` makes of the columns and lines there are, in the owner's colours."""
        self._draw, self._own, self._words = draw, own, words
        self.on_resize()

    def on_resize(self) -> None:
        across, down = self.size.width, self.size.height - (WORDS if self._words else 0)
        if self.is_mounted and self.display:
            roomy = across >= LEAST[0] and down >= LEAST[1]
            picture = self._draw(across, down) if roomy else None
            self.query_one(PictureView).show(picture, self._own)
            part = "; part of it is shown" if picture and not picture.is_whole else ""
            self.query_one(Words).say(f"{self._words}{part}" if self._words else "")
