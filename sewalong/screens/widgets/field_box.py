"""One line to fill in, with what is offered there: typed over, or written on."""

from __future__ import annotations

from textual import events
from textual.widgets import Input
from textual.widgets.input import Selection


class FieldBox(Input):
    """What is offered is typed over where it is a number, a length, a layout, a tag or a date, and
    written on where it is `prose`. Until it is changed it shows how it begins.

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

    def on_key(self, event: events.Key) -> None:
        if self._passes_over and (event.character or "").lower() == self._passes_over:
            event.prevent_default().stop()
        else:
            self._passes_over = ""
