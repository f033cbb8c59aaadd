"""The time each count took, from the record, with what was not sewing left out.

A count of n says that n were made since the count before it in the same session, at
whatever stage that was. Counts typed within seconds of each other are one heap: their
time is the whole stretch before the heap. Three things have no time that can be known and
keep only their number: the first count of a session typed with the session just opened, a
heap typed after the work, and a stretch with an idle gap in it. Where one count is long
work (a border, a row's worth of quilting), what was sewn before putting away and not
counted yet goes to the next count. What was sewn of a row and written down as begun goes to
the count of that row, however many evenings later.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import datetime, timedelta
from math import sqrt
from statistics import median

from msgspec import Struct
from msgspec.structs import replace

from sewalong.progress.record.events import every_kind as e
from sewalong.progress.record.events.undoing import effective
from sewalong.progress.record.route import JOIN_ROWS, SEW_ROWS

IN_ONE_GO = timedelta(seconds=10)
"""Counts no further apart than this are one heap; longer chains of them do no harm. From memory."""

KNOWN_ENOUGH = 3
"""Counts with a time from which on the owner's own middle one stands, not the guess.
From memory."""

TOO_FAST = 0.2
"""Faster than this part of the usual time, pieces were counted after they were made.
From memory."""

TOO_FAST_FOR_ANYONE = TOO_FAST / 4
"""The same part of the guess, while the owner's own usual time is not known: she may be four times
as fast. From memory."""

LONG_WORK = 10.0
"""Minutes guessed for one count from which on it may reach over several sessions. From memory."""

MINUTES_OF_GRACE = 5.0
"""A kettle is part of the work; a longer gap is not. From memory."""


class Stretch(Struct, frozen=True):
    """`n` counts of a stage (below zero: unpicked) and the minutes they took.

    `minutes` is None when the record cannot say; `idle` then tells that it is because of
    a gap. `at` is the time of the last of the counts, `seq` its place in the record.
    """

    session: int
    stage: str
    n: int
    minutes: float | None
    at: datetime
    seq: int
    idle: bool = False


def counted(event: e.Event) -> tuple[str, int] | None:
    """The stage an event counts at and by how many, below zero for what is taken back."""
    match event:
        case e.Counted():
            return event.stage, event.n
        case e.Unpicked():
            return event.stage, -event.n
        case e.RowsJoined():
            return JOIN_ROWS, 1
        case e.BobbinRanOut():
            return event.stage, -event.unsewn
    return None


def stretches(record: Sequence[e.Recorded], guesses: Mapping[str, float]) -> tuple[Stretch, ...]:
    """All counts of the record in order, with their times.

    `guesses` gives minutes for one count by stage; counts of stages it does not name are
    left out. Only counting and the opening and closing of sessions are read, other events
    passed over.
    """
    raw = tuple(_raw(effective(record), guesses))
    usual = usual_minutes(raw, guesses)
    return tuple(_judged(stretch, usual[stretch.stage]) for stretch in raw)


def usual_minutes(raw: Iterable[Stretch], guesses: Mapping[str, float]) -> dict[str, float]:
    """By stage: the middle one of the times for one count, or the guess while there are few.

    With one or two times the larger of the guess and the shorter time stands, so that a slow
    beginning is not taken for a gap, and a gap not for the usual time.
    """
    each: dict[str, list[float]] = {stage: [] for stage in guesses}
    for stretch in raw:
        if stretch.minutes is not None and stretch.n > 0:
            minutes = stretch.minutes / stretch.n
            if minutes >= TOO_FAST_FOR_ANYONE * guesses[stretch.stage]:
                each[stretch.stage].append(minutes)
    return {
        stage: median(times)
        if len(times) >= KNOWN_ENOUGH
        else max([guesses[stage], *([min(times)] if times else [])])
        for stage, times in each.items()
    }


def longest_likely(n: int, usual: float) -> float:
    """Minutes beyond which `n` counts hold an idle gap: four usual times for one, less for
    each of many, whose times even out, and some grace. From memory."""
    return n * usual * (1.5 + 2.5 / sqrt(n)) + MINUTES_OF_GRACE


def _judged(stretch: Stretch, usual: float) -> Stretch:
    if stretch.minutes is None or stretch.n <= 0:
        return stretch
    if stretch.minutes > longest_likely(stretch.n, usual):
        return replace(stretch, minutes=None, idle=True)
    if stretch.minutes < TOO_FAST * stretch.n * usual:
        return replace(stretch, minutes=None)
    return stretch


class _RowsBegun:
    """The minutes that went into rows begun and not counted yet, until those rows are."""

    def __init__(self, guess: float) -> None:
        self._too_fast = TOO_FAST_FOR_ANYONE * guess
        self._rows = self._seams = 0
        self._minutes: float | None = 0.0

    def more(self, event: e.RowsBegun, minutes: float | None) -> None:
        """What is begun now, after `minutes` more at it; None: nobody can say."""
        if not self._rows:
            self._minutes, self._seams = 0.0, 0
        seams = sum(n * (units - 1) for n, units in event.pieces)
        new, longest = max(1, seams - self._seams), max((u for _, u in event.pieces), default=1)
        # One square more takes no row's time.
        too_fast = self._too_fast * new / max(new, longest)
        known = minutes is not None and minutes >= too_fast
        if not known or self._minutes is None or minutes is None:
            self._minutes = None
        else:
            self._minutes += minutes
        self._rows, self._seams = event.rows, seams

    def given_to(self, stretch: Stretch) -> Stretch:
        """The stretch with what was sewn before of the rows it counts."""
        if stretch.stage != SEW_ROWS or stretch.n <= 0 or not self._rows:
            return stretch
        part = min(stretch.n, self._rows) / self._rows
        self._rows -= min(stretch.n, self._rows)
        if self._minutes is None or stretch.minutes is None:
            return replace(stretch, minutes=None)
        before = part * self._minutes
        self._minutes -= before
        return replace(stretch, minutes=stretch.minutes + before)


def _raw(record: Sequence[e.Recorded], guesses: Mapping[str, float]) -> Iterator[Stretch]:
    begun = _RowsBegun(guesses.get(SEW_ROWS, 0.0))
    began: datetime | None = None
    carried = 0.0
    heap: list[e.Recorded] = []
    for recorded in record:
        event = recorded.event
        said = counted(event)
        counts = said is not None and said[0] in guesses
        if not (counts or isinstance(event, e.SessionOpened | e.SessionClosed | e.RowsBegun)):
            continue
        if heap and not (counts and _goes_on(heap[-1].event, event)):
            yield from map(begun.given_to, _times_of(heap, began, carried, guesses))
            began, carried, heap = heap[-1].event.at, 0.0, []
        if counts:
            heap.append(recorded)
        elif isinstance(event, e.RowsBegun):
            begun.more(event, None if began is None else carried + _minutes(began, event.at))
            began, carried = event.at, 0.0
        elif isinstance(event, e.SessionClosed):
            carried += 0.0 if event.forgotten else _minutes(began, event.ended)
            began = None
        else:
            began = event.at
    if heap:
        yield from map(begun.given_to, _times_of(heap, began, carried, guesses))


def _minutes(began: datetime | None, ended: datetime) -> float:
    """Minutes between; 0 where the beginning isn't known or the clock was set back."""
    return max(0.0, (ended - began).total_seconds() / 60) if began is not None else 0.0


def _goes_on(last: e.Event, event: e.Event) -> bool:
    return event.session == last.session and abs(event.at - last.at) <= IN_ONE_GO


def _times_of(
    heap: Sequence[e.Recorded],
    began: datetime | None,
    carried: float,
    guesses: Mapping[str, float],
) -> Iterator[Stretch]:
    """One stretch for every stage in the heap, its time shared out as the guesses go."""
    counts: dict[str, int] = {}
    for recorded in heap:
        said = counted(recorded.event)
        if said is not None:
            stage, n = said
            counts[stage] = counts.get(stage, 0) + n
    last = heap[-1]
    minutes = None if began is None else _minutes(began, last.event.at)
    if minutes is not None and all(guesses[stage] >= LONG_WORK for stage in counts):
        minutes += carried
    weights = {stage: max(1, abs(n)) * guesses[stage] for stage, n in counts.items()}
    in_all = sum(weights.values())
    for stage, n in counts.items():
        share = None if minutes is None else minutes * weights[stage] / in_all
        yield Stretch(last.event.session, stage, n, share, last.event.at, last.seq)
