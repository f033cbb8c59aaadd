"""A quilt walked through every stage to its end, in lots of any size and with mishaps on the way."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from contextlib import suppress
from random import Random

from sewalong.piecing.method import Stage
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.route import route_for
from sewalong.progress.record.state import State
from sewalong.quilt.quilt import Quilt
from tests.progress import every_act as c
from tests.progress.building import MINUTE, Record, do, go_on, opening

MOST_STEPS = 600

Mishap = Callable[[Random, State], c.Act | None]
"""What goes wrong after a count, or None; what is refused then does not happen."""


def after_the_units(quilt: Quilt) -> list[str]:
    """The labels of the stages that follow those of the method."""
    stages = route_for(quilt, quilt.target).stages
    return [stage.label for stage in stages[len(quilt.method.stages) :]]


def walk_to_the_end(quilt: Quilt, chance: Random, mishap: Mishap) -> State:
    """The state when all is done and marked so; no piece is lost or gained on the way."""
    state, record = opening(quilt), Record(quilt)
    for _ in range(MOST_STEPS):
        now = plan(state)
        if now.complete:
            break
        line = chance.choice([line for line in now.lines if line.to_do and line.ready])
        n = chance.randint(1, min(line.to_do, line.ready))
        state = go_on(state, record, c.Count(line.stage.id, n))
        if act := mishap(chance, state):
            with suppress(Refused):
                state = do(state, record, act, record[-1].event.at + MINUTE)
        assert_conserved(state)
    now = plan(state)
    assert now.complete
    assert now.suggestion is None
    return go_on(state, record, c.MarkDone())


def assert_conserved(state: State) -> None:
    """Every pile is what was made less what was taken and spoiled, worked out from the counts."""
    there = Counter({start.pile: start.count for start in state.quilt.starts})
    for stage in state.route.stages:
        for taken in stage.takes:
            there[taken.pile] -= state.done[stage.id] * taken.count
        if isinstance(stage, Stage):
            there[stage.makes.pile] += state.done[stage.id] * stage.makes.count
    for pile, now in state.piles.items():
        said = state.found.get(pile, 0) - state.spoiled.get(pile, 0)
        assert there[pile] + said + state.recounted.get(pile, 0) == now >= 0
