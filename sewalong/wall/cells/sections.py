"""How large units are drawn, and which part of the wall is shown where there is no room for all."""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from sewalong.wall.cells.stamps import Size

FEWEST = 2
"""Rows and columns that are shown at the least: zoomed in as far as can be, four units."""

STEPS = 4
"""Sizes between the whole wall and four units, with both (own choice)."""


class Room(Struct, frozen=True):
    """Cells across and down in which `rows` and `columns` of a wall are drawn, whole units on point.

    `shape` is how high a unit is, as a share of its width; `gap` the width of a sash as such a
    share, 0 for none; `least` the pixels across from which on a unit shows what it is.
    """

    across: int
    down: int
    rows: int
    columns: int
    least: int
    shape: float = 1.0
    gap: float = 0.0
    on_point: bool = False

    @property
    def step(self) -> int:
        """Units are drawn in whole steps of pixels, so that each begins with a cell; on point half
        of one does."""
        return 4 if self.on_point else 2

    def size(self, wide: int) -> Size:
        """A unit so many pixels across, or the next fewer that begin with a cell."""
        wide = max(self.step, wide - wide % self.step)
        high = wide if self.on_point else 2 * max(1, round(wide * self.shape / 2))
        return Size(wide, high, self.on_point)

    def gaps(self, size: Size) -> tuple[int, int]:
        """Pixels across and down of a sash."""
        if not self.gap:
            return 0, 0
        return max(1, round(size.wide * self.gap)), 2 * max(1, round(size.wide * self.gap / 2))

    def holds(self, size: Size) -> tuple[int, int]:
        """How many rows and columns of units of a size there is room for, of those there are; one
        of each at least."""
        across, down = self.gaps(size)
        rows = (2 * self.down + down) // (size.high + down)
        columns = (self.across + across) // (size.wide + across)
        return min(self.rows, max(1, rows)), min(self.columns, max(1, columns))

    def sizes(self) -> tuple[Size, ...]:
        """The sizes there are, the smallest first: in that all units are shown, or as many as there
        is room for; in the last four are, or fewer where there are no more."""
        fewest = (min(FEWEST, self.rows), min(FEWEST, self.columns))
        first = self._largest((self.rows, self.columns)) or self.size(self.least + self.step - 1)
        last = max(self._largest(fewest) or first, first, key=lambda size: size.wide)
        grows: float = (last.wide / first.wide) ** (1 / (STEPS - 1))
        found = [self.size(round(first.wide * grows**n)) for n in range(STEPS - 1)]
        return tuple(dict.fromkeys((*found, last)))

    def far_size(self) -> Size | None:
        """A size in which more units are shown than in any in which they show what they are, all of
        them if there is room; None where all are shown so already."""
        if self.holds(self.sizes()[0]) == (self.rows, self.columns):
            return None
        anyhow = replace(self, least=1)
        far = anyhow._largest((self.rows, self.columns)) or self.size(self.step)
        return far if far.wide < self.sizes()[0].wide else None

    def _largest(self, wanted: tuple[int, int]) -> Size | None:
        """The largest size in which so many rows and columns are shown, None for none."""
        for wide in range(self.across - self.across % self.step, 0, -self.step):
            size = self.size(wide)
            rows, columns = self.holds(size)
            fits = size.high <= 2 * self.down and rows >= wanted[0] and columns >= wanted[1]
            if fits and wide >= self.least:
                return size
        return None


def section(shown: int, whole: int, wanted: range, now: int) -> int:
    """The first of so many rows or columns `shown` of the `whole`, so that those `wanted` are among
    them: that begins with `now` where it holds them, else the first that does.

    Neighbouring sections share one row or column, so that what meets there is seen in one of them.
    """
    last: int = max(0, whole - shown)
    if now <= wanted.start and wanted.stop <= now + shown and now <= last:
        return now
    on = max(1, shown - 1)
    starts: list[int] = [*range(0, last, on), last]
    return next(start for start in starts if wanted.stop <= start + shown)
