"""How a quilt's units are set, where not straight: with sashes between them, or on point."""

from __future__ import annotations

from fractions import Fraction

from msgspec import Struct

from sewalong.lengths import CENTIMETRE, Length, Unit
from sewalong.piecing.method import Noun, Pile

USUAL_SASH = {Unit.INCH: Fraction(2), Unit.CM: 5 * CENTIMETRE}
"""Width sashes are cut at where none is said: 2 in, or the round number nearest. From memory."""

STANDING = Pile("standing-sash", Noun("standing sash", "standing sashes"))
"""Between two units of a row, as long as a unit is high."""
LYING = Pile("lying-sash", Noun("lying sash", "lying sashes"))
"""Between two rows where there are cornerstones, as long as a unit is wide."""
LONG = Pile("long-sash", Noun("long sash", "long sashes"))
"""Between two rows where there are none, as long as a row."""
CORNERSTONE = Pile("cornerstone", Noun("cornerstone", "cornerstones"))
SASH_ROW = Pile("sash-row", Noun("sash row", "sash rows"))
"""Lying sashes and cornerstones in turn, as long as a row."""

SIDE = Pile("side-triangle", Noun("side triangle", "side triangles"))
"""Fills an edge between two units on point; its long edge is on the straight grain."""
CORNER = Pile("corner-triangle", Noun("corner triangle", "corner triangles"))
SET_UNIT = Pile("set-unit", Noun("unit in its row", "units in their rows"))
"""A unit sewn into its slanting row. Those rows differ in length, so what lies in them is counted."""
SET_SIDE = Pile("set-side", Noun("side triangle on its row", "side triangles on their rows"))

SETTING_PILES = {
    pile.id: pile
    for pile in (
        STANDING,
        LYING,
        LONG,
        CORNERSTONE,
        SASH_ROW,
        SIDE,
        CORNER,
        SET_UNIT,
        SET_SIDE,
    )
}
"""All that any setting brings, by id: what was made for one is spoken of when there is another."""


class Cornerstones(Struct, frozen=True):
    """Squares where sashes meet: the name of their cloth, its "#rrggbb"."""

    cloth: str
    colour: str | None = None


class Sashing(Struct, frozen=True):
    """Sashes between the units, and around them all when there is a `frame`.

    `cut` is the width they are cut at, `cloth` and `colour` are of their cloth. Without
    `cornerstones` the sashes between the rows are whole, as long as the centre is wide.
    """

    cut: Length
    cloth: str
    colour: str | None = None
    frame: bool = False
    cornerstones: Cornerstones | None = None

    def among(self, units: int) -> int:
        """Sashes that lie between so many units or rows, and at both ends with a frame."""
        return sashes_among(units, outer=self.frame)

    def why_not(self, columns: int) -> str:
        """Why so many columns cannot be sashed so, in a sentence; empty when they can."""
        if self.cornerstones is not None and not self.among(columns):
            return (
                "With one column and no frame no sashes meet, so there is no cornerstone. "
                "Take two columns or more, or a frame."
            )
        return ""

    @property
    def words(self) -> str:
        """ "with sashes between the units and around them, cornerstones where they meet" """
        around = " and around them" if self.frame else ""
        stones = ", cornerstones where they meet" if self.cornerstones is not None else ""
        return f"with sashes between the units{around}{stones}"


class SetOnPoint(Struct, frozen=True):
    """Units stand on a corner, and triangles fill the edges; `cloth` and `colour` are theirs.

    The squares they are cut from are cut `larger` than needed, to be trimmed later.
    """

    cloth: str
    colour: str | None = None
    larger: Length = Fraction(0)

    @property
    def words(self) -> str:
        """ "on point, with triangles around the edges" """
        return "on point, with triangles around the edges"


Setting = Sashing | SetOnPoint


def sashes_among(units: int, *, outer: bool) -> int:
    """Sashes between so many side by side, and at both ends when `outer`."""
    return units + (1 if outer else -1)
