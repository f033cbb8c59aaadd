"""A top as it stands: what is sewn shows its fabrics, the rest its outline."""

from __future__ import annotations

from enum import Enum

from msgspec import Struct

from sewalong.wall.keys import GAP, LIT, OUTLINE, SEWN, Key, dim
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
    """What is in hand: rows, all pieces of some kinds, a corner, or a side of a border, 0 for none."""

    rows: frozenset[int] = frozenset()
    kinds: frozenset[Kind] = frozenset()
    corner: int = 0
    border: int = 0


NOTHING_LIT = Lit()


class _Shown(Enum):
    FULL = "full"
    DIM = "dim"
    OUTLINED = "outlined"


def standing_picture(laid: Laid, sewn: Sewn, lit: Lit = NOTHING_LIT) -> Picture:
    """The top with what is sewn filled in; where something is `lit`, the rest is dim.

    Between rows that are both sewn and not joined yet there is a gap.
    """
    sizes = _sizes(laid.places)
    shown = {place: _shown(place, sewn, lit) for place in sizes}
    high = len(laid.places)
    pixels: list[list[Key | None]] = []
    for y, (keys, places) in enumerate(zip(laid.pixels, laid.places, strict=True)):
        line: list[Key | None] = []
        for x, (key, place) in enumerate(zip(keys, places, strict=True)):
            how = shown[place]
            if how is _Shown.OUTLINED:
                thin = min(sizes[place]) < laid.outlined_from
                line.append(OUTLINE if _on_edge(laid.places, x, y, alone=not thin) else None)
                continue
            below = laid.places[y + 1][x] if y + 1 < high else place
            thick = y > 1 and _row(laid.places[y - 2][x]) == _row(place)
            if thick and shown[below] is not _Shown.OUTLINED and _is_gap(place, below, sewn):
                line.append(GAP)
                continue
            if key == SEWN and _is_lit(place, lit):
                key = LIT
            line.append(dim(key) if how is _Shown.DIM and key is not None else key)
        pixels.append(line)
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
            return place.kind in lit.kinds or place.row in lit.rows


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
            return 0 < sewn.units[place.row - 1] > place.column - 1


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


def _on_edge(places: list[list[Place]], x: int, y: int, *, alone: bool) -> bool:
    """Whether nothing lies beside the place on one side; or, of one outlined `alone`, another piece
    before or above."""
    here = places[y][x]
    if x == 0 or y == 0 or x == len(places[y]) - 1 or y == len(places) - 1:
        return True
    return alone and (places[y][x - 1] != here or places[y - 1][x] != here)
