"""The picture of a top whose units stand on a corner, with triangles filling its edges."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cache
from math import floor, sqrt

from sewalong.piecing.derive import Derivation
from sewalong.wall.keys import SETTING, Key, border_key
from sewalong.wall.picture import EMPTY, Picture, fitted, from_pixels, right_sides
from sewalong.wall.raster import Pixels, raster
from sewalong.wall.tops import Arrangement, Placed, by_turns, placed_unit, refuse_no_top

FINE = 48
"""A unit is looked up in a grid this fine, for its own pixels do not lie level on the screen."""


def on_point_picture(
    derivation: Derivation,
    rows: int,
    columns: int,
    *,
    across: int,
    down: int,
    side: float | None = None,
    borders: Sequence[float] = (),
    arrangement: Arrangement | None = None,
) -> Picture:
    """A top on point in at most `across` x `down` cells, its shape kept.

    `rows` and `columns` count the whole units along the edges, as `quilt.setting_on_point`
    does. The arrangement is asked by rows as they show: the rows between, one unit shorter, are
    the odd ones. `side` is what a unit finishes at in inches, that of the derivation unless given.
    A unit's upper edge faces the last column, up. `borders` as in `top_picture`.
    Raises ValueError for fewer than one row or column, borders that are not above zero, or
    units that are not square.
    """
    refuse_no_top(rows, columns, borders)
    width, height = placed_unit(derivation, Placed()).size
    if abs(width - height) > 1e-6:
        raise ValueError("only square units can be set on point")
    if across < 1 or down < 1:
        return EMPTY
    standing = _units(
        derivation, rows, columns, arrangement or by_turns_on_point(len(derivation.units))
    )
    step = (side or width) * sqrt(2)
    around = sum(borders)
    size = (columns * step + 2 * around, rows * step + 2 * around)
    wide, high = fitted(size, across, down)
    rings = [sum(borders[number:]) for number in range(len(borders))]

    def key_at(x: float, y: float) -> Key:
        edge = min(x, y, size[0] - x, size[1] - y)
        if edge < around:
            return border_key(sum(edge < ring for ring in rings))
        along, aside = (x + y - 2 * around) / step + 0.5, (y - x) / step + 0.5
        i, j = floor(along), floor(aside)
        pixels = standing(i, j)
        return SETTING if pixels is None else _at(pixels, along - i, aside - j)

    xs = [(column + 0.5) * size[0] / wide for column in range(wide)]
    ys = [(row + 0.5) * size[1] / high for row in range(high)]
    return from_pixels([[key_at(x, y) for x in xs] for y in ys])


def by_turns_on_point(different: int) -> Arrangement:
    """One after the other along the slanting rows, as they are sewn: like units don't share a seam."""
    along_rows = by_turns(different)

    def place(row: int, column: int) -> Placed:
        middle = 2 * column + 1 + row % 2
        return along_rows((row + 1 - middle) // 2, (row + 1 + middle) // 2)

    return place


def _units(
    derivation: Derivation, rows: int, columns: int, place: Arrangement
) -> Callable[[int, int], Pixels | None]:
    """By lines along and aside of the slant, both from the first corner: the unit that stands
    there, in its own grid; None where a triangle or nothing does."""

    @cache
    def unit(placed: Placed) -> Pixels:
        flat = placed_unit(derivation, placed)
        return raster([right_sides(flat.patches)], flat.size, FINE, FINE)

    @cache
    def standing(i: int, j: int) -> Pixels | None:
        # i + j and i - j are twice the middle's place down and across, in steps.
        if 0 < i + j < 2 * rows and 0 < i - j < 2 * columns:
            return unit(place(i + j - 1, (i - j - 1) // 2))
        return None

    return standing


def _at(pixels: Pixels, along: float, aside: float) -> Key:
    key = pixels[min(FINE - 1, int(aside * FINE))][min(FINE - 1, int(along * FINE))]
    assert key is not None, "units leave no pixel empty"
    return key
