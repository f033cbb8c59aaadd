"""The sessions so far as facts: pieces, hours, and what took the time."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from datetime import datetime, timedelta
from statistics import median

from msgspec import Struct

from sewalong.piecing.method import Stage
from sewalong.progress.pace.duration_words import each_takes, hours
from sewalong.progress.pace.paces import Paces
from sewalong.progress.record.events import Recorded
from sewalong.progress.record.state import State

RECENT = 10
"""Sessions that make the usual length of one. From memory."""


class SessionFacts(Struct, frozen=True):
    """One session. `hours` is the sewing in it, idle gaps left out, and counts without a
    known time taken at their stage's pace; `counts` is by stage, less what was unpicked.

    `pieces` is all counts of all stages together, `units` the units made so far at its end.
    """

    number: int
    opened: datetime
    hours: float
    counts: Mapping[str, int]
    pieces: int
    units: int
    is_open: bool


class WorkPoint(Struct, frozen=True):
    """Where the work stood at the end of a session: hours so far, and units there were."""

    at: datetime
    session: int
    hours: float
    units: int


class StageTime(Struct, frozen=True):
    """What one stage took so far: `share` of all hours, from 0 to 1; `each` in minutes."""

    stage: str
    label: str
    n: int
    hours: float
    share: float
    each: float
    sentence: str


def session_facts(
    state: State, record: Sequence[Recorded], known: Paces
) -> tuple[SessionFacts, ...]:
    """Every session in which something was counted, in order.

    `state` is the fold of `record`, `known` its paces.
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
                    hours=sum(known.minutes_of(one) for one in within) / 60,
                    counts=session.counts,
                    pieces=sum(session.counts.values()),
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
    """The middle one of the last sessions' hours, leaving out the open one; None for none."""
    closed = [one.hours for one in facts if not one.is_open and one.hours > 0]
    return median(closed[-RECENT:]) if closed else None


def fullest_week(facts: Sequence[SessionFacts]) -> float | None:
    """The most hours in any seven days of the record; None before the first session."""
    week = timedelta(days=7)
    sums = [
        sum(one.hours for one in facts if first.opened <= one.opened < first.opened + week)
        for first in facts
    ]
    return max(sums, default=None)


def work_over_time(facts: Sequence[SessionFacts]) -> tuple[WorkPoint, ...]:
    """One point for each session; progress is the hours of work, not the units there are.

    Of units nearly all come in the last hours: everything is done at once at the end.
    """
    points = []
    so_far = 0.0
    for one in facts:
        so_far += one.hours
        points.append(WorkPoint(one.opened, one.number, so_far, one.units))
    return tuple(points)


def what_took_the_time(known: Paces) -> tuple[StageTime, ...]:
    """Every stage begun, the longest first."""
    spent: dict[str, tuple[int, float]] = {}
    for stretch in known.stretches:
        n, minutes = spent.get(stretch.stage, (0, 0.0))
        spent[stretch.stage] = (n + stretch.n, minutes + known.minutes_of(stretch))
    in_all = sum(minutes for _, minutes in spent.values())
    times = []
    for stage_id, (n, minutes) in spent.items():
        stage = known.stages[stage_id].stage
        each = minutes / n if n > 0 else known.stages[stage_id].minutes
        share = minutes / in_all if in_all else 0.0
        sentence = (
            f"{stage.label}: {hours(minutes / 60)}, {share:.0%} of the time, "
            f"{stage.counts.count(n)}, {each_takes(each)} each"
        )
        times.append(StageTime(stage_id, stage.label, n, minutes / 60, share, each, sentence))
    return tuple(sorted(times, key=lambda one: -one.hours))


def minutes_per_unit(facts: Sequence[SessionFacts]) -> float | None:
    """Minutes of work so far for each unit there is; None while there is no unit."""
    if not facts or facts[-1].units <= 0:
        return None
    return sum(one.hours for one in facts) * 60 / facts[-1].units
