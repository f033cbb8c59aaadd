"""Layouts proposed for an open quilt: what can be had, the best found, and how it is kept."""

from __future__ import annotations

from time import monotonic

from msgspec import Struct

from sewalong.progress.acts.wall import LayWall
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State
from sewalong.progress.record.wall import OF_NO_SET, LaidUnit, TouchWord
from sewalong.progress.wall.on_wall import asked_of, rows_of
from sewalong.progress.wall.units import units_to_lay
from sewalong.wall.laying.plans import Plan
from sewalong.wall.laying.search import Asked, Found, laid, search
from sewalong.wall.laying.verdict import Verdict, verdict

LOOKS = 60
"""Looks where nobody says how long, the same on any machine: a second or two (own choice)."""


class WallRules(Struct, frozen=True):
    """What may touch, as in `WallNow`."""

    touch: TouchWord = "edge"
    stacks: bool = True
    rim: str = ""


class ToPropose(Struct, frozen=True):
    """What is to be laid: the units in the order in which `asked` numbers them, and the rules."""

    units: tuple[LaidUnit, ...]
    asked: Asked
    rules: WallRules

    @property
    def verdict(self) -> Verdict:
        """What can be had of these units; nothing is searched."""
        asked = self.asked
        return verdict(asked.units, asked.rows, asked.columns, asked.setting, asked.rules)


def rules_now(state: State) -> WallRules:
    """The rules the wall was laid by; as usual where nothing is laid."""
    return WallRules(state.wall.touch, state.wall.stacks, state.wall.rim)


def units_there(state: State) -> tuple[LaidUnit, ...]:
    """The units that can be laid: those of her sets; where units of no set lie on the wall, those
    that are known from there. Raises Refused where nothing is known of any."""
    on_it = state.wall.units
    known = on_it if any(unit.set == OF_NO_SET for unit in on_it) else units_to_lay(state)
    if not known:
        raise Refused(
            "Nothing is known of the units yet. Accept sets, type what lies on the wall row by row, "
            "or read it from a photograph."
        )
    return known


def why_no_wall(state: State) -> str:
    """Why nothing can be proposed yet, in a sentence; empty where something can."""
    try:
        units_there(state)
    except Refused as refused:
        return str(refused)
    return ""


def to_propose(
    state: State,
    rules: WallRules,
    *,
    spread: bool = False,
    plan: Plan | None = None,
    seed: int = 1,
) -> ToPropose:
    """What to ask of a proposal for the quilt as it stands; what is locked or sewn stays. Raises
    Refused where nothing is known of the units, or not how light they are where a plan is asked for."""
    units, asked = asked_of(
        state,
        units_there(state),
        touch=rules.touch,
        stacks=rules.stacks,
        rim=rules.rim,
        spread=spread,
        plan=plan,
        seed=seed,
    )
    if plan is not None and all(unit.value is None for unit in asked.units):
        raise Refused(
            "How light the units are is not known, so no plan of light and dark can be followed. "
            "Give the fabrics colours, or say which are light."
        )
    return ToPropose(units, asked, rules)


def best_layout(asked: Asked, seconds: float | None = None) -> Found:
    """The best layout after so many seconds; without them after so many looks, the same on any
    machine."""
    if seconds is None:
        return laid(asked, LOOKS)
    until = monotonic() + seconds
    better = search(asked)
    best = next(better)
    while monotonic() < until and (found := next(better, None)) is not None:
        best = found
    return best


def accepting(proposed: ToPropose, found: Found) -> LayWall:
    """The act by which a layout that was found is on the wall."""
    rules = proposed.rules
    return LayWall(
        proposed.units, rows_of(found.laying), rules.touch, rules.stacks, rules.rim, how="proposed"
    )
