"""The number to go, or words beside it, in large dots: readable from a metre away and further."""

from __future__ import annotations

from itertools import groupby

from rich.segment import Segment
from rich.style import Style
from textual.geometry import Size
from textual.strip import Strip
from textual.widget import Widget

from sewalong.screens.widgets.block_letters import BLOCK, LINES, Dot, drawn, width_of


class BigText(Widget):
    """Shows `text` in dots in the colour it is given, from its first column on."""

    DEFAULT_CSS = "BigText { width: auto; height: auto; }"

    def __init__(
        self, text: str, dot: Dot, *, room: int = 0, id: str | None = None, classes: str = ""
    ) -> None:
        super().__init__(id=id, classes=classes)
        self._shown = (text, dot, room)
        self._lines = drawn(text, dot)

    def show(self, text: str, dot: Dot, *, room: int = 0) -> None:
        """Show `text` with dots of that size, in `room` columns at the least.

        Nothing beside it moves while its dots and its room stay as they are.
        """
        if self._shown == (text, dot, room):
            return
        before, self._shown = self._measures, (text, dot, room)
        self._lines = drawn(text, dot)
        self.refresh(layout=before != self._measures)

    @property
    def _measures(self) -> tuple[int, int]:
        text, dot, room = self._shown
        return max(room, width_of(text, dot)), LINES * dot.down

    def get_content_width(self, container: Size, viewport: Size) -> int:
        return self._measures[0]

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        return self._measures[1]

    def render_line(self, y: int) -> Strip:
        style = self.rich_style
        # Ink on a ground of its own colour: the block without a gap above or below it.
        solid = style + Style(bgcolor=style.color)
        line = self._lines[y] if y < len(self._lines) else ""
        runs = [
            Segment("".join(signs), solid if sign == BLOCK else style)
            for sign, signs in groupby(line)
        ]
        return Strip(runs).adjust_cell_length(self.size.width, style)
