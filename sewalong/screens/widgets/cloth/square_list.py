"""The squares of a set in groups, such as front and back, each with its colour, letter and name."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import zip_longest

from msgspec import Struct
from rich.segment import Segment
from textual.geometry import Region, Size
from textual.strip import Strip

from sewalong.screens.widgets.cloth.sheet import MARK, ClothSheet, Shown

COLUMN = 26
"""Columns a group takes at least; with room for all of them groups stand side by side."""

COLOUR = 4
"""Columns of colour."""


class ShownGroup(Struct, frozen=True):
    """Squares under a heading."""

    title: str
    squares: tuple[Shown, ...]


Cell = str | int | None
"""A heading, the number of a square, or nothing."""


class SquareList(ClothSheet):
    """Shows groups of squares, and marks the one in hand."""

    def __init__(self, *, id: str | None = None) -> None:
        super().__init__(id=id)
        self._groups: tuple[ShownGroup, ...] = ()
        self._squares: tuple[Shown, ...] = ()

    def show(self, groups: Sequence[ShownGroup], at: int) -> None:
        """Show these, the square of this number in hand."""
        self._groups = tuple(groups)
        self._squares = tuple(one for group in groups for one in group.squares)
        self.at = at
        self.refresh(layout=True)

    def move(self, step: int) -> bool:
        """Take another square in hand; False where there is none that way."""
        return self.take_in_hand(max(0, min(self.at + step, len(self._squares) - 1)))

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
        lines = self._lines(self.size.width)
        if y >= len(lines):
            return self.line()
        room = self.size.width // len(lines[y])
        return self.line(part for cell in lines[y] for part in self._cell(cell, room))

    def _cell(self, cell: Cell, width: int) -> list[Segment]:
        if cell is None:
            return [Segment(" " * width)]
        if isinstance(cell, str):
            return [Segment(" " * len(MARK)), self.heading(cell, width - len(MARK))]
        return self.square(self._squares[cell], COLOUR, width, here=cell == self.at)
