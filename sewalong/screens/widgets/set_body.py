"""The squares of a set as swatches, and beside them the picture of the units it gives."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from textual.app import ComposeResult
from textual.containers import Container, VerticalScroll

from sewalong.fabrics.colours import Colour
from sewalong.screens.widgets.captioned import Captioned, Draw
from sewalong.screens.widgets.literal_text import Words
from sewalong.screens.widgets.square_list import ShownGroup, SquareList
from sewalong.wall.keys import Key

WHOLE = "whole"
"""The class while the picture has all the room."""


class SetBody(Container):
    """Shows one set, a square of it in hand."""

    def compose(self) -> ComposeResult:
        with VerticalScroll(can_focus=False):
            yield SquareList(id="set-squares")
            yield Words(id="set-facts")
        yield Captioned(id="set-units")

    def show(self, groups: Sequence[ShownGroup], at: int, facts: Sequence[str]) -> None:
        """Show these squares, that of number `at` in hand, and below them what is said."""
        self.query_one(SquareList).show(groups, at)
        self.query_one("#set-facts", Words).say("\n".join(facts))
        self.call_after_refresh(self._scroll_to_hand)

    def picture(
        self, draw: Draw, own: Mapping[Key, Colour], words: str, *, whole: bool = False
    ) -> None:
        """Draw this beside the squares, or with all the room; `words` stand below it."""
        self.set_class(whole, WHOLE)
        self.query_one(Captioned).show(draw, own, words)

    def move(self, down: int) -> int:
        """Take another square in hand; its number is returned. Beyond the last one read on."""
        sheet = self.query_one(SquareList)
        if sheet.move(down):
            self._scroll_to_hand()
        else:
            self.query_one(VerticalScroll).scroll_relative(y=down, animate=False)
        return sheet.at

    def read(self, step: int) -> None:
        """Scroll what stands there by a page."""
        page = self.query_one(VerticalScroll)
        page.scroll_relative(y=step * max(1, page.size.height - 1), animate=False)

    def _scroll_to_hand(self) -> None:
        sheet = self.query_one(SquareList)
        line = sheet.in_hand.translate((0, sheet.virtual_region.y))
        self.query_one(VerticalScroll).scroll_to_region(line, animate=False)
