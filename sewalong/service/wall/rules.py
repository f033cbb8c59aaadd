"""By what rules a layout is wanted, in words, and what is found by them.

Colours are reckoned with here, so it is loaded only where a layout is proposed.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypedDict

from msgspec import Struct
from msgspec.structs import replace

from sewalong.fabrics.meant import fabric_meant
from sewalong.progress.record.sewn_places import sewn_places
from sewalong.progress.record.state import State
from sewalong.progress.sets.set_words import called
from sewalong.progress.wall.on_wall import OnWall
from sewalong.quilt.refusal import NumbersFault
from sewalong.service.wall.in_hand import WallInHand
from sewalong.service.wall.proposals import ToPropose, WallRules
from sewalong.wall.laying.plans import Plan
from sewalong.wall.laying.search import Found
from sewalong.wall.laying.touch_words import touches_left
from sewalong.wall.laying.verdict_words import verdict_words


class _Asked(TypedDict):
    rules: WallRules
    spread: bool
    plan: Plan | None
    seed: int


class Wanted(Struct, frozen=True):
    """What may touch, what is asked for beside touches, and from which beginning it is searched."""

    rules: WallRules
    spread: bool = False
    plan: Plan | None = None
    seed: int = 1

    def asked(self) -> _Asked:
        """The same, as a layout is asked for."""
        return _Asked(rules=self.rules, spread=self.spread, plan=self.plan, seed=self.seed)

    def with_points_or_not(self) -> Wanted:
        """Points count, or no longer."""
        touch = self.rules.touch
        return self._with(replace(self.rules, touch="edge" if touch == "corner" else "corner"))

    def with_stacks_or_not(self) -> Wanted:
        """Units of one stack are kept apart, or no longer."""
        return self._with(replace(self.rules, stacks=not self.rules.stacks))

    def with_rim(self, letter: str) -> Wanted:
        """This fabric is kept off the rim; none for ""."""
        return self._with(replace(self.rules, rim=letter))

    def _with(self, rules: WallRules) -> Wanted:
        return replace(self, rules=rules)

    def words(self, state: State) -> str:
        """In one line: "By seams, stacks apart, seed 1"."""
        rules = self.rules
        said = ["By seams and points" if rules.touch == "corner" else "By seams"]
        if rules.stacks:
            said.append("stacks apart")
        if rules.rim:
            said.append(f"{called(state.quilt).get(rules.rim, rules.rim)} off the rim")
        if self.spread:
            said.append("spread evenly")
        if self.plan is not None:
            said.append(self.plan.value)
        return ", ".join((*said, f"seed {self.seed}"))


def possible_words(state: State, proposed: ToPropose) -> tuple[str, ...]:
    """What is possible, a sentence each; known before anything is searched."""
    return verdict_words(proposed.verdict, proposed.asked.rules.touch, called(state.quilt))


def found_words(possible: Sequence[str], found: Found | None) -> tuple[str, ...]:
    """What is possible, and what is found so far."""
    if found is None:
        return tuple(possible)
    if not found.touches:
        return ("Possible, and here it is: nothing touches.",)
    return (*possible, f"Here: {touches_left(found.touches, found.least)}")


def proposed_wall(state: State, proposed: ToPropose, found: Found) -> WallInHand:
    """A layout that was found, to be looked at."""
    asked = proposed.asked
    on = OnWall(asked.units, found.laying, asked.rules, state.wall.locked, sewn_places(state))
    return WallInHand(state, proposed.units, on)


def fabric_around(state: State) -> str:
    """The letter of the fabric that lies around the units, that of the innermost border; "" where
    there is no border, or none of the fabrics is called so."""
    if not state.quilt.borders:
        return ""
    try:
        return fabric_meant(state.quilt.borders[0].cloth, state.quilt.counted_fabrics).letter
    except NumbersFault:
        return ""


def fabrics_around(state: State) -> Sequence[tuple[str, str]]:
    """The fabrics that may lie around the units: letter, and letter and name."""
    return [*called(state.quilt).items()]


def around_words(state: State) -> str:
    """What the fabric around the units does, to be asked for."""
    return "is the border of" if state.quilt.borders else "lies around the units"
