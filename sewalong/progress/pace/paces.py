"""What each stage takes now: measured at its own counts, or guessed with the owner's pace in it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime
from math import exp

from msgspec import Struct

from sewalong.progress.pace.duration_words import each_takes, several
from sewalong.progress.pace.guesses import Guess, guesses
from sewalong.progress.pace.measured import Measured, measured
from sewalong.progress.pace.owners_pace import OwnersPace, owners_pace
from sewalong.progress.pace.session_samples import UNEVEN, Spell, spells, unevenness
from sewalong.progress.plan.plan import Plan, StageLine, plan
from sewalong.progress.record.events.every_kind import Recorded
from sewalong.progress.record.route import RouteStage
from sewalong.progress.record.state import State

NEXT_FEW = 5
"""Counts ahead that "now" means: the very first one of a stage is no measure of an evening.
From memory."""


class StagePace(Struct, frozen=True):
    """The pace of one stage.

    `minutes` is for one of the next few counts, the middle of what is thought likely. It was
    measured at `timed` counts in `sessions` sessions; with none it is a guess, though the
    owner's pace at other stages may be in it. `uneven` is the variance of one count's time as
    a part of its average squared.
    """

    stage: RouteStage
    minutes: float
    timed: int
    sessions: int
    uneven: float
    reason: str

    @property
    def measured(self) -> bool:
        """Whether the record has a time for it at all."""
        return self.timed > 0


class Paces(Struct, frozen=True):
    """Every stage of the route, what is believed of them together, and what was measured."""

    stages: Mapping[str, StagePace]
    owner: OwnersPace
    measured: Measured
    plan: Plan


def paces(state: State, record: Sequence[Recorded], now: datetime) -> Paces:
    """The pace of every stage on the route of `state`, which is the fold of `record`."""
    times = measured(state, record)
    found = spells(times.stretches)
    uneven = unevenness(times.stretches, found)
    owner = owners_pace(times.guesses, found, uneven, now)
    guessed, now_plan = guesses(state.quilt, state.target), plan(state)
    stages = {
        line.stage.id: _stage_pace(line, owner, guessed[line.stage.id], found, uneven)
        for line in now_plan.lines
    }
    return Paces(stages, owner, times, now_plan)


def _stage_pace(
    line: StageLine,
    owner: OwnersPace,
    guess: Guess,
    found: Sequence[Spell],
    uneven: Mapping[str, float],
) -> StagePace:
    stage = line.stage
    own = [spell for spell in found if spell.stage == stage.id]
    row, more = owner.row(stage.id, line.done, NEXT_FEW)
    minutes = exp(more + sum(one.chance * one.belief.of(row) for one in owner.likely))
    timed = sum(spell.n for spell in own)
    return StagePace(
        stage=stage,
        minutes=minutes,
        timed=timed,
        sessions=len(own),
        uneven=uneven.get(stage.id, UNEVEN),
        reason=_reason(stage, guess, minutes, timed, len(own), bool(found)),
    )


def _reason(
    stage: RouteStage, guess: Guess, minutes: float, timed: int, sessions: int, others: bool
) -> str:
    if timed:
        pieces = stage.counts.count(timed)
        many = several(sessions, sessions, "session", "sessions")
        return f"{each_takes(minutes)} each, measured at {pieces} in {many}"
    if others:
        return f"{guess.reason}; by your pace so far {each_takes(minutes)}"
    return guess.reason
