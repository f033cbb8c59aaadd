"""A whole top as polygons in inches: its units, what lies between them, and its borders."""

from __future__ import annotations

from collections.abc import Iterator
from math import sqrt

from sewalong.piecing.geometry import Move, Polygon, shift
from sewalong.quilt.layouts.setting_sashed import Meeting
from sewalong.wall.keys import CORNERSTONE, SASH, SETTING, Key, border_key
from sewalong.wall.on_point import Slanting
from sewalong.wall.tops import Arrangement, Level, Placed, Turned, placed_unit

Part = tuple[Polygon, Key]
"""A piece of the top that shows, and what it is of."""


def top_polygons(
    top: Level | Slanting, place: Arrangement
) -> tuple[tuple[float, float], tuple[Part, ...]]:
    """The size of a top, finished, and all that shows of it, side by side without gap or overlap.

    Raises ValueError for a quarter turn of a unit that is not square.
    """
    if isinstance(top, Level):
        size, inside = _level(top, place)
    else:
        size, inside = _slanting(top, place)
    around = sum(top.borders)
    inwards = shift(around, around)
    shifted = [(inwards.polygon(polygon), key) for polygon, key in inside]
    whole = (size[0] + 2 * around, size[1] + 2 * around)
    return whole, (*shifted, *_borders(whole, top.borders, top.corners))


def _level(top: Level, place: Arrangement) -> tuple[tuple[float, float], list[Part]]:
    wide, high = top.unit or placed_unit(top.derivation, Placed()).size
    sashes = top.sashes
    sash, outer = (sashes.width, sashes.outer) if sashes else (0.0, False)
    columns = [n * (wide + sash) + sash * outer for n in range(top.columns)]
    rows = [n * (high + sash) + sash * outer for n in range(top.rows)]
    size = (columns[-1] + wide + sash * outer, rows[-1] + high + sash * outer)
    parts = [
        part
        for r, y in enumerate(rows)
        for c, x in enumerate(columns)
        for part in _unit(top, place(r, c), shift(x, y), (wide, high))
    ]
    if sashes is None:
        return size, parts
    before = range(0 if outer else 1, top.columns + 1 if outer else top.columns)
    between = [n * (wide + sash) - sash * (not outer) for n in before]
    for y in rows:
        parts += [(rectangle(x, y, sash, high), SASH) for x in between]
    for n in range(0 if outer else 1, top.rows + 1 if outer else top.rows):
        y = n * (high + sash) - sash * (not outer)
        if sashes.meeting is Meeting.CORNERSTONES:
            parts += [(rectangle(x, y, wide, sash), SASH) for x in columns]
            parts += [(rectangle(x, y, sash, sash), CORNERSTONE) for x in between]
        else:
            parts.append((rectangle(0, y, size[0], sash), SASH))
    return size, parts


def _slanting(top: Slanting, place: Arrangement) -> tuple[tuple[float, float], list[Part]]:
    side = top.side or placed_unit(top.derivation, Placed()).size[0]
    across, half = side * sqrt(2), side / sqrt(2)
    size = (top.columns * across, top.rows * across)
    parts: list[Part] = []
    for r in range(2 * top.rows - 1):
        for c in range(top.columns - r % 2):
            # The corner that is uppermost; from there the unit's x runs down towards the last
            # column, its y down towards the first.
            x, y = c * across + half + half * (r % 2), r * half
            slope = sqrt(0.5)
            move = Move(slope, -slope, slope, slope, x, y)
            parts += _unit(top, place(r, c), move, (side, side))
    return size, [*parts, *_triangles(size, (top.columns, top.rows), half)]


def _triangles(size: tuple[float, float], units: tuple[int, int], half: float) -> Iterator[Part]:
    """Those along the edges, and at the corners."""
    (wide, high), (columns, rows) = size, units
    for n in range(1, columns):
        x = 2 * n * half
        yield ((x - half, 0.0), (x + half, 0.0), (x, half)), SETTING
        yield ((x + half, high), (x - half, high), (x, high - half)), SETTING
    for n in range(1, rows):
        y = 2 * n * half
        yield ((0.0, y + half), (0.0, y - half), (half, y)), SETTING
        yield ((wide, y - half), (wide, y + half), (wide - half, y)), SETTING
    yield ((0.0, 0.0), (half, 0.0), (0.0, half)), SETTING
    yield ((wide - half, 0.0), (wide, 0.0), (wide, half)), SETTING
    yield ((half, high), (0.0, high), (0.0, high - half)), SETTING
    yield ((wide, high - half), (wide, high), (wide - half, high)), SETTING


def _unit(
    top: Level | Slanting, placed: Placed, move: Move, size: tuple[float, float]
) -> Iterator[Part]:
    """A unit brought to the size it has in the top, and to its place."""
    unit = placed_unit(top.derivation, placed)
    wide, high = size[0] / unit.size[0], size[1] / unit.size[1]
    for patch in unit.patches:
        scaled = tuple((x * wide, y * high) for x, y in patch.points)
        yield move.polygon(scaled), patch.letter


def _borders(
    whole: tuple[float, float], borders: tuple[float, ...], corners: Turned
) -> Iterator[Part]:
    """The four sides of each border, the innermost first."""
    for number, width in enumerate(borders, start=1):
        out = sum(borders[number:])
        left, top, right, low = out, out, whole[0] - out, whole[1] - out
        # How far the sides, and the ends, stay away from the outer corners there.
        sides, ends = {
            Turned.SIDES_FIRST: ((width, width), (0.0, 0.0)),
            Turned.ENDS_FIRST: ((0.0, 0.0), (width, width)),
            Turned.MITRED: ((0.0, width), (0.0, width)),
        }[corners]
        key = border_key(number)
        for x, inner in ((left, left + width), (right, right - width)):
            yield (
                (
                    (x, top + sides[0]),
                    (inner, top + sides[1]),
                    (inner, low - sides[1]),
                    (x, low - sides[0]),
                ),
                key,
            )
        for y, inner in ((top, top + width), (low, low - width)):
            yield (
                (
                    (left + ends[0], y),
                    (right - ends[0], y),
                    (right - ends[1], inner),
                    (left + ends[1], inner),
                ),
                key,
            )


def rectangle(x: float, y: float, wide: float, high: float) -> Polygon:
    """A rectangle of this size, its first corner at (x, y); in inches."""
    return ((x, y), (x + wide, y), (x + wide, y + high), (x, y + high))
