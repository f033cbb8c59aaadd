"""Pieces sewn side by side: how long the row comes out.

A row of n pieces has n - 1 seams, and each seam takes an allowance from both pieces.
"""

from collections.abc import Sequence

from msgspec import Struct

from sewalong.lengths import Length, show
from sewalong.quilt.refusal import NumbersFault, above_zero, at_least, not_below_zero


def row_length(pieces: int, cut: Length, seam: Length) -> Length:
    """The length of `pieces` alike, each `cut` along the row, raw edge to raw edge.

    n * cut - 2 * seam * (n - 1). Raises `NumbersFault` when the seams would eat the pieces.
    """
    at_least(1, pieces, "pieces")
    return row_of((cut,) * pieces, seam)


def row_of(cuts: Sequence[Length], seam: Length) -> Length:
    """The length of pieces of different sizes sewn side by side, raw edge to raw edge.

    Raises `NumbersFault` as `row_length` does.
    """
    at_least(1, len(cuts), "pieces")
    not_below_zero(seam, "seam allowance")
    for place, cut in enumerate(cuts):
        above_zero(cut, "piece")
        ends = place in (0, len(cuts) - 1)
        taken = seam if ends else 2 * seam
        if len(cuts) > 1 and cut <= taken:
            raise NumbersFault(
                f"A piece of {show(cut)} is used up by its own seams of {show(seam)}. "
                "Cut it larger or sew a narrower seam."
            )
    return sum(cuts, Length(0)) - 2 * seam * (len(cuts) - 1)


class RowNumbers(Struct, frozen=True):
    """A row of `cuts` in inches: laid edge to edge, sewn raw edge to raw edge, and as it finishes;
    `seams` are so many."""

    cuts: tuple[Length, ...]
    seam: Length

    @property
    def edge_to_edge(self) -> Length:
        """The pieces before they are sewn."""
        return sum(self.cuts, Length(0))

    @property
    def seams(self) -> int:
        """One between every two pieces."""
        return len(self.cuts) - 1

    @property
    def sewn(self) -> Length:
        """Raw edge to raw edge; raises `NumbersFault` when the seams would eat a piece."""
        return row_of(self.cuts, self.seam)

    @property
    def finishes_at(self) -> Length:
        """Once the row is sewn in."""
        return self.sewn - 2 * self.seam

    def longer_by(self, seam: Length) -> Length:
        """How much longer it is with another seam (below zero: shorter)."""
        return row_of(self.cuts, seam) - self.sewn

    def loses(self, each: Length) -> Length:
        """What the row loses where every seam takes `each` too much."""
        return each * self.seams


def carried_across(loss: Length, units: int) -> Length:
    """What a loss in every unit comes to in a row or column of `units`."""
    return loss * at_least(1, units, "units")
