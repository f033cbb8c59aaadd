"""A screen with squares of cloth in rows, one of them in hand: walked by the arrows, read on below."""

from __future__ import annotations

from abc import abstractmethod
from typing import Generic, TypeVar

from textual.containers import VerticalScroll
from textual.geometry import Region

from sewalong.screens.telling import TellingScreen
from sewalong.screens.widgets.keys import Key

Result = TypeVar("Result")


def walking(screen: str, what: str) -> tuple[Key, ...]:
    """The keys to walk by on a screen whose ids begin with `screen`, from one `what` to another."""
    return (
        Key(f"{screen}.up", "up", "walk(0, -1)", "up", f"To the {what} above."),
        Key(f"{screen}.down", "down", "walk(0, 1)", "down", f"To the {what} below, then read on."),
        Key(f"{screen}.before", "left", "walk(-1, 0)", "before", f"To the {what} before."),
        Key(f"{screen}.next", "right", "walk(1, 0)", "next", f"To the next {what}."),
        Key(f"{screen}.read_on", "pagedown", "read(1)", "read on", "Read on below."),
        Key(f"{screen}.read_back", "pageup", "read(-1)", "read back", "Read back up."),
    )


class WalkedScreen(TellingScreen[Result], Generic[Result]):
    """What can be scrolled is called `cloths`; what is said of the one in hand is the `message`."""

    CSS_PATH = ["walked.tcss"]
    # Nothing has the focus, so that the arrows are the screen's.
    AUTO_FOCUS = ""

    @abstractmethod
    def moved(self, across: int, down: int) -> bool:
        """Take another in hand, so many steps on; False where there is none that way."""

    @abstractmethod
    def where_in_hand(self) -> Region | None:
        """Where the one in hand lies in what is scrolled; None where there is none."""

    @abstractmethod
    def tell_in_hand(self) -> None:
        """Say what is known of the one in hand."""

    def on_resize(self) -> None:
        self.call_after_refresh(self.scroll_to_hand)

    def scroll_to_hand(self) -> None:
        """Have the one in hand be seen."""
        if (there := self.where_in_hand()) is not None:
            self.query_one("#cloths", VerticalScroll).scroll_to_region(there, animate=False)

    def action_walk(self, across: int, down: int) -> None:
        """Take another in hand; below the last row read on."""
        if self.moved(across, down):
            self.tell_in_hand()
            self.scroll_to_hand()
        elif down:
            self.action_read(down, lines=1)

    def action_read(self, step: int, lines: int = 0) -> None:
        """Scroll what stands there by a page, or by so many lines."""
        below = self.query_one("#cloths", VerticalScroll)
        below.scroll_relative(y=step * (lines or max(1, below.size.height - 1)), animate=False)
