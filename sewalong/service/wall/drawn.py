"""A wall as it is drawn in cells: its units in her fabrics, and the colours they are seen in.

Colours are reckoned with here, so it is loaded only by whoever looks at the wall.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from msgspec import Struct

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.looked_at import AS_IT_IS, View
from sewalong.fabrics.sight import from_afar, grey, seen, value
from sewalong.fabrics.swatch import swatches
from sewalong.piecing.cloth import Flat, Patch, turned
from sewalong.piecing.geometry import turn
from sewalong.progress.record.wall import BY_LETTER
from sewalong.quilt.derived import derived_if_any
from sewalong.quilt.quilt import Quilt, Target
from sewalong.wall.cells.sections import Room
from sewalong.wall.cells.stamps import Size, Stamps
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
"""Lightness from which dark strokes show better than pale ones: the middle (own
choice)."""


class Hung(Struct, frozen=True):
    """What is to be drawn: the places, their units as stamps, and what lies where.

    `afar` are the units as they are seen from afar, each of one colour, for where there is no room
    for all of them with their patches; `lightness` is that of those colours, by key. `gap` is the
    width of a sash as a share of a unit, 0 for none. `strokes` has the ink of the
    strokes on cloth of which only light or dark was said, `sewn` the rows that are sewn.
    """

    grid: Grid
    stamps: Stamps
    afar: Stamps
    lightness: Mapping[Key, float]
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

    def drawn(self, room: Room, zoom: int) -> tuple[Stamps, Size]:
        """The units and their size, so many sizes larger than the first in which they show what they
        are; below 0 from afar. Beyond the largest or the smallest it is that."""
        sizes, far = room.sizes(), room.far_size()
        if zoom < 0 and far is not None:
            return self.afar, far
        return self.stamps, sizes[max(0, min(zoom, len(sizes) - 1))]


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
        _stamps_afar(quilt, units, laying.grid.on_point),
        _lightness(quilt, units),
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


@lru_cache(maxsize=4)
def _stamps_afar(quilt: Quilt, units: tuple[UnitOf, ...], on_point: bool) -> Stamps:
    keys = _afar(units)
    outline = _stamps(quilt, units, on_point).inches
    return Stamps([_of_one_key(keys[unit], *outline) for unit in units], on_point=on_point)


def _afar(units: tuple[UnitOf, ...]) -> Mapping[UnitOf, Key]:
    """A key for each unit as it is seen from afar."""
    return {unit: f"afar {number}" for number, unit in enumerate(dict.fromkeys(units))}


def _of_one_key(key: Key, wide: float, high: float) -> Flat:
    points = tuple((x * wide, y * high) for x, y in _SQUARE)
    return Flat((Patch(points, key, (0.0, -1.0)),))


@lru_cache(maxsize=4)
def _lightness(quilt: Quilt, units: tuple[UnitOf, ...]) -> Mapping[Key, float]:
    colours = wall_colours(quilt, units, AS_IT_IS)
    return {key: value(colours[key]) for key in _afar(units).values()}


def flat_unit(quilt: Quilt, unit: UnitOf) -> Flat:
    """A unit as it shows once its outer seams are taken, each patch with the key of its fabric; of
    one that is known by a letter only, a square of that."""
    made = derived_if_any(quilt)
    if unit.number == BY_LETTER or made is None:
        letter = unit.squares[0] if unit.squares else None
        return _of_one_key(cloth_key(letter) if letter else UNKNOWN, 1.0, 1.0)
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
    """The colours of all that shows on the wall, as they are looked at: of patches, of units from
    afar, of what lies between and around."""
    own = {**own_colours(quilt), **cloth_colours(quilt.fabrics)}
    letters = {letter for unit in units for letter in unit.squares if letter}
    keys = (*map(cloth_key, sorted(letters)), SASH, SETTING, UNKNOWN)
    found = {key: colour_of(key, own) for key in keys}
    found |= {key: _mixed(flat_unit(quilt, unit), found) for unit, key in _afar(units).items()}
    return {key: _looked_at(colour, view) for key, colour in found.items()}


def _mixed(unit: Flat, colours: Mapping[Key, Colour]) -> Colour:
    """The colour of a unit from afar: of its patches by their areas, mixed as light mixes."""
    (first, so_far), *others = unit.shares(0.0)
    mixed = colours[first]
    for key, share in others:
        so_far += share
        mixed = from_afar(mixed, colours[key], share / so_far)
    return mixed


def _looked_at(colour: Colour, view: View) -> Colour:
    if view.in_grey:
        return grey(value(colour))
    return seen(colour, view.sight) if view.sight else colour


def unit_pictured(quilt: Quilt, unit: UnitOf, turns: int, across: int, down: int) -> Picture:
    """One unit as large as so many cells hold, turned as it lies."""
    flat = flat_unit(quilt, unit)
    return picture_of(turned(flat, turn(2 * turns)) if turns % 4 else flat, across, down)
