"""The same wall as polygons, drawn out from the engine's units, and what shapely finds to touch."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations

from shapely.geometry import Polygon

from sewalong.piecing.cloth import Flat, turned
from sewalong.piecing.geometry import shift, turn
from sewalong.quilt.setting import SetOnPoint
from sewalong.wall.laying.edges import TouchRule
from sewalong.wall.laying.laying import Laying
from tests.wall.laying.walls import derived

Patch = tuple[str, Polygon]


def patches(laying: Laying, method: str, named: Sequence[dict[str, str]]) -> list[list[Patch]]:
    """The patches of the unit at each place; `named` has the fabrics of each set by letter."""
    derivation = derived(method)
    width, height = Flat(derivation.units[0].finished(0.25)).size
    drawn: list[list[Patch]] = []
    for (down, across), put in zip(positions(laying), laying.in_order, strict=True):
        if put is None:
            drawn.append([])
            continue
        unit = derivation.units[put.unit % len(derivation.units)]
        shown = Flat(unit.finished(0.25))
        lying = turned(shown, turn(2 * put.turns)) if put.turns else shown
        fabrics = named[put.unit // len(derivation.units)]
        move = shift(across * width, down * height)
        drawn.append([(fabrics[p.letter], Polygon(move.polygon(p.points))) for p in lying.patches])
    return drawn


def positions(laying: Laying) -> list[tuple[int, int]]:
    """Down and across of each place, a unit's side as the measure.

    On point the middles of the whole units and of those between them are written out, in half
    diagonals, and the top is turned by an eighth: a row on the slant is then one column.
    """
    rows, columns = laying.rows, laying.columns
    if not isinstance(laying.setting, SetOnPoint):
        return [(row, column) for row in range(rows) for column in range(columns)]
    middles = [(2 * row + 1, 2 * column + 1) for row in range(rows) for column in range(columns)]
    middles += [(2 * r + 2, 2 * c + 2) for r in range(rows - 1) for c in range(columns - 1)]
    slanting = sorted(((down + across) // 2, (down - across) // 2) for down, across in middles)
    return [(along, row) for row, along in slanting]


def touching(
    drawn: Sequence[Sequence[Patch]], rule: TouchRule
) -> dict[tuple[int, int, str], float]:
    """Inches of seam for two places, by number, and a fabric both show there; 0 for a point."""
    found: dict[tuple[int, int, str], float] = {}
    for (i, mine), (j, theirs) in combinations(enumerate(drawn), 2):
        for fabric, one in mine:
            for other_fabric, other in theirs:
                if fabric != other_fabric or one.distance(other) > 1e-4:
                    continue
                inches = one.buffer(1e-4, join_style="mitre").intersection(other.boundary).length
                if inches > 1e-2:
                    found[i, j, fabric] = found.get((i, j, fabric), 0.0) + inches
                elif rule is TouchRule.CORNER:
                    found.setdefault((i, j, fabric), 0.0)
    return found
