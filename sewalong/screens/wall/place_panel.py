"""One place of the wall: its unit large, and all that is to be said of it."""

from __future__ import annotations

from collections.abc import Mapping

from textual.app import ComposeResult
from textual.containers import Vertical, VerticalScroll

from sewalong.fabrics.colours import Colour
from sewalong.screens.widgets.captioned import Captioned, Draw
from sewalong.screens.widgets.literal_text import Words
from sewalong.service.wall.looks import PlacePage
from sewalong.wall.keys import Key

MORE_BELOW = "more (page down)"


class PlacePanel(Vertical):
    """Shows a place; what there is no room for is read on by a key."""

    def compose(self) -> ComposeResult:
        yield Words(id="place-title")
        yield Captioned(id="place-unit")
        with VerticalScroll(id="place-words", can_focus=False):
            yield Words(id="place-lies")
            yield Words(id="place-touches")
            yield Words(id="place-does")
            yield Words(id="place-marked")

    def show(
        self,
        page: PlacePage,
        marked: tuple[str, ...],
        draw: Draw,
        colours: Mapping[Key, Colour],
    ) -> None:
        """Show this place, its unit as `draw` has it, and what the signs on the wall stand for."""
        self.query_one("#place-title", Words).say(page.title)
        self.query_one(Captioned).show(draw, colours, "")
        for part, lines in (
            ("lies", page.lies),
            ("touches", page.touches),
            ("does", page.does),
            ("marked", marked),
        ):
            words = self.query_one(f"#place-{part}", Words)
            words.say("\n".join(lines))
            words.display = bool(lines)

    def read(self, step: int) -> None:
        """Read on by a page, or back."""
        page = self.query_one(VerticalScroll)
        page.scroll_relative(y=step * max(1, page.size.height - 1), animate=False)

    def tell_how_it_goes_on(self) -> None:
        """Say by which key what is below is read: the arrows go from place to place."""
        self.query_one(VerticalScroll).border_subtitle = MORE_BELOW

    def from_the_start(self) -> None:
        """Show the first lines again."""
        self.query_one(VerticalScroll).scroll_home(animate=False)
