"""The picture of a top whose units stand on a corner, with triangles filling its edges."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from math import floor, sqrt

from msgspec import Struct

from sewalong.piecing.cloth import Flat
from sewalong.piecing.derive import Derivation
from sewalong.wall.keys import SETTING, SEWN, Key, border_key
from sewalong.wall.picture import EMPTY, Picture, right_sides
from sewalong.wall.pieces import finished_unit
from sewalong.wall.places import Kind, Laid, Place
from sewalong.wall.raster import Pixels, raster
from sewalong.wall.tops import (
    Arrangement,
    Placed,
    Turned,
    border_side,
    by_turns,
    placed_unit,
    refuse_no_top,
)
from sewalong.wall.unit_pixels import least_for

FINE = 48
"""A unit is looked up in a grid this fine, for its own pixels do not lie level on the screen."""


def on_point_picture(
    derivation: Derivation,
    rows: int,
    columns: int,
    *,
    across: int,
    down: int,
    side: float | None = None,
    borders: Sequence[float] = (),
    arrangement: Arrangement | None = None,
) -> Picture:
    """A top on point in at most `across` x `down` cells, its shape kept.

    `rows` and `columns` count the whole units along the edges, as `quilt.setting_on_point`
    does. The arrangement is asked by rows as they show: the rows between, one unit shorter, are
    the odd ones. `side` is what a unit finishes at in inches, that of the derivation unless given.
    A unit's upper edge faces the last column, up. `borders` as in `top_picture`, and so where there
    is no room for all units. Raises ValueError for fewer than one row or column, borders that are
    not above zero, or units that are not square.
    """
    refuse_no_top(rows, columns, borders)
    top = Slanting(derivation, rows, columns, side, tuple(borders))
    top.refuse_unless_square()
    if across < 1 or down < 1:
        return EMPTY
    return top.laid(across, down, arrangement=arrangement).picture


class Slanting(Struct, frozen=True):
    """A top on point, as in `on_point_picture`; `corners` as in `Level`."""

    derivation: Derivation
    rows: int
    columns: int
    side: float | None
    borders: tuple[float, ...] = ()
    corners: Turned = Turned.SIDES_FIRST

    def refuse_unless_square(self) -> None:
        """Raise ValueError for units that cannot be set so."""
        width, height = placed_unit(self.derivation, Placed()).size
        if abs(width - height) > 1e-6:
            raise ValueError("only square units can be set on point")

    def laid(
        self,
        across: int,
        down: int,
        *,
        arrangement: Arrangement | None = None,
        with_pattern: bool = True,
    ) -> Laid:
        """In at most `across` x `down` cells; without its pattern a unit is all of one key.

        All units lie alike to the pixel: from one to the next it is half a step both ways, and
        half a step is whole pixels.
        """
        place = arrangement or by_turns_on_point(len(self.derivation.units))
        wide, high = across, 2 * down
        if not with_pattern:
            step = max(1.0, self._step(wide, high))
            return self._drawn(place, step, self._rings(step), (wide, high), pattern=False)
        step, rings = self._whole_step(wide, high)
        least = self._least()
        if step >= least:
            return self._drawn(place, step, rings, (wide, high), pattern=True)
        return self._drawn(place, least, self._rings(least), (wide, high), pattern=True)

    def shows_its_pattern(self, across: int, down: int) -> bool:
        """Whether all units show their patches in so many cells."""
        return self._whole_step(across, 2 * down)[0] >= self._least()

    def _step(self, wide: int, high: int) -> float:
        """Pixels of the diagonal of a unit that fills the room."""
        diagonal = self._diagonal
        around = 2 * sum(self.borders)
        scale = min(
            wide / (self.columns * diagonal + around), high / (self.rows * diagonal + around)
        )
        return scale * diagonal

    @property
    def _diagonal(self) -> float:
        return (self.side or finished_unit(self.derivation, 0).size[0]) * sqrt(2)

    def _whole_step(self, wide: int, high: int) -> tuple[int, tuple[int, ...]]:
        """The largest even step with which all of the top fits, and its borders; 0 for none."""
        for step in range(2 * floor(self._step(wide, high) / 2), 0, -2):
            for up in (0.5, 0.0):
                rings = self._rings(step, up)
                around = 2 * sum(rings)
                if self.columns * step + around <= wide and self.rows * step + around <= high:
                    return step, rings
        return 0, ()

    def _rings(self, step: float, up: float = 0.5) -> tuple[int, ...]:
        scale = step / self._diagonal
        return tuple(max(1, floor(width * scale + up)) for width in self.borders)

    def _least(self) -> int:
        numbers = range(len(self.derivation.units))
        units = [finished_unit(self.derivation, number) for number in numbers]
        return max(least_for(unit, standing_alone, 2) for unit in units)

    def _drawn(
        self,
        place: Arrangement,
        step: float,
        rings: tuple[int, ...],
        room: tuple[int, int],
        *,
        pattern: bool,
    ) -> Laid:
        around = sum(rings)
        size = (round(self.columns * step) + 2 * around, round(self.rows * step) + 2 * around)
        wide, high = min(size[0], room[0]), min(size[1], room[1])
        outside = [sum(rings[number:]) for number in range(len(rings))]
        unit = cache(lambda placed: _fine(placed_unit(self.derivation, placed)))

        def at(x: int, y: int) -> tuple[Place, Key]:
            edges = (x, y, size[0] - 1 - x, size[1] - 1 - y)
            if min(edges) < around:
                number = sum(min(edges) < ring for ring in outside)
                side = border_side((y, x), (edges[3], edges[2]), self.corners)
                return Place(Kind.BORDER, number, side), border_key(number)
            # In halves of pixels: whole numbers, so that no unit is rounded otherwise than another.
            i, along = divmod(2 * (x + y + 1 - 2 * around) + step, 2 * step)
            j, aside = divmod(2 * (y - x) + step, 2 * step)
            there = self._place(int(i), int(j))
            if there.kind is not Kind.UNIT:
                return there, SETTING
            if not pattern:
                return there, SEWN
            standing = unit(place(int(i + j) - 1, int(i - j - 1) // 2))
            return there, _at(standing, along / (2 * step), aside / (2 * step))

        cells = [[at(x, y) for x in range(wide)] for y in range(high)]
        return Laid(
            [[key for _, key in row] for row in cells],
            [[there for there, _ in row] for row in cells],
            is_whole=(wide, high) == size,
            outlined_from=8,
        )

    def _place(self, i: int, j: int) -> Place:
        """What stands `i` lines along the slant and `j` aside of it, from the first corner.

        i + j and i - j are twice the middle's place down and across, in steps: a slanting row is
        all of one i, and its units go by j.
        """
        last = self.rows + self.columns
        if i <= 0 or i >= last:
            return Place(Kind.CORNER, 1 if i <= 0 else 4)
        first = max(1 - i, i - 2 * self.columns + 1)
        end = min(i - 1, 2 * self.rows - 1 - i)
        if first <= j <= end:
            return Place(Kind.UNIT, i, j - first + 1)
        # A row that ends in a corner of the top has no side triangle at that end.
        if j > end:
            return Place(Kind.CORNER, 2) if i == self.rows else Place(Kind.SIDE, i, 1)
        return Place(Kind.CORNER, 3) if i == self.columns else Place(Kind.SIDE, i, 0)


def by_turns_on_point(different: int) -> Arrangement:
    """One after the other along the slanting rows, as they are sewn: like units don't share a seam."""
    along_rows = by_turns(different)

    def place(row: int, column: int) -> Placed:
        middle = 2 * column + 1 + row % 2
        return along_rows((row + 1 - middle) // 2, (row + 1 + middle) // 2)

    return place


def _fine(unit: Flat) -> Pixels:
    return raster([right_sides(unit.patches)], unit.size, FINE, FINE)


def standing_alone(step: int, unit: Flat) -> Pixels:
    """One unit on its corner in a square of `step` pixels, an even number; None around it. Such
    squares laid half a step on both ways leave no pixel out and share none."""
    fine = _fine(unit)
    drawn: Pixels = []
    for y in range(step):
        line: list[Key | None] = []
        for x in range(step):
            along, aside = (x + y + 1) / step - 0.5, (y - x) / step + 0.5
            inside = 0 <= along < 1 and 0 <= aside < 1
            line.append(_at(fine, along, aside) if inside else None)
        drawn.append(line)
    return drawn


def _at(pixels: Pixels, along: float, aside: float) -> Key:
    key = pixels[min(FINE - 1, int(aside * FINE))][min(FINE - 1, int(along * FINE))]
    assert key is not None, "units leave no pixel empty"
    return key
