"""Help for the tests of pictures: methods at a usual size, and shapes told from pixels."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction

from sewalong.piecing.catalogue import method_ids, written_method
from sewalong.piecing.derive import Derivation, derive
from sewalong.wall.keys import Key
from sewalong.wall.picture import Picture, picture_of
from sewalong.wall.pieces import finished_unit

METHODS = method_ids()


def usual(method: str) -> Derivation:
    """The method from squares of 5 in or strips of 2 1/2 in, at a seam of 1/4 in."""
    strips = written_method(method).starts[0].strip
    return derive(method, Fraction(5, 2) if strips else Fraction(5))


def pixel_height(picture: Picture) -> int:
    """Rows of pixels in which anything shows."""
    return sum(any(key is not None for key in row) for row in picture.pixels)


def unit_picture(derivation: Derivation, across: int, down: int, number: int = 0) -> Picture:
    """A unit as it shows in the top, its outer seams taken."""
    return picture_of(finished_unit(derivation, number), across, down)


def cells(picture: Picture) -> list[list[tuple[Key | None, Key | None]]]:
    """Rows of cells, each with the keys of its upper and lower half."""
    return [list(zip(upper, lower, strict=True)) for upper, lower in picture.pairs]


def drawn(picture: Picture) -> list[tuple[Key | None, ...]]:
    """The rows of pixels in which anything shows."""
    return [row for row in picture.pixels if any(key is not None for key in row)]


def counts(picture: Picture) -> Counter[Key]:
    """Pixels of every key."""
    return Counter(key for row in picture.pixels for key in row if key is not None)
