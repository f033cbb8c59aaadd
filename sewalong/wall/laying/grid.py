"""The places of a top and which lie beside each other, by how the units are set."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from msgspec import Struct

from sewalong.quilt.set_rows import set_rows
from sewalong.quilt.setting import Sashing, SetOnPoint, Setting

At = tuple[int, int]
"""A place: its row and its place in the row, both from 1, as rows are sewn."""

OUTER, SASH = -1, -2
"""In place of a neighbour: what lies round the units, and a sash."""

CORNERS = 4
"""Facets of a unit from 0 on are its sides in the order of `edges.SIDES`; from here on, its
corners in the order of `edges.corners`."""


class Link(NamedTuple):
    """`mine` is the facet of a unit that meets `other`, the number of a place or OUTER or SASH,
    and `theirs` the facet of the unit there."""

    other: int
    mine: int
    theirs: int


class Grid(Struct, frozen=True):
    """Places in order of rows, and the numbers by which `links` name them, from 0 on.

    `links` are for each place its neighbours along a seam, then those at a point. `lattice` is each
    place down and across as a unit that is not turned sees it, so that every setting is part of one
    lattice; `shown` is where it shows in the top, on point in half diagonals.
    """

    rows: tuple[int, ...]
    places: tuple[At, ...]
    links: tuple[tuple[Link, ...], ...]
    lattice: tuple[tuple[int, int], ...]
    shown: tuple[tuple[int, int], ...]
    on_point: bool = False

    def number(self, at: At) -> int:
        """The number of a place; raises KeyError if there is none."""
        row, place = at
        if not (1 <= row <= len(self.rows) and 1 <= place <= self.rows[row - 1]):
            raise KeyError(at)
        return sum(self.rows[: row - 1]) + place - 1


@lru_cache(maxsize=32)
def grid_of(rows: int, columns: int, setting: Setting | None = None) -> Grid:
    """The places of a layout as its units are set; on point `rows` and `columns` are the whole
    units along the edges. Raises ValueError for no row or no column.

    Units with sashes between them meet the sash and no other unit. On point the rows are those on
    the slant, and a unit's upper side is towards the place before it in its row.
    """
    if rows < 1 or columns < 1:
        raise ValueError("a top has one row and one column at least")
    lengths = tuple(row.units for row in set_rows(setting, rows, columns))
    places = tuple(
        (row, place) for row, units in enumerate(lengths, start=1) for place in range(1, units + 1)
    )
    on_point = isinstance(setting, SetOnPoint)
    lattice = tuple(_on_point(at, columns) if on_point else (at[0] - 1, at[1] - 1) for at in places)
    number = {at: n for n, at in enumerate(lattice)}
    sashing = setting if isinstance(setting, Sashing) else None
    return Grid(
        lengths,
        places,
        tuple(tuple(_links(at, number, sashing)) for at in lattice),
        lattice,
        tuple((y + x, x - y) if on_point else (y, x) for y, x in lattice),
        on_point,
    )


_STEPS = ((-1, 0), (0, 1), (1, 0), (0, -1), (-1, -1), (-1, 1), (1, 1), (1, -1))
"""Down and across to the neighbour at each facet."""


def _links(
    at: tuple[int, int], number: dict[tuple[int, int], int], sashing: Sashing | None
) -> list[Link]:
    found = []
    for facet, (down, across) in enumerate(_STEPS):
        there = number.get((at[0] + down, at[1] + across))
        is_side = facet < CORNERS
        if sashing is not None:
            if is_side:
                between = there is not None or sashing.frame
                found.append(Link(SASH if between else OUTER, facet, facet))
        elif there is not None:
            group = 0 if is_side else CORNERS
            found.append(Link(there, facet, group + (facet - group + 2) % 4))
        elif is_side:
            found.append(Link(OUTER, facet, facet))
    return found


def _on_point(at: At, columns: int) -> tuple[int, int]:
    """Along its row, and row by row: plane geometry, as in `wall.on_point`."""
    row, place = at
    first = max(1 - row, row - 2 * columns + 1)
    return (first + place - 1, row)
