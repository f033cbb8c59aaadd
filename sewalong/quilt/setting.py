"""How a quilt's units are set, where not straight: with sashes between them."""

from __future__ import annotations

from msgspec import Struct

from sewalong.lengths import Length


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


def sashes_among(units: int, *, outer: bool) -> int:
    """Sashes between so many side by side, and at both ends when `outer`."""
    return units + (1 if outer else -1)
