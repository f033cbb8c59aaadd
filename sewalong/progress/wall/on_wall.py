"""What lies on the wall, as the engine of layings takes it."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from sewalong.progress.record.sewn_places import sewn_places
from sewalong.progress.record.state import State
from sewalong.progress.record.wall import At, LaidUnit, Row, TouchWord
from sewalong.progress.wall.units import wall_units
from sewalong.wall.laying.board import Board
from sewalong.wall.laying.edges import TouchRule
from sewalong.wall.laying.laying import Laying, Put, Rules
from sewalong.wall.laying.plans import Plan
from sewalong.wall.laying.search import Asked
from sewalong.wall.laying.units import WallUnit


class OnWall(Struct, frozen=True):
    """The units by their numbers on the wall, where each lies, and the rules it was laid by.
    `locked` are the places she locked, `sewn` those whose unit is sewn to its row."""

    units: tuple[WallUnit, ...]
    laying: Laying
    rules: Rules
    locked: frozenset[At]
    sewn: frozenset[At]

    @property
    def fixed(self) -> frozenset[At]:
        """The places where something lies that is not moved."""
        return frozenset(at for at in self.locked | self.sewn if self.laying.at(at) is not None)

    def board(self) -> Board:
        """The same, to try moves on."""
        return Board(self.laying, self.units, self.rules)


def on_wall(state: State) -> OnWall | None:
    """What lies on the wall now; None where nothing was laid."""
    wall = state.wall
    if not wall.rows:
        return None
    return OnWall(
        units=wall_units(state, wall.units),
        laying=laying_of(state, wall.rows),
        rules=rules_of(wall.touch, stacks=wall.stacks, rim=wall.rim),
        locked=wall.locked,
        sewn=sewn_places(state),
    )


def laying_of(state: State, rows: Sequence[Row]) -> Laying:
    """Rows of the record as a laying of the layout wanted; raises ValueError where they are not of
    that layout."""
    target = state.target
    places = tuple(tuple(None if lies is None else Put(*lies) for lies in row) for row in rows)
    return Laying(target.rows, target.columns, places, state.quilt.setting)


def rows_of(laying: Laying) -> tuple[Row, ...]:
    """A laying as rows of the record."""
    return tuple(
        tuple(None if put is None else (put.unit, put.turns) for put in row)
        for row in laying.places
    )


def rules_of(touch: TouchWord, *, stacks: bool, rim: str) -> Rules:
    """The rules as the engine takes them."""
    return Rules(
        TouchRule.CORNER if touch == "corner" else TouchRule.EDGE, rim or None, None, stacks
    )


def asked_of(
    state: State,
    units: Sequence[LaidUnit],
    *,
    touch: TouchWord = "edge",
    stacks: bool = True,
    rim: str = "",
    spread: bool = False,
    plan: Plan | None = None,
    seed: int = 1,
) -> tuple[tuple[LaidUnit, ...], Asked]:
    """What is to be searched for, and the units in the order it numbers them.

    What is locked or sewn keeps its place: its units come first, with their turns; then those of
    `units` that are none of them.
    """
    wall = on_wall(state)
    kept = (
        []
        if wall is None
        else [(at, put) for at in sorted(wall.fixed) if (put := wall.laying.at(at))]
    )
    stay = [as_named(state, put.unit) for _, put in kept]
    named = {(unit.set, unit.unit) for unit in stay if unit.set}
    rest = _without_as_many(
        [unit for unit in units if (unit.set, unit.unit) not in named],
        [unit for unit in stay if not unit.set],
    )
    ordered = (*stay, *rest)
    begun = None
    if wall is not None and kept:
        at_places = dict(zip(wall.laying.grid.places, wall.laying.in_order, strict=True))
        puts = {at: Put(number, put.turns) for number, (at, put) in enumerate(kept)}
        begun = wall.laying.with_places([puts.get(at) for at in at_places])
    asked = Asked(
        units=wall_units(state, ordered),
        rows=state.target.rows,
        columns=state.target.columns,
        setting=state.quilt.setting,
        rules=rules_of(touch, stacks=stacks, rim=rim),
        spread=spread,
        plan=plan,
        begun=begun,
        locked=frozenset(at for at, _ in kept),
        seed=seed,
    )
    return ordered, asked


def as_named(state: State, number: int) -> LaidUnit:
    """The unit of this number on the wall."""
    return state.wall.units[number]


def _without_as_many(units: Sequence[LaidUnit], taken: Sequence[LaidUnit]) -> list[LaidUnit]:
    """The units but for one like each of those taken, which are of no set and known by their looks."""
    over = list(units)
    for one in taken:
        if one in over:
            over.remove(one)
    return over
