"""What is left, as a range of hours and of sessions like the owner's own.

Each stage's time ahead is a gamma–Poisson prediction. Three things keep its range from
shrinking more than it should: sessions differ, so even a well-known pace is only as sure
as the few sessions ahead let it be; how much faster she will get is not known; and the
guesses of stages not begun err together, since one owner makes all of them. The sum has
the mean and the variance of the parts with those ties, and is taken as log-normal: sums
of times lean that way, and it cannot fall below nothing.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, exp, log, log1p, sqrt
from statistics import NormalDist

from msgspec import Struct

from sewalong.progress.pace.duration_words import hours_between, listed, several
from sewalong.progress.pace.evidence import MOTIONS, SESSION_SPREAD
from sewalong.progress.pace.paces import Paces, Span, StagePace
from sewalong.progress.pace.sessions import SessionFacts, fullest_week, usual_hours

HELD = 0.80
"""The chance with which the true time lies in the stated range."""

FIRST_SESSION = 1.0
"""Hours of a session while the owner's own are not known: a guess."""

SMALL_STEP = 0.01
"""How far the slope is moved to see what it changes."""


class StageForecast(Struct, frozen=True):
    """One stage that has counts to do; hours, and the reason for them in words."""

    stage: str
    label: str
    to_do: int
    to_do_in_words: str
    begun: bool
    low: float
    middle: float
    high: float
    reason: str


class Forecast(Struct, frozen=True):
    """Hours left: `low` to `high` holds the truth in 80 of 100 cases, `middle` in the middle.

    `session_hours` is the length of a session that `sessions` (least and most) counts in,
    the owner's own usual one when `own_sessions`. `spent` is the hours so far, `fullest_week`
    the most in any seven days of the record (None before the first session).
    """

    low: float
    middle: float
    high: float
    sessions: tuple[int, int]
    session_hours: float
    own_sessions: bool
    stages: tuple[StageForecast, ...]
    not_begun: tuple[str, ...]
    spent: float
    fullest_week: float | None

    @property
    def nothing_left(self) -> bool:
        """Whether every stage is done."""
        return not self.stages

    @property
    def sentence(self) -> str:
        """ "About 9 to 13 hours, 6 to 9 sessions like yours." """
        if self.nothing_left:
            return "Nothing is left to do."
        whose = "like yours" if self.own_sessions else f"of {_length(self.session_hours)}"
        many = several(*self.sessions, "session", "sessions")
        return f"About {hours_between(self.low, self.high)}, {many} {whose}."

    @property
    def lines(self) -> tuple[str, ...]:
        """One line for each stage with its hours and why, then what is easily forgotten."""
        lines = [
            f"{one.label}: {one.to_do_in_words}, {hours_between(one.low, one.high)} ({one.reason})"
            for one in self.stages
        ]
        if self.not_begun:
            lines.append(f"Not begun, and counted in: {listed(self.not_begun)}.")
        return tuple(lines)


def forecast_from(
    known: Paces, facts: Sequence[SessionFacts], session_minutes: float | None = None
) -> Forecast:
    """What is left, from the paces of a record and its sessions.

    `session_minutes` sets the length of a session instead of the owner's own usual one.
    """
    own = usual_hours(facts)
    session = session_minutes / 60 if session_minutes else own or FIRST_SESSION
    ahead = tuple(
        _ahead(one, known, session)
        for one in known.stages.values()
        if known.plan.line(one.stage.id).to_do
    )
    low, middle, high = _in_all(ahead, known)
    return Forecast(
        low=low,
        middle=middle,
        high=high,
        sessions=(ceil(low / session - 1e-9), ceil(high / session - 1e-9)),
        session_hours=session,
        own_sessions=own is not None and session_minutes is None,
        stages=tuple(_line(one, known) for one in ahead),
        not_begun=tuple(
            one.pace.stage.label
            for one in ahead
            if not known.plan.line(one.pace.stage.id).done and not one.pace.timed
        ),
        spent=sum(one.hours for one in facts),
        fullest_week=fullest_week(facts),
    )


class Ahead(Struct, frozen=True):
    """The time ahead at one stage: so much `work`, as if in `k` independent pieces.

    `lean` is how much the logarithm of its time moves with the slope of learning.
    """

    pace: StagePace
    work: float
    k: float
    lean: float

    @property
    def mean(self) -> float:
        """Minutes, on average."""
        return self.pace.rate.mean(self.k) * self.work / self.k

    @property
    def variance(self) -> float:
        """Of the minutes."""
        return self.pace.rate.variance(self.k) * (self.work / self.k) ** 2

    def hours(self, p: float) -> float:
        """Hours within which it is done with chance `p`."""
        return self.pace.rate.quantile(self.k, p) * self.work / self.k / 60


def _ahead(pace: StagePace, known: Paces, session: float) -> Ahead:
    line = known.plan.line(pace.stage.id)
    span = Span(line.done, line.to_do)
    work = span.ahead(known.slope.b) * (1 - line.begun / line.to_do)
    lean = _lean(span, known.slope.b) if pace.timed else 0.0
    in_sessions = max(1.0, pace.rate.mean(work) / 60 / session)
    spread = (
        1 / (MOTIONS * line.to_do)
        + SESSION_SPREAD**2 / in_sessions
        + lean**2 * known.slope.variance
    )
    return Ahead(pace, work, 1 / spread, lean)


def _lean(span: Span, b: float) -> float:
    """Change of the logarithm of (time ahead by time so far) with the slope."""

    def ratio(slope: float) -> float:
        return log(span.ahead(slope) / span.to_do) - log(
            span.work(slope, 0, span.done) / max(1, span.done)
        )

    if not span.done:
        return 0.0
    return (ratio(b + SMALL_STEP) - ratio(b)) / SMALL_STEP


def _in_all(ahead: Sequence[Ahead], known: Paces) -> tuple[float, float, float]:
    """Low, middle and high hours of all stages together."""
    if not ahead:
        return 0.0, 0.0, 0.0
    tail = (1 - HELD) / 2
    if len(ahead) == 1:
        low, middle, high = (ahead[0].hours(p) for p in (tail, 0.5, 1 - tail))
        return low, middle, high
    mean = sum(one.mean for one in ahead)
    variance = sum(one.variance for one in ahead)
    for i, one in enumerate(ahead):
        for other in ahead[:i]:
            guessed = (1 - one.pace.own) * (1 - other.pace.own) * known.owner_variance
            learned = one.lean * other.lean * known.slope.variance
            variance += 2 * one.mean * other.mean * (guessed + learned)
    spread = log1p(variance / mean**2)
    middle = log(mean / 60) - spread / 2
    z = NormalDist().inv_cdf(1 - tail) * sqrt(spread)
    return exp(middle - z), exp(middle), exp(middle + z)


def _line(one: Ahead, known: Paces) -> StageForecast:
    line = known.plan.line(one.pace.stage.id)
    tail = (1 - HELD) / 2
    return StageForecast(
        stage=line.stage.id,
        label=line.stage.label,
        to_do=line.to_do,
        to_do_in_words=line.stage.counts.count(line.to_do),
        begun=line.done > 0,
        low=one.hours(tail),
        middle=one.hours(0.5),
        high=one.hours(1 - tail),
        reason=one.pace.reason,
    )


def _length(hours: float) -> str:
    minutes = round(hours * 60)
    if minutes == 60:
        return "an hour"
    return f"{minutes} minutes"
