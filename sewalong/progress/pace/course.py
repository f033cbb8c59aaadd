"""The course of a quilt: the hours measured so far, day by day, and how far there is to go."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta

from msgspec import Struct

from sewalong.progress.pace.by_date import DAYS_OF_A_WEEK, HISTORY, LEAST_EVENINGS
from sewalong.progress.pace.duration_words import hours
from sewalong.progress.pace.forecast import Forecast
from sewalong.progress.pace.forecast_words import surely
from sewalong.progress.pace.sessions import SessionFacts, hours_so_far
from sewalong.progress.record.time_words import day_said

LONGEST = 10 * 365
"""Days ahead beyond which no end is named: ten years say as little as none. From memory."""


class Course(Struct, frozen=True):
    """`so_far` is the hours measured up to the end of each day with a session, in order. The whole
    comes to `low` to `high` hours.

    At `a_week` hours, as it was so far, the end comes between `early` and `late`; all three are None
    while no habit shows, or with nothing left. `wanted` is the day it is wanted by, None for none.
    """

    so_far: tuple[tuple[date, float], ...]
    today: date
    low: float
    high: float
    a_week: float | None
    early: date | None
    late: date | None
    wanted: date | None
    sure: str

    @property
    def first(self) -> date:
        """The day it begins with."""
        return self.so_far[0][0] if self.so_far else self.today

    @property
    def spent(self) -> float:
        """Hours measured up to now."""
        return self.so_far[-1][1] if self.so_far else 0.0

    @property
    def end(self) -> date:
        """The last day there is something to show of."""
        known = (self.late, self.wanted, self.today + timedelta(days=1))
        return max(day for day in known if day is not None)

    def hours_on(self, day: date) -> float:
        """Hours measured up to the end of a day that has been."""
        return next((hours for then, hours in reversed(self.so_far) if then <= day), 0.0)


def course(
    facts: Sequence[SessionFacts], left: Forecast, today: date, wanted: date | None = None
) -> Course:
    """The course up to `today` and on from there, at the hours a week of the record so far.

    A habit shows after two weeks and two sessions; the weeks without any count as they were.
    """
    by_day: dict[date, float] = {}
    for one, so_far in zip(facts, hours_so_far(facts), strict=True):
        by_day[one.opened.date()] = so_far
    ahead = left.in_all
    a_week = _a_week(facts, today) if ahead is not None else None
    early = late = None
    if ahead is not None and a_week is not None:
        days = [one / a_week * DAYS_OF_A_WEEK for one in (ahead.low, ahead.high)]
        if days[1] <= LONGEST:
            early, late = (today + timedelta(days=round(one)) for one in days)
    spent = sum(one.hours for one in facts)
    return Course(
        so_far=tuple(by_day.items()),
        today=today,
        low=spent + (ahead.low if ahead else 0.0),
        high=spent + (ahead.high if ahead else 0.0),
        a_week=a_week,
        early=early,
        late=late,
        wanted=wanted,
        sure=surely(left.stages),
    )


def _a_week(facts: Sequence[SessionFacts], today: date) -> float | None:
    if len(facts) < LEAST_EVENINGS:
        return None
    days = (today - facts[0].opened.date()).days
    at_work = sum(one.at_work for one in facts)
    return at_work / days * DAYS_OF_A_WEEK if days >= HISTORY and at_work else None


def course_in_words(found: Course) -> tuple[str, ...]:
    """The same in words: what is measured, when it ends at this habit, and the day it is wanted."""
    lines = [
        f"{hours(found.spent)} measured so far." if found.spent else "Nothing measured so far."
    ]
    lines += end_in_words(found)
    if found.wanted is not None:
        lines.append(f"Wanted by {_day(found.wanted)}.")
    return tuple(lines)


def end_in_words(found: Course) -> tuple[str, ...]:
    """When it ends at this habit, in one sentence; none with nothing left."""
    return (_end(found),) if found.high > found.spent else ()


def _end(found: Course) -> str:
    if found.a_week is None:
        return "Too early to say when it is done: two weeks of sewing show a habit."
    habit = f"At {hours(found.a_week)} a week, as so far,"
    if found.early is None or found.late is None:
        return f"{habit} it takes longer than ten years."
    if found.early == found.late:
        return f"{habit} it is done on {_day(found.late)}{found.sure}."
    return f"{habit} it is done between {_day(found.early)} and {_day(found.late)}{found.sure}."


def _day(day: date) -> str:
    return f"{day_said(day)} {day.year}"
