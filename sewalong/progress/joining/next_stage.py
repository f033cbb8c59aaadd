"""What comes after the stage in hand, once that is near."""

from __future__ import annotations

from msgspec.structs import replace

from sewalong.piecing.method import Stage
from sewalong.progress.plan.plan import Plan, StageLine, plan
from sewalong.progress.record.begun_rows import left_begun, pieces_held, units_across
from sewalong.progress.record.route import SEW_ROWS
from sewalong.progress.record.state import State

NEAR = 3
"""Counts before the end of a stage from which the next one is said. From memory: time enough to
put the iron on."""


def then_in_words(state: State, now: Plan, line: StageLine) -> str:
    """ "Then press, at the iron." where at most NEAR counts are left to do at a stage, or can be
    done with what waits; else, and where nothing more can be said, empty."""
    left = min(line.to_do, line.ready)
    if not 0 < left <= NEAR or now.complete:
        return ""
    after = plan(_after(state, line, left))
    if after.complete:
        return "Then every stage is done."
    if after.suggestion is None or after.suggestion.stage == line.stage.id:
        return ""
    stage = after.line(after.suggestion.stage).stage
    return f"Then {stage.label}, at the {stage.station.value}."


def _after(state: State, line: StageLine, n: int) -> State:
    """How it would stand after `n` counts more at the stage of `line`."""
    stage = line.stage
    piles, begun = dict(state.piles), state.begun
    held: dict[str, int] = {}
    if stage.id == SEW_ROWS and begun:
        across = units_across(state.route, state.quilt.method.unit)
        held = pieces_held(stage, state.quilt.method.unit, begun, across, n)
        begun = left_begun(begun, across, n)
    for taken in stage.takes:
        piles[taken.pile] -= n * taken.count - held.get(taken.pile, 0)
    if isinstance(stage, Stage):
        piles[stage.makes.pile] += n * stage.makes.count
    done = {**state.done, stage.id: state.done[stage.id] + n}
    return replace(
        state, piles=piles, done=done, begun=begun, chosen=stage.id, chosen_by_hand=False
    )
