"""The named operations of piecing, each a combination of the primitive's four moves.

They work on the table: a list of pieces that the stage has in hand. Lengths are inches
in floats; `seam` is the seam allowance. Every operation raises MethodFault, without a
place, when the pieces are not such as it needs; the caller adds file and stage.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from msgspec import Struct, field

from sewalong.piecing import primitive
from sewalong.piecing.cloth import (
    Flat,
    Layered,
    Patches,
    Piece,
    Segment,
    Top,
    flat,
    kept,
    turned,
)
from sewalong.piecing.faults import MethodFault, SizeRefused
from sewalong.piecing.geometry import (
    NEAR,
    Line,
    Point,
    box,
    line_through,
    span,
    turn,
)

ROOM_TO_LAP = 0.5
"""Inches. Cut exactly, two corners of flying geese lap by two seam allowances (geometry); this is
room for cutting both a little large and trimming."""

SEGMENTS_NOTED = 16
"""Cuts across a strip that are noted: more than are ever drawn of one."""

MOST_SEGMENTS = 4000
"""Segments of one strip: twice what the longest strip gives, if it is all but used up by seams."""


class Table(Struct):
    """What a stage has in hand, and how much it has sewn and cut so far.

    `longest_cut` is the longest of the cuts through a whole piece: a ruler must span it. `cut_into`
    is the first piece that was cut, as it was before, and where the cuts go through it.
    """

    seam: float
    pieces: list[Piece] = field(default_factory=list)
    sewn: float = 0.0
    cut: float = 0.0
    longest_cut: float = 0.0
    cut_into: tuple[Piece, tuple[Segment, ...]] | None = None
    work: int = 0
    """Patches moved, sewn or cut so far, one by one."""

    def flats(self) -> list[Flat]:
        """All pieces, which must lie open."""
        flats = [piece for piece in self.pieces if isinstance(piece, Flat)]
        if len(flats) < len(self.pieces) or not flats:
            raise MethodFault("only open pieces can be used here; open them first")
        return flats

    def layered(self) -> list[Layered]:
        """All pieces, which must lie face to face."""
        layered = [piece for piece in self.pieces if isinstance(piece, Layered)]
        if len(layered) < len(self.pieces) or not layered:
            raise MethodFault("only pieces laid face to face can be used here; lay them first")
        return layered


Operation = Callable[[Table], None]


def _corners(patches: Patches) -> tuple[Point, Point, Point, Point]:
    """Corners 1 to 4 of the box: the first at low x and y, then round by way of low y."""
    x0, y0, x1, y1 = box(patch.points for patch in patches)
    return ((x0, y0), (x1, y0), (x1, y1), (x0, y1))


def _middle(patches: Patches) -> Point:
    x0, y0, x1, y1 = box(patch.points for patch in patches)
    return ((x0 + x1) / 2, (y0 + y1) / 2)


def lay(table: Table) -> None:
    """The last piece face down on the one before, edges level."""
    if len(table.pieces) < 2:
        raise MethodFault("laying face to face needs two pieces")
    base, top = table.pieces[-2:]
    if not isinstance(base, Flat) or not isinstance(top, Flat):
        raise MethodFault("only open pieces can be laid face to face; open them first")
    if any(abs(a - b) > 1e-6 for a, b in zip(base.size, top.size, strict=True)):
        raise SizeRefused("Pieces laid face to face must be the same size; cut both alike.")
    table.pieces[-2:] = [Layered(base.patches, (primitive.face_down(top, 0.0, 0.0),))]


def lay_on_corner(number: int) -> Operation:
    """The last piece face down on one corner of the piece before it."""

    def run(table: Table) -> None:
        if len(table.pieces) < 2:
            raise MethodFault("laying on a corner needs two pieces")
        base, top = table.pieces[-2:]
        if not isinstance(top, Flat):
            raise MethodFault("only an open piece can be laid on a corner")
        beneath = base.patches if isinstance(base, Flat) else base.base
        earlier = () if isinstance(base, Flat) else base.tops
        corner = _corners(beneath)[number - 1]
        far = _corners(beneath)[(number + 1) % 4]
        width, height = top.size
        if width > abs(far[0] - corner[0]) + NEAR or height > abs(far[1] - corner[1]) + NEAR:
            raise SizeRefused("The piece for the corner is larger than what it is laid on.")
        x = corner[0] if corner[0] < far[0] else corner[0] - width
        y = corner[1] if corner[1] < far[1] else corner[1] - height
        laid = primitive.face_down(top, x, y)
        table.pieces[-2:] = [Layered(beneath, (*earlier, laid))]

    return run


def _sew(table: Table, lines: Callable[[Layered], list[tuple[Line, tuple[int, ...]]]]) -> None:
    pieces = table.layered()
    for i, piece in enumerate(pieces):
        for line, tops in lines(piece):
            piece, length = primitive.sewn(piece, line, tops=tops)
            table.sewn += length
        pieces[i] = piece
    table.pieces = [*pieces]


def sew_edge(table: Table) -> None:
    """One seam along the edge at high x, its allowance in from the raw edge."""

    def lines(piece: Layered) -> list[tuple[Line, tuple[int, ...]]]:
        _, b, c, _ = _corners(piece.base)
        return [(_inside(line_through(b, c), piece).shifted(table.seam), ())]

    _sew(table, lines)


def sew_all_round(table: Table) -> None:
    """A seam along all four edges, pivoting where they meet."""
    pieces = table.layered()
    for i, piece in enumerate(pieces):
        x0, y0, x1, y1 = box(patch.points for patch in piece.base)
        s = table.seam
        if min(x1 - x0, y1 - y0) <= 2 * s + NEAR:
            raise SizeRefused("The seams all round meet in the middle; cut a larger square.")
        ring = ((x0 + s, y0 + s), (x1 - s, y0 + s), (x1 - s, y1 - s), (x0 + s, y1 - s))
        for j, end in enumerate(ring):
            begin = ring[j - 1]
            line = line_through(begin, end)
            piece, length = primitive.sewn(piece, line, ends=(begin, end))
            table.sewn += length
        pieces[i] = piece
    table.pieces = [*pieces]


def sew_beside_diagonal(*, other: bool = False) -> Operation:
    """A seam on both sides of a diagonal: from corner 1 to 3, or of the other, 2 to 4."""

    def run(table: Table) -> None:
        _refuse_deep_laps(table)

        def lines(piece: Layered) -> list[tuple[Line, tuple[int, ...]]]:
            line = diagonal(piece.base, other)
            return [(line.shifted(table.seam), ()), (line.shifted(-table.seam), ())]

        _sew(table, lines)

    return run


def _refuse_deep_laps(table: Table) -> None:
    """Corner pieces that lap far over each other would be sewn down and not open out."""
    for piece in table.layered():
        boxes = [box(patch.points for patch in top.patches) for top in piece.tops]
        laps = [_lap_depth(a, b) for i, a in enumerate(boxes) for b in boxes[:i]]
        if max(laps, default=0.0) > 2 * table.seam + ROOM_TO_LAP:
            raise SizeRefused(
                "The pieces for two corners lap too far over each other to open out; "
                "cut them smaller."
            )


def sew_across_corners(table: Table) -> None:
    """Each piece laid on a corner sewn on its own diagonal, across that corner."""
    for piece in table.layered():
        boxes = [box(patch.points for patch in top.patches) for top in piece.tops]
        if any(_lap(a, b) for i, a in enumerate(boxes) for b in boxes[:i]):
            raise SizeRefused(
                "The pieces for two corners overlap; make the large square larger "
                "or the corners smaller."
            )

    def lines(piece: Layered) -> list[tuple[Line, tuple[int, ...]]]:
        return [(across_corner(piece, top), (n,)) for n, top in enumerate(piece.tops)]

    _sew(table, lines)


def _lap(a: tuple[float, float, float, float], b: tuple[float, float, float, float]) -> bool:
    return _lap_depth(a, b) > NEAR


def _lap_depth(a: tuple[float, float, float, float], b: tuple[float, float, float, float]) -> float:
    """How far two boxes lap over each other, the lesser way; below nothing when apart."""
    return min(min(a[2], b[2]) - max(a[0], b[0]), min(a[3], b[3]) - max(a[1], b[1]))


def across_corner(piece: Layered, top: Top) -> Line:
    """The diagonal of `top` that cuts off its corner of the base, normal to the corner."""
    own, base = _corners(top.patches), _corners(piece.base)
    for i in range(4):
        if math.dist(own[i], base[i]) < 1e-6:
            line = line_through(own[i - 1], own[(i + 1) % 4])
            return line if line.depth(own[i]) > 0 else line.reversed()
    raise MethodFault("a piece to be flipped must lie on a corner")


def diagonal(patches: Patches, other: bool) -> Line:
    """From corner 1 to corner 3, or of the other, 2 to 4."""
    a, b, c, d = _corners(patches)
    return line_through(b, d) if other else line_through(a, c)


def _inside(line: Line, piece: Layered) -> Line:
    return line if line.depth(_middle(piece.base)) > 0 else line.reversed()


def _cut(table: Table, lines: Callable[[Patches], list[Line]]) -> None:
    parts: list[Piece] = []
    for piece in table.pieces:
        base = piece.base if isinstance(piece, Layered) else piece.patches
        where = lines(base)
        _note_cuts(table, piece, where)
        some, lengths = primitive.cut(piece, where)
        parts += some
        table.cut += sum(lengths)
        table.longest_cut = max(table.longest_cut, *lengths)
    table.pieces = parts


def _note_cuts(table: Table, piece: Piece, lines: Sequence[Line]) -> None:
    if table.cut_into is None:
        base = piece.base if isinstance(piece, Layered) else piece.patches
        table.cut_into = piece, through(base, lines)


def through(patches: Patches, lines: Sequence[Line]) -> tuple[Segment, ...]:
    """Where lines enter and leave the patches; those that miss them are left out."""
    found = []
    for line in lines:
        spans = [one for patch in patches if (one := span(patch.points, line)) is not None]
        if spans:
            ends = min(a for a, _ in spans), max(b for _, b in spans)
            found.append(
                (primitive.point_along(line, ends[0]), primitive.point_along(line, ends[1]))
            )
    return tuple(found)


def cut_diagonal(*, other: bool = False) -> Operation:
    """One cut, corner 1 to corner 3 (or 2 to 4)."""
    return lambda table: _cut(table, lambda base: [diagonal(base, other)])


def cut_both_diagonals(table: Table) -> None:
    """Two cuts, corner to corner both ways."""
    _cut(table, lambda base: [diagonal(base, False), diagonal(base, True)])


def cut_eighths(table: Table) -> None:
    """Four cuts through the middle: both ways and on both diagonals."""
    _cut(
        table,
        lambda base: [*_crosswise(base), diagonal(base, False), diagonal(base, True)],
    )


def cut_quarters(table: Table) -> None:
    """Two cuts through the middle, edge to edge; open quarters are turned alike.

    The corner that was in the middle comes to corner 1 of every quarter.
    """
    if len(table.pieces) != 1:
        raise MethodFault("cut one piece at a time in quarters")
    (whole,) = table.pieces
    middle = _middle(whole.patches)
    _cut(table, _crosswise)
    for i, piece in enumerate(table.pieces):
        if isinstance(piece, Flat):
            at = next(
                n
                for n, corner in enumerate(_corners(piece.patches))
                if math.dist(corner, middle) < 1e-6
            )
            table.pieces[i] = turned(piece, turn(-2 * at))


def _crosswise(patches: Patches) -> list[Line]:
    middle = _middle(patches)
    return [Line(middle, (1.0, 0.0)), Line(middle, (0.0, 1.0))]


def trim_corners(table: Table) -> None:
    """The corner beyond each flipped piece's seam cut off, leaving the allowance."""
    pieces = table.layered()
    for i, piece in enumerate(pieces):
        loose = piece.loose
        outside = [across_corner(piece, top).shifted(table.seam) for top in piece.tops]
        _note_cuts(table, piece, outside)
        for line in [across_corner(piece, top) for top in piece.tops]:
            body = line.reversed().shifted(-table.seam)
            _, lengths = primitive.cut(piece, [body])
            table.cut += sum(lengths)
            kept_part = primitive.on_side(piece, body)
            if not isinstance(kept_part, Layered):
                raise MethodFault("trimming a corner leaves nothing")
            piece = kept_part
        pieces[i] = Layered(piece.base, piece.tops, loose)
    table.pieces = [*pieces]


def cut_segments(*, square: bool) -> Operation:
    """Cuts across a strip or set of strips, into as many segments as its length gives.

    Segments are as long as a strip of the set is wide or, with `square`, as the whole
    set is wide. What is left at the end is waste.
    """

    def run(table: Table) -> None:
        segments: list[Piece] = []
        for piece in table.flats():
            width, length = piece.size
            x0, _, x1, _ = box([piece.patches[0].points])
            # The first patch is an outer strip, which shows all but one allowance; a strip alone
            # shows all of itself.
            shown = x1 - x0
            strip = shown + table.seam if shown < width - NEAR else shown
            across = width if square else strip
            count = math.floor(length / across + NEAR)
            if count > MOST_SEGMENTS:
                raise SizeRefused(
                    f"More than {MOST_SEGMENTS:,} segments would come of one strip; "
                    "cut it wider or shorter."
                )
            if count < 1:
                raise SizeRefused(
                    "The strip is shorter than one segment; use a longer strip or cut it narrower."
                )
            places = range(1, min(count, SEGMENTS_NOTED) + 1)
            _note_cuts(table, piece, [Line((0.0, n * across), (0.0, -1.0)) for n in places])
            part = flat(kept(piece.patches, Line((0.0, across), (0.0, -1.0))))
            segments += [part] * count
            table.cut += width * count
        table.pieces = segments

    return run


def open_out(table: Table) -> None:
    """Every piece opened out along its seam."""
    table.pieces = [primitive.opened(piece) for piece in table.layered()]


def join_row(table: Table) -> None:
    """All pieces joined edge to edge in a row, each laid face down, sewn and opened."""
    first, *others = table.flats()
    for other in others:
        if abs(first.size[1] - other.size[1]) > 1e-6:
            raise SizeRefused("Edges to be joined differ in length; check the sizes cut.")
        width, _ = first.size
        if min(width, other.size[0]) <= table.seam + NEAR:
            raise SizeRefused("A piece is no wider than its seam; cut it larger.")
        laid = Layered(first.patches, (primitive.face_down(other, width - other.size[0], 0.0),))
        seam = Line((width - table.seam, 0.0), (-1.0, 0.0))
        laid, length = primitive.sewn(laid, seam)
        table.sewn += length
        first = primitive.opened(laid, seam)
    table.pieces = [first]


def join_column(table: Table) -> None:
    """All pieces joined edge to edge in a column, the first at low y."""
    table.pieces = [turned(piece, turn(-2)) for piece in table.flats()]
    join_row(table)
    table.pieces = [turned(piece, turn(2)) for piece in table.flats()]


def turn_last(eighths: int) -> Operation:
    """The last piece turned on the table."""

    def run(table: Table) -> None:
        table.pieces[-1] = turned(table.flats()[-1], turn(eighths))

    return run


def stand_on_longest_edge(table: Table) -> None:
    """Every piece turned so that the longest outer edge of one patch lies lowest (at high y)."""

    def standing(piece: Flat) -> Flat:
        turns = [turned(piece, turn(eighths)) for eighths in (0, 2, 4, 6)]
        return max(turns, key=_longest_below)

    table.pieces = [standing(piece) for piece in table.flats()]


def _longest_below(piece: Flat) -> float:
    floor = Line((0.0, piece.size[1]), (0.0, 1.0))
    spans = [span(patch.points, floor) for patch in piece.patches]
    return round(max((b - a for a, b in filter(None, spans)), default=0.0), 6)


def trim(table: Table) -> None:
    """Every piece trimmed on all four sides: cutting, but what to trim to is a choice.

    The shape kept here is the untrimmed one, so that sizes say what there is to trim from.
    """
    for piece in table.flats():
        table.cut += 2 * sum(piece.size)
