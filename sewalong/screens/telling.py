"""A screen that says one thing at a time below what it shows, and under that its keys."""

from __future__ import annotations

from typing import Generic, TypeVar

from sewalong.screens.helped import HelpedScreen
from sewalong.screens.widgets.breakpoints import mark_size
from sewalong.screens.widgets.keys import line_of
from sewalong.screens.widgets.literal_text import Words

Result = TypeVar("Result")


class TellingScreen(HelpedScreen[Result], Generic[Result]):
    """It composes `#message` and `#keys`."""

    # The library calls the handlers of all classes, so none calls another's.
    def on_resize(self) -> None:
        mark_size(self)
        self.query_one("#keys", Words).say(line_of(self.app.size.width - 4, self.keys))

    def tell(self, text: str, *, refused: bool = False) -> None:
        """Say one thing below; a refusal is marked."""
        line = self.query_one("#message", Words)
        line.set_class(refused, "refusal")
        line.say(f"Not done: {text}" if refused else text)
