"""A wall as it is drawn in cells: its units in her fabrics, and the colours they are seen in.

Colours are reckoned with here, so it is loaded only by whoever looks at the wall.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from msgspec import Struct

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.looked_at import View
from sewalong.fabrics.sight import grey, seen, value
from sewalong.fabrics.swatch import swatches
from sewalong.piecing.cloth import Flat, Patch, turned
from sewalong.piecing.geometry import turn
from sewalong.quilt.derived import derived_if_any
from sewalong.quilt.quilt import Quilt, Target
from sewalong.wall.cells.sections import Room
from sewalong.wall.cells.stamps import Stamps
from sewalong.wall.cloth_colours import cloth_colours
from sewalong.wall.keys import SASH, SETTING, UNKNOWN, Key, cloth_key
from sewalong.wall.laying.grid import Grid
from sewalong.wall.laying.laying import Laying, Put
from sewalong.wall.of_quilt import own_colours, the_top
from sewalong.wall.palette import colour_of
from sewalong.wall.picture import Picture, picture_of
from sewalong.wall.set_picture import in_fabrics
from sewalong.wall.top_of_sets import UnitOf
from sewalong.wall.tops import Level

_MID = 50.0
"""Lightness from which dark strokes show better than pale ones."""


class Hung(Struct, frozen=True):
    """What is to be drawn: the places, their units as stamps, and what lies where.

    `gap` is the width of a sash as a share of a unit, 0 for none. `strokes` has the ink of the
    strokes on cloth of which only light or dark was said, `sewn` the rows that are sewn.
    """

    grid: Grid
    stamps: Stamps
    puts: tuple[Put | None, ...]
    rows: int
    columns: int
    gap: float = 0.0
    strokes: Mapping[Key, str] = {}
    sewn: frozenset[int] = frozenset()

    def alike(self, other: Hung | None) -> bool:
        """Whether the other shows the same places and units, wherever these lie."""
        return other is not None and self.stamps is other.stamps and self.grid == other.grid

    def room(self, across: int, down: int) -> Room:
        """The room for it in so many cells."""
        wide, high = self.stamps.inches
        return Room(
            across,
            down,
            self.rows,
            self.columns,
            self.stamps.least,
            high / wide,
            self.gap,
            self.grid.on_point,
        )


BY_LETTER = -1
"""The number of a unit that is known by one letter only, which is all of its squares."""

_SQUARE = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))


def hung(
    quilt: Quilt,
    target: Target,
    units: tuple[UnitOf, ...],
    laying: Laying,
    sewn: frozenset[int] = frozenset(),
) -> Hung:
    """A laying of these units, to be drawn. Raises ValueError for no units."""
    return Hung(
        laying.grid,
        _stamps(quilt, units, laying.grid.on_point),
        laying.in_order,
        laying.rows,
        laying.columns,
        _gap(quilt, target),
        _strokes(quilt),
        sewn,
    )


@lru_cache(maxsize=4)
def _stamps(quilt: Quilt, units: tuple[UnitOf, ...], on_point: bool) -> Stamps:
    return Stamps([flat_unit(quilt, unit) for unit in units], on_point=on_point)


def flat_unit(quilt: Quilt, unit: UnitOf) -> Flat:
    """A unit as it shows once its outer seams are taken, each patch with the key of its fabric; of
    one that is known by a letter only, a square of that."""
    made = derived_if_any(quilt)
    if unit.number == BY_LETTER or made is None:
        letter = unit.squares[0] if unit.squares else None
        return Flat((Patch(_SQUARE, cloth_key(letter) if letter else UNKNOWN, (0.0, -1.0)),))
    return Flat(in_fabrics(made, unit.squares, unit.number).finished(float(made.seam)))


@lru_cache(maxsize=4)
def _gap(quilt: Quilt, target: Target) -> float:
    top = the_top(quilt, target)
    if not isinstance(top, Level) or top.sashes is None or top.unit is None:
        return 0.0
    return top.sashes.width / top.unit[0]


@lru_cache(maxsize=4)
def _strokes(quilt: Quilt) -> Mapping[Key, str]:
    return {
        cloth_key(one.letter): "#000000" if one.value >= _MID else "#ffffff"
        for one in swatches(quilt.counted_fabrics)
        if one.colour is None and one.value is not None
    }


@lru_cache(maxsize=8)
def wall_colours(quilt: Quilt, units: tuple[UnitOf, ...], view: View) -> Mapping[Key, Colour]:
    """The colours of all that shows on the wall, as they are looked at."""
    own = {**own_colours(quilt), **cloth_colours(quilt.fabrics)}
    letters = {letter for unit in units for letter in unit.squares if letter}
    keys = (*map(cloth_key, sorted(letters)), SASH, SETTING, UNKNOWN)
    return {key: _looked_at(colour_of(key, own), view) for key in keys}


def _looked_at(colour: Colour, view: View) -> Colour:
    if view.in_grey:
        return grey(value(colour))
    return seen(colour, view.sight) if view.sight else colour


def unit_pictured(quilt: Quilt, unit: UnitOf, turns: int, across: int, down: int) -> Picture:
    """One unit as large as so many cells hold, turned as it lies."""
    flat = flat_unit(quilt, unit)
    return picture_of(turned(flat, turn(2 * turns)) if turns % 4 else flat, across, down)
