"""One line to fill in, with what is offered there: typed over, or written on."""

from __future__ import annotations

from rich.segment import Segment
from textual import events
from textual.strip import Strip
from textual.widgets import Input
from textual.widgets.input import Selection

GOES_ON = "\N{HORIZONTAL ELLIPSIS}"


class FieldBox(Input):
    """What is offered is typed over where it is a number, a length, a layout, a tag or a date, and
    written on where it is `prose`. Until it is changed it shows how it begins, and by an ellipsis
    that it goes on, where the cursor stands if it is that far.

    `passes_over` is a letter pressed at the question before: from habit it is pressed once more than
    there are questions, so it types nothing until another key is pressed.
    """

    def __init__(self, start: str, id: str, *, prose: bool, passes_over: str = "") -> None:
        super().__init__(start, id=id, select_on_focus=not prose)
        self.cursor_blink = False
        self._start = start
        self._passes_over = passes_over
        if not prose:
            # Not only on focus, which a key typed ahead may come before.
            self.selection = Selection(0, len(start))

    def on_focus(self) -> None:
        self.call_after_refresh(self._show_beginning)

    def _show_beginning(self) -> None:
        if self.value == self._start:
            self.scroll_to(x=0, animate=False, force=True)

    def render_line(self, y: int) -> Strip:
        """The line; where it goes on behind its edge the last cell says so."""
        line, width = super().render_line(y), self.scrollable_content_region.width
        if y or width < 2 or self.content_width <= self.scroll_offset.x + width + 1:
            return line
        here = self.has_focus and self.cursor_at_end
        style = self.get_component_rich_style("input--cursor") if here else self.rich_style
        return Strip.join([line.crop(0, width - 1), Strip([Segment(GOES_ON, style)])])

    def on_key(self, event: events.Key) -> None:
        if self._passes_over and (event.character or "").lower() == self._passes_over:
            event.prevent_default().stop()
        else:
            self._passes_over = ""
