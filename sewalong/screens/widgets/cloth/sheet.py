"""Squares of cloth drawn line by line, one of them in hand."""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct
from rich.cells import cell_len, set_cell_size
from rich.segment import Segment
from rich.style import Style
from textual.strip import Strip
from textual.widget import Widget

from sewalong.screens.widgets.colour_block import EDGES, Block, block, shows_colours

MARK = "> "
"""Before the square in hand."""

GOES_ON = "\N{HORIZONTAL ELLIPSIS}"
"""Behind a name, or beside a row, that there is no room for all of."""


class Shown(Struct, frozen=True):
    """One square: its fabric by letter and name, what stands behind that and is never cut off, and
    what it looks like."""

    name: str
    behind: str
    looks: Block


class ClothSheet(Widget):
    """Draws in the colours of the theme there is, and anew in another."""

    DEFAULT_CSS = "ClothSheet { width: 1fr; height: auto; }"

    def __init__(self, *, id: str | None = None) -> None:
        super().__init__(id=id)
        self.at = 0
        """The number of the square in hand, as they stand one after the other."""

    def on_mount(self) -> None:
        self.app.theme_changed_signal.subscribe(self, lambda _: self.refresh())

    def take_in_hand(self, number: int) -> bool:
        """Take this square in hand; False where it is that already."""
        before, self.at = self.at, number
        self.refresh()
        return self.at != before

    def line(self, segments: Iterable[Segment] = ()) -> Strip:
        """These as a line of the width there is."""
        strip = Strip(segments).apply_style(self.rich_style)
        return strip.adjust_cell_length(self.size.width, self.rich_style)

    def ink(self, variable: str) -> Style:
        """What this colour of the theme is written with."""
        return Style(color=self.app.current_theme.variables[variable])

    def heading(self, text: str, width: int) -> Segment:
        """What stands over squares or before them, in so many columns."""
        return Segment(fitted(text, width), self.ink("stage") + Style(bold=True) if text else None)

    def marked(self, *, underlined: bool) -> Style:
        """How the words of a square that is pointed out are written."""
        return self.ink("number") + Style(bold=True, underline=underlined)

    def block(self, looks: Block, width: int) -> list[Segment]:
        """Its colour, `width` columns and EDGES more."""
        return block(looks, width, self.app.current_theme, in_colour=shows_colours(self.app))

    def square(self, one: Shown, colour: int, width: int, *, here: bool) -> list[Segment]:
        """A square in `width` columns, `colour` of them of its colour, and marked where it is the one
        in hand. The last column is blank."""
        style = self.marked(underlined=self.app.no_color) if here else None
        room = width - len(MARK) - colour - EDGES - 2
        name = one.name
        if cell_len(name) > room - len(one.behind):
            name = fitted(name, room - len(one.behind))
        said = f"{name}{one.behind}"
        return [
            Segment(MARK if here else " " * len(MARK), style),
            *self.block(one.looks, colour),
            Segment(" "),
            Segment(said, style),
            Segment(" " * (room + 1 - cell_len(said))),
        ]


def fitted(text: str, width: int) -> str:
    """The text in just so many columns; one that is too long goes on."""
    if cell_len(text) <= width:
        return set_cell_size(text, width)
    return f"{set_cell_size(text, max(0, width - 1))}{GOES_ON}"
