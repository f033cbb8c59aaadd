"""What every screen and dialog has: it is left once, and says where there is more below."""

from __future__ import annotations

from functools import partial
from typing import Any, Generic, TypeVar

from textual import on
from textual.await_complete import AwaitComplete
from textual.containers import VerticalScroll
from textual.events import Mount
from textual.message_pump import Callback
from textual.screen import Screen
from textual.widget import Widget
from textual.widgets import OptionList

Result = TypeVar("Result")


MORE_BELOW = "more below (down)"


class LeftOnce(Screen[Result], Generic[Result]):
    """To leave a screen is to take away the one in front, so a second time would take another.

    Whatever on it can be scrolled says in a line of its own that it goes on below.
    """

    was_left = False

    @on(Mount)
    def tell_of_what_is_below(self) -> None:
        """Follow everything that scrolls."""
        scrolled = [*self.query(VerticalScroll), *self.query(OptionList)]
        for widget in scrolled:
            widget.border_subtitle = MORE_BELOW
            self.watch(widget, "scroll_y", partial(_tell_of_more, widget))
        if scrolled:
            self.screen_layout_refresh_signal.subscribe(
                self, lambda _: _tell_of_more(*scrolled), immediate=True
            )

    def call_after_refresh(self, callback: Callback, *args: Any, **kwargs: Any) -> bool:
        """As in the library, but not once it is being taken off: its widgets go before it does."""

        def if_it_stands() -> object:
            return callback(*args, **kwargs) if self.display else None

        return super().call_after_refresh(if_it_stands)

    def dismiss(self, result: Result | None = None) -> AwaitComplete:
        """Leave it with a result; a second time does nothing."""
        if self.was_left:
            return AwaitComplete()
        self.was_left = True
        left: AwaitComplete = super().dismiss(result)
        return left


def _tell_of_more(*scrolled: Widget) -> None:
    for widget in scrolled:
        widget.set_class(widget.scroll_y < widget.max_scroll_y, "goes-on")
