"""Pieces of cloth: patches of fabric, lying open or face to face.

Shapes are polygons to the raw edges, in inches (floats); x across, y down.
A seam allowance that has been opened is hidden behind the face and is left out.
"""

from __future__ import annotations

import math
from functools import cmp_to_key

from msgspec import Struct

from sewalong.piecing.geometry import (
    Line,
    Move,
    Point,
    Polygon,
    area,
    box,
    centre,
    clipped,
    shift,
)

UPRIGHT: Point = (0.0, -1.0)
"""Grain of a piece as cut: the lengthwise threads, pointing the way a one-way print stands up."""


class Patch(Struct, frozen=True):
    """A piece of one fabric: its outline, its letter, and which way its print stands up."""

    points: Polygon
    letter: str
    grain: Point

    @property
    def turn(self) -> int:
        """Degrees from upright to this print's up, 0 to 359, in the direction x to y."""
        degrees = math.degrees(math.atan2(self.grain[0], -self.grain[1]))
        return round(degrees) % 360

    def moved(self, move: Move) -> Patch:
        """The patch after a move; the grain goes with the cloth."""
        return Patch(move.polygon(self.points), self.letter, move.direction(self.grain))

    def kept(self, line: Line) -> Patch | None:
        """The part on the normal's side of `line`, or None."""
        points = clipped(self.points, line)
        if points is self.points:
            return self
        return Patch(points, self.letter, self.grain) if points else None


Patches = tuple[Patch, ...]
Segment = tuple[Point, Point]


def moved(patches: Patches, move: Move) -> Patches:
    """All patches after one move."""
    return tuple(patch.moved(move) for patch in patches)


def kept(patches: Patches, line: Line) -> Patches:
    """What of the patches lies on the normal's side of `line`."""
    return tuple(part for patch in patches if (part := patch.kept(line)) is not None)


def total_area(patches: Patches) -> float:
    """Square inches of all patches together."""
    return sum(area(patch.points) for patch in patches)


class Flat(Struct, frozen=True):
    """A piece lying open, faces up, its box at (0, 0)."""

    patches: Patches

    @property
    def size(self) -> tuple[float, float]:
        """Width and height to the raw edges, in inches."""
        return _size(self.patches)

    @property
    def is_rectangle(self) -> bool:
        """True if the patches fill their box, with no gap and no overlap."""
        width, height = self.size
        return abs(total_area(self.patches) - width * height) < 1e-5 * (width * height)

    def finished(self, seam: float) -> Patches:
        """What shows once `seam` is taken on all four sides, with its corner at (0, 0)."""
        shown = (self._shown(patch, seam) for patch in self.patches)
        inside = tuple(patch for patch in shown if patch is not None)
        return tuple(_tidied(patch) for patch in moved(inside, shift(-seam, -seam)))

    def shares(self, seam: float) -> list[tuple[str, float]]:
        """Of each patch that shows its fabric's letter and its part of the area, from 0 to 1."""
        shown = self.finished(seam)
        whole = total_area(shown)
        return [(patch.letter, total_area((patch,)) / whole) for patch in shown]

    def _shown(self, patch: Patch, seam: float) -> Patch | None:
        width, height = self.size
        near, far = (seam, seam), (width - seam, height - seam)
        part: Patch | None = patch
        for at, normal in (
            (near, (1.0, 0.0)),
            (near, (0.0, 1.0)),
            (far, (-1.0, 0.0)),
            (far, (0.0, -1.0)),
        ):
            part = part.kept(Line(at, normal)) if part is not None else None
        return part

    def in_order(self, seam: float) -> Flat:
        """The same piece, its patches in reading order of what shows of them.

        Like units have their patches in one order then, even where one seam runs into
        another within the allowance and the raw patches differ.
        """
        pairs = [(self._shown(patch, seam) or patch, _tidied(patch)) for patch in self.patches]
        key = cmp_to_key(_in_reading_order)
        return Flat(tuple(patch for _, patch in sorted(pairs, key=lambda pair: key(pair[0]))))


class Top(Struct, frozen=True):
    """A piece lying face down on another, with the rows of stitches that hold it."""

    patches: Patches
    seams: tuple[Segment, ...] = ()


class Layered(Struct, frozen=True):
    """Pieces face to face: `base` face up beneath, `tops` face down upon it.

    `loose` is True for what a cut through all layers left: it has no fixed way up,
    so it is turned to a standard position when it is opened.
    """

    base: Patches
    tops: tuple[Top, ...]
    loose: bool = False

    @property
    def patches(self) -> Patches:
        """All layers, the lowest first: paint them in this order."""
        return self.base + tuple(patch for top in self.tops for patch in top.patches)

    @property
    def seams(self) -> tuple[Segment, ...]:
        """All rows of stitches."""
        return tuple(seam for top in self.tops for seam in top.seams)

    @property
    def size(self) -> tuple[float, float]:
        """Width and height to the raw edges, in inches."""
        return _size(self.patches)


Piece = Flat | Layered


def _size(patches: Patches) -> tuple[float, float]:
    x0, y0, x1, y1 = box(patch.points for patch in patches)
    return (x1 - x0, y1 - y0)


def flat(patches: Patches) -> Flat:
    """The patches as an open piece, its box moved to (0, 0)."""
    x0, y0, _, _ = box(patch.points for patch in patches)
    return Flat(moved(patches, shift(-x0, -y0)))


def _tidied(patch: Patch) -> Patch:
    """The patch without float noise, so that edges that meet have the very same ends."""
    points = tuple((round(x, 12) + 0.0, round(y, 12) + 0.0) for x, y in patch.points)
    return Patch(points, patch.letter, patch.grain)


def _in_reading_order(a: Patch, b: Patch) -> int:
    # Nearly level counts as level, so that noise cannot change the order between like units.
    (ax, ay), (bx, by) = centre(a.points), centre(b.points)
    apart = ay - by if abs(ay - by) > 1e-6 else ax - bx
    return (apart > 0) - (apart < 0)


def turned(piece: Flat, move: Move) -> Flat:
    """The open piece after a turn, its box at (0, 0) again."""
    return flat(moved(piece.patches, move))


def rectangle(width: float, height: float, letter: str, grain: Point = UPRIGHT) -> Flat:
    """A piece as cut from cloth: one patch, `width` by `height` inches."""
    return Flat((Patch(((0.0, 0.0), (width, 0.0), (width, height), (0.0, height)), letter, grain),))
