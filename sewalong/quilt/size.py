"""Width and length of a unit, a top, a back or a piece of cloth."""

from __future__ import annotations

from msgspec import Struct

from sewalong.lengths import Length, Unit, as_given
from sewalong.quilt.refusal import above_zero


class Size(Struct, frozen=True):
    """Across and down, in inches, both above zero; raises `NumbersFault` when they are not."""

    width: Length
    length: Length

    def __post_init__(self) -> None:
        above_zero(self.width, "width")
        above_zero(self.length, "length")

    @classmethod
    def square(cls, side: Length) -> Size:
        """As wide as it is long."""
        return cls(side, side)

    def grown(self, each_side: Length) -> Size:
        """The same with `each_side` added on all four sides (less, when below zero)."""
        return Size(self.width + 2 * each_side, self.length + 2 * each_side)

    def times(self, columns: int, rows: int) -> Size:
        """So many across and so many down, laid edge to edge."""
        return Size(self.width * columns, self.length * rows)

    @property
    def turned(self) -> Size:
        """The same on its side."""
        return Size(self.length, self.width)

    @property
    def around(self) -> Length:
        """All four sides together."""
        return 2 * (self.width + self.length)

    def covers(self, other: Size) -> bool:
        """Whether `other` lies within it as both lie."""
        return self.width >= other.width and self.length >= other.length

    def show(self, unit: Unit = Unit.INCH) -> str:
        """`48 × 60 in`, to the nearest eighth of an inch or millimetre."""
        return f"{as_given(self.width, unit, symbol=False)} × {as_given(self.length, unit)}"
