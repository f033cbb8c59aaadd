"""The squares of a photograph where they lay: each a block of colour with its letter and place."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from rich.cells import set_cell_size
from rich.segment import Segment
from textual.geometry import Region, Size
from textual.strip import Strip

from sewalong.screens.widgets.breakpoints import is_roomy
from sewalong.screens.widgets.cloth.sheet import GOES_ON, ClothSheet
from sewalong.screens.widgets.colour_block import EDGES, Block

ROW_NUMBER = 3
"""Columns before each row, for its number."""

NARROWEST, WIDEST = 5, 12
"""Columns of one place: a mark and two letters, or with the place behind, and a gap."""

HIGH, LARGE_HIGH = 2, 4
"""Lines of one place: its colour, and below that letter and place; where there is room more."""

MARK, CHOSEN, ALIKE = ">", "*", "="
"""Before the letter of the place in hand, of one marked to be merged, and of those that are of the
same letter as the one in hand."""


class PlaceShown(Struct, frozen=True):
    """One place: the letter its square has, its address, and what it looks like."""

    letter: str
    address: str
    looks: Block


class PlaceSheet(ClothSheet):
    """Shows as many places of each row as there is room for, around the one in hand."""

    def __init__(self, *, id: str | None = None) -> None:
        super().__init__(id=id)
        self._places: tuple[PlaceShown, ...] = ()
        self._columns = 1
        self.marks_alike = True
        """Whether places of the same letter as the one in hand are marked."""
        self.chosen = ""
        """The letter that is marked to be merged; empty for none."""

    def show(self, places: Sequence[PlaceShown], columns: int) -> None:
        """Show these places, row by row."""
        self._places, self._columns = tuple(places), columns
        self.at = min(self.at, max(0, len(self._places) - 1))
        self.refresh(layout=True)

    def move(self, across: int, down: int) -> bool:
        """Take another place in hand; False where there is none that way."""
        row, column = divmod(self.at, self._columns)
        to_row, to_column = row + down, column + across
        if not (0 <= to_row < self._rows and 0 <= to_column < self._columns):
            return False
        return self.take_in_hand(to_row * self._columns + to_column)

    @property
    def in_hand(self) -> Region:
        """Where the place in hand lies in the sheet, the numbers above it with the first row."""
        row = self.at // self._columns
        above = 1 if not row else 0
        high = self._high
        return Region(0, 1 + row * high - above, self.size.width, high + above)

    @property
    def _high(self) -> int:
        return LARGE_HIGH if is_roomy(self.screen) else HIGH

    @property
    def _rows(self) -> int:
        return -(-len(self._places) // self._columns)

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        return 1 + self._high * self._rows

    def _window(self) -> tuple[range, int]:
        """The columns that are shown, from 0, and how wide each is."""
        room = max(NARROWEST, self.size.width - ROW_NUMBER - 1)
        wide = max(NARROWEST, min(WIDEST, room // self._columns))
        shown = min(self._columns, room // wide)
        first = max(0, min(self.at % self._columns - shown // 2, self._columns - shown))
        return range(first, first + shown), wide

    def render_line(self, y: int) -> Strip:
        columns, wide = self._window()
        if y == 0:
            segments = self._numbers(columns, wide)
        elif y > self._high * self._rows:
            return self.line()
        else:
            row, below = divmod(y - 1, self._high)
            labels = below == self._high - 1
            number = "" if below else str(row + 1)
            segments = [Segment(f"{number:<{ROW_NUMBER}}", self.ink("quiet"))]
            for column in columns:
                place = row * self._columns + column
                segments += self._label(place, wide) if labels else self._block(place, wide)
        return self.line(segments)

    def _numbers(self, columns: range, wide: int) -> list[Segment]:
        text = "".join(f"{f' {column + 1}':<{wide}}" for column in columns)
        before = GOES_ON if columns.start else ""
        behind = GOES_ON if columns.stop < self._columns else ""
        return [Segment(f"{before:<{ROW_NUMBER}}{text}{behind}", self.ink("quiet"))]

    def _block(self, place: int, wide: int) -> list[Segment]:
        return [*self.block(self._places[place].looks, wide - EDGES - 1), Segment(" ")]

    def _label(self, number: int, wide: int) -> list[Segment]:
        place, here = self._places[number], self._places[self.at]
        mark = " "
        if number == self.at:
            mark = MARK
        elif self.chosen and place.letter == self.chosen:
            mark = CHOSEN
        elif self.marks_alike and place.letter == here.letter:
            mark = ALIKE
        text = f"{mark}{place.letter}"
        if len(text) + 1 + len(place.address) < wide:
            text = f"{text} {place.address}"
        underlined = self.app.no_color and mark == MARK
        style = None if mark == " " else self.marked(underlined=underlined)
        return [Segment(text, style), Segment(set_cell_size("", wide - len(text)))]
