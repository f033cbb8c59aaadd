"""Where every swatch stands: rows under their headings, as many side by side as the width has room
for. Pure."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

HEADING = 23
"""Columns of a heading beside its swatches: the longest has 21."""

BESIDE_FROM = 60
"""Columns from which on headings stand beside the swatches and not above them."""

WIDTH = 26
"""Columns a swatch takes at least, its name with it."""


class Line(Struct, frozen=True):
    """One line: a heading or none, and the numbers of the swatches that stand on it."""

    heading: str
    swatches: tuple[int, ...] = ()


class SwatchLines(Struct, frozen=True):
    """`indent` columns stand before the swatches of a line, each `width` wide."""

    lines: tuple[Line, ...]
    indent: int
    width: int

    def line_of(self, swatch: int) -> int:
        """The number of the line on which a swatch stands; 0 where there is none."""
        for number, line in enumerate(self.lines):
            if swatch in line.swatches:
                return number
        return 0

    def moved(self, swatch: int, across: int, down: int) -> int:
        """The swatch so many steps on from this one; it stays where there is none that way."""
        if across:
            return max(0, min(swatch + across, self._count - 1))
        filled = [line.swatches for line in self.lines if line.swatches]
        here = next((n for n, line in enumerate(filled) if swatch in line), None)
        if here is None or not 0 <= here + down < len(filled):
            return swatch
        to = filled[here + down]
        return to[min(filled[here].index(swatch), len(to) - 1)]

    @property
    def _count(self) -> int:
        return sum(len(line.swatches) for line in self.lines)


def swatch_lines(rows: Sequence[tuple[str, int]], width: int) -> SwatchLines:
    """Lines for rows of a heading and how many swatches it has, in `width` columns."""
    beside = width >= BESIDE_FROM
    indent = HEADING if beside else 0
    abreast = max(1, (width - indent) // WIDTH)
    lines = tuple(_lines(rows, abreast, beside=beside))
    return SwatchLines(lines, indent, (width - indent) // abreast)


def _lines(rows: Sequence[tuple[str, int]], abreast: int, *, beside: bool) -> Iterator[Line]:
    first = 0
    for heading, count in rows:
        if not beside:
            yield Line(heading)
        for start in range(first, first + count, abreast):
            numbers = range(start, min(start + abreast, first + count))
            yield Line(heading if beside and start == first else "", tuple(numbers))
        first += count
