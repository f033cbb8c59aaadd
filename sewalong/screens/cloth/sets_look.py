"""What the two screens of sets have in common: one set shown, a square of it in hand."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Mapping, Sequence

from textual.app import ComposeResult
from textual.containers import Horizontal

from sewalong.progress.sets.contrast import set_contrast
from sewalong.progress.sets.swapping import Square
from sewalong.screens.over_sewing import OverSewingScreen
from sewalong.screens.prompts.desk import Desk
from sewalong.screens.prompts.dialogs import LinesDialog
from sewalong.screens.widgets.breakpoints import is_narrow, is_roomy
from sewalong.screens.widgets.cloth.set_body import SetBody
from sewalong.screens.widgets.cloth.sheet import Shown
from sewalong.screens.widgets.cloth.square_list import ShownGroup
from sewalong.screens.widgets.colour_block import Block
from sewalong.screens.widgets.keys import Key
from sewalong.screens.widgets.literal_text import Words
from sewalong.service.set_looks import SetPage, all_of_it, what_meets_what
from sewalong.service.set_pictures import cloth_coloured, set_pictured, top_pictured_of
from sewalong.wall.cloth_colours import cloth_colours
from sewalong.wall.keys import cloth_key
from sewalong.wall.picture import Picture
from sewalong.wall.set_picture import Squares


class SetsLook(OverSewingScreen[bool]):
    """Shows one page of several. Those that follow say which, and what can be done there."""

    CSS_PATH = ["sets.tcss"]
    AUTO_FOCUS = ""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._at = 0
        self._whole = False
        self._now: SetPage | None = None
        """The page that is shown."""

    @abstractmethod
    def _page(self) -> SetPage | None:
        """The set to show; None while there is none."""

    @abstractmethod
    def _all_sets(self) -> Sequence[Squares]:
        """The squares of every set, in order."""

    # -- showing ---------------------------------------------------------------

    def compose(self) -> ComposeResult:
        with Horizontal(id="top"):
            yield Words(self.quilt.state.quilt.name, id="top-name")
            yield Words(id="top-clock")
        yield Words(id="verdict")
        yield SetBody(id="set")
        yield Words(id="message")
        yield Words(id="keys")

    def on_mount(self) -> None:
        self.follow()
        self.show()

    def on_resize(self) -> None:
        self.show()

    def show(self) -> None:
        """Draw the page in hand as it is now."""
        page = self._now = self._page()
        self.query_one("#top-name", Words).say(self.quilt.state.quilt.name)
        self.query_one("#top-clock", Words).say(page.title if page else "")
        self.query_one("#verdict", Words).say(self._on_lines(page.verdict) if page else "")
        body = self.query_one(SetBody)
        if page is None:
            body.show((), 0, ())
        else:
            self._at = min(self._at, max(0, len(page.squares) - 1))
            groups = [
                ShownGroup(
                    row.title, tuple(self._looks_so(one, page.counts) for one in row.squares)
                )
                for row in page.rows
            ]
            meets = what_meets_what(self.quilt.state, page.laid) if is_roomy(self) else ()
            facts = (*page.facts, "", *meets) if meets else page.facts
            body.show(groups, self._at, facts)
        self._draw()

    def _on_lines(self, sentences: Sequence[str]) -> str:
        """On one line where they fit, else each on its own where there is room for that."""
        one = " ".join(sentences)
        fits = is_narrow(self) or len(one) <= self.app.size.width - 4
        return one if fits else "\n".join(sentences)

    def _looks_so(self, square: Square, counts: Mapping[str, int]) -> Shown:
        """A square: its fabric by letter and name, and its colour."""
        quilt = self.quilt.state.quilt
        swatch = set_contrast(quilt).fabrics.get(square.letter)
        if swatch is None:
            return Shown("not known", "", Block(None, None))
        colour = cloth_colours(quilt.fabrics).get(cloth_key(square.letter))
        block = Block(colour, swatch.value, swatch.colour is None)
        count = f" {counts[square.letter]:,}" if square.letter in counts else ""
        return Shown(f"{self._mark(square)}{swatch.called}", count, block)

    def _mark(self, square: Square) -> str:
        """What is said before the name of a square."""
        return ""

    def _draw(self) -> None:
        page, state = self._now, self.quilt.state

        def units(across: int, down: int) -> Picture | None:
            laid = tuple(page.laid) if page else ()
            return set_pictured(state, laid, across, down) if laid else None

        def top(across: int, down: int) -> Picture | None:
            return top_pictured_of(state, self._all_sets(), across, down)

        words = "the top with all sets, row by row" if self._whole else "the units it gives"
        words = "" if is_narrow(self) or not page or not (page.laid or self._whole) else words
        draw = top if self._whole else units
        own = cloth_coloured(state)
        self.query_one(SetBody).picture(draw, own, words, whole=self._whole)

    @property
    def square(self) -> Square | None:
        """The square in hand."""
        page = self._now
        return page.squares[self._at] if page and self._at < len(page.squares) else None

    # -- keys ------------------------------------------------------------------

    def action_walk(self, down: int) -> None:
        """Take another square in hand, or read on."""
        self._at = self.query_one(SetBody).move(down)
        self.moved()

    def action_read(self, step: int) -> None:
        """Read on below the squares, or back."""
        self.query_one(SetBody).read(step)

    def moved(self) -> None:
        """Another square, or another set, is in hand."""

    def action_whole(self) -> None:
        """The top as it would look with all sets; again for the set in hand."""
        self._whole = not self._whole
        self._draw()

    def action_meets(self) -> None:
        """Every two squares of the set that share a seam, the weakest first."""
        page = self._now
        lines = all_of_it(self.quilt.state, page.laid) if page else ()
        if page is None or not lines:
            self.tell("Nothing meets here.", refused=True)
            return
        title = page.title.split(",")[0]
        self.app.push_screen(LinesDialog(f"What meets what in {title}", lines))


def turning_keys(screen: str) -> tuple[Key, ...]:
    """The keys that go from set to set, at the screen whose ids begin with `screen`."""
    return (
        Key(f"{screen}.next", "right", "turn(1)", "next set", "To the next set.", True, ("tab",)),
        Key(f"{screen}.before", "left", "turn(-1)", "set before", "To the set before.", False,
            ("shift+tab",)),
    )  # fmt: skip


def looking_keys(screen: str) -> tuple[Key, ...]:
    """The keys to look around with in a set."""
    return (
        Key(f"{screen}.meets", "m", "meets", "what meets what",
            "Every two squares of this set that share a seam, the weakest first.", True,
            words="contact seam contrast weakest"),
        Key(f"{screen}.whole", "v", "whole", "the top",
            "The top as it would look with all sets; again for the set in hand.", True,
            words="picture whole view all"),
        Key(f"{screen}.up", "up", "walk(-1)", "up", "To the square above."),
        Key(f"{screen}.down", "down", "walk(1)", "down", "To the square below, then read on."),
        Key(f"{screen}.read_on", "pagedown", "read(1)", "read on", "Read on below the squares."),
        Key(f"{screen}.read_back", "pageup", "read(-1)", "read back", "Read back up."),
    )  # fmt: skip
