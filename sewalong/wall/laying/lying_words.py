"""How a unit lies, told by what it shows: which fabric is towards row 1, and so on."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import combinations

from sewalong.quilt.setting import SetOnPoint, Setting
from sewalong.wall.laying.edges import SAME_PLACE, turned_sides
from sewalong.wall.laying.move_words import ON_POINT, STRAIGHT
from sewalong.wall.laying.units import WallUnit

SIDES = range(4)


def lying_words(
    unit: WallUnit,
    turns: int,
    setting: Setting | None = None,
    called: Mapping[str, str] | None = None,
) -> str:
    """ "C moss towards row 1": as few sides as tell its turn from every other that shows something
    else; empty where each turn shows the same. `called` has the names of fabrics by letter."""
    ways = {turn: _shown(unit, turn) for turn in unit.turns}
    mine = _shown(unit, turns)
    others = [shown for shown in ways.values() if shown != mine]
    if not others:
        return ""
    sides = next(
        told
        for n in (1, 2, 3, 4)
        for told in combinations(SIDES, n)
        if all(any(shown[side] != mine[side] for side in told) for shown in others)
    )
    towards = ON_POINT if isinstance(setting, SetOnPoint) else STRAIGHT
    names = called or {}
    return ", ".join(f"{_fabrics(mine[side], names)} towards {towards[side]}" for side in sides)


def _shown(unit: WallUnit, turns: int) -> tuple[tuple[str, ...], ...]:
    return tuple(
        # What touches a side with a point only does not tell one side from another by eye.
        tuple(span.fabric for span in side if span.end - span.start > SAME_PLACE)
        for side in turned_sides(unit.sides, turns)
    )


def _fabrics(shown: tuple[str, ...], names: Mapping[str, str]) -> str:
    return " and ".join(names.get(fabric, fabric) for fabric in shown)
