"""Cuts of one cloth that look alike on the table, to be labelled as they are cut."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction
from itertools import combinations

from msgspec import Struct

from sewalong.lengths import Length, Unit, as_given
from sewalong.quilt.size import Size

NEAR = Fraction(1, 2)
"""Two sizes nearer than this, in inches, are taken one for the other (common practice)."""


class Cut(Struct, frozen=True):
    """Pieces of one size: the `cloth` they are cut from, `what` they are for, and their size.

    `length` is None for strips that are not cut to a length yet.
    """

    cloth: str
    what: str
    width: Length
    length: Length | None = None

    @classmethod
    def of(cls, cloth: str, what: str, size: Size) -> Cut:
        """Pieces cut to a size both ways."""
        return cls(cloth, what, size.width, size.length)

    def show(self, unit: Unit) -> str:
        """`2 1/2 in for border 1`, `4 × 4 1/4 in for squares`."""
        size = as_given(self.width, unit)
        if self.length not in (None, self.width):
            size = Size(self.width, self.length or self.width).show(unit)
        return f"{size} for {self.what}"


class Alike(Struct, frozen=True):
    """Two cuts of one cloth that differ by `apart` at most, in inches, and less than `NEAR`."""

    first: Cut
    second: Cut
    apart: Length

    def words(self, unit: Unit) -> str:
        """What to label, and why."""
        return (
            f"{self.first.show(unit)} and {self.second.show(unit)}, "
            f"{as_given(self.apart, unit)} apart"
        )


def to_label(cuts: Iterable[Cut]) -> tuple[Alike, ...]:
    """Every two cuts of one cloth, whatever the case of its name, that are easily taken for each
    other: unlike, but by less than `NEAR` each way. Strips are only held against strips."""
    return tuple(_alike(cuts))


def _alike(cuts: Iterable[Cut]) -> Iterator[Alike]:
    for first, second in combinations(cuts, 2):
        if first.cloth.casefold() != second.cloth.casefold():
            continue
        if (first.length is None) != (second.length is None):
            continue
        lengths = (first.length or Fraction(0)) - (second.length or Fraction(0))
        apart = max(abs(first.width - second.width), abs(lengths))
        if 0 < apart < NEAR:
            yield Alike(first, second, apart)
