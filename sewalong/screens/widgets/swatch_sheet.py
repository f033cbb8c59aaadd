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

from sewalong.screens.widgets.breakpoints import is_roomy
from sewalong.screens.widgets.colour_block import EDGES, Block, block, shows_colours
from sewalong.screens.widgets.swatch_lines import WIDTH, SwatchLines, SwatchRow, swatch_lines

SQUARE, LARGE_SQUARE = 4, 10
"""Columns of colour, and of it where there is room; then it is two lines high."""

LARGE_FROM = WIDTH + LARGE_SQUARE
"""Columns of a swatch from which on it has room."""

MARK = "> "
GOES_ON = "\N{HORIZONTAL ELLIPSIS}"


class Shown(Struct, frozen=True):
    """One swatch: what is beside it, a name and a count, and what it looks like."""

    name: str
    count: str
    looks: Block


class ShownRow(Struct, frozen=True):
    """Swatches of one value word and one colour family, which may be empty."""

    value: str
    family: str
    swatches: tuple[Shown, ...]


class SwatchSheet(Widget):
    """Shows rows of swatches under headings, and marks the one in hand."""

    DEFAULT_CSS = "SwatchSheet { width: 1fr; height: auto; }"

    def __init__(self, *, id: str | None = None) -> None:
        super().__init__(id=id)
        self._rows: tuple[ShownRow, ...] = ()
        self._swatches: tuple[Shown, ...] = ()
        self.at = 0
        """The number of the swatch in hand."""

    def show(self, rows: Sequence[ShownRow], at: int) -> None:
        """Show these rows, the swatch of this number in hand."""
        self._rows = tuple(rows)
        self._swatches = tuple(one for row in rows for one in row.swatches)
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
            return Strip.blank(width, self.rich_style)
        line = found.lines[at]
        segments = []
        if found.indent or not line.swatches:
            segments.append(self._heading("" if below else line.heading, found.indent or width))
        for number in line.swatches:
            segments += self._swatch(number, found.width, labelled=not below)
        strip = Strip(segments).apply_style(self.rich_style)
        return strip.adjust_cell_length(width, self.rich_style)

    def _heading(self, text: str, width: int) -> Segment:
        stage = Style(color=self.app.current_theme.variables["stage"], bold=True)
        return Segment(set_cell_size(text, width), stage if text else None)

    def _swatch(self, number: int, width: int, *, labelled: bool) -> list[Segment]:
        theme, one = self.app.current_theme, self._swatches[number]
        here, plain = number == self.at and labelled, self.app.no_color
        square = LARGE_SQUARE if self._high > 1 and width >= LARGE_FROM else SQUARE
        room = width - len(MARK) - square - EDGES - 2
        marked = Style(color=theme.variables["number"], bold=True, underline=plain)
        style = marked if here else None
        label = _label(one, room, style) if labelled else [Segment(" " * (room + 1))]
        return [
            Segment(MARK if here else " " * len(MARK), style),
            *block(one.looks, square, theme, in_colour=shows_colours(self.app)),
            Segment(" "),
            *label,
        ]


def _label(one: Shown, room: int, style: Style | None) -> list[Segment]:
    """Name and count in `room` columns, a blank behind; where the name is too long it goes on, the
    count is there always."""
    name, left = one.name, room - len(one.count) - 2
    if cell_len(name) > left:
        name = set_cell_size(name, max(0, left - 1)) + GOES_ON
    said = f"{name}, {one.count}"
    return [Segment(said, style), Segment(" " * (room + 1 - cell_len(said)))]
