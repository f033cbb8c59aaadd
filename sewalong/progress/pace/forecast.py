"""What is left: hours at stages that were measured, and said apart what is only guessed.

The time ahead of several stages together has the mean and the variance of its parts with
all their ties: what one stage tells of another, how much faster she will get, the evenings
still to come, and how unevenly single pieces go. It is taken as log-normal: sums of times
lean that way, and it cannot fall below nothing. What is left of the stage in hand is done
partly in the evening that has begun, whose pace is known already.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date, datetime
from math import ceil, exp, log, log1p, sqrt

from msgspec import Struct

from sewalong.progress.pace.belief import Row
from sewalong.progress.pace.hours_ahead import Hours, LogNormal, range_of
from sewalong.progress.pace.owners_pace import OWN_FAULT, Likely
from sewalong.progress.pace.paces import Paces, StagePace
from sewalong.progress.pace.sessions import SessionFacts, fullest_week, usual_hours
from sewalong.progress.record.events.sessions import is_over
from sewalong.progress.record.readiness import ready
from sewalong.progress.record.route import FINISHING
from sewalong.progress.record.state import State

FIRST_SESSION = 1.0
"""Hours of a session while the owner's own are not known: a guess."""

LEAST_LEFT = 0.02
"""Counts that a stage not done has left at least: to pick up what is begun and to see that it
is whole takes a moment. From memory."""


class StageForecast(Struct, frozen=True):
    """One stage that has counts to do, and the hours they take; `pace` says from what."""

    pace: StagePace
    to_do: int
    begun: bool
    after_units: bool
    hours: Hours

    @property
    def to_do_in_words(self) -> str:
        """ "9 rows" """
        return self.pace.stage.counts.count(self.to_do)


class Forecast(Struct, frozen=True):
    """Hours left at stages with a time of the owner's own (`measured`), at those without
    (`guessed`), both together (`in_all`), and at those after the units; None where there are none.

    `session_hours` is the length of a session that `sessions` (least and most) counts in,
    the owner's own usual one when `own_sessions`. `spent` is the hours measured so far,
    `fullest_week` the most hours at work in any seven days (None where none are known).
    `first_day` is that of the first session, `evenings` how many there were; `not_planned`
    lists the finishing this quilt is not planned to have.
    """

    measured: Hours | None
    guessed: Hours | None
    in_all: Hours | None
    after_units: Hours | None
    sessions: tuple[int, int]
    session_hours: float
    own_sessions: bool
    stages: tuple[StageForecast, ...]
    spent: float
    fullest_week: float | None
    first_day: date | None
    evenings: int
    not_planned: tuple[str, ...]

    @property
    def not_begun(self) -> tuple[str, ...]:
        """Labels of the stages never begun."""
        return tuple(one.pace.stage.label for one in self.stages if not one.begun)


def forecast_from(
    state: State,
    known: Paces,
    facts: Sequence[SessionFacts],
    now: datetime,
    session_minutes: float | None = None,
) -> Forecast:
    """What is left of `state` at `now`, from the paces of its record and its sessions.

    `session_minutes` sets the length of a session instead of the owner's own usual one.
    """
    own = usual_hours(facts)
    session = session_minutes / 60 if session_minutes else own or FIRST_SESSION
    ahead = Ahead(known, session, _tonight(state, known, facts, now, own or FIRST_SESSION))
    of_units = {stage.id for stage in state.quilt.method.stages}
    stages = tuple(
        StageForecast(
            pace=known.stages[line.stage.id],
            to_do=line.to_do,
            begun=line.done > 0,
            after_units=line.stage.id not in of_units,
            hours=ahead.of([line.stage.id]),
        )
        for line in known.plan.lines
        if line.to_do
    )

    def together(some: Sequence[StageForecast]) -> Hours | None:
        return ahead.of([one.pace.stage.id for one in some]) if some else None

    in_all = together(stages)
    return Forecast(
        measured=together([one for one in stages if one.pace.measured]),
        guessed=together([one for one in stages if not one.pace.measured]),
        in_all=in_all,
        after_units=together([one for one in stages if one.after_units]),
        sessions=_many(in_all, session),
        session_hours=session,
        own_sessions=own is not None and session_minutes is None,
        stages=stages,
        spent=sum(one.hours for one in facts),
        fullest_week=fullest_week(facts),
        first_day=facts[0].opened.date() if facts else None,
        evenings=len(facts),
        not_planned=tuple(name for name in FINISHING if name not in state.quilt.finishing),
    )


def _many(in_all: Hours | None, session: float) -> tuple[int, int]:
    if in_all is None:
        return 0, 0
    return ceil(in_all.low / session), ceil(in_all.high / session)


def _tonight(
    state: State,
    known: Paces,
    facts: Sequence[SessionFacts],
    now: datetime,
    usual: float,
) -> Mapping[str, float]:
    """The part of what is left of the stage in hand that this evening will see done."""
    session, stage_id = state.session, state.last_counted
    stage = state.route.stage(stage_id) if stage_id else None
    if session is None or stage is None or is_over(session, now) or not facts:
        return {}
    if not session.number == known.owner.evening == facts[-1].number:
        return {}
    line, pace = known.plan.line(stage.id), known.stages[stage.id]
    if not line.to_do:
        return {}
    fits = max(0.0, usual - facts[-1].at_work) * 60 / pace.minutes
    return {stage.id: min(line.to_do, fits, ready(state, stage)) / line.to_do}


class Ahead(Struct, frozen=True):
    """What turns stages into hours: sessions are of `session` hours; `tonight` gives by stage
    the part that is done in the evening the paces know of."""

    known: Paces
    session: float
    tonight: Mapping[str, float]

    def of(self, stages: Sequence[str]) -> Hours:
        """The hours of these stages together; each has something to do."""
        return range_of([self._if(likely, stages) for likely in self.known.owner.likely])

    def _if(self, likely: Likely, stages: Sequence[str]) -> LogNormal:
        rows: list[Row] = []
        means: list[float] = []
        variance = later = 0.0
        between = likely.evenings**2
        for stage in stages:
            line, here = self.known.plan.line(stage), self.tonight.get(stage, 0.0)
            row, more = self.known.owner.row(stage, line.done, line.to_do, here)
            left = max(line.to_do - line.begun, LEAST_LEFT)
            sure = likely.belief.of(row) + more + log(left / 60)
            mean = exp(sure + (likely.belief.tie(row, row) + (1 - here) * between) / 2)
            uneven = self.known.stages[stage].uneven / line.to_do + OWN_FAULT**2
            variance += mean**2 * uneven
            later += mean * (1 - here)
            rows.append(row)
            means.append(mean)
        for row, mean in zip(rows, means, strict=True):
            for other, its in zip(rows, means, strict=True):
                variance += mean * its * (exp(likely.belief.tie(row, other)) - 1)
        variance += later**2 * (exp(between) - 1) / max(1.0, later / self.session)
        in_all = sum(means)
        spread = log1p(variance / in_all**2)
        return LogNormal(likely.chance, log(in_all) - spread / 2, sqrt(spread))
