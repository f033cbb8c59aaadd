"""The units of one set before it is cut: opened, each patch in the fabric laid for it."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from msgspec import Struct
from msgspec.structs import replace

from sewalong.piecing.cloth import Flat, Patch
from sewalong.piecing.derive import Derivation
from sewalong.quilt.derived import derived_if_any
from sewalong.quilt.quilt import Quilt
from sewalong.wall.keys import UNKNOWN, Key, cloth_key, wrong_side
from sewalong.wall.picture import EMPTY, Picture, from_pixels, right_sides
from sewalong.wall.raster import Pixels, raster
from sewalong.wall.unit_pixels import high_for, least_across

Squares = tuple[str | None, ...]
"""Her letters for the squares of a set, in the order they are taken; None for one not known."""


@lru_cache(maxsize=8)
def picture_of_set(quilt: Quilt, squares: Squares, across: int, down: int) -> Picture | None:
    """The units that come of a set, side by side in at most `across` x `down` cells.

    None when the pieces are too small for their seams. Kept, since every count asks for it.
    """
    made = derived_if_any(quilt)
    return None if made is None else set_picture(units_of_set(made, squares), across, down)


def units_of_set(made: Derivation, squares: Squares) -> tuple[Flat, ...]:
    """The units of a set in order of making, as they show once their outer seams are taken; each
    patch has the key of the fabric it is of."""
    seam = float(made.seam)
    raw = (in_fabrics(made, squares, number) for number in range(len(made.units)))
    return tuple(Flat(unit.finished(seam)) for unit in raw)


def in_fabrics(made: Derivation, squares: Squares, number: int) -> Flat:
    """One unit of a set to its raw edges, each patch with the key of its fabric. Squares that are
    missing at the end are not known."""
    laid = dict(zip(made.letters, squares, strict=False))
    unit = made.units[number % len(made.units)]
    return Flat(tuple(Patch(p.points, _key(laid.get(p.letter)), p.grain) for p in unit.patches))


def in_her_fabrics(picture: Picture, places: Sequence[str], squares: Squares) -> Picture:
    """A picture of pieces of a set with her fabrics, faces and backs, for the method's letters of
    its `places`."""
    laid: dict[Key | None, Key] = {}
    for place, letter in zip(places, squares, strict=False):
        laid[place] = _key(letter)
        laid[wrong_side(place)] = UNKNOWN if letter is None else wrong_side(cloth_key(letter))
    pixels = tuple(tuple(laid.get(key, key) for key in row) for row in picture.pixels)
    return replace(picture, pixels=pixels)


def _key(letter: str | None) -> Key:
    return UNKNOWN if letter is None else cloth_key(letter)


def set_picture(units: Sequence[Flat], across: int, down: int) -> Picture:
    """Units side by side in at most `across` x `down` cells, all of one size, as large as can be.

    Where there is no room for all of them so large that every patch shows, the first ones that
    there is room for are shown, and the picture is not whole; none where there is room for none.
    """
    room = _Room(across, 2 * down, units[0].size)
    least = least_across(units)
    for wide in range(min(across, int(2 * down / room.shape) + 1), least - 1, -1):
        columns, rows = room.holds(wide)
        if columns * rows >= len(units):
            lines = -(-len(units) // columns)
            # As many in each line, as far as that goes.
            return _drawn(units, room, wide, -(-len(units) // lines))
    columns, rows = room.holds(least)
    if not columns * rows:
        return EMPTY
    return _drawn(units[: columns * rows], room, least, columns, is_whole=False)


class _Room(Struct, frozen=True):
    """Pixels across and down, and the size of a unit in inches."""

    across: int
    down: int
    size: tuple[float, float]

    @property
    def shape(self) -> float:
        """How high a unit is, as a share of its width."""
        return self.size[1] / self.size[0]

    def holds(self, wide: int) -> tuple[int, int]:
        """How many units of so many pixels fit across and down, with gaps between."""
        gap = _gap(wide)
        high = high_for(self.size, wide)
        return (self.across + gap) // (wide + gap), (self.down + gap) // (high + gap)


def _gap(wide: int) -> int:
    """Pixels between units so many pixels wide: units that are not sewn together lie apart."""
    return max(1, wide // 8)


def _drawn(
    units: Sequence[Flat], room: _Room, wide: int, columns: int, *, is_whole: bool = True
) -> Picture:
    high, gap = high_for(room.size, wide), _gap(wide)
    drawn = [raster([right_sides(unit.patches)], unit.size, wide, high) for unit in units]
    lines = [drawn[at : at + columns] for at in range(0, len(drawn), columns)]
    across = columns * (wide + gap) - gap
    pixels: Pixels = []
    for line in lines:
        if pixels:
            pixels += [[None] * across for _ in range(gap)]
        for row in zip(*line, strict=True):
            together = [key for part in row for key in (*part, *[None] * gap)][:-gap]
            pixels.append([*together, *[None] * (across - len(together))])
    return from_pixels(pixels, is_whole=is_whole)
