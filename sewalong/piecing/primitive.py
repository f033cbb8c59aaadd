"""The one primitive of piecing: lay face down, sew along a line, cut along a line, open out.

Everything pieced is made of these four moves; `operations` names the useful combinations.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from sewalong.piecing.cloth import (
    Flat,
    Layered,
    Patches,
    Piece,
    Segment,
    Top,
    flat,
    kept,
    moved,
)
from sewalong.piecing.faults import MethodFault
from sewalong.piecing.geometry import (
    NEAR,
    Line,
    Move,
    Point,
    area,
    box,
    fold,
    line_through,
    shift,
    span,
    turn,
    turn_to,
    union_of_spans,
)


def face_down(piece: Flat, x: float, y: float) -> Top:
    """The piece turned over sideways, its box put at (x, y)."""
    width, _ = piece.size
    over = Move(-1.0, 0.0, 0.0, 1.0, width, 0.0)
    return Top(moved(moved(piece.patches, over), shift(x, y)))


def sewn(
    piece: Layered, line: Line, ends: tuple[Point, Point] | None = None, tops: Sequence[int] = ()
) -> tuple[Layered, float]:
    """The piece with a row of stitches along `line`, and its length in inches.

    Stitches run wherever a top lies on the base, between `ends` if given, through
    all tops or only those numbered in `tops`. Raises MethodFault if the line misses.
    """
    beneath = [span(patch.points, line) for patch in piece.base]
    if ends is None:
        limit = (-math.inf, math.inf)
    else:
        a, b = line.along(ends[0]), line.along(ends[1])
        limit = (min(a, b), max(a, b))
    new: list[Top] = []
    stitched: list[tuple[float, float]] = []
    for number, top in enumerate(piece.tops):
        seams = list(top.seams)
        if not tops or number in tops:
            above = union_of_spans(span(patch.points, line) for patch in top.patches)
            for a, b in _common(union_of_spans(beneath), above, limit):
                seams.append((point_along(line, a), point_along(line, b)))
                stitched.append((a, b))
        new.append(Top(top.patches, tuple(seams)))
    length = sum(b - a for a, b in union_of_spans(stitched))
    if length <= NEAR:
        raise MethodFault("the row of stitches misses the pieces")
    return Layered(piece.base, tuple(new), piece.loose), length


def _common(
    first: list[tuple[float, float]],
    second: list[tuple[float, float]],
    limit: tuple[float, float],
) -> list[tuple[float, float]]:
    shared = [(max(a, c, limit[0]), min(b, d, limit[1])) for a, b in first for c, d in second]
    return [(a, b) for a, b in shared if b - a > NEAR]


def point_along(line: Line, along: float) -> Point:
    """The point of `line` that lies `along` it, in inches from its own."""
    nx, ny = line.normal
    return (line.at[0] - along * ny, line.at[1] + along * nx)


def cut(piece: Piece, lines: Sequence[Line]) -> tuple[list[Piece], list[float]]:
    """All parts the cuts leave, through every layer, and the length of each cut in inches.

    Parts come in order of the angle of their middle seen from the middle of the piece.
    """
    base = piece.patches if isinstance(piece, Flat) else piece.base
    lengths = [
        sum(b - a for a, b in union_of_spans(span(patch.points, line) for patch in base))
        for line in lines
    ]
    parts: list[Piece] = [piece]
    for line in lines:
        parts = [
            half
            for part in parts
            for side in (line, line.reversed())
            if (half := on_side(part, side)) is not None
        ]
    x0, y0, x1, y1 = box(patch.points for patch in base)
    middle = ((x0 + x1) / 2, (y0 + y1) / 2)
    return sorted(parts, key=lambda part: _angle_from(middle, part)), lengths


def _angle_from(middle: Point, piece: Piece) -> float:
    x0, y0, x1, y1 = box(patch.points for patch in piece.patches)
    x, y = (x0 + x1) / 2 - middle[0], (y0 + y1) / 2 - middle[1]
    return round(math.atan2(y, x) % math.tau, 6)


def on_side(piece: Piece, line: Line) -> Piece | None:
    """The part of the piece on the normal's side of `line`, as cut; None if nothing is."""
    if isinstance(piece, Flat):
        patches = kept(piece.patches, line)
        return Flat(patches) if patches else None
    base = kept(piece.base, line)
    if not base:
        return None
    tops = tuple(
        Top(patches, tuple(part for seam in top.seams if (part := _seam_on_side(seam, line))))
        for top in piece.tops
        if (patches := kept(top.patches, line))
    )
    return Layered(base, tops, loose=True)


def _seam_on_side(seam: Segment, line: Line) -> Segment | None:
    a, b = seam
    da, db = line.depth(a), line.depth(b)
    if max(da, db) <= NEAR:
        return None
    if min(da, db) >= -NEAR:
        return seam
    t = da / (da - db)
    crossing = (a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]))
    return (a, crossing) if da > 0 else (crossing, b)


def opened(piece: Layered, hinge: Line | None = None) -> Flat:
    """The piece opened out along its seams, the allowances hidden behind the face.

    Each top turns over across its own row of stitches. A row that lies in the allowance
    of another (two rows crossing at a corner) is unpicked by the opening and doesn't
    count. A loose piece is then turned so that its seam stands upright with the base
    on the low x side, and its edges made level. `hinge` may give the seam to open on,
    its normal towards the base; otherwise the deeper side of the base is its body.
    Raises MethodFault if a top isn't sewn, or is sewn in a way that cannot open flat.
    """
    if not piece.tops:
        raise MethodFault("there is nothing face to face to open")
    base = piece.base
    laps: Patches = ()
    lines = [hinge or _hinge(piece.base, top) for top in piece.tops]
    tops = _parted([top.patches for top in piece.tops], lines)
    for line, patches in zip(lines, tops, strict=True):
        base = kept(base, line)
        laps += moved(kept(patches, line), fold(line))
    patches = base + laps
    if piece.loose:
        patches = moved(patches, turn_to(lines[0].normal, (-1.0, 0.0)))
        patches = moved(patches, turn(_eighths_to_level(patches)))
    return flat(patches)


def _parted(tops: list[Patches], lines: list[Line]) -> list[Patches]:
    """Tops that open on one line and lap, each kept to its own half of the lap.

    On the table one lies under the other there; which one shows is chance.
    """
    for i, line in enumerate(lines):
        for j in range(len(lines)):
            other = lines[j]
            if i == j or abs(line.depth(other.at)) > NEAR or not tops[i] or not tops[j]:
                continue
            if abs(line.normal[0] - other.normal[0]) + abs(line.normal[1] - other.normal[1]) > NEAR:
                continue
            mine, theirs = _reach(tops[i], line), _reach(tops[j], line)
            if mine[0] < theirs[0] < mine[1] < theirs[1]:
                nx, ny = line.normal
                middle = Line(point_along(line, (theirs[0] + mine[1]) / 2), (ny, -nx))
                tops[i] = kept(tops[i], middle)
                tops[j] = kept(tops[j], middle.reversed())
    return tops


def _reach(patches: Patches, line: Line) -> tuple[float, float]:
    places = [line.along(point) for patch in patches for point in patch.points]
    return (min(places), max(places))


def _hinge(base: Patches, top: Top) -> Line:
    """The seam the top opens on, its normal towards the body of the base."""
    if not top.seams:
        raise MethodFault("a piece is laid on but not sewn, so it cannot be opened")
    for seam in top.seams:
        line = line_through(*seam)
        depths = [line.depth(point) for patch in base for point in patch.points]
        if -min(depths) > max(depths):
            line = line.reversed()
        if all(line.depth(end) <= NEAR for other in top.seams for end in other):
            return line
    raise MethodFault("a piece is sewn on more than one side, so it cannot be opened flat")


def _eighths_to_level(patches: Patches) -> int:
    """0 or 1: whichever turn gives the smaller upright box."""
    boxes = []
    for eighths in (0, 1):
        x0, y0, x1, y1 = box(turn(eighths).polygon(patch.points) for patch in patches)
        boxes.append(area(((x0, y0), (x1, y0), (x1, y1), (x0, y1))))
    return 1 if boxes[1] < boxes[0] - NEAR else 0
