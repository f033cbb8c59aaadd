"""A date it is wanted by, and a steady habit: what they ask of each week."""

from __future__ import annotations

from datetime import date, timedelta
from enum import StrEnum
from math import ceil

from msgspec import Struct

from sewalong.progress.pace.duration_words import hours, hours_between, listed, several
from sewalong.progress.pace.forecast import Forecast
from sewalong.progress.pace.forecast_words import surely
from sewalong.progress.pace.hours_ahead import Hours
from sewalong.progress.record.time_words import day_said

DAYS_OF_A_WEEK = 7
AWAKE = 16
"""Hours in a day nobody can go beyond. From memory."""

HISTORY = 14
"""Days from the first session on before anything final is said: two weeks show a habit. From
memory."""

LONGEST_SESSION, MOST_A_WEEK = 24 * 60, 100
"""Minutes of a session, and sessions a week, beyond which no habit is meant: a day, and from
memory."""

LEAST_EVENINGS = 2
"""Sessions there must be by then: one evening, however long ago, is no pace. From memory."""


def read_day(text: str) -> date:
    """The day typed; raises ValueError, in a plain sentence, for what is none."""
    try:
        return date.fromisoformat(text.strip())
    except ValueError:
        raise ValueError(
            f"“{text.strip()[:40]}” is not a day. Write year-month-day, such as 2026-12-24."
        ) from None


class Verdict(StrEnum):
    """Whether a date can be kept."""

    DONE = "nothing left"
    DAY_HAS_COME = "the day has come"
    TOO_EARLY = "too early to say"
    CAN = "can be done"
    NEEDS_MORE = "may need more than there is"
    CANNOT = "cannot be done"


class ByDate(Struct, frozen=True):
    """What a date asks: hours a week from `low` to `high`, over `days` days from today on.

    With less than a week left the hours are those of all the days there are. The first of
    `lines` is the verdict, then come the stages after the units and what is not counted.
    """

    days: int
    low: float
    high: float
    verdict: Verdict
    lines: tuple[str, ...]


def by_date(
    forecast: Forecast, today: date, wanted: date, hours_a_week: float | None = None
) -> ByDate:
    """Hours a week from `today` (counted in) until the day before `wanted`.

    They are held against `hours_a_week`, the habit given, or else the owner's fullest week so
    far. Nothing final is said before `HISTORY` days of record; after that it cannot be done
    when even the low end of the forecast asks for more, or for more than `AWAKE` hours a day.
    """
    days = max(0, (wanted - today).days)
    left = forecast.in_all
    if left is None:
        return ByDate(days, 0.0, 0.0, Verdict.DONE, ("Nothing is left to do.",))
    if days == 0:
        come = "is today" if wanted == today else "is past"
        line = f"The day {come}, and {hours_between(left)} are left{surely(forecast.stages)}."
        return ByDate(0, left.low, left.high, Verdict.DAY_HAS_COME, (line, *_counted(forecast)))
    weeks = max(1.0, days / DAYS_OF_A_WEEK)
    asked = Hours(left.low / weeks, left.middle / weeks, left.high / weeks)
    has = hours_a_week if hours_a_week is not None else forecast.fullest_week
    verdict = _verdict(forecast, asked, has, today, days)
    takes = f"it takes {hours_between(asked)} {_span(days)}{surely(forecast.stages)}"
    if verdict is Verdict.TOO_EARLY:
        line = f"Too early to say: {takes}. {_must_hold(hours_a_week, weeks)}."
    else:
        line = _sentence(verdict, takes, has, given=hours_a_week is not None)
    lines = (line, *_units_first(forecast, today, days), *_counted(forecast))
    return ByDate(days, asked.low, asked.high, verdict, lines)


def _verdict(
    forecast: Forecast, asked: Hours, has: float | None, today: date, days: int
) -> Verdict:
    first = forecast.first_day
    if first is None or (today - first).days < HISTORY or forecast.evenings < LEAST_EVENINGS:
        return Verdict.TOO_EARLY
    if asked.low > min(days, DAYS_OF_A_WEEK) * AWAKE:
        return Verdict.CANNOT
    if has is None:
        return Verdict.TOO_EARLY
    if asked.low > has:
        return Verdict.CANNOT
    return Verdict.NEEDS_MORE if asked.high > has else Verdict.CAN


def _span(days: int) -> str:
    if days >= DAYS_OF_A_WEEK:
        return "a week"
    return "today" if days == 1 else f"in the {days} days there are"


def _must_hold(hours_a_week: float | None, weeks: float) -> str:
    """What would have to hold for the day to be kept."""
    if hours_a_week is None:
        return "It holds if your weeks have that much; two weeks of timed sewing will show"
    there_are = hours(hours_a_week * weeks)
    return (
        f"With the habit given the rest may take {there_are} and no more; "
        "two weeks of sewing will show"
    )


def _sentence(verdict: Verdict, takes: str, has: float | None, *, given: bool) -> str:
    if has is None:
        return f"That cannot be done: {takes}, more than a day has."
    there = f"the habit given has {hours(has)}" if given else f"your fullest week had {hours(has)}"
    match verdict:
        case Verdict.CANNOT:
            whose = "with that habit" if given else "at your pace"
            return (
                f"That cannot be done {whose}: {takes}, and {there}. "
                "Take a smaller layout, leave out a border, or give it later."
            )
        case Verdict.NEEDS_MORE:
            return f"It may not be enough: {takes}, and {there}."
        case _:
            return f"That can be done: {takes}, and {there}."


def _units_first(forecast: Forecast, today: date, days: int) -> tuple[str, ...]:
    """The day the units have to be made by, so that there is time for what comes after them."""
    after, left = forecast.after_units, forecast.in_all
    if after is None or left is None or all(one.after_units for one in forecast.stages):
        return ()
    last = today + timedelta(days=int(days * (1 - after.middle / left.middle)))
    stages = [one for one in forecast.stages if one.after_units]
    labels = listed(tuple(one.pace.stage.label for one in stages))
    return (
        f"After the units come {labels}: {hours_between(after)}{surely(stages)}. "
        f"Have the units made by {day_said(last)} {last.year} to leave time for them.",
    )


def _counted(forecast: Forecast) -> tuple[str, ...]:
    if not forecast.not_planned:
        return ()
    return (f"Not planned, so not counted: {listed(forecast.not_planned)}.",)


class Habit(Struct, frozen=True):
    """So many minutes so many times a week: `hours` a week, `weeks` (least, most) in all."""

    hours: float
    weeks: tuple[int, int]
    sentence: str


def at_this_habit(forecast: Forecast, minutes: float, times_a_week: int) -> Habit:
    """How many weeks the forecast takes at a steady habit; raises as `hours_of_habit` does."""
    a_week = hours_of_habit(minutes, times_a_week)
    left = forecast.in_all or Hours(0.0, 0.0, 0.0)
    weeks = (ceil(left.low / a_week), ceil(left.high / a_week))
    many = several(*weeks, "week", "weeks")
    return Habit(a_week, weeks, f"{hours(a_week)} a week: {many}{surely(forecast.stages)}.")


def hours_of_habit(minutes: float, times_a_week: int) -> float:
    """Hours a week; raises ValueError, in a plain sentence, for numbers that are no habit."""
    if not (1 <= minutes <= LONGEST_SESSION and 1 <= times_a_week <= MOST_A_WEEK):
        raise ValueError(
            f"A habit is 1 to {LONGEST_SESSION:,} minutes, 1 to {MOST_A_WEEK} times a week. "
            "Write numbers between these."
        )
    return minutes * times_a_week / 60
