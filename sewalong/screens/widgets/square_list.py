"""The squares of a set in groups, such as front and back, each with its colour, letter and name."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import zip_longest

from msgspec import Struct
from rich.cells import cell_len, set_cell_size
from rich.segment import Segment
from rich.style import Style
from textual.geometry import Region, Size
from textual.strip import Strip
from textual.widget import Widget

from sewalong.screens.widgets.colour_block import EDGES, Block, block, shows_colours

COLUMN = 26
"""Columns a group takes at least; with room for all of them groups stand side by side."""

COLOUR = 4
"""Columns of colour."""

MARK = "> "
GOES_ON = "\N{HORIZONTAL ELLIPSIS}"


class ShownSquare(Struct, frozen=True):
    """One square: its fabric by letter and name, what stands behind that, and what it looks like."""

    name: str
    behind: str
    looks: Block


class ShownGroup(Struct, frozen=True):
    """Squares under a heading."""

    title: str
    squares: tuple[ShownSquare, ...]


Cell = str | int | None
"""A heading, the number of a square, or nothing."""


class SquareList(Widget):
    """Shows groups of squares, and marks the one in hand."""

    DEFAULT_CSS = "SquareList { width: 1fr; height: auto; }"

    def __init__(self, *, id: str | None = None) -> None:
        super().__init__(id=id)
        self._groups: tuple[ShownGroup, ...] = ()
        self._squares: tuple[ShownSquare, ...] = ()
        self.at = 0
        """The number of the square in hand, through all groups."""

    def show(self, groups: Sequence[ShownGroup], at: int) -> None:
        """Show these, the square of this number in hand."""
        self._groups = tuple(groups)
        self._squares = tuple(one for group in groups for one in group.squares)
        self.at = at
        self.refresh(layout=True)

    def on_mount(self) -> None:
        self.app.theme_changed_signal.subscribe(self, lambda _: self.refresh())

    def move(self, step: int) -> bool:
        """Take another square in hand; False where there is none that way."""
        before, self.at = self.at, max(0, min(self.at + step, len(self._squares) - 1))
        self.refresh()
        return self.at != before

    @property
    def in_hand(self) -> Region:
        """Where the line of the square in hand lies; its heading is with the first."""
        lines = self._lines(self.size.width)
        y = next((y for y, line in enumerate(lines) if self.at in line), 0)
        above = 1 if y == 1 else 0
        return Region(0, y - above, self.size.width, 1 + above)

    def _lines(self, width: int) -> list[list[Cell]]:
        columns: list[list[Cell]] = []
        first = 0
        for group in self._groups:
            columns.append([group.title, *range(first, first + len(group.squares))])
            first += len(group.squares)
        if len(columns) * COLUMN <= width:
            return [list(line) for line in zip_longest(*columns)]
        return [[cell] for column in columns for cell in column]

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        return len(self._lines(width))

    def render_line(self, y: int) -> Strip:
        width, lines = self.size.width, self._lines(self.size.width)
        if y >= len(lines):
            return Strip.blank(width, self.rich_style)
        room = width // len(lines[y])
        strip = Strip([part for cell in lines[y] for part in self._cell(cell, room)])
        return strip.apply_style(self.rich_style).adjust_cell_length(width, self.rich_style)

    def _cell(self, cell: Cell, width: int) -> list[Segment]:
        theme, plain = self.app.current_theme, self.app.no_color
        if cell is None:
            return [Segment(" " * width)]
        if isinstance(cell, str):
            heading = Style(color=theme.variables["stage"], bold=True)
            return [Segment(" " * len(MARK)), Segment(_fitted(cell, width - len(MARK)), heading)]
        one, here = self._squares[cell], cell == self.at
        style = Style(color=theme.variables["number"], bold=True, underline=plain) if here else None
        room = width - len(MARK) - COLOUR - EDGES - 1
        behind = f" {one.behind}" if one.behind else ""
        name = _fitted(one.name, min(cell_len(one.name), room - 1 - len(behind)))
        return [
            Segment(MARK if here else " " * len(MARK), style),
            *block(one.looks, COLOUR, theme, in_colour=shows_colours(self.app)),
            Segment(" "),
            Segment(f"{name}{behind}", style),
            Segment(" " * (room - cell_len(name) - len(behind))),
        ]


def _fitted(text: str, width: int) -> str:
    """The text in just so many columns; one that is too long goes on."""
    if cell_len(text) <= width:
        return set_cell_size(text, width)
    return f"{set_cell_size(text, max(0, width - 1))}{GOES_ON}"
