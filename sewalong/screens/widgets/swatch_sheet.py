"""Fabrics as swatches in rows, each with letter, name and count beside it; one is in hand."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from rich.cells import cell_len, set_cell_size
from rich.segment import Segment
from rich.style import Style
from textual.geometry import Region, Size
from textual.strip import Strip
from textual.widget import Widget

from sewalong.screens.widgets.colour_block import EDGES, Block, block
from sewalong.screens.widgets.swatch_lines import SwatchLines, swatch_lines

SQUARE = 4
"""Columns of colour."""

MARK = "> "
GOES_ON = "\N{HORIZONTAL ELLIPSIS}"


class Shown(Struct, frozen=True):
    """One swatch: what is beside it, a name and a count, and what it looks like."""

    name: str
    count: str
    looks: Block


class SwatchSheet(Widget):
    """Shows rows of swatches under headings, and marks the one in hand."""

    DEFAULT_CSS = "SwatchSheet { width: 1fr; height: auto; }"

    def __init__(self, *, id: str | None = None) -> None:
        super().__init__(id=id)
        self._rows: tuple[tuple[str, tuple[Shown, ...]], ...] = ()
        self._swatches: tuple[Shown, ...] = ()
        self.at = 0
        """The number of the swatch in hand."""

    def show(self, rows: Sequence[tuple[str, tuple[Shown, ...]]], at: int) -> None:
        """Show these rows, the swatch of this number in hand."""
        self._rows = tuple(rows)
        self._swatches = tuple(one for _, swatches in rows for one in swatches)
        self.at = at
        self.refresh(layout=True)

    def on_mount(self) -> None:
        self.app.theme_changed_signal.subscribe(self, lambda _: self.refresh())

    def move(self, across: int, down: int) -> bool:
        """Take another swatch in hand; False where there is none that way."""
        before, self.at = self.at, self._lines(self.size.width).moved(self.at, across, down)
        self.refresh()
        return self.at != before

    @property
    def in_hand(self) -> Region:
        """Where the line of the swatch in hand lies in the sheet; its heading is with the first."""
        line = self._lines(self.size.width).line_of(self.at)
        above = 1 if line == 1 else 0
        return Region(0, line - above, self.size.width, 1 + above)

    def _lines(self, width: int) -> SwatchLines:
        return swatch_lines([(heading, len(swatches)) for heading, swatches in self._rows], width)

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        return len(self._lines(width).lines)

    def render_line(self, y: int) -> Strip:
        width, found = self.size.width, self._lines(self.size.width)
        if y >= len(found.lines):
            return Strip.blank(width, self.rich_style)
        line = found.lines[y]
        segments = [self._heading(line.heading, found.indent or width)]
        for number in line.swatches:
            segments += self._swatch(number, found.width)
        if line.swatches and not found.indent:
            segments = segments[1:]
        strip = Strip(segments).apply_style(self.rich_style)
        return strip.adjust_cell_length(width, self.rich_style)

    def _heading(self, text: str, width: int) -> Segment:
        stage = Style(color=self.app.current_theme.variables["stage"], bold=True)
        return Segment(set_cell_size(text, width), stage if text else None)

    def _swatch(self, number: int, width: int) -> list[Segment]:
        theme, one, here = self.app.current_theme, self._swatches[number], number == self.at
        room = width - len(MARK) - SQUARE - EDGES - 2
        number_colour = theme.variables["number"]
        plain = self.app.no_color
        style = Style(color=number_colour, bold=True, underline=plain) if here else None
        return [
            Segment(MARK if here else " " * len(MARK), style),
            *block(one.looks, SQUARE, theme, no_colour=plain),
            Segment(" "),
            *_label(one, room, style),
        ]


def _label(one: Shown, room: int, style: Style | None) -> list[Segment]:
    """Name and count in `room` columns, a blank behind; where the name is too long it goes on, the
    count is there always."""
    name, left = one.name, room - len(one.count) - 1
    if cell_len(name) > left:
        name = set_cell_size(name, max(0, left - 1)) + GOES_ON
    said = f"{name} {one.count}"
    return [Segment(said, style), Segment(" " * (room + 1 - cell_len(said)))]
