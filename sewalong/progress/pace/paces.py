"""What each stage takes now: a belief about its rate, from its own record and the others'.

Per stage a gamma–Poisson belief. It begins with the guess from seam length and handling,
set right by how this owner compares with the guesses at her *other* stages, and is told
what her own sessions at the stage say. Times are brought to one level by the learning
curve, so that the first clumsy pieces are not held against the later ones, and older
sessions count for less.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime
from math import exp, log, sqrt

from msgspec import Struct

from sewalong.progress.pace.count_times import Stretch, stretches
from sewalong.progress.pace.duration_words import each_takes, several
from sewalong.progress.pace.evidence import evidence_of, kept
from sewalong.progress.pace.gamma_poisson import Rate
from sewalong.progress.pace.guesses import Guess, guesses
from sewalong.progress.pace.learning import curve_sum, unit_time
from sewalong.progress.pace.session_samples import Spell, spells
from sewalong.progress.pace.slope import Slope, slope_from
from sewalong.progress.plan.plan import Plan, plan
from sewalong.progress.record.events import Recorded
from sewalong.progress.record.route import RouteStage
from sewalong.progress.record.state import State

OWNER_SPREAD = 0.35
"""How far an owner's pace lies from the guesses at all stages alike, in logarithms."""

STAGE_SPREAD = 0.50
"""How far it lies from them at one stage beyond that, in logarithms. The first is from memory;
the second, 0.40 from memory, was widened on one seed of the simulation and then left."""

PRACTISED = 20
"""The guesses are for hands that have done so many counts of a stage before (from memory);
the few borders of a quilt so are guessed somewhat longer, its hundreds of pairs shorter."""

NEXT_FEW = 5
"""Counts ahead that "now" means: the very first one of a stage is no measure of an evening.
From memory."""


class StagePace(Struct, frozen=True):
    """The pace of one stage.

    `rate` is in practised counts, that is as quick as the `PRACTISED`-th; `minutes` is for
    one of the next few counts, the middle of what is thought likely. It was learned from
    `timed` counts in `sessions` sessions; `own` is the part, 0 to 1, that they have in it.
    """

    stage: RouteStage
    rate: Rate
    minutes: float
    timed: int
    sessions: int
    own: float
    reason: str


class Paces(Struct, frozen=True):
    """Every stage of the route, and what they have in common."""

    stages: Mapping[str, StagePace]
    slope: Slope
    owner_variance: float
    stretches: tuple[Stretch, ...]
    plan: Plan

    def minutes_of(self, stretch: Stretch) -> float:
        """The minutes of a stretch: its own, or at the stage's pace where it has none."""
        if stretch.minutes is not None:
            return stretch.minutes
        return max(0, stretch.n) * self.stages[stretch.stage].minutes


def paces(state: State, record: Sequence[Recorded], now: datetime) -> Paces:
    """The pace of every stage on the route of `state`, which is the fold of `record`."""
    guessed = guesses(state.quilt, state.target)
    timed = stretches(record, {stage: guess.minutes for stage, guess in guessed.items()})
    by_stage: dict[str, list[Spell]] = {stage: [] for stage in guessed}
    all_spells = spells(timed)
    for spell in all_spells:
        by_stage[spell.stage].append(spell)
    slope = slope_from(all_spells)
    now_plan = plan(state)
    told = {
        stage: _told(
            found, slope.b, Span(now_plan.line(stage).done, now_plan.line(stage).to_do), now
        )
        for stage, found in by_stage.items()
        if found
    }
    return Paces(
        stages={
            stage.id: _stage_pace(stage, guessed, told, by_stage[stage.id], slope.b, now_plan)
            for stage in state.route.stages
        },
        slope=slope,
        owner_variance=_owner(told, guessed)[1],
        stretches=timed,
        plan=now_plan,
    )


class Span(Struct, frozen=True):
    """Counts of a stage done and still to do."""

    done: int
    to_do: int

    def work(self, b: float, before: int, n: int) -> float:
        """The `n` counts after `before`, in counts that take a practised one's time."""
        return curve_sum(b, before, n) / unit_time(1.0, 2**-b, PRACTISED)

    def ahead(self, b: float) -> float:
        """What is still to do, in counts that take a practised one's time."""
        return self.work(b, self.done, self.to_do)


class Told(Struct, frozen=True):
    """What a stage's own sessions say: so much evidence for so many minutes each."""

    evidence: float
    each: float


def _told(found: Sequence[Spell], b: float, span: Span, now: datetime) -> Told:
    evidence = minutes = 0.0
    for since, spell in enumerate(reversed(found)):
        days = (now - spell.at).total_seconds() / 86400
        worth = evidence_of(spell.n) * kept(since, days)
        evidence += worth
        minutes += worth * spell.minutes / span.work(b, spell.before, spell.n)
    return Told(evidence, minutes / evidence)


def _owner(
    told: Mapping[str, Told], guessed: Mapping[str, Guess], but: str = ""
) -> tuple[float, float]:
    """The owner's factor on all guesses, as mean and variance of its logarithm.

    A normal prior and one reading for each stage, leaving out stage `but`, whose own
    record must not be counted twice.
    """
    precision, weighted = 1 / OWNER_SPREAD**2, 0.0
    for stage, one in told.items():
        if stage != but:
            weight = 1 / (1 / one.evidence + STAGE_SPREAD**2)
            precision += weight
            weighted += weight * log(one.each / guessed[stage].minutes)
    return weighted / precision, 1 / precision


def _stage_pace(
    stage: RouteStage,
    guessed: Mapping[str, Guess],
    told: Mapping[str, Told],
    found: Sequence[Spell],
    b: float,
    now_plan: Plan,
) -> StagePace:
    factor, variance = _owner(told, guessed, but=stage.id)
    spread = variance + STAGE_SPREAD**2
    # A gamma belief of `shape` pieces has a time whose relative variance is 1 / (shape - 2).
    shape = 2 + 1 / spread
    middle = guessed[stage.id].minutes * exp(factor + spread / 2)
    rate = Rate(shape, (shape - 1) * middle)
    own = told.get(stage.id)
    if own is not None:
        rate = rate.told(own.evidence, own.evidence * own.each)
    line = now_plan.line(stage.id)
    span = Span(line.done, line.to_do)
    minutes = _middle(rate) * span.work(b, line.done, NEXT_FEW) / NEXT_FEW
    timed = sum(spell.n for spell in found)
    return StagePace(
        stage=stage,
        rate=rate,
        minutes=minutes,
        timed=timed,
        sessions=len(found),
        own=1 - shape / rate.pieces,
        reason=_reason(stage, guessed[stage.id], minutes, timed, len(found), bool(told)),
    )


def _middle(rate: Rate) -> float:
    """The middle of the belief in minutes for one count, as if it were log-normal."""
    return rate.mean(1) / sqrt(1 + 1 / (rate.pieces - 2))


def _reason(
    stage: RouteStage, guess: Guess, minutes: float, timed: int, sessions: int, others: bool
) -> str:
    if timed:
        pieces = stage.counts.count(timed)
        return f"{each_takes(minutes)} each, from {pieces} in {several(sessions, sessions, 'session', 'sessions')}"
    if others:
        return f"{guess.reason}; by your pace so far {each_takes(minutes)}"
    return guess.reason
