"""What the outer edges of a unit do: which lie on the bias, which on the straight grain."""

from __future__ import annotations

import math
from enum import StrEnum

from msgspec import Struct

from sewalong.piecing.cloth import Flat, Patch
from sewalong.piecing.geometry import Point


class EdgeGrain(StrEnum):
    """How the threads run along an edge."""

    STRAIGHT = "straight grain"
    """Along or across the lengthwise threads: the edge holds its length."""
    BIAS = "bias"
    """At 45 degrees to the threads: the edge stretches."""
    OFF = "off grain"
    """Between the two: it stretches somewhat."""


class Side(StrEnum):
    """A side of a unit as it is drawn."""

    TOP = "top"
    BOTTOM = "bottom"
    NEAR_START = "side by column 1"
    FAR = "side by the last column"


class Edge(Struct, frozen=True):
    """The part of a unit's outer edge that one patch has, of the fabric with this letter."""

    side: Side
    start: Point
    end: Point
    grain: EdgeGrain
    letter: str


def outer_edges(unit: Flat) -> tuple[Edge, ...]:
    """Every patch's part of the four outer edges of a rectangular unit."""
    width, height = unit.size
    edges: list[Edge] = []
    for patch in unit.patches:
        for i, end in enumerate(patch.points):
            start = patch.points[i - 1]
            side = _side(start, end, width, height)
            if side is not None:
                edges.append(Edge(side, start, end, _grain(patch, start, end), patch.letter))
    return tuple(edges)


def _side(start: Point, end: Point, width: float, height: float) -> Side | None:
    def both(axis: int, place: float) -> bool:
        return abs(start[axis] - place) < 1e-6 and abs(end[axis] - place) < 1e-6

    if both(1, 0.0):
        return Side.TOP
    if both(1, height):
        return Side.BOTTOM
    if both(0, 0.0):
        return Side.NEAR_START
    if both(0, width):
        return Side.FAR
    return None


def _grain(patch: Patch, start: Point, end: Point) -> EdgeGrain:
    edge = math.atan2(end[1] - start[1], end[0] - start[0])
    threads = math.atan2(patch.grain[1], patch.grain[0])
    apart = math.degrees(edge - threads) % 90
    if min(apart, 90 - apart) < 0.01:
        return EdgeGrain.STRAIGHT
    return EdgeGrain.BIAS if abs(apart - 45) < 0.01 else EdgeGrain.OFF
