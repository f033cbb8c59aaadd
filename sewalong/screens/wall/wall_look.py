"""What the two screens of the wall have in common: a laying looked at, one place of it in hand."""

from __future__ import annotations

from abc import abstractmethod

from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical

from sewalong.fabrics.looked_at import AS_IT_IS
from sewalong.screens.over_sewing import OverSewingScreen
from sewalong.screens.prompts.desk import Desk
from sewalong.screens.wall.place_panel import PlacePanel
from sewalong.screens.wall.sheet import LETTERS_FROM, Marks, WallSheet
from sewalong.screens.widgets.breakpoints import is_narrow
from sewalong.screens.widgets.keys import Key
from sewalong.screens.widgets.literal_text import Words
from sewalong.service.wall.in_hand import WallInHand
from sewalong.service.wall.looks import (
    PlacePage,
    Shows,
    colours,
    drawn,
    marked_words,
    pictured,
    place_page,
    signs,
    worst,
)
from sewalong.wall.laying.grid import At
from sewalong.wall.picture import Picture

ALONE = "alone"
"""The class while the place in hand has the room of the wall."""


class WallLook(OverSewingScreen[bool]):
    """Shows a wall and a place of it. Those that follow say which, and what can be done there."""

    CSS_PATH = ["wall.tcss"]
    AUTO_FOCUS = ""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.wall: WallInHand | None = None
        """What is shown; None while there is nothing."""
        self.held: At | None = None
        """The place whose unit is picked up."""
        self._view = AS_IT_IS
        self._shows = Shows.TOUCHES
        self._letters = LETTERS_FROM
        self._spot: At | None = None
        """The place where something touches that was gone to last."""

    @abstractmethod
    def verdict(self) -> str:
        """What is said first of all."""

    # -- showing -------------------------------------------------------------------

    def compose(self) -> ComposeResult:
        with Horizontal(id="top"):
            yield Words(self.quilt.state.quilt.name, id="top-name")
            yield Words(id="top-clock")
        yield Words(id="verdict")
        with Horizontal(id="wall"):
            with Vertical(id="laid"):
                yield WallSheet(id="sheet")
                yield Words(id="part")
            yield PlacePanel(id="place")
        yield Words(id="message")
        yield Words(id="keys")

    def on_mount(self) -> None:
        self.call_after_refresh(self.query_one(PlacePanel).tell_how_it_goes_on)

    def on_resize(self) -> None:
        self.call_after_refresh(self.show_place)

    @property
    def at(self) -> At:
        """The place in hand."""
        assert self.wall is not None
        return self.wall.board.grid.places[self._sheet.at]

    @property
    def _sheet(self) -> WallSheet:
        return self.query_one("#sheet", WallSheet)

    def show(self) -> None:
        """Draw what has changed since it was last drawn."""
        target = self.quilt.state.target
        self.query_one("#top-name", Words).say(self.quilt.state.quilt.name)
        self.query_one("#top-clock", Words).say(f"the wall, {target.rows} × {target.columns}")
        self.query_one("#verdict", Words).say(self.verdict())
        if self.wall is not None:
            self._sheet.hang(
                drawn(self.wall), colours(self.wall, self._view), letters_from=self._letters
            )
            self._mark()
            self._show_part()
            self.show_place()

    def _mark(self) -> None:
        assert self.wall is not None
        held = None if self.held is None else self.wall.board.slot(self.held)
        self._sheet.mark(Marks(held, signs(self.wall, self._shows)))

    def show_place(self) -> None:
        """Say what there is to say of the place in hand."""
        if self.wall is None:
            return
        wall, at = self.wall, self.at
        page = place_page(wall, at, self.held)

        def unit(across: int, down: int) -> Picture | None:
            return pictured(wall, at, across, down)

        marked = marked_words(wall, self._shows)
        panel = self.query_one(PlacePanel)
        panel.show(page, marked, unit, colours(wall, self._view))
        self.set_class(self.held is not None, "held")
        self.placed(page)

    def on_wall_sheet_part_changed(self) -> None:
        """Say which part of the wall is shown."""
        self._show_part()

    def _show_part(self) -> None:
        """Say which part of the wall is shown, and how it is looked at."""
        seen = [part for part in (self._sheet.part, self._view.words) if part]
        line = self.query_one("#part", Words)
        line.say("; ".join(seen))
        line.display = bool(seen)

    def placed(self, page: PlacePage) -> None:
        """Another place is in hand, or another unit: say so where the panel does not stand there."""

    # -- looking -------------------------------------------------------------------

    def action_walk(self, across: int, down: int) -> None:
        """Take the place beside in hand."""
        if self.wall is not None:
            self._sheet.walk(across, down)
            self.tell("")
            self.moved()

    def go_to(self, at: At) -> None:
        """Take this place in hand."""
        assert self.wall is not None
        self._sheet.take(self.wall.board.slot(at))
        self.moved()

    def moved(self) -> None:
        """Show the place that is in hand now, from its first line on."""
        self.query_one(PlacePanel).from_the_start()
        self.show_place()

    def action_read(self, step: int) -> None:
        """Read on what is said of the place, or back."""
        self.query_one(PlacePanel).read(step)

    def action_worst(self) -> None:
        """To the next place where something touches, the worst first."""
        if self.wall is None:
            return
        spots = worst(self.wall)
        if not spots:
            self.tell("Nothing touches anywhere.")
            return
        goes_on = self.at == self._spot and self.at in spots
        number = (spots.index(self.at) + 1) % len(spots) if goes_on else 0
        self._spot = spots[number]
        self.go_to(self._spot)
        if self.held is None:
            self.tell(f"Place {number + 1} of {len(spots)} where something touches.")

    def action_zoom(self, by: int) -> None:
        """Show larger units, or smaller ones."""
        if self.wall is not None:
            self._sheet.closer(by)

    def action_grey(self) -> None:
        """In grey, or as they are again."""
        self._view = self._view.grey_or_not()
        self.show()

    def action_sight(self) -> None:
        """As somebody of another sight sees them."""
        self._view = self._view.next_sight()
        self.show()

    def action_letters(self) -> None:
        """With letters in all cells that have room for them, or only where units are large."""
        self._letters = 0 if self._letters else LETTERS_FROM
        self.show()

    def action_marks(self) -> None:
        """Mark something else: touches, blobs by family, blobs by value, nothing."""
        marks = list(Shows)
        self._shows = marks[(marks.index(self._shows) + 1) % len(marks)]
        self.show()
        if self.wall is not None:
            self.tell(" ".join(marked_words(self.wall, self._shows)))

    def action_alone(self) -> None:
        """The place with all the room, or the wall again."""
        self.toggle_class(ALONE)
        self.call_after_refresh(self.show_place)

    @property
    def panel_is_seen(self) -> bool:
        """Whether what is said of a place stands beside the wall, or in its room."""
        return not is_narrow(self) or self.has_class(ALONE)


def looking_keys(screen: str) -> tuple[Key, ...]:
    """The keys to look around with, at the screen whose ids begin with `screen`."""
    return (
        Key(f"{screen}.worst", "n", "worst", "next touch",
            "To the next place where something touches, the worst first.", True,
            words="worst spot problem find wrong"),
        Key(f"{screen}.closer", "z", "zoom(1)", "closer", "Larger units, fewer of them.", True,
            ("plus",), "zoom in enlarge section"),
        Key(f"{screen}.farther", "x", "zoom(-1)", "farther", "Smaller units, more of them.", False,
            words="zoom out whole"),
        Key(f"{screen}.alone", "v", "alone", "place",
            "The place in hand with all the room; again for the wall.", True, ("tab",),
            "unit large view"),
        Key(f"{screen}.marks", "c", "marks", "marks",
            "Mark where something touches, blobs of one family, of one value, or nothing.", True,
            words="blob family value show clump colour"),
        Key(f"{screen}.grey", "g", "grey", "grey",
            "The same in grey, by lightness alone; again as it is.", False,
            words="value light dark contrast black white"),
        Key(f"{screen}.sight", "b", "sight", "colour-blind",
            "As somebody colour-blind sees it: without red, green or blue cones in turn.",
            words="colour blind vision eyes cones deficiency"),
        Key(f"{screen}.letters", "w", "letters", "letters",
            "Letters in small units too, where there is room; again only in large ones.",
            words="write name fabric"),
        Key(f"{screen}.up", "up", "walk(0, -1)", "up", "To the place above."),
        Key(f"{screen}.down", "down", "walk(0, 1)", "down", "To the place below."),
        Key(f"{screen}.before", "left", "walk(-1, 0)", "before", "To the place before."),
        Key(f"{screen}.next", "right", "walk(1, 0)", "next", "To the next place."),
        Key(f"{screen}.read_on", "pagedown", "read(1)", "read on", "Read on what is said there."),
        Key(f"{screen}.read_back", "pageup", "read(-1)", "read back", "Read back up."),
    )  # fmt: skip
