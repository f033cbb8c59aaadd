"""Layings by an exact solver (OR-tools CP-SAT), from what units show and nothing of our search."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from msgspec import Struct
from ortools.sat.python import cp_model

from sewalong.wall.laying.edges import Spans, TouchRule, length, turned_sides
from sewalong.wall.laying.units import WallUnit


class Solved(Struct, frozen=True):
    """Touches of the best laying found, None where there is none yet, and how few there are at
    least."""

    touches: int | None
    least: int


def solved(
    units: Sequence[WallUnit],
    rows: int,
    columns: int,
    rule: TouchRule,
    seconds: float,
    seed: int = 1,
) -> Solved:
    """The fewest touches of a straight laying, as far as found in so many seconds."""
    model = cp_model.CpModel()
    kinds = Counter(WallUnit(unit.sides, _turns(unit)) for unit in units)
    ways = [(kind, turns) for kind in kinds for turns in kind.turns]
    places = [(row, column) for row in range(rows) for column in range(columns)]
    lies = {(at, way): model.new_bool_var("") for at in places for way in range(len(ways))}
    for at in places:
        model.add_exactly_one(lies[at, way] for way in range(len(ways)))
    for kind, count in kinds.items():
        of_kind = [way for way, (other, _) in enumerate(ways) if other is kind]
        model.add(sum(lies[at, way] for at in places for way in of_kind) <= count)
    cells = [_cells(kind, turns) for kind, turns in ways]
    shown: dict[tuple[str, Where], list[int]] = {}
    for way, each in enumerate(cells):
        for cell in each:
            if rule is TouchRule.CORNER or cell[1][-1] is True:
                shown.setdefault(cell, []).append(way)
    shows = {}
    for at in places:
        for cell, with_it in shown.items():
            shows[at, cell] = model.new_bool_var("")
            model.add(sum(lies[at, way] for way in with_it) == shows[at, cell])
    touches = []
    for row, column in places:
        for down, across, mine, theirs in _NEIGHBOURS:
            other = (row + down, column + across)
            if other not in places:
                continue
            met: dict[str, list[tuple[Where, Where]]] = {}
            for fabric, where in shown:
                if where[: len(mine)] == mine and len(where) - len(mine) in (0, 2):
                    there = (*theirs, *where[len(mine) :])
                    if (fabric, there) in shown:
                        met.setdefault(fabric, []).append((where, there))
            for fabric, both in met.items():
                touch = model.new_bool_var("")
                touches.append(touch)
                for here, there in both:
                    one, two = shows[(row, column), (fabric, here)], shows[other, (fabric, there)]
                    model.add_bool_or(one.negated(), two.negated(), touch)
    model.minimize(sum(touches))
    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = seconds
    solver.parameters.num_workers = 8
    solver.parameters.random_seed = seed
    status = solver.solve(model)
    found = status in (cp_model.OPTIMAL, cp_model.FEASIBLE)
    least = max(0, round(solver.best_objective_bound)) if found else 0
    return Solved(round(solver.objective_value) if found else None, least)


Where = tuple[object, ...]
"""A corner by its two sides, or of a side a stretch (True) or a point (False) from an inch on."""

_NEIGHBOURS = (
    (0, 1, ("far",), ("near",)),
    (1, 0, ("bottom",), ("top",)),
    (1, 1, ("bottom", "far"), ("top", "near")),
    (1, -1, ("bottom", "near"), ("top", "far")),
)


def _turns(unit: WallUnit) -> tuple[int, ...]:
    sides = {turns: turned_sides(unit.sides, turns) for turns in unit.turns}
    return tuple(t for t, one in sides.items() if one not in [sides[u] for u in sides if u < t])


def _cells(unit: WallUnit, turns: int) -> set[tuple[str, Where]]:
    """Fabric and where it shows: at points and on stretches of each side, and at the corners."""
    top, far, bottom, near = turned_sides(unit.sides, turns)
    cells: set[tuple[str, Where]] = set()
    marks = sorted({round(x, 3) for side in unit.sides for s in side for x in (s.start, s.end)})
    marks = sorted({*marks, *(round(length(top) - x, 3) for x in marks)})
    for name, side in (("top", top), ("far", far), ("bottom", bottom), ("near", near)):
        for span in side:
            start, end = round(span.start, 3), round(span.end, 3)
            cells |= {
                (span.fabric, (name, x, False)) for x in marks if start - 2e-3 <= x <= end + 2e-3
            }
            cells |= {
                (span.fabric, (name, x, True)) for x in marks if start - 2e-3 <= x < end - 2e-3
            }
    for down, across, side, at_end in (
        ("top", "near", top, False),
        ("top", "far", top, True),
        ("bottom", "far", bottom, True),
        ("bottom", "near", bottom, False),
    ):
        cells |= {(fabric, (down, across)) for fabric in _end(side, at_end)}
    return cells


def _end(side: Spans, at_end: bool) -> set[str]:
    if at_end:
        return {span.fabric for span in side if span.end > length(side) - 1e-3}
    return {span.fabric for span in side if span.start < 1e-3}
