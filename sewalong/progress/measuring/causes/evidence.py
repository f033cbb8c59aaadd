"""What is known of a piece that was measured: what it should be, and what the tape said."""

from __future__ import annotations

from msgspec import Struct

from sewalong.lengths import Length, Unit


class Other(Struct, frozen=True):
    """Another kind it could be taken for: what would be read then, and the other way (None where
    that is not known)."""

    words: str
    reading: Length
    other_way: Length | None = None


class OtherWay(Struct, frozen=True):
    """The same piece the other way, as in `Evidence`; no readings where it was not measured."""

    expected: Length
    allowances: float
    readings: tuple[Length, ...]


class Evidence(Struct, frozen=True):
    """All lengths in inches.

    `allowances` is how many inches the piece loses for an inch more of seam allowance, `seam` the
    allowance meant. `of` pieces lie side by side in it, and one of them adds one of `adds` (one
    number where they are alike); `counted` tells whether a person counted them out, as in a row. `largest` is the
    largest of its pieces: no mis-cut takes more. `bias` is whether its edges stretch, and
    `slip` what is read between the wrong edges.
    `seam_read` is what an allowance measures at the back, where that was looked at.
    `is_one` when all readings are of one and the same piece, such as a top at three places.
    """

    expected: Length
    allowances: float
    seam: Length
    readings: tuple[Length, ...]
    of: int = 1
    adds: tuple[Length, ...] = ()
    counted: bool = False
    largest: Length | None = None
    others: tuple[Other, ...] = ()
    bias: bool = False
    slip: Length | None = None
    other_way: OtherWay | None = None
    seam_read: Length | None = None
    is_one: bool = False
    unit: Unit = Unit.INCH

    @property
    def is_alone(self) -> bool:
        """Whether one piece was measured and no other."""
        return self.is_one or len(self.readings) == 1
