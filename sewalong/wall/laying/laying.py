"""What lies on the wall, and where like fabrics touch."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from enum import StrEnum

from msgspec import Struct
from msgspec.structs import replace

from sewalong.quilt.setting import Setting
from sewalong.wall.laying.edges import (
    TouchRule,
    corners,
    length,
    meeting,
    plain_sides,
    turned_sides,
)
from sewalong.wall.laying.grid import CORNERS, OUTER, At, Grid, Link, grid_of
from sewalong.wall.laying.units import WallUnit


class Put(Struct, frozen=True):
    """A unit, by its number from 0 on in the sequence of units, and its quarter turns."""

    unit: int
    turns: int = 0


class Laying(Struct, frozen=True):
    """What lies at each place of a layout, row by row as they are sewn; None where nothing does.

    `rows`, `columns` and `setting` as in `grid_of`. Raises ValueError where the places are not
    those of the layout, or one unit lies in two of them.
    """

    rows: int
    columns: int
    places: tuple[tuple[Put | None, ...], ...]
    setting: Setting | None = None

    def __post_init__(self) -> None:
        if tuple(map(len, self.places)) != self.grid.rows:
            raise ValueError("a laying has a place for each unit of its layout")
        units = [put.unit for put in self.in_order if put is not None]
        if len(set(units)) < len(units):
            raise ValueError("a unit lies in one place only")

    @property
    def grid(self) -> Grid:
        """Its places and their neighbours."""
        return grid_of(self.rows, self.columns, self.setting)

    @property
    def in_order(self) -> tuple[Put | None, ...]:
        """What lies at each place, by the numbers of the grid."""
        return tuple(put for row in self.places for put in row)

    def at(self, at: At) -> Put | None:
        """What lies at a place; raises KeyError if there is no such place."""
        return self.in_order[self.grid.number(at)]

    def with_places(self, puts: Sequence[Put | None]) -> Laying:
        """The same layout with this at its places, by the numbers of the grid."""
        rest = iter(puts)
        return replace(self, places=tuple(tuple(next(rest) for _ in row) for row in self.places))


def empty_laying(rows: int, columns: int, setting: Setting | None = None) -> Laying:
    """A layout with nothing in it yet; raises ValueError for no row or no column."""
    lengths = grid_of(rows, columns, setting).rows
    return Laying(rows, columns, tuple((None,) * n for n in lengths), setting)


class Rules(Struct, frozen=True):
    """What counts as a touch.

    `rim` is a fabric that no unit may show outwards: the border's, or on point the triangles'.
    `sash` is that of the sashes, also of those around the units. With `stacks`, units of one stack
    that lie next to each other touch as well.
    """

    touch: TouchRule = TouchRule.EDGE
    rim: str | None = None
    sash: str | None = None
    stacks: bool = False

    def counts(self, link: Link) -> bool:
        """Whether what lies at a neighbour, or round the units, can touch by these rules."""
        if link.other < 0:
            return (self.rim if link.other == OUTER else self.sash) is not None
        return link.mine < CORNERS or self.touch is TouchRule.CORNER


class Kind(StrEnum):
    """What touches."""

    FABRIC = "like fabrics along a seam"
    POINT = "like fabrics at a point"
    STACK = "units of one stack"
    RIM = "a unit and what lies around the units"
    SASH = "a unit and a sash"


class Touch(Struct, frozen=True):
    """One touch: two places that meet, or one place and the rim or a sash at its side.

    `fabric` is what meets itself, empty for units of one stack; `inches` is for how long, as many
    as it meets at all along that side.
    """

    kind: Kind
    places: tuple[At, ...]
    fabric: str = ""
    inches: float = 0.0


USUAL = Rules()
"""Like fabrics along a seam, nothing else."""


def touches(laying: Laying, units: Sequence[WallUnit], rules: Rules = USUAL) -> tuple[Touch, ...]:
    """Every touch, in order of places; each two places count once for each fabric they share."""
    return touches_at(laying.grid, laying.in_order, units, rules)


def touches_at(
    grid: Grid,
    puts: Sequence[Put | None],
    units: Sequence[WallUnit],
    rules: Rules,
    places: Collection[int] | None = None,
) -> tuple[Touch, ...]:
    """The touches that one of these places has a part in, by their numbers in the grid; of all
    places for None. `puts` are what lies there, by the same numbers."""
    wanted = {*range(len(grid.places))} if places is None else {*places}
    found: list[Touch] = []
    for here in sorted(wanted):
        put = puts[here]
        for link in filter(rules.counts, grid.links[here]):
            # Of two places that are both asked for, the first names what they share.
            named = 0 <= link.other < here and link.other in wanted
            if put is not None and not named:
                other = puts[link.other] if link.other >= 0 else None
                found += _between(grid, here, link, (put, other), units, rules)
    return tuple(found)


def _between(
    grid: Grid,
    here: int,
    link: Link,
    puts: tuple[Put, Put | None],
    units: Sequence[WallUnit],
    rules: Rules,
) -> Iterator[Touch]:
    put, other = puts
    unit = units[put.unit]
    sides = turned_sides(unit.sides, put.turns)
    if link.other < 0:
        ground = rules.rim if link.other == OUTER else rules.sash
        whole = length(sides[link.mine])
        across = plain_sides(ground or "", whole, whole)[0]
        kind = Kind.RIM if link.other == OUTER else Kind.SASH
        for fabric, inches in meeting(sides[link.mine], across, rules.touch).items():
            yield Touch(kind, (grid.places[here],), fabric, inches)
        return
    if other is None:
        return
    first, second = sorted((here, link.other))
    both = (grid.places[first], grid.places[second])
    theirs = turned_sides(units[other.unit].sides, other.turns)
    if link.mine < CORNERS:
        met = meeting(sides[link.mine], theirs[link.theirs], rules.touch)
    else:
        shared = corners(sides)[link.mine - CORNERS] & corners(theirs)[link.theirs - CORNERS]
        met = dict.fromkeys(sorted(shared), 0.0)
    for fabric, inches in met.items():
        yield Touch(Kind.FABRIC if inches else Kind.POINT, both, fabric, inches)
    if rules.stacks and unit.stack is not None and unit.stack == units[other.unit].stack:
        yield Touch(Kind.STACK, both)
