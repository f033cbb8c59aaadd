"""Lines of text that are drawn one by one: only those that changed are drawn again."""

from __future__ import annotations

from collections.abc import Sequence

from textual.content import Content
from textual.geometry import Region
from textual.strip import Strip
from textual.visual import Visual
from textual.widget import Widget


class LinesView(Widget):
    """Shows one `Content` a line, as wide as it is; what is longer is cut."""

    def __init__(self, *, id: str | None = None) -> None:
        super().__init__(id=id)
        self._lines: Sequence[Content] = ()

    def show_lines(self, lines: Sequence[Content]) -> None:
        """Show these instead. Another number of lines moves nothing: the height is given."""
        before, self._lines = self._lines, lines
        if len(before) != len(lines):
            self.refresh()
            return
        changed = [
            Region(0, y, self.size.width, 1)
            for y, (old, new) in enumerate(zip(before, lines, strict=True))
            if old.plain != new.plain or old.spans != new.spans
        ]
        if changed:
            self.refresh(*changed)

    def render_line(self, y: int) -> Strip:
        width = self.size.width
        if y >= len(self._lines):
            return Strip.blank(width, self.rich_style)
        (strip, *_) = Visual.to_strips(self, self._lines[y], width, 1, self.visual_style)
        return strip.adjust_cell_length(width, self.rich_style)
