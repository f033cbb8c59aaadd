"""What to do with the minutes there are: which stages, how many, in what order.

Every stage is worked as far as its pile or the time goes, one after another. Of all such
evenings that use the time nearly as well as the best, the one is taken that does not end
with bias edges lying open, then the one with the fewest changes of station, then the one
that goes on with the stage in hand.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime

from msgspec import Struct
from msgspec.structs import replace

from sewalong.piecing.method import Stage, Station
from sewalong.progress.joining.bias_cuts import bias_cuts
from sewalong.progress.joining.current_stage import in_hand
from sewalong.progress.pace.duration_words import each_takes, hours, how_sure
from sewalong.progress.pace.exclusions import LeaveOut, is_left_out, labels_left_out
from sewalong.progress.pace.paces import Paces, paces
from sewalong.progress.record.begun_rows import left_begun, pieces_held, units_across
from sewalong.progress.record.events.every_kind import Recorded
from sewalong.progress.record.readiness import ready
from sewalong.progress.record.route import SEW_ROWS, RouteStage
from sewalong.progress.record.state import State

CHANGE_MINUTES = 3.0
"""To put one thing away and get the next out, for each move to another place. From memory."""

NEARLY = 0.2
"""An evening may leave this part of its minutes unused to spare a change of station.
From memory."""

MOST_STEPS = 8
"""Stages one evening is planned through: from memory, more is no plan."""
KEPT = 40
"""Evenings followed up at each step, so that the search stays short."""


class Step(Struct, frozen=True):
    """`n` counts of a stage in about so many minutes, getting set up included; a guess unless
    the owner's pace at the stage was `measured`."""

    stage: str
    label: str
    station: Station
    n: int
    n_in_words: str
    minutes: float
    measured: bool
    why: str

    @property
    def facts(self) -> tuple[str, ...]:
        """The same, one fact each."""
        return (
            f"{self.label.capitalize()}, at the {self.station}: {self.n_in_words}.",
            f"It takes {each_takes(self.minutes)}{'' if self.measured else ', a guess'}.",
            f"why: {self.why}",
        )

    @property
    def sentence(self) -> str:
        """ "Sew, at the machine: 21 four-patches, about 42 minutes." """
        return (
            f"{self.label.capitalize()}, at the {self.station}: {self.n_in_words}, "
            f"{each_takes(self.minutes)}{'' if self.measured else ', a guess'}. {self.why}"
        )


class Tonight(Struct, frozen=True):
    """The steps in order. `changes` counts changes of station between them.

    `ending` says where it stops and why there; with no steps, why there are none.
    `left_out` lists the stages left out, which keep their piles and lose nothing.
    """

    steps: tuple[Step, ...]
    minutes: float
    changes: int
    ending: str
    left_out: str

    @property
    def in_all(self) -> str:
        """The time of all steps, and how much of it is guessed: "about 36 minutes, partly a guess"."""
        return f"{each_takes(self.minutes)}{how_sure([step.measured for step in self.steps])}"


def tonight(
    state: State,
    record: Sequence[Recorded],
    now: datetime,
    minutes: float,
    left_out: LeaveOut = frozenset(),
) -> Tonight:
    """What to do in `minutes` from `now`; `state` is the fold of `record`.

    Raises ValueError for minutes of zero or less.
    """
    if minutes <= 0:
        raise ValueError("an evening has some minutes")
    asked = _Asked(state, paces(state, record, now), minutes, left_out)
    labels = labels_left_out(
        (line.stage for line in asked.known.plan.lines if line.to_do), left_out
    )
    best = asked.best()
    if best is None:
        return Tonight((), 0.0, 0, asked.why_nothing(), labels)
    return Tonight(
        steps=tuple(asked.steps(best)),
        minutes=best.used,
        changes=best.changes,
        ending=asked.ending(best),
        left_out=labels,
    )


class _Evening(Struct, frozen=True):
    """An evening as far as it is planned."""

    state: State
    to_do: Mapping[str, int]
    blocks: tuple[tuple[str, int, float], ...] = ()
    used: float = 0.0
    changes: int = 0
    station: Station | None = None
    bias_open: bool = False


class _Asked(Struct, frozen=True):
    state: State
    known: Paces
    minutes: float
    left_out: LeaveOut

    def best(self) -> _Evening | None:
        """The best evening with anything in it, or None."""
        lines = self.known.plan.lines
        level = [_Evening(self.state, {line.stage.id: line.to_do for line in lines})]
        found: list[_Evening] = []
        for _ in range(MOST_STEPS):
            level = [longer for one in level for longer in self._longer(one)]
            level = sorted(level, key=lambda one: (one.changes, -one.used))[:KEPT]
            found += level
        if not found:
            return None
        enough = max(one.used for one in found) - NEARLY * self.minutes
        return min((one for one in found if one.used >= enough), key=self._merit)

    def _merit(self, one: _Evening) -> tuple[bool, int, bool, float]:
        first = one.blocks[0][0]
        return (one.bias_open, one.changes, first != self._in_hand(), -one.used)

    def _in_hand(self) -> str:
        return in_hand(self.state, self.known.plan).line.stage.id

    def _longer(self, one: _Evening) -> Iterator[_Evening]:
        for stage in self.state.route.stages:
            if one.blocks and one.blocks[-1][0] == stage.id:
                continue
            if self._can(stage) and (longer := self._with(one, stage)) is not None:
                yield longer

    def _can(self, stage: RouteStage) -> bool:
        if is_left_out(stage, self.left_out):
            return False
        opener = self._opener(stage)
        return opener is None or not is_left_out(opener, self.left_out)

    def _opener(self, stage: RouteStage) -> Stage | None:
        """The stage that opens what a bias cut leaves, which then has to follow tonight."""
        if not isinstance(stage, Stage) or stage.id not in bias_cuts(self.state.quilt):
            return None
        return next(
            (
                after
                for after in self.state.route.of_pieces
                if after.takes and after.takes[0].pile == stage.makes.pile
            ),
            None,
        )

    def _with(self, one: _Evening, stage: RouteStage) -> _Evening | None:
        """The evening with as much of `stage` as pile and time allow, or None for nothing."""
        opener = self._opener(stage)
        each = self.known.stages[stage.id].minutes
        left = self.minutes - one.used - self._setting_up(one, stage)
        if opener is not None and isinstance(stage, Stage):
            each += stage.makes.count * self.known.stages[opener.id].minutes
            left -= CHANGE_MINUTES
        n = min(ready(one.state, stage), one.to_do[stage.id], int(left / each + 1e-9))
        if n <= 0:
            return None
        longer = self._after(one, stage, n)
        if opener is None or not isinstance(stage, Stage):
            return longer
        opened = min(n * stage.makes.count, longer.to_do[opener.id])
        return self._after(longer, opener, opened) if opened else longer

    def _setting_up(self, one: _Evening, stage: RouteStage) -> float:
        moves = one.station is not None and one.station is not stage.station
        return CHANGE_MINUTES if moves else 0.0

    def _after(self, one: _Evening, stage: RouteStage, n: int) -> _Evening:
        setting_up = self._setting_up(one, stage)
        took = setting_up + n * self.known.stages[stage.id].minutes
        cuts = stage.id in bias_cuts(self.state.quilt)
        return _Evening(
            state=_counted(one.state, stage, n),
            to_do={**one.to_do, stage.id: one.to_do[stage.id] - n},
            blocks=(*one.blocks, (stage.id, n, took)),
            used=one.used + took,
            changes=one.changes + (setting_up > 0),
            station=stage.station,
            bias_open=one.bias_open or cuts,
        )

    def steps(self, best: _Evening) -> Iterator[Step]:
        """The evening's steps with their reasons."""
        for place, (stage_id, n, took) in enumerate(best.blocks):
            stage = self.known.stages[stage_id].stage
            yield Step(
                stage=stage_id,
                label=stage.label,
                station=stage.station,
                n=n,
                n_in_words=stage.counts.count(n),
                minutes=took,
                measured=self.known.stages[stage_id].measured,
                why=self._why(best, place),
            )

    def _why(self, best: _Evening, place: int) -> str:
        stage = self.known.stages[best.blocks[place][0]].stage
        if place == 0:
            if stage.id == self._in_hand():
                return "It is the stage in hand."
            return "Enough waits for it, and it fits the time."
        before = self.known.stages[best.blocks[place - 1][0]].stage
        if before.id in bias_cuts(self.state.quilt):
            return "The same evening: cut edges stretch while they wait."
        if before.station is stage.station:
            return f"You can stay at the {stage.station}."
        return "Its pieces wait, and there is time left."

    def ending(self, best: _Evening) -> str:
        """Where the evening stops, and what to mind there."""
        stage = self.known.stages[best.blocks[-1][0]].stage
        parts = []
        if ready(best.state, stage) == 0 or best.to_do[stage.id] == 0:
            parts.append(f"Ends where the pile of “{stage.label}” does.")
        elif stage.station is Station.MACHINE:
            parts.append("Clip the chain after the last one; the rest keeps.")
        else:
            parts.append("Any whole piece is a good place to stop here.")
        if best.bias_open:
            parts.append("Lay what was cut flat: its edges are on the bias and stretch.")
        elif any(
            ready(best.state, cut) and best.to_do[cut.id]
            for cut in self.state.route.of_pieces
            if cut.id in bias_cuts(self.state.quilt)
        ):
            parts.append("Leave the diagonal cuts for another day: cut edges stretch as they wait.")
        return " ".join(parts)

    def why_nothing(self) -> str:
        """Why there is no step at all."""
        open_now = [line.stage for line in self.known.plan.lines if line.to_do and line.ready]
        if not open_now:
            return "Nothing can be done: no stage has enough waiting."
        able = [stage for stage in open_now if self._can(stage)]
        if not able:
            return "Everything that waits is left out for tonight. It keeps until another day."
        shortest = min(able, key=lambda stage: self.known.stages[stage.id].minutes)
        pace = self.known.stages[shortest.id]
        takes = f"{each_takes(pace.minutes)}{'' if pace.measured else ' (a guess)'}"
        return (
            f"No whole count fits in {hours(self.minutes / 60)}: the shortest, "
            f"{shortest.label}, takes {takes} each, with what must follow it the same day."
            if self._opener(shortest)
            else f"No whole count fits in {hours(self.minutes / 60)}: the shortest, "
            f"{shortest.label}, takes {takes}. Begin it and stop at the end of a seam."
        )


def _counted(state: State, stage: RouteStage, n: int) -> State:
    """The piles after `n` counts more, with nothing else changed."""
    done = {**state.done, stage.id: state.done[stage.id] + n}
    piles, begun = dict(state.piles), state.begun
    for taken in stage.takes:
        piles[taken.pile] -= n * taken.count
    if isinstance(stage, Stage):
        piles[stage.makes.pile] += n * stage.makes.count
        if stage.id == SEW_ROWS and begun:
            unit = state.quilt.method.unit
            across = units_across(state.route, unit)
            for pile, there in pieces_held(stage, unit, begun, across, n).items():
                piles[pile] += there
            begun = left_begun(begun, across, n)
    return replace(state, piles=piles, done=done, begun=begun)
