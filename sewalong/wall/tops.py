"""Pictures of a whole top: its units edge to edge or between sashes, and its borders."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from enum import Enum
from functools import cache

from msgspec import Struct

from sewalong.piecing.cloth import Flat, turned
from sewalong.piecing.derive import Derivation
from sewalong.piecing.geometry import turn
from sewalong.quilt.layouts.setting_sashed import Meeting
from sewalong.wall.keys import CORNERSTONE, SASH, SEWN, Key, border_key
from sewalong.wall.picture import EMPTY, Picture, right_sides
from sewalong.wall.pieces import finished_unit
from sewalong.wall.places import Kind, Laid, Place
from sewalong.wall.raster import Pixels, raster
from sewalong.wall.tracks import Side, Tracks, even_tracks, tracks, whole_tracks
from sewalong.wall.unit_pixels import least_across


class Placed(Struct, frozen=True):
    """Which of the batch's different units lies at a place, and its quarter turns."""

    unit: int = 0
    turns: int = 0


Arrangement = Callable[[int, int], Placed]
"""Row and column, both from 0, to the unit that lies there."""


class Turned(Enum):
    """How borders turn the corners of a top."""

    SIDES_FIRST = "sides first"
    ENDS_FIRST = "ends first"
    MITRED = "mitred"


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
    `border_key(1)` and up. The arrangement is `by_turns` unless given. Where there is no room for
    all units so large that their patches show, only the first of them are. Raises ValueError for
    fewer than one row or column, for widths that are not above zero, or for a quarter turn of a
    unit that is not square.
    """
    refuse_no_top(rows, columns, [*borders, sashes.width] if sashes else borders)
    if across < 1 or down < 1:
        return EMPTY
    top = Level(derivation, rows, columns, unit, tuple(borders), sashes)
    return top.laid(across, down, arrangement=arrangement).picture


class Level(Struct, frozen=True):
    """A top whose rows lie level; as in `top_picture`. `corners` says in which order the sides of
    a border are sewn on."""

    derivation: Derivation
    rows: int
    columns: int
    unit: tuple[float, float] | None
    borders: tuple[float, ...] = ()
    sashes: Sashes | None = None
    corners: Turned = Turned.SIDES_FIRST

    def laid(
        self,
        across: int,
        down: int,
        *,
        arrangement: Arrangement | None = None,
        with_pattern: bool = True,
    ) -> Laid:
        """In at most `across` x `down` cells; without its pattern a unit is all of one key."""
        place = arrangement or by_turns(len(self.derivation.units))
        sides = self._sides()
        if with_pattern:
            *pair, is_whole = tracks(*sides, across, 2 * down, self._least())
            wide, high = pair
        else:
            alike = whole_tracks(*sides, across, 2 * down, 1)
            wide, high = alike or even_tracks(*sides, across, 2 * down)
            is_whole = True
        return self._drawn(wide, high, place, is_whole=is_whole, with_pattern=with_pattern)

    def shows_its_pattern(self, across: int, down: int) -> bool:
        """Whether all units show their patches in so many cells."""
        return whole_tracks(*self._sides(), across, 2 * down, self._least()) is not None

    def _least(self) -> int:
        numbers = range(len(self.derivation.units))
        return least_across([finished_unit(self.derivation, number) for number in numbers])

    def _sides(self) -> tuple[Side, Side]:
        width, height = self.unit or finished_unit(self.derivation, 0).size
        return (
            _side(self.columns, width, self.borders, self.sashes),
            _side(self.rows, height, self.borders, self.sashes),
        )

    def _drawn(
        self, wide: Tracks, high: Tracks, place: Arrangement, *, is_whole: bool, with_pattern: bool
    ) -> Laid:
        kinds_across = _kinds(self.columns, len(self.borders), self.sashes)
        kinds_down = _kinds(self.rows, len(self.borders), self.sashes)
        tile = _tiles(self.derivation)
        pixels: Pixels = []
        places: list[list[Place]] = []
        for d, tall in enumerate(high.pixels, start=high.first):
            band: Pixels = [[] for _ in range(tall)]
            lies: list[list[Place]] = [[] for _ in range(tall)]
            for a, broad in enumerate(wide.pixels, start=wide.first):
                ends = (len(kinds_down) - 1 - d, len(kinds_across) - 1 - a)
                there = self._place(kinds_down[d], kinds_across[a], (d, a), ends)
                plain = _plain(kinds_down[d], kinds_across[a], self.sashes)
                if plain is None and with_pattern:
                    part = tile(place(kinds_down[d], kinds_across[a]), broad, tall)
                else:
                    part = [[SEWN if plain is None else plain] * broad] * tall
                for line, row, more in zip(band, lies, part, strict=True):
                    line += more
                    row += [there] * broad
            pixels += band
            places += lies
        return Laid(pixels, places, is_whole)

    def _place(self, down: int, across: int, at: tuple[int, int], ends: tuple[int, int]) -> Place:
        least = min(down, across)
        if least < _IS_SASH:
            return Place(Kind.BORDER, _IS_SASH - least, border_side(at, ends, self.corners))
        framed = self.sashes is not None and self.sashes.outer
        inner = len(self.borders)
        if down == _IS_SASH:
            # Between two units or sashes of a column every second track is a sash.
            return Place(Kind.LYING, (at[0] - inner + (0 if framed else 1)) // 2)
        if across == _IS_SASH:
            return Place(Kind.STANDING, down + 1, (at[1] - inner + (0 if framed else 1)) // 2)
        return Place(Kind.UNIT, down + 1, across + 1)


def border_side(at: tuple[int, int], ends: tuple[int, int], corners: Turned) -> int:
    """Which side of its border a place is, in the order they are sewn on, from 1: of those first
    sewn to the top, the second two run over the ends.

    `at` is how far down and across it lies from the first edges, `ends` how far from the last.
    """
    down, across = min(at[0], ends[0]), min(at[1], ends[1])
    is_end = down < across or (down == across and corners is not Turned.ENDS_FIRST)
    second = ends[0] < at[0] if is_end else ends[1] < at[1]
    first_two = is_end is (corners is Turned.ENDS_FIRST)
    return (1 if first_two else 3) + second


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
