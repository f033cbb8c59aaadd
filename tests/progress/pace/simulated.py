"""Invented quilters at invented quilts, to see how often a stated range holds the truth.

Each quilter differs from the guesses of the program, in all stages alike and in each; gets
faster by one of the two learning models, at a rate of her own; slows down in the course of
an evening; has better and worse evenings; leaves the machine for minutes or for an hour;
types counts one by one, in batches, or a whole evening's in one heap; mistypes some. All
spreads are invented, written here before any range was looked at, and none is read from
the program under test but the guesses themselves.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import partial
from math import ceil, exp, log2
from random import Random

from sewalong.piecing.catalogue import method
from sewalong.progress.pace.forecast import Forecast
from sewalong.progress.pace.guesses import guesses
from sewalong.progress.record import events as e
from sewalong.progress.record.fold import fold
from sewalong.progress.record.route import TopStage, route_for
from sewalong.quilt.quilt import Quilt
from tests.progress.pace.evenings import Diary, a_quilt, forecast_of

METHODS = ("stacked-four-patch", "half-square-two", "paired-squares", "four-patch", "nine-patch")
SHORT_BREAK = 5.0
"""Breaks up to this many minutes belong to the work; longer ones do not."""


@dataclass(frozen=True)
class World:
    """How much quilters differ, as standard deviations of logarithms, or largest values."""

    owner: float = 0.35
    stage: float = 0.40
    session: tuple[float, float] = (0.05, 0.30)
    best_rate: float = 0.80
    fatigue: float = 0.15
    piece: float = 0.30


@dataclass(frozen=True)
class Moment:
    """The record as far as `events`, when so much of the work was done."""

    share: float
    events: int
    hours_left: float


@dataclass(frozen=True)
class Sewn:
    """One quilt from the first piece to the last."""

    quilt: Quilt
    record: tuple[e.Recorded, ...]
    moments: tuple[Moment, ...]

    def said(self, moment: Moment) -> Forecast:
        """What the program said at that moment."""
        record = self.record[: moment.events]
        return forecast_of(fold(self.quilt, record), record, record[-1].event.at)


def a_quilt_of(rng: Random) -> Quilt:
    """Any method, layout, borders and finishing."""
    rows, columns = rng.randint(4, 10), rng.randint(4, 9)
    id = rng.choice(METHODS)
    per_unit = {"stacked-four-patch": 2, "half-square-two": 1, "paired-squares": 0.5}
    per_unit |= {"four-patch": 4, "nine-patch": 9}
    return a_quilt(
        id,
        4 * ceil(per_unit[id] * rows * columns / 4) + 4,
        rows,
        columns,
        borders=rng.choice((0, 1, 2)),
        finishing=rng.choice(((), (), ("layer",), ("layer", "quilt"), ("layer", "quilt", "bind"))),
    )


class Quilter:
    """Her own pace at each stage, and how it goes on."""

    def __init__(self, quilt: Quilt, world: World, rng: Random) -> None:
        self.rng, self.world = rng, world
        owner = rng.gauss(0, world.owner)
        self.base = {
            stage: guess.minutes * exp(owner + rng.gauss(0, world.stage))
            for stage, guess in guesses(quilt, quilt.target).items()
        }
        rate = rng.uniform(world.best_rate, 1.0)
        model: Callable[[float, int], float] = rng.choice((by_unit, by_average))
        self.curve = partial(model, -log2(rate))
        self.made = dict.fromkeys(self.base, 0)
        self.session_spread = rng.uniform(*world.session)
        self.fatigue = rng.uniform(0, world.fatigue)
        self.evening = 1.0

    def sit_down(self) -> None:
        """A better or a worse evening."""
        self.evening = exp(self.rng.gauss(0, self.session_spread))

    def minutes(self, stage: str, since: float) -> float:
        """One count more, `since` minutes into the session; base is the time of the tenth."""
        self.made[stage] += 1
        level = self.curve(self.made[stage]) / self.curve(10)
        tired = 1 + self.fatigue * since / 60
        noise = exp(self.rng.gauss(-(self.world.piece**2) / 2, self.world.piece))
        mishap = 3.0 if self.rng.random() < 0.01 else 1.0
        return self.base[stage] * level * tired * self.evening * noise * mishap


def by_unit(b: float, n: int) -> float:
    """The time of the n-th by the unit model, the first taking 1."""
    return float(n**-b)


def by_average(b: float, n: int) -> float:
    """The same by the cumulative-average model."""
    return float(n ** (1 - b) - (n - 1) ** (1 - b))


def order_of_work(quilt: Quilt, rng: Random) -> Iterator[tuple[str, int]]:
    """Stages and counts: all at once, or in two or three waves; then the top."""
    waves = rng.choice((1, 1, 2, 3))
    wanted = {}
    need = {quilt.method.unit: quilt.units_for(quilt.target)}
    for stage in reversed(method(quilt.method_id).stages):
        counts = ceil(need.get(stage.makes.pile, 0) / stage.makes.count)
        wanted[stage.id] = counts
        for taken in stage.takes:
            need[taken.pile] = need.get(taken.pile, 0) + counts * taken.count
    done = dict.fromkeys(wanted, 0)
    for wave in range(1, waves + 1):
        for stage in method(quilt.method_id).stages:
            upto = ceil(wanted[stage.id] * wave / waves)
            yield stage.id, upto - done[stage.id]
            done[stage.id] = upto
    yield "sew-rows", quilt.target.rows
    for top in route_for(quilt, quilt.target).stages:
        if isinstance(top, TopStage):
            yield top.id, top.steps


def sew(rng: Random, world: World | None = None) -> Sewn:
    """One quilt from end to end, with the moments when a quarter, half and 3/4 were done."""
    quilt = a_quilt_of(rng)
    quilter = Quilter(quilt, world or World(), rng)
    diary = Diary(quilt)
    small = {stage.id for stage in quilt.method.stages}
    batch, length = rng.choice((1, 3, 6, 12)), rng.uniform(30, 150)
    heaps = rng.random() < 0.25
    spent, since = 0.0, 0.0
    marks: list[tuple[int, float]] = []
    unsaid: list[tuple[str, int]] = []

    def write_down() -> None:
        for stage, n in unsaid:
            if rng.random() < 0.03:
                diary.undo(diary.count(stage, n + rng.choice((1, 10)), 0.05))
                diary.pass_by(0.1)
            diary.count(stage, n, 0.03)
        unsaid.clear()
        marks.append((len(diary.record), spent))

    diary.sit_down()
    quilter.sit_down()
    for stage, n in order_of_work(quilt, rng):
        while n > 0:
            now = min(n, batch) if stage in small else 1
            minutes = sum(quilter.minutes(stage, since) for _ in range(now))
            gap = _gap(rng)
            diary.pass_by(minutes + gap)
            spent += minutes + (gap if gap <= SHORT_BREAK else 0.0)
            since += minutes
            n -= now
            unsaid.append((stage, now))
            if not heaps or len(unsaid) == 4:
                write_down()
            if since > length:
                write_down()
                diary.put_away()
                diary.sit_down(_next_evening(diary, rng))
                quilter.sit_down()
                since = 0.0
    write_down()
    return Sewn(quilt, tuple(diary.record), _moments(marks, spent))


def _next_evening(diary: Diary, rng: Random) -> datetime:
    return diary.now + timedelta(days=rng.choice((1, 1, 2, 3, 7)))


def _gap(rng: Random) -> float:
    chance = rng.random()
    if chance < 0.02:
        return rng.uniform(10, 90)
    return rng.uniform(0.5, SHORT_BREAK) if chance < 0.06 else 0.0


def _moments(marks: list[tuple[int, float]], spent: float) -> tuple[Moment, ...]:
    found = []
    for share in (0.25, 0.5, 0.75):
        before = [mark for mark in marks if mark[1] <= share * spent]
        events, so_far = before[-1] if before else marks[0]
        found.append(Moment(share, events, (spent - so_far) / 60))
    return tuple(found)


@dataclass
class Held:
    """How often the range held the truth at one share of the work."""

    quilts: int = 0
    within: int = 0
    over: int = 0
    width: float = 0.0

    @property
    def share(self) -> float:
        """From 0 to 1."""
        return self.within / self.quilts


def calibration(quilts: int, seed: int, world: World | None = None) -> dict[float, Held]:
    """By share of the work done: how often the truth lay within the stated range."""
    held: dict[float, Held] = {}
    for number in range(quilts):
        sewn = sew(Random(f"{seed}-{number}"), world)
        for moment in sewn.moments:
            said = sewn.said(moment)
            one = held.setdefault(moment.share, Held())
            one.quilts += 1
            one.within += said.low <= moment.hours_left <= said.high
            one.over += moment.hours_left > said.high
            one.width += said.high / said.low if said.low else 0.0
    return held
