"""What was sewn between two moments of the record, stage by stage and change by change."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from fractions import Fraction

from msgspec import Struct, field

from sewalong.piecing.method import Noun, Stage, Station
from sewalong.progress.measuring.proof import changed_by
from sewalong.progress.record.events import every_kind as e
from sewalong.progress.record.recount_rules import counts_made, maker
from sewalong.progress.record.route import (
    ADD_BORDERS,
    ADD_CORNERS,
    ADD_SASHES,
    JOIN_ROWS,
    ROW,
    RouteStage,
)
from sewalong.progress.record.rows_sewn import rows_pile
from sewalong.progress.record.settings import Settings
from sewalong.progress.record.stages.on_point import ADD_SIDES
from sewalong.progress.record.stages.sashes import SEW_SASH_ROWS
from sewalong.progress.record.state import SeamChange, State
from sewalong.progress.record.time_words import day_said
from sewalong.quilt.setting import SET_UNIT
from sewalong.quilt.web import IN_A_START, SEW_WEB, WEB_ROW, WEB_UNIT


class SewnThen(Struct, frozen=True):
    """Counts of one stage in one session (0: outside any), on the day they were counted."""

    session: int
    day: date
    n: int


class Doubtful(Struct, frozen=True):
    """One machine stage: `n` counts of it are at risk.

    `units` is how many units they come to (None for the top).
    """

    stage: str
    n: int
    noun: Noun
    units: int | None
    sewn: tuple[SewnThen, ...]


class Batch(Struct, frozen=True):
    """What was sewn between two changes at the machine: measure one of each to find the fault.

    `since` says what the batch began with.
    """

    since: str
    counts: Mapping[str, int]


def feeding(state: State, piece: str) -> tuple[RouteStage, ...]:
    """The machine stages that a measured piece came through, in order.

    A strip test comes through none of them, and speaks for all.
    """
    head = piece.partition(":")[0]
    machine = [stage for stage in state.route.stages if stage.station is Station.MACHINE]
    if head in ("strips", "middle"):
        return tuple(machine)
    known = head in state.route.piles
    wanted = _upstream(state, head if known else rows_pile(state.quilt).id)
    if state.quilt.is_web and not known:
        wanted.add(SEW_WEB)
    joins = {SEW_SASH_ROWS, ADD_SASHES, ADD_SIDES, JOIN_ROWS, ADD_CORNERS}
    top = {"column": joins, "centre": joins, "top": {*joins, ADD_BORDERS}}
    wanted |= top.get(head, set())
    return tuple(stage for stage in machine if stage.id in wanted)


def _upstream(state: State, pile: str) -> set[str]:
    """Every stage that a pile's pieces came through."""
    found: set[str] = set()
    piles = {pile}
    for stage in reversed(state.route.of_pieces):
        if stage.makes.pile in piles:
            found.add(stage.id)
            piles |= {taken.pile for taken in stage.takes}
    return found


class _Sewn(Struct):
    """`n` counts of a stage, as they were counted; less where some were unpicked."""

    stage: str
    session: int
    day: date
    batch: _BatchSoFar
    inside: bool
    n: int


class _BatchSoFar(Struct):
    since: str
    counts: dict[str, int] = field(default_factory=dict)

    def frozen(self) -> Batch:
        return Batch(self.since, {stage: n for stage, n in self.counts.items() if n})


class SewnBetween:
    """What was sewn at the stages `feeding`, and which of it after number `first` of the record
    and before `last`. Give it every event that still counts, in order."""

    def __init__(
        self, state: State, feeding: tuple[RouteStage, ...], first: int, last: int
    ) -> None:
        self.state = state
        self.first, self.last = first, last
        self.feeding = feeding
        self._ids = {stage.id for stage in self.feeding}
        self.sewn: list[_Sewn] = []
        self.batches = [_BatchSoFar("the last check" if first else "the beginning")]
        self.put: dict[str, list[str]] = {}
        self._settings: Settings | None = None

    def take(self, recorded: e.Recorded) -> None:
        """One event that still counts."""
        event, inside = recorded.event, self.first < recorded.seq < self.last
        match event:
            case e.Counted(stage=stage, n=n) if stage in self._ids:
                self._sew(event, stage, n, inside)
            case e.RowsJoined() if JOIN_ROWS in self._ids:
                self._sew(event, JOIN_ROWS, 1, inside)
            case e.Unpicked(stage=stage, n=n) | e.BobbinRanOut(stage=stage, unsewn=n):
                self._unsew(stage, n)
            case e.Recounted(how="made"):
                self._recount(event, inside)
            case e.PutAway(pile=pile, place=place) if any(
                one.inside and one.n for one in self.sewn
            ):
                self.put.setdefault(pile, []).append(place)
            case e.SettingsRecorded(settings=settings):
                self._machine(SeamChange(recorded.seq, event.at, settings), inside)
            case e.ToolChanged(tool=tool):
                self._machine(SeamChange(recorded.seq, event.at, tool=tool), inside)
            case _:
                pass

    def _machine(self, change: SeamChange, inside: bool) -> None:
        changed = changed_by(change, self._settings)
        self._settings = change.settings or self._settings
        if changed and inside:
            self.batches.append(_BatchSoFar(f"{changed} ({day_said(change.at.date())})"))

    def _sew(self, event: e.Event, stage: str, n: int, inside: bool) -> None:
        batch = self.batches[-1]
        if inside:
            batch.counts[stage] = batch.counts.get(stage, 0) + n
        self.sewn.append(_Sewn(stage, event.session, event.at.date(), batch, inside, n))

    def _unsew(self, stage: str, n: int) -> None:
        """The last counted are taken apart first."""
        for sewn in reversed(self.sewn):
            if sewn.stage == stage and n > 0:
                less = min(n, sewn.n)
                sewn.n -= less
                n -= less
                if sewn.inside:
                    sewn.batch.counts[stage] -= less

    def _recount(self, event: e.Recounted, inside: bool) -> None:
        stage = maker(self.state.route, event.pile)
        counts = counts_made(stage, event.counted - event.recorded) if stage else None
        if stage is None or counts is None or stage.id not in self._ids:
            return
        if counts > 0:
            self._sew(event, stage.id, counts, inside)
        else:
            self._unsew(stage.id, -counts)

    def total(self, stage: str) -> int:
        """Counts of a stage in between."""
        return sum(sewn.n for sewn in self.sewn if sewn.inside and sewn.stage == stage)

    def doubtful(self, stage: RouteStage) -> Doubtful:
        """What was sewn of a stage in between, by session."""
        sessions: dict[int, SewnThen] = {}
        for one in self.sewn:
            if one.inside and one.stage == stage.id and one.n:
                before = sessions.get(one.session)
                so_far, day = (before.n, before.day) if before else (0, one.day)
                sessions[one.session] = SewnThen(one.session, day, so_far + one.n)
        n = self.total(stage.id)
        units = None
        if isinstance(stage, Stage) and stage.id not in (SEW_SASH_ROWS, ADD_SIDES):
            units = int(n * stage.makes.count * _units_in(self.state, stage.makes.pile))
        return Doubtful(stage.id, n, stage.counts, units, tuple(sessions.values()))


def _units_in(state: State, pile: str) -> Fraction:
    """Units that come of one piece of a pile, along the stage that takes it."""
    if pile == ROW.id:
        return Fraction(state.target.columns)
    if state.quilt.is_web and pile == WEB_ROW.id:
        return Fraction(IN_A_START)
    if pile in (state.quilt.method.unit, SET_UNIT.id, WEB_UNIT.id):
        return Fraction(1)
    stage = next(s for s in state.quilt.method.stages if pile in {t.pile for t in s.takes})
    wanted = next(taken.count for taken in stage.takes if taken.pile == pile)
    return stage.makes.count * _units_in(state, stage.makes.pile) / wanted
