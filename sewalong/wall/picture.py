"""A picture in half-block cells: each cell of the screen shows two square pixels.

A cell is about twice as high as it is wide, so half of one is a square.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from msgspec import Struct

from sewalong.piecing.cloth import Flat, Layered, Patches, Segment
from sewalong.piecing.geometry import box
from sewalong.wall.keys import STITCHES, Key, wrong_side
from sewalong.wall.raster import Layer, draw_line, raster


class Picture(Struct, frozen=True):
    """Rows of pixels, two to a row of cells; an even number of them, all equally long.

    `is_whole` is False for part of a top, shown where there is no room for all its units.
    """

    pixels: tuple[tuple[Key | None, ...], ...]
    is_whole: bool = True

    @property
    def across(self) -> int:
        """Cells, and pixels, across."""
        return len(self.pixels[0]) if self.pixels else 0

    @property
    def down(self) -> int:
        """Rows of cells."""
        return len(self.pixels) // 2

    @property
    def pairs(self) -> Iterable[tuple[tuple[Key | None, ...], tuple[Key | None, ...]]]:
        """The upper and the lower row of pixels of each row of cells."""
        return zip(self.pixels[::2], self.pixels[1::2], strict=True)

    @property
    def keys(self) -> list[Key]:
        """Every key that shows, in alphabetical order: what a legend must explain."""
        return sorted({key for row in self.pixels for key in row if key is not None})


EMPTY = Picture(())


def from_pixels(rows: Sequence[Sequence[Key | None]], *, is_whole: bool = True) -> Picture:
    """The rows as a picture; an odd one at the end has nothing below it."""
    pixels = [tuple(row) for row in rows]
    if len(pixels) % 2:
        pixels.append((None,) * len(pixels[-1]))
    return Picture(tuple(pixels), is_whole)


def fitted(size: tuple[float, float], across: int, down: int) -> tuple[int, int]:
    """Pixels across and down for a shape of `size`, as large as so many cells hold.

    The shape is kept to the nearest pixel, and nothing is thinner than one.
    """
    scale = min(across / size[0], 2 * down / size[1])
    wide = min(across, max(1, round(size[0] * scale)))
    return wide, min(2 * down, max(1, round(size[1] * scale)))


Line = tuple[Segment, Key]
"""A line drawn over a piece, in its inches, and the key it is drawn in."""


def picture_of(
    piece: Flat | Layered | Patches, across: int, down: int, lines: Sequence[Line] = ()
) -> Picture:
    """A piece as the eye sees it, as large as `across` x `down` cells hold, its shape kept.

    An open piece shows the right side of its fabrics. Of pieces face to face the one on top
    shows its wrong side, with the rows of stitches on it, and hides what is beneath. `lines` are
    drawn over all of it. No room (a widget of no width) gives an empty picture; a piece of nothing
    raises ValueError.
    """
    patches = piece if isinstance(piece, tuple) else piece.patches
    if not patches:
        raise ValueError("there is nothing to draw")
    if across < 1 or down < 1:
        return EMPTY
    x0, y0, x1, y1 = box(patch.points for patch in patches)
    size = (x1 - x0, y1 - y0)
    wide, high = fitted(size, across, down)
    pixels = raster(_layers(piece), size, wide, high, (x0, y0))
    seams = piece.seams if isinstance(piece, Layered) else ()
    step = (size[0] / wide, size[1] / high)
    for (start, end), key in (*((seam, STITCHES) for seam in seams), *lines):
        a, b = (start[0] - x0, start[1] - y0), (end[0] - x0, end[1] - y0)
        draw_line(pixels, a, b, step, key)
    return from_pixels(pixels)


def _layers(piece: Flat | Layered | Patches) -> list[Layer]:
    """What lies where, the lowest first."""
    if isinstance(piece, Layered):
        backs = [[(p.points, wrong_side(p.letter)) for p in top.patches] for top in piece.tops]
        return [right_sides(piece.base), *backs]
    return [right_sides(piece.patches if isinstance(piece, Flat) else piece)]


def right_sides(patches: Patches) -> Layer:
    """Patches lying face up."""
    return [(patch.points, patch.letter) for patch in patches]
