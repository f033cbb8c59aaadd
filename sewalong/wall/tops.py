"""Pictures of a whole top: its units edge to edge or between sashes, and its borders."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cache

from msgspec import Struct

from sewalong.piecing.cloth import Flat, turned
from sewalong.piecing.derive import Derivation
from sewalong.piecing.geometry import turn
from sewalong.quilt.layouts.setting_sashed import Meeting
from sewalong.wall.keys import CORNERSTONE, SASH, Key, border_key
from sewalong.wall.picture import EMPTY, Picture, from_pixels, right_sides
from sewalong.wall.pieces import finished_unit
from sewalong.wall.raster import Pixels, raster
from sewalong.wall.tracks import Side, tracks


class Placed(Struct, frozen=True):
    """Which of the batch's different units lies at a place, and its quarter turns."""

    unit: int = 0
    turns: int = 0


Arrangement = Callable[[int, int], Placed]
"""Row and column, both from 0, to the unit that lies there."""


class Sashes(Struct, frozen=True):
    """Strips between the units, `width` inches finished, and around them when `outer`."""

    width: float
    outer: bool = True
    meeting: Meeting = Meeting.CORNERSTONES


def by_turns(different: int) -> Arrangement:
    """The different units of a stack one after the other, so that neighbours differ.

    Each row begins one further on (two, when there are more than two kinds).
    """
    step = 2 if different > 2 else 1
    return lambda row, column: Placed((column + step * row) % different)


def refuse_no_top(rows: int, columns: int, widths: Sequence[float]) -> None:
    """Raise ValueError for no row or column, or for a border or sash that has no width."""
    if rows < 1 or columns < 1:
        raise ValueError("a top has one row and one column at least")
    if any(width <= 0 for width in widths):
        raise ValueError("borders and sashes are wider than nothing")


def top_picture(
    derivation: Derivation,
    rows: int,
    columns: int,
    *,
    across: int,
    down: int,
    unit: tuple[float, float] | None = None,
    borders: Sequence[float] = (),
    sashes: Sashes | None = None,
    arrangement: Arrangement | None = None,
) -> Picture:
    """A top of `rows` x `columns` units in at most `across` x `down` cells, its shape kept.

    `unit` is the size they finish at in inches, that of the derivation unless given.
    `borders` are the widths they finish at in inches, the innermost first; their keys are
    `border_key(1)` and up. The arrangement is `by_turns` unless given. Raises ValueError for
    fewer than one row or column, for widths that are not above zero, or for a quarter turn of a
    unit that is not square.
    """
    refuse_no_top(rows, columns, [*borders, sashes.width] if sashes else borders)
    if across < 1 or down < 1:
        return EMPTY
    place = arrangement or by_turns(len(derivation.units))
    width, height = unit or finished_unit(derivation, 0).size
    wide, high = tracks(
        _side(columns, width, borders, sashes),
        _side(rows, height, borders, sashes),
        across,
        2 * down,
    )
    kinds_across = _kinds(columns, len(borders), sashes)
    kinds_down = _kinds(rows, len(borders), sashes)
    tile = _tiles(derivation)
    pixels: Pixels = []
    for kind_down, tall in zip(kinds_down, high, strict=False):
        band: Pixels = [[] for _ in range(tall)]
        for kind_across, broad in zip(kinds_across, wide, strict=False):
            plain = _plain(kind_down, kind_across, sashes)
            if plain is None:
                for line, part in zip(
                    band, tile(place(kind_down, kind_across), broad, tall), strict=True
                ):
                    line += part
            else:
                for line in band:
                    line += [plain] * broad
        pixels += band
    return from_pixels(pixels)


# What a track is: a unit's row or column from 0 up, a sash, or a border (-2 is border 1).
_IS_SASH = -1


def _kinds(units: int, borders: int, sashes: Sashes | None) -> list[int]:
    inner = list(range(units))
    if sashes:
        between = [kind for unit in inner for kind in (unit, _IS_SASH)]
        inner = [_IS_SASH, *between] if sashes.outer else between[:-1]
    rings = [_IS_SASH - number for number in range(1, borders + 1)]
    return [*reversed(rings), *inner, *rings]


def _side(units: int, inches: float, borders: Sequence[float], sashes: Sashes | None) -> Side:
    kinds = _kinds(units, len(borders), sashes)
    sash = sashes.width if sashes else 0.0
    widths = {_IS_SASH: sash} | {_IS_SASH - n: width for n, width in enumerate(borders, 1)}
    return Side(tuple(widths.get(kind, inches) for kind in kinds), tuple(k >= 0 for k in kinds))


def _plain(down: int, across: int, sashes: Sashes | None) -> Key | None:
    """The one key of the place where two tracks meet; None where a unit lies."""
    least = min(down, across)
    if least < _IS_SASH:
        return border_key(_IS_SASH - least)
    if least >= 0:
        return None
    corner = down == across and sashes is not None and sashes.meeting is Meeting.CORNERSTONES
    return CORNERSTONE if corner else SASH


def _tiles(derivation: Derivation) -> Callable[[Placed, int, int], Pixels]:
    """Units as pixels, each drawn once for every size and turn."""

    @cache
    def tile(placed: Placed, wide: int, high: int) -> Pixels:
        if not wide or not high:
            return [[] for _ in range(high)]
        unit = placed_unit(derivation, placed)
        return raster([right_sides(unit.patches)], unit.size, wide, high)

    return tile


def placed_unit(derivation: Derivation, placed: Placed) -> Flat:
    """A unit as it shows in the top, turned as it lies there.

    Raises ValueError for a quarter turn of a unit that is not square.
    """
    unit = finished_unit(derivation, placed.unit)
    width, height = unit.size
    if placed.turns % 2 and abs(width - height) > 1e-6:
        raise ValueError("a unit that is not square cannot be turned by a quarter")
    return turned(unit, turn(2 * placed.turns)) if placed.turns % 4 else unit
