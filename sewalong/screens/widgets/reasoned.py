"""Rows of a page that say on request why they are so: walked with the arrows, asked with enter."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from textual import events
from textual.containers import Horizontal, VerticalScroll
from textual.message import Message
from textual.widget import Widget

NEAR = 2
"""Lines below or above the window up to which the next row is gone to at once; farther away the
page is scrolled first, so that nothing between two rows is passed over."""


class ReasonedRow(Horizontal):
    """One row, `of` what, and the sentences that say why it is so; there may be none."""

    def __init__(self, *cells: Widget, of: str, why: Sequence[str], classes: str = "") -> None:
        super().__init__(*cells, classes=f"reasoned {classes}")
        self.of = of
        self.why = tuple(why)


class ReasonedPage(VerticalScroll):
    """Holds rows anywhere within it, one of them marked. It scrolls where there are none."""

    class Asked(Message):
        """Enter or a click on a row: why is it so?"""

        def __init__(self, row: ReasonedRow) -> None:
            super().__init__()
            self.row = row

    def __init__(self, *, id: str | None = None, classes: str | None = None) -> None:
        super().__init__(id=id, classes=classes)
        self._at = 0

    @property
    def rows(self) -> list[ReasonedRow]:
        """The rows from top to bottom."""
        return list(self.query(ReasonedRow))

    async def put(self, content: Iterable[Widget], *, keep: bool = False) -> None:
        """Put `content` in place of what is there; with `keep` the marked row and the place on the
        page stay as they are."""
        at, scrolled = (self._at, self.scroll_y) if keep else (0, 0.0)
        await self.remove_children()
        await self.mount_all(content)
        self._mark(min(at, max(0, len(self.rows) - 1)))
        self.call_after_refresh(self.scroll_to, y=scrolled, animate=False)

    def _mark(self, place: int) -> None:
        self._at = place
        for at, row in enumerate(self.rows):
            row.set_class(at == place, "marked")

    def ask(self) -> None:
        """Ask why the marked row is so."""
        for row in self.rows[self._at : self._at + 1]:
            self.post_message(self.Asked(row))

    def action_scroll_down(self) -> None:
        """The next row, or the page a line further."""
        self._go(1)

    def action_scroll_up(self) -> None:
        """The row before, or the page a line back."""
        self._go(-1)

    def _go(self, step: int) -> None:
        rows, to = self.rows, self._at + step
        if 0 <= to < len(rows) and self._is_near(rows[to]):
            self._mark(to)
            rows[to].scroll_visible(animate=False)
        elif step > 0:
            super().action_scroll_down()
        else:
            super().action_scroll_up()

    def _is_near(self, row: ReasonedRow) -> bool:
        window, there = self.scrollable_content_region, row.region
        return window.y - NEAR <= there.y and there.bottom <= window.bottom + NEAR

    def on_click(self, event: events.Click) -> None:
        """A click on a row marks it and asks."""
        rows = self.rows
        for place, row in enumerate(rows):
            if event.widget is not None and row in event.widget.ancestors_with_self:
                self._mark(place)
                self.ask()
