"""The squares of a set as swatches, and beside them the picture of the units it gives."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from textual.app import ComposeResult
from textual.containers import Container, VerticalScroll

from sewalong.fabrics.colours import Colour
from sewalong.screens.widgets.captioned import Captioned, Draw
from sewalong.screens.widgets.cloth.square_list import ShownGroup, SquareList
from sewalong.screens.widgets.literal_text import Words
from sewalong.wall.keys import Key

WHOLE = "whole"
"""The class while the picture has all the room."""


class SetBody(Container):
    """Shows one set, a square of it in hand."""

    def __init__(self, *, id: str) -> None:
        super().__init__(id=id)
        self._groups: Sequence[ShownGroup] = ()
        self._at = 0
        self._facts: Sequence[str] = ()
        self._drawn: tuple[Draw, Mapping[Key, Colour], str] | None = None

    def compose(self) -> ComposeResult:
        with VerticalScroll(can_focus=False):
            yield SquareList(id="set-squares")
            yield Words(id="set-facts")
        yield Captioned(id="set-units")

    def on_mount(self) -> None:
        # It may have been told before what it holds was there.
        self._put()
        self._put_picture()

    def show(self, groups: Sequence[ShownGroup], at: int, facts: Sequence[str]) -> None:
        """Show these squares, that of number `at` in hand, and below them what is said."""
        self._groups, self._at, self._facts = groups, at, facts
        self._put()

    def _put(self) -> None:
        for squares in self.query(SquareList):
            squares.show(self._groups, self._at)
            self.query_one("#set-facts", Words).say("\n".join(self._facts))
            self.call_after_refresh(self._scroll_to_hand)

    def picture(
        self, draw: Draw, own: Mapping[Key, Colour], words: str, *, whole: bool = False
    ) -> None:
        """Draw this beside the squares, or with all the room; `words` stand below it."""
        self.set_class(whole, WHOLE)
        self._drawn = draw, own, words
        self._put_picture()

    def _put_picture(self) -> None:
        for captioned in self.query(Captioned):
            if self._drawn is not None:
                captioned.show(*self._drawn)

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
        # The screen may have been left meanwhile.
        for sheet in self.query(SquareList):
            line = sheet.in_hand.translate((0, sheet.virtual_region.y))
            self.query_one(VerticalScroll).scroll_to_region(line, animate=False)
