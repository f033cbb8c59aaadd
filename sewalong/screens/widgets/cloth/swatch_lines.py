"""Where every swatch stands: rows under their headings, as many side by side as the width has room
for. Pure."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

VALUE = 13
"""Columns of the value word beside its swatches, and a gap: the longest has 12."""

HEADING = VALUE + 8
"""With the family behind it, the longest of which has 7."""

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


class SwatchRow(Struct, frozen=True):
    """A value word, a colour family or nothing, and how many swatches are of both."""

    value: str
    family: str
    count: int


def swatch_lines(rows: Sequence[SwatchRow], width: int) -> SwatchLines:
    """Lines for these rows in `width` columns. Beside its swatches a value is said once, above
    them with each of its families."""
    beside = width >= BESIDE_FROM
    indent = HEADING if beside else 0
    most = max((row.count for row in rows), default=1)
    abreast = max(1, min((width - indent) // WIDTH, most))
    return SwatchLines(
        tuple(_lines(rows, abreast, beside=beside)), indent, (width - indent) // abreast
    )


def _lines(rows: Sequence[SwatchRow], abreast: int, *, beside: bool) -> Iterator[Line]:
    first, said = 0, ""
    for row in rows:
        value = "" if row.value == said else row.value
        said, heading = row.value, f"{value:<{VALUE}}{row.family}"
        if not beside:
            yield Line(f"{row.value}, {row.family}" if row.family else row.value)
        for start in range(first, first + row.count, abreast):
            numbers = range(start, min(start + abreast, first + row.count))
            yield Line(heading if beside and start == first else "", tuple(numbers))
        first += row.count
