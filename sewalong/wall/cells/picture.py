"""A wall in pixels, or a part of it, of which each place is drawn anew on its own."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from sewalong.wall.cells.sections import Room, section
from sewalong.wall.cells.stamps import Size, Stamps, Written
from sewalong.wall.keys import SASH, SETTING, Key
from sewalong.wall.laying.grid import Grid
from sewalong.wall.laying.laying import Put


class Cells(Struct, frozen=True):
    """Where a place is drawn: its first cell across and down, and how many it has."""

    x: int
    y: int
    across: int
    down: int

    @property
    def middle(self) -> tuple[int, int]:
        """The cell in its middle, where a unit on its corner is widest."""
        return self.x + self.across // 2, self.y + (self.down - 1) // 2


class Part(Struct, frozen=True):
    """The rows and columns that are shown, from 0 on; on point those of whole units."""

    rows: range
    columns: range


class WallPicture:
    """The part of a wall around a place, in pixels, two rows of them to a row of cells.

    `at` is the number of the place that must be seen, `before` the part that was shown last, which
    stays where it can. `size` is one of `room.sizes()`.
    """

    def __init__(
        self,
        grid: Grid,
        stamps: Stamps,
        room: Room,
        size: Size,
        at: int,
        before: Part | None = None,
    ) -> None:
        self.grid, self.stamps, self.room, self.size = grid, stamps, room, size
        self.part = self._part(at, before)
        gaps = room.gaps(size)
        self.pitch = (size.wide + gaps[0], size.high + gaps[1])
        across = len(self.part.columns) * self.pitch[0] - gaps[0]
        down = len(self.part.rows) * self.pitch[1] - gaps[1]
        ground = SETTING if grid.on_point else SASH if room.gap else None
        self.pixels: list[list[Key | None]] = [[ground] * across for _ in range(down)]
        self.letters: dict[int, tuple[Written, ...]] = {}
        self._outside = stamps.outside(size)
        self.cells = {
            number: Cells(x, y // 2, size.wide, size.high // 2)
            for number, (x, y) in ((n, self._first(n)) for n in range(len(grid.places)))
            if 0 <= x <= across - size.wide and 0 <= y <= down - size.high
        }
        """Where each place is drawn that is shown whole, by its number in the grid."""

    @property
    def across(self) -> int:
        """Cells across."""
        return len(self.pixels[0])

    @property
    def down(self) -> int:
        """Rows of cells."""
        return len(self.pixels) // 2

    def lay_all(self, puts: Sequence[Put | None]) -> None:
        """Draw what lies at every place, by the numbers of the grid."""
        for number, put in enumerate(puts):
            self.lay(number, put)

    def lay(self, number: int, put: Put | None) -> range:
        """Draw what lies at a place, as far as it is shown; the rows of cells are returned that this
        changes."""
        first_x, first_y = self._first(number)
        wide, high = self.size.wide, self.size.high
        if not (-wide < first_x < self.across and -high < first_y < len(self.pixels)):
            return range(0)
        drawn: Sequence[Sequence[Key | None]] = [[None] * wide] * high
        self.letters.pop(number, None)
        if put is not None:
            stamp = self.stamps.of(put, self.size)
            drawn = stamp.pixels
            if number in self.cells:
                self.letters[number] = stamp.letters
        rows = range(max(0, first_y), min(len(self.pixels), first_y + high))
        for y in rows:
            self._draw_row(self.pixels[y], first_x, drawn[y - first_y], self._outside[y - first_y])
        return range(rows.start // 2, (rows.stop + 1) // 2)

    def _draw_row(
        self, line: list[Key | None], first: int, row: Sequence[Key | None], outside: Sequence[bool]
    ) -> None:
        if not self.grid.on_point:
            line[first : first + len(row)] = row
            return
        for x, key in enumerate(row, start=first):
            if 0 <= x < len(line) and not outside[x - first]:
                line[x] = key

    def _first(self, number: int) -> tuple[int, int]:
        """The first pixel of a place across and down, outside of the picture if it is."""
        down, across = self.grid.shown[number]
        wide, high = self.pitch
        if self.grid.on_point:
            x = (across - 1) * wide // 2 - self.part.columns.start * wide
            return x, (down - 1) * high // 2 - self.part.rows.start * high
        return (across - self.part.columns.start) * wide, (down - self.part.rows.start) * high

    def _part(self, at: int, before: Part | None) -> Part:
        rows, columns = self.room.holds(self.size)
        down, across = (self._wanted(shown) for shown in self.grid.shown[at])
        now = before or Part(range(0), range(0))
        first_row = section(max(rows, len(down)), self.room.rows, down, now.rows.start)
        first_column = section(
            max(columns, len(across)), self.room.columns, across, now.columns.start
        )
        return Part(
            range(first_row, first_row + max(rows, len(down))),
            range(first_column, first_column + max(columns, len(across))),
        )

    def _wanted(self, shown: int) -> range:
        """The rows or columns of whole units that must be shown for a unit to be."""
        if not self.grid.on_point:
            return range(shown, shown + 1)
        return range((shown - 1) // 2, shown // 2 + 1)


def step(grid: Grid, at: int, across: int, down: int) -> int:
    """The place beside another, by their numbers: so many steps across in its line, or in the line
    below or above the one that lies nearest. The same where there is none that way."""
    here = grid.shown[at]
    lines = sorted({y for y, _ in grid.shown})
    line = lines.index(here[0]) + down
    if not 0 <= line < len(lines):
        return at
    there = [n for n, (y, _) in enumerate(grid.shown) if y == lines[line]]
    if down:
        return min(there, key=lambda n: (abs(grid.shown[n][1] - here[1]), grid.shown[n][1]))
    there.sort(key=lambda n: grid.shown[n][1])
    return there[max(0, min(there.index(at) + across, len(there) - 1))]
