"""A top as it stands: what is sewn shows its fabrics, the rest its outline."""

from __future__ import annotations

from collections.abc import Mapping
from enum import Enum

from msgspec import Struct

from sewalong.wall.keys import GAP, LIT, OUTLINE, SEWN, SEWN_NEXT, UNKNOWN, Key, dim
from sewalong.wall.picture import Picture, from_pixels
from sewalong.wall.places import Kind, Laid, Place

SIDES = 4


class Sewn(Struct, frozen=True):
    """What is sewn of a top.

    By row, from row 1: its `units`, and on point its `sides`, the triangles at its ends. `sashes`
    are the rows that have one along the edge away from row 1, 0 for the outer edge of row 1;
    `joined` the rows that are joined to the one after. `corners` and `borders` are how many
    triangles, and sides of borders, the innermost first.
    """

    units: tuple[int, ...]
    sides: tuple[int, ...] = ()
    sashes: frozenset[int] = frozenset()
    joined: frozenset[int] = frozenset()
    corners: int = 0
    borders: int = 0


class Lit(Struct, frozen=True):
    """What is in hand: rows, all pieces of some kinds, a corner, or a side of a border, 0 for none.

    Of the rows only the units `upto` so many, 0 for all.
    """

    rows: frozenset[int] = frozenset()
    kinds: frozenset[Kind] = frozenset()
    corner: int = 0
    border: int = 0
    upto: int = 0


NOTHING_LIT = Lit()


def _without_pattern(place: Place, lit: Lit, *, by_turns: bool) -> Key:
    """Rows have two keys by turns, where none is left out for want of room."""
    if _is_lit(place, lit):
        return LIT
    return SEWN_NEXT if by_turns and place.row % 2 == 0 else SEWN


class _Shown(Enum):
    FULL = "full"
    DIM = "dim"
    OUTLINED = "outlined"


class _Marks(Enum):
    """How a piece that is not sewn is marked: by its edges, or too thin for these by its first pixel
    in reading order, or not at all."""

    EDGES = "edges"
    FIRST = "first"
    NONE = "none"


def standing_picture(laid: Laid, sewn: Sewn, lit: Lit = NOTHING_LIT) -> Picture:
    """The top with what is sewn filled in; where something is `lit`, the rest is dim.

    Between rows that are both sewn and not joined yet there is a gap.
    """
    marks = _marks_of(laid)
    shown = {place: _shown(place, sewn, lit) for place in marks}
    firsts = _firsts(laid.places)
    high = len(laid.places)
    by_turns = len({place.row for place in marks if place.kind is Kind.UNIT}) == len(sewn.units)
    pixels: list[list[Key | None]] = []
    for y, (keys, places) in enumerate(zip(laid.pixels, laid.places, strict=True)):
        line: list[Key | None] = []
        for x, (key, place) in enumerate(zip(keys, places, strict=True)):
            how = shown[place]
            if how is _Shown.OUTLINED:
                line.append(OUTLINE if _is_marked(laid.places, x, y, marks, firsts) else None)
                continue
            below = laid.places[y + 1][x] if y + 1 < high else place
            thick = y > 1 and _row(laid.places[y - 2][x]) == _row(place)
            if thick and shown[below] is not _Shown.OUTLINED and _is_gap(place, below, sewn):
                line.append(GAP)
                continue
            if key == SEWN:
                key = _without_pattern(place, lit, by_turns=by_turns)
            line.append(dim(key) if how is _Shown.DIM and key is not None else key)
        pixels.append(line)
    return from_pixels(pixels, is_whole=laid.is_whole)


def known_picture(laid: Laid) -> Picture:
    """The whole top; of units whose fabrics are not known the outline only."""
    marks, firsts = _marks_of(laid), _firsts(laid.places)
    lines = [list(zip(*line, strict=True)) for line in zip(laid.pixels, laid.places, strict=True)]
    unknown = {place for line in lines for key, place in line if key == UNKNOWN}

    def shown(x: int, y: int, key: Key | None, place: Place) -> Key | None:
        if place not in unknown:
            return key
        return OUTLINE if _is_marked(laid.places, x, y, marks, firsts) else None

    pixels = [[shown(x, y, *at) for x, at in enumerate(line)] for y, line in enumerate(lines)]
    return from_pixels(pixels, is_whole=laid.is_whole)


def _shown(place: Place, sewn: Sewn, lit: Lit) -> _Shown:
    if _is_lit(place, lit):
        return _Shown.FULL
    if not _is_sewn(place, sewn):
        return _Shown.OUTLINED
    return _Shown.FULL if lit == NOTHING_LIT else _Shown.DIM


def _is_lit(place: Place, lit: Lit) -> bool:
    match place.kind:
        case Kind.BORDER:
            return SIDES * (place.row - 1) + place.column == lit.border
        case Kind.CORNER:
            return place.row == lit.corner
        case Kind.LYING | Kind.SIDE:
            return place.kind in lit.kinds
        case Kind.UNIT | Kind.STANDING:
            near = not lit.upto or place.column <= lit.upto
            return place.kind in lit.kinds or (place.row in lit.rows and near)


def _is_sewn(place: Place, sewn: Sewn) -> bool:
    match place.kind:
        case Kind.BORDER:
            return SIDES * (place.row - 1) + place.column <= sewn.borders
        case Kind.CORNER:
            return place.row <= sewn.corners
        case Kind.LYING:
            return place.row in sewn.sashes
        case Kind.SIDE:
            return place.column < sewn.sides[place.row - 1]
        case Kind.UNIT:
            return place.column <= sewn.units[place.row - 1]
        case Kind.STANDING:
            units = sewn.units[place.row - 1]
            return units > 0 and place.column <= units


def _row(place: Place) -> int | None:
    """The row a place is part of; the sash along the outer edge of row 1 is part of that."""
    if place.kind in (Kind.UNIT, Kind.STANDING, Kind.SIDE):
        return place.row
    return max(1, place.row) if place.kind is Kind.LYING else None


def _is_gap(place: Place, below: Place, sewn: Sewn) -> bool:
    row, other = _row(place), _row(below)
    return None not in (row, other) and row != other and row not in sewn.joined


def _sizes(places: list[list[Place]]) -> dict[Place, tuple[int, int]]:
    """How many pixels wide and high each place is at its most."""
    columns: dict[Place, list[int]] = {}
    rows: dict[Place, list[int]] = {}
    for y, line in enumerate(places):
        for x, place in enumerate(line):
            columns.setdefault(place, []).append(x)
            rows.setdefault(place, []).append(y)
    return {
        place: (max(xs) - min(xs) + 1, rows[place][-1] - rows[place][0] + 1)
        for place, xs in columns.items()
    }


def _marks_of(laid: Laid) -> dict[Place, _Marks]:
    sizes = _sizes(laid.places)
    return {place: _marks(place.kind, min(sizes[place]), laid.outlined_from) for place in sizes}


def _marks(kind: Kind, pixels: int, outlined_from: int) -> _Marks:
    if pixels >= outlined_from:
        return _Marks.EDGES
    return _Marks.FIRST if pixels > 1 and kind is Kind.UNIT else _Marks.NONE


def _firsts(places: list[list[Place]]) -> dict[Place, tuple[int, int]]:
    """The first pixel of each place in reading order: of squares the corner, on point the tip."""
    firsts: dict[Place, tuple[int, int]] = {}
    for y, line in enumerate(places):
        for x, place in enumerate(line):
            firsts.setdefault(place, (x, y))
    return firsts


def _is_marked(
    places: list[list[Place]],
    x: int,
    y: int,
    marks: Mapping[Place, _Marks],
    firsts: Mapping[Place, tuple[int, int]],
) -> bool:
    """Whether the outline of a piece that is not sewn runs here: always along the edge of the top.

    A piece with edges draws those before and above it, and the others where its neighbour is too
    thin to draw them.
    """
    if x == 0 or y == 0 or x == len(places[y]) - 1 or y == len(places) - 1:
        return True
    here = places[y][x]
    before, above = places[y][x - 1] != here, places[y - 1][x] != here
    after = [one for one in (places[y][x + 1], places[y + 1][x]) if one != here]
    match marks[here]:
        case _Marks.EDGES:
            return before or above or any(marks[one] is not _Marks.EDGES for one in after)
        case _Marks.FIRST:
            return firsts[here] == (x, y)
        case _Marks.NONE:
            return False
