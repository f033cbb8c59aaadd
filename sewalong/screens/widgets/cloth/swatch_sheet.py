"""Fabrics as swatches in rows, each with letter, name and count beside it; one is in hand."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace
from rich.segment import Segment
from textual.geometry import Region, Size
from textual.strip import Strip

from sewalong.screens.widgets.breakpoints import is_roomy
from sewalong.screens.widgets.cloth.sheet import ClothSheet, Shown
from sewalong.screens.widgets.cloth.swatch_lines import WIDTH, SwatchLines, SwatchRow, swatch_lines

SQUARE, LARGE_SQUARE = 4, 10
"""Columns of colour, and of it where there is room; then it is two lines high."""

LARGE_FROM = WIDTH + LARGE_SQUARE
"""Columns of a swatch from which on it has room."""


class ShownRow(Struct, frozen=True):
    """Swatches of one value word and one colour family, which may be empty."""

    value: str
    family: str
    swatches: tuple[Shown, ...]


class SwatchSheet(ClothSheet):
    """Shows rows of swatches under headings, and marks the one in hand."""

    def __init__(self, *, id: str | None = None) -> None:
        super().__init__(id=id)
        self._rows: tuple[ShownRow, ...] = ()
        self._swatches: tuple[Shown, ...] = ()

    def show(self, rows: Sequence[ShownRow], at: int) -> None:
        """Show these rows, the swatch of this number in hand."""
        self._rows = tuple(rows)
        self._swatches = tuple(one for row in rows for one in row.swatches)
        self.at = at
        self.refresh(layout=True)

    def move(self, across: int, down: int) -> bool:
        """Take another swatch in hand; False where there is none that way."""
        return self.take_in_hand(self._lines(self.size.width).moved(self.at, across, down))

    @property
    def in_hand(self) -> Region:
        """Where the line of the swatch in hand lies in the sheet; its heading is with the first."""
        line, high = self._lines(self.size.width).line_of(self.at), self._high
        above = 1 if line == 1 else 0
        return Region(0, (line - above) * high, self.size.width, (1 + above) * high)

    @property
    def _high(self) -> int:
        """Lines of a swatch."""
        return 2 if is_roomy(self.screen) else 1

    def _lines(self, width: int) -> SwatchLines:
        rows = [SwatchRow(row.value, row.family, len(row.swatches)) for row in self._rows]
        return swatch_lines(rows, width)

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        return len(self._lines(width).lines) * self._high

    def render_line(self, y: int) -> Strip:
        width, found = self.size.width, self._lines(self.size.width)
        at, below = divmod(y, self._high)
        if at >= len(found.lines):
            return self.line()
        line = found.lines[at]
        segments = []
        if found.indent or not line.swatches:
            segments.append(self.heading("" if below else line.heading, found.indent or width))
        for number in line.swatches:
            segments += self._swatch(number, found.width, labelled=not below)
        return self.line(segments)

    def _swatch(self, number: int, width: int, *, labelled: bool) -> list[Segment]:
        colour = LARGE_SQUARE if self._high > 1 and width >= LARGE_FROM else SQUARE
        one = self._swatches[number]
        if labelled:
            return self.square(one, colour, width, here=number == self.at)
        return self.square(replace(one, name="", behind=""), colour, width, here=False)
