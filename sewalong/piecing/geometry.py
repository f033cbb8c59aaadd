"""Plane geometry for cloth: points, lines, convex polygons and rigid moves.

All lengths are inches in floats. x runs across and y runs down, as on a screen.
Polygons are convex, without holes, and listed with positive area.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from msgspec import Struct

Point = tuple[float, float]
Polygon = tuple[Point, ...]

NEAR = 1e-7
"""Inches nearer than this are the same place: far under a thread, far over float noise."""


class Line(Struct, frozen=True):
    """A line through `at` with unit normal `normal`; `depth` is positive on the normal's side."""

    at: Point
    normal: Point

    def depth(self, point: Point) -> float:
        """Signed distance of `point` from the line, in inches."""
        return (point[0] - self.at[0]) * self.normal[0] + (point[1] - self.at[1]) * self.normal[1]

    def along(self, point: Point) -> float:
        """Position of `point` along the line, in inches from `at`."""
        return (point[1] - self.at[1]) * self.normal[0] - (point[0] - self.at[0]) * self.normal[1]

    def shifted(self, distance: float) -> Line:
        """The parallel line `distance` further on the normal's side."""
        x, y = self.at
        return Line((x + distance * self.normal[0], y + distance * self.normal[1]), self.normal)

    def reversed(self) -> Line:
        """The same line with its normal pointing the other way."""
        return Line(self.at, (-self.normal[0], -self.normal[1]))


def line_through(a: Point, b: Point) -> Line:
    """The line from `a` to `b`; raises ValueError if they are the same point."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    length = math.hypot(dx, dy)
    if length < NEAR:
        raise ValueError("a line needs two different points")
    return Line(a, (dy / length, -dx / length))


def clipped(polygon: Polygon, line: Line) -> Polygon:
    """The part of a convex polygon on the normal's side of `line`; empty if none is."""
    (ax, ay), (nx, ny) = line.at, line.normal
    depths = [(x - ax) * nx + (y - ay) * ny for x, y in polygon]
    if max(depths) <= NEAR:
        return ()
    if min(depths) >= -NEAR:
        return polygon
    kept: list[Point] = []
    for i, point in enumerate(polygon):
        before, depth = depths[i - 1], depths[i]
        if (before > NEAR and depth < -NEAR) or (before < -NEAR and depth > NEAR):
            other = polygon[i - 1]
            t = before / (before - depth)
            kept.append(
                (other[0] + t * (point[0] - other[0]), other[1] + t * (point[1] - other[1]))
            )
        if depth >= -NEAR:
            kept.append(point)
    return tuple(kept) if len(kept) > 2 and area(kept) > NEAR else ()


def area(polygon: Sequence[Point]) -> float:
    """Area in square inches, never negative."""
    return abs(_signed_area(polygon))


def _signed_area(polygon: Sequence[Point]) -> float:
    total = 0.0
    for i, (x, y) in enumerate(polygon):
        before = polygon[i - 1]
        total += before[0] * y - x * before[1]
    return total / 2


def centre(polygon: Sequence[Point]) -> Point:
    """The centre of gravity of a polygon."""
    x0, y0 = polygon[0]
    twice = cx = cy = 0.0
    for i in range(1, len(polygon) - 1):
        (ax, ay), (bx, by) = polygon[i], polygon[i + 1]
        cross = (ax - x0) * (by - y0) - (bx - x0) * (ay - y0)
        twice += cross
        cx += cross * (x0 + ax + bx)
        cy += cross * (y0 + ay + by)
    return (cx / (3 * twice), cy / (3 * twice))


def span(polygon: Polygon, line: Line) -> tuple[float, float] | None:
    """Where `line` crosses a convex polygon, as positions along the line; None if it doesn't.

    A line that only runs along an edge counts as crossing.
    """
    (ax, ay), (nx, ny) = line.at, line.normal
    depths = [(x - ax) * nx + (y - ay) * ny for x, y in polygon]
    places: list[float] = []
    for i, point in enumerate(polygon):
        other = polygon[i - 1]
        before, depth = depths[i - 1], depths[i]
        if abs(depth) <= NEAR:
            places.append(line.along(point))
        elif abs(before) > NEAR and (before > 0) != (depth > 0):
            t = before / (before - depth)
            a, b = line.along(other), line.along(point)
            places.append(a + t * (b - a))
    if not places or max(places) - min(places) <= NEAR:
        return None
    return (min(places), max(places))


def union_of_spans(spans: Iterable[tuple[float, float] | None]) -> list[tuple[float, float]]:
    """Spans along one line, joined where they touch or overlap."""
    joined: list[tuple[float, float]] = []
    for a, b in sorted(span for span in spans if span is not None):
        if joined and a <= joined[-1][1] + NEAR:
            joined[-1] = (joined[-1][0], max(b, joined[-1][1]))
        else:
            joined.append((a, b))
    return joined


class Move(Struct, frozen=True):
    """A rigid move of the plane: (x, y) -> (a x + b y + e, c x + d y + f)."""

    a: float
    b: float
    c: float
    d: float
    e: float = 0.0
    f: float = 0.0

    def point(self, p: Point) -> Point:
        """Where `p` goes."""
        return (self.a * p[0] + self.b * p[1] + self.e, self.c * p[0] + self.d * p[1] + self.f)

    def direction(self, v: Point) -> Point:
        """Which way the direction `v` points afterwards."""
        return (self.a * v[0] + self.b * v[1], self.c * v[0] + self.d * v[1])

    def polygon(self, polygon: Polygon) -> Polygon:
        """Where `polygon` goes, still with positive area if the move turns it over."""
        a, b, c, d, e, f = self.a, self.b, self.c, self.d, self.e, self.f
        moved = tuple([(a * x + b * y + e, c * x + d * y + f) for x, y in polygon])
        return moved if a * d - b * c > 0 else moved[::-1]


def shift(dx: float, dy: float) -> Move:
    """Move by (dx, dy) without turning."""
    return Move(1.0, 0.0, 0.0, 1.0, dx, dy)


def turn(eighths: int) -> Move:
    """Turn about the origin by so many eighths of a circle, x axis towards y axis."""
    half = math.sqrt(0.5)
    cos = (1.0, half, 0.0, -half, -1.0, -half, 0.0, half)[eighths % 8]
    sin = (0.0, half, 1.0, half, 0.0, -half, -1.0, -half)[eighths % 8]
    return Move(cos, -sin, sin, cos)


def turn_to(direction: Point, wanted: Point) -> Move:
    """The turn about the origin that takes unit vector `direction` to `wanted`."""
    cos = direction[0] * wanted[0] + direction[1] * wanted[1]
    sin = direction[0] * wanted[1] - direction[1] * wanted[0]
    return Move(cos, -sin, sin, cos)


def fold(line: Line) -> Move:
    """Turn over across `line`, as a page across a fold."""
    nx, ny = line.normal
    offset = 2 * (line.at[0] * nx + line.at[1] * ny)
    return Move(
        1 - 2 * nx * nx, -2 * nx * ny, -2 * nx * ny, 1 - 2 * ny * ny, offset * nx, offset * ny
    )


def box(polygons: Iterable[Polygon]) -> tuple[float, float, float, float]:
    """The smallest upright box around `polygons`: (x least, y least, x most, y most)."""
    points = [p for polygon in polygons for p in polygon]
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    return (min(xs), min(ys), max(xs), max(ys))
