"""A top in pixels, and which piece of it lies at each of them."""

from __future__ import annotations

from enum import StrEnum
from typing import NamedTuple

from msgspec import Struct

from sewalong.wall.picture import Picture, from_pixels
from sewalong.wall.raster import Pixels


class Kind(StrEnum):
    """What lies at a place of a top."""

    UNIT = "unit"
    STANDING = "standing sash"
    LYING = "lying sash"
    SIDE = "side triangle"
    CORNER = "corner triangle"
    BORDER = "border"


class Place(NamedTuple):
    """One piece of a top.

    A unit: its row and its place in it, both from 1 as they are sewn. A standing sash: its row,
    the unit before it. What lies along the rows, cornerstones too: the row above it. A side
    triangle: its row, and 0 for the end where the row begins or 1. A corner triangle: its number
    in order of rows. A border: its number, the innermost 1, and which of its sides it is, in the
    order they are sewn on, from 1.
    """

    kind: Kind
    row: int
    column: int = 0


class Laid(Struct, frozen=True):
    """`pixels` and `places` are equally many; `is_whole` is False where only a part is shown. Pieces
    of fewer than `outlined_from` pixels either way would be nothing but outline: of them corners show."""

    pixels: Pixels
    places: list[list[Place]]
    is_whole: bool = True
    outlined_from: int = 3

    @property
    def picture(self) -> Picture:
        """It as it is when all is sewn."""
        return from_pixels(self.pixels, is_whole=self.is_whole)
