"""The sessions so far as facts: pieces, hours measured, and what took the time."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from datetime import datetime, timedelta
from itertools import accumulate
from statistics import median

from msgspec import Struct

from sewalong.piecing.method import Stage
from sewalong.progress.pace.duration_words import each_takes, hours
from sewalong.progress.pace.measured import Measured
from sewalong.progress.record.events.sessions import session_length
from sewalong.progress.record.route import Route, RouteStage
from sewalong.progress.record.state import State

RECENT = 10
"""Sessions that make the usual length of one. From memory."""


class SessionFacts(Struct, frozen=True):
    """One session.

    `length` is from sitting down to putting away, as it is shown everywhere. `hours` is the
    sewing that was measured in it, `gaps` how often it stood still for long; `untimed` counts
    the pieces without a time of their own, which are in no hours. `counts` is by stage, less what
    was unpicked; `pieces` is all counts together, `units` the units made so far at its end.
    """

    number: int
    opened: datetime
    length: timedelta
    hours: float
    gaps: int
    counts: Mapping[str, int]
    pieces: int
    untimed: int
    units: int
    is_open: bool

    @property
    def at_work(self) -> float:
        """Hours of it that an evening like it has for sewing: its length, and where it stood
        still for long what was measured."""
        return self.hours if self.gaps else self.length.total_seconds() / 3600


class StageTime(Struct, frozen=True):
    """What was measured at one stage: `share` of all hours, from 0 to 1; `each` in minutes.

    `untimed` of the `n` counts have no time of their own and are in none of these; with
    nothing measured at all `each` is None.
    """

    stage: str
    label: str
    n: int
    untimed: int
    hours: float
    share: float
    each: float | None
    sentence: str


def session_facts(state: State, known: Measured, now: datetime) -> tuple[SessionFacts, ...]:
    """Every session in which something was counted, in order.

    `known` is what was measured in the record that `state` is the fold of.
    """
    makes = _units_by_stage(state)
    stretches = defaultdict(list)
    for one in known.stretches:
        stretches[one.session].append(one)
    units = 0
    facts = []
    for session in state.sessions:
        if session.counts:
            within = stretches[session.number]
            units += sum(makes.get(one.stage, 0) * one.n for one in within)
            facts.append(
                SessionFacts(
                    number=session.number,
                    opened=session.opened,
                    length=session_length(session, now),
                    hours=sum(one.minutes or 0.0 for one in within) / 60,
                    gaps=sum(one.idle for one in within),
                    counts=session.counts,
                    pieces=sum(session.counts.values()),
                    untimed=sum(max(0, one.n) for one in within if one.minutes is None),
                    units=units,
                    is_open=session.is_open,
                )
            )
    return tuple(facts)


def _units_by_stage(state: State) -> dict[str, int]:
    unit = state.quilt.method.unit
    return {
        stage.id: stage.makes.count
        for stage in state.route.of_pieces
        if isinstance(stage, Stage) and stage.makes.pile == unit
    }


def usual_hours(facts: Sequence[SessionFacts]) -> float | None:
    """The middle one of the last sessions' hours at work, leaving out the open one and those
    with none; None where there is no other."""
    closed = [one.at_work for one in facts if not one.is_open and one.at_work > 0]
    return median(closed[-RECENT:]) if closed else None


def fullest_week(facts: Sequence[SessionFacts]) -> float | None:
    """The most hours at work in any seven days of the record; None before the first."""
    week = timedelta(days=7)
    sums = [
        sum(one.at_work for one in facts if first.opened <= one.opened < first.opened + week)
        for first in facts
    ]
    return max(sums, default=0.0) or None


def hours_so_far(facts: Sequence[SessionFacts]) -> tuple[float, ...]:
    """The hours measured up to the end of each session: progress is these, not the units there are.

    Of units nearly all come in the last hours: everything is done at once at the end.
    """
    return tuple(accumulate(one.hours for one in facts))


def what_took_the_time(route: Route, known: Measured) -> tuple[StageTime, ...]:
    """Every stage begun, the longest first; guesses are in no figure."""
    n: dict[str, int] = {}
    untimed: dict[str, int] = {}
    spent: dict[str, float] = {}
    for one in known.stretches:
        n[one.stage] = n.get(one.stage, 0) + one.n
        without = max(0, one.n) if one.minutes is None else 0
        untimed[one.stage] = untimed.get(one.stage, 0) + without
        spent[one.stage] = spent.get(one.stage, 0.0) + (one.minutes or 0.0)
    in_all = sum(spent.values())
    times = []
    for stage in route.stages:
        if stage.id in n:
            minutes, each = spent[stage.id], known.each.get(stage.id)
            share = minutes / in_all if in_all else 0.0
            words = _stage_words(stage, n[stage.id], untimed[stage.id], minutes, share, each)
            times.append(
                StageTime(
                    stage=stage.id,
                    label=stage.label,
                    n=n[stage.id],
                    untimed=untimed[stage.id],
                    hours=minutes / 60,
                    share=share,
                    each=each,
                    sentence=words,
                )
            )
    return tuple(sorted(times, key=lambda one: -one.hours))


def _stage_words(
    stage: RouteStage, n: int, untimed: int, minutes: float, share: float, each: float | None
) -> str:
    pieces = stage.counts.count(n)
    if each is None:
        return f"{stage.label}: {pieces} counted without a time"
    without = f", {untimed} of them without a time" if untimed else ""
    return (
        f"{stage.label}: {hours(minutes / 60)}, {share:.0%} of the time measured, {pieces}{without}, "
        f"{each_takes(each)} each"
    )


def minutes_per_unit(facts: Sequence[SessionFacts]) -> float | None:
    """Minutes measured so far for each unit there is; None while there is no unit."""
    if not facts or facts[-1].units <= 0:
        return None
    return sum(one.hours for one in facts) * 60 / facts[-1].units
