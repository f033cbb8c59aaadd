"""Units as stamps of pixels: drawn once for each shape, turn and size, and then laid anywhere."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from msgspec import Struct

from sewalong.piecing.cloth import Flat, Patch, turned
from sewalong.piecing.geometry import turn
from sewalong.wall.keys import Key, cloth_letter
from sewalong.wall.laying.laying import Put
from sewalong.wall.on_point import standing_alone
from sewalong.wall.picture import right_sides
from sewalong.wall.raster import raster
from sewalong.wall.unit_pixels import least_across, least_for

Written = tuple[int, int, str]
"""A cell, across and down, and what is written there."""


class Stamp(Struct, frozen=True):
    """A unit in pixels, None outside of it where it stands on a corner. `letters` are hers, each
    in a cell that is all of its patch; there are none of a patch that has no such cell."""

    pixels: tuple[tuple[Key | None, ...], ...]
    letters: tuple[Written, ...] = ()


class Size(Struct, frozen=True):
    """Pixels across and down of a unit, both even so that units begin with a cell."""

    wide: int
    high: int
    on_point: bool = False


class Stamps:
    """Stamps of the units of a wall, as they show once their outer seams are taken; all are of one
    size. Raises ValueError for no units."""

    def __init__(self, units: Sequence[Flat], *, on_point: bool) -> None:
        if not units:
            raise ValueError("there are no units to draw")
        self.on_point = on_point
        self.inches = units[0].size
        numbers: dict[tuple[object, ...], int] = {}
        self._shapes: list[Flat] = []
        self._units: list[tuple[int, tuple[Key, ...]]] = []
        for unit in units:
            outlines = tuple(patch.points for patch in unit.patches)
            number = numbers.setdefault(outlines, len(numbers))
            if number == len(self._shapes):
                self._shapes.append(_numbered(unit))
            self._units.append((number, tuple(patch.letter for patch in unit.patches)))
        self._kept: dict[tuple[int, int, Size], Stamp] = {}
        self.least = (
            max(least_for(unit, standing_alone, 2) for unit in self._shapes)
            if on_point
            else least_across(self._shapes)
        )
        """Pixels across from which on every patch of every unit shows."""

    def of(self, put: Put, size: Size) -> Stamp:
        """The stamp of what lies at a place."""
        at = (put.unit, put.turns, size)
        if at not in self._kept:
            shape, keys = self._units[put.unit]
            self._kept[at] = _in_keys(_outline(self._shapes[shape], put.turns, size), keys)
        return self._kept[at]

    def outside(self, size: Size) -> Sequence[Sequence[bool]]:
        """Which pixels of a stamp lie outside of a unit."""
        numbers, _ = _outline(self._shapes[0], 0, size)
        return [[number is None for number in row] for row in numbers]


def _numbered(unit: Flat) -> Flat:
    return Flat(tuple(Patch(p.points, f"{n:04}", p.grain) for n, p in enumerate(unit.patches)))


_Outline = tuple[
    tuple[tuple[int | None, ...], ...], tuple[tuple[tuple[int, int], bool] | None, ...]
]
"""Which patch lies at each pixel; and for each patch the cell its letter is written in, and
whether there is room for two."""


@lru_cache(maxsize=256)
def _outline(shape: Flat, turns: int, size: Size) -> _Outline:
    unit = turned(shape, turn(2 * turns)) if turns else shape
    if size.on_point:
        pixels = standing_alone(size.wide, unit)
    else:
        pixels = raster([right_sides(unit.patches)], unit.size, size.wide, size.high)
    numbers = tuple(tuple(None if key is None else int(key) for key in row) for row in pixels)
    return numbers, tuple(_cell_of(numbers, patch) for patch in range(len(shape.patches)))


def _cell_of(
    numbers: Sequence[Sequence[int | None]], patch: int
) -> tuple[tuple[int, int], bool] | None:
    """The cell nearest to the middle of a patch that is all of it, of those with another beside
    them if there are any."""
    own = [(x, y) for y, row in enumerate(numbers) for x, n in enumerate(row) if n == patch]
    whole = {(x, y // 2) for x, y in own if y % 2 == 0 and numbers[y + 1][x] == patch}
    if not whole:
        return None
    wide = {(x, y) for x, y in whole if (x + 1, y) in whole}
    # A cell is two pixels high, so its middle lies between them.
    middle = (sum(x for x, _ in own) / len(own), (sum(y for _, y in own) / len(own) - 0.5) / 2)
    cell = min(
        wide or whole, key=lambda at: (abs(at[0] - middle[0]) / 2 + abs(at[1] - middle[1]), at)
    )
    return cell, bool(wide)


def _in_keys(outline: _Outline, keys: Sequence[Key]) -> Stamp:
    numbers, cells = outline
    pixels = tuple(tuple(None if n is None else keys[n] for n in row) for row in numbers)
    letters = []
    for key, found in zip(keys, cells, strict=True):
        letter = cloth_letter(key)
        if letter is not None and found is not None and (found[1] or len(letter) == 1):
            letters.append((*found[0], letter))
    return Stamp(pixels, tuple(letters))
