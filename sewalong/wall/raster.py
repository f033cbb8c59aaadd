"""Polygons to a grid of square pixels: which key lies under the centre of each pixel."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from math import ceil, floor

from sewalong.piecing.geometry import Point, Polygon
from sewalong.wall.keys import Key

Pixels = list[list[Key | None]]
"""Rows of pixels, the upper row first; None where nothing lies."""

Layer = Sequence[tuple[Polygon, Key]]
"""Convex polygons in inches that lie side by side, each with its key."""

CLOSE = 1e-6
"""Inches. A pixel centre this near an edge lies on it, whatever the float noise says."""


def raster(
    layers: Iterable[Layer], size: tuple[float, float], across: int, down: int, at: Point = (0, 0)
) -> Pixels:
    """The box of `size` inches with its corner `at`, as `down` rows of `across` pixels.

    Layers come with the lowest first, and upper ones hide lower ones. Where a pixel centre lies
    on a seam the key first in the alphabet has it, so a piece that looks the same after half a
    turn also looks the same drawn. A fabric that lies in several patches takes back the seams
    that rise from the first column to the last: else an hourglass of a few pixels would show
    only one of its two fabrics.
    """
    step = (size[0] / across, size[1] / down)
    pixels: Pixels = [[None] * across for _ in range(down)]
    for layer in layers:
        patches = Counter(key for _, key in layer)
        for polygon, key in sorted(layer, key=lambda entry: entry[1], reverse=True):
            _paint(pixels, polygon, key, step, at)
        for polygon, key in sorted(layer, key=lambda entry: entry[1]):
            if patches[key] > 1:
                _paint_rising(pixels, polygon, key, step, at)
    return pixels


def _paint(pixels: Pixels, polygon: Polygon, key: Key, step: Point, at: Point) -> None:
    wide, high = step
    ys = [y - at[1] for _, y in polygon]
    for row in _centres(min(ys), max(ys), high, len(pixels)):
        span = _crossing(polygon, at[1] + (row + 0.5) * high)
        if span is not None:
            reached = _centres(span[0] - at[0], span[1] - at[0], wide, len(pixels[row]))
            pixels[row][reached.start : reached.stop] = [key] * len(reached)


def _paint_rising(pixels: Pixels, polygon: Polygon, key: Key, step: Point, at: Point) -> None:
    """Paint the pixels whose centres lie on those edges of the polygon that rise."""
    wide, high = step
    ax, ay = polygon[-1]
    for bx, by in polygon:
        if (bx - ax) * (by - ay) < -CLOSE:
            for row in _centres(min(ay, by) - at[1], max(ay, by) - at[1], high, len(pixels)):
                x = ax + (bx - ax) * (at[1] + (row + 0.5) * high - ay) / (by - ay)
                for column in _centres(x - at[0], x - at[0], wide, len(pixels[row])):
                    pixels[row][column] = key
        ax, ay = bx, by


def _centres(least: float, most: float, step: float, count: int) -> range:
    """The pixels whose centres lie from `least` to `most` inches, of `count` in all."""
    first = max(0, ceil((least - CLOSE) / step - 0.5))
    last = min(count - 1, floor((most + CLOSE) / step - 0.5))
    return range(first, max(first, last + 1))


def _crossing(polygon: Polygon, y: float) -> tuple[float, float] | None:
    """Where the level line at `y` enters and leaves a convex polygon; None if it misses."""
    xs: list[float] = []
    ax, ay = polygon[-1]
    for bx, by in polygon:
        if min(ay, by) - CLOSE <= y <= max(ay, by) + CLOSE:
            if abs(by - ay) <= CLOSE:
                xs += (ax, bx)
            else:
                share = min(1.0, max(0.0, (y - ay) / (by - ay)))
                xs.append(ax + share * (bx - ax))
        ax, ay = bx, by
    return (min(xs), max(xs)) if xs else None


def draw_line(pixels: Pixels, start: Point, end: Point, step: Point, key: Key) -> None:
    """Draw a line one pixel thick over what is there already; `step` is inches to a pixel.

    Points are in inches from the corner of the grid. Empty pixels stay empty. A line that runs
    exactly between two pixels takes the one nearer the middle, so a seam sewn all round is the
    same distance from every edge.
    """
    a, b = ((x / step[0], y / step[1]) for x, y in (start, end))
    steep = abs(b[1] - a[1]) > abs(b[0] - a[0])
    if steep:
        a, b = (a[1], a[0]), (b[1], b[0])
    if a[0] > b[0]:
        a, b = b, a
    slope = (b[1] - a[1]) / (b[0] - a[0]) if b[0] > a[0] else 0.0
    down, across = len(pixels), len(pixels[0])
    length, breadth = (down, across) if steep else (across, down)
    for along in _centres(a[0], b[0], 1.0, length):
        place = a[1] + slope * (along + 0.5 - a[0])
        aside = floor(place + CLOSE) if 2 * place < breadth else ceil(place - CLOSE) - 1
        column, row = (aside, along) if steep else (along, aside)
        if 0 <= aside < breadth and pixels[row][column] is not None:
            pixels[row][column] = key
