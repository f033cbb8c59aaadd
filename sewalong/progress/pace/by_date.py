"""A date it is wanted by, and a steady habit: what they ask of each week."""

from __future__ import annotations

from datetime import date
from enum import StrEnum
from math import ceil

from msgspec import Struct

from sewalong.progress.pace.duration_words import hours, hours_between, several
from sewalong.progress.pace.forecast import Forecast

DAYS_OF_A_WEEK = 7
AWAKE = 16
"""Hours in a day nobody can go beyond. From memory."""


class Verdict(StrEnum):
    """Whether a date can be kept."""

    DONE = "nothing left"
    CAN = "can be done"
    NEEDS_MORE = "needs more than the fullest week so far"
    CANNOT = "cannot be done"


class ByDate(Struct, frozen=True):
    """What a date asks: hours a week from `low` to `high`, over `days` days from today on.

    With less than a week left the hours are those of all the days there are.
    """

    days: int
    low: float
    high: float
    verdict: Verdict
    sentence: str


def by_date(forecast: Forecast, today: date, wanted: date) -> ByDate:
    """Hours a week from `today` (counted in) until the day before `wanted`.

    It cannot be done when even the low end of the forecast asks more than the owner's
    fullest week so far, or more than `AWAKE` hours a day, or when the day has come.
    """
    days = max(0, (wanted - today).days)
    if forecast.nothing_left:
        return ByDate(days, 0.0, 0.0, Verdict.DONE, "Nothing is left to do.")
    left = hours_between(forecast.low, forecast.high)
    if days == 0:
        come = "is today" if wanted == today else "is past"
        sentence = f"That cannot be done: the day {come}, and {left} are left."
        return ByDate(0, forecast.low, forecast.high, Verdict.CANNOT, sentence)
    weeks = max(1.0, days / DAYS_OF_A_WEEK)
    low, high = forecast.low / weeks, forecast.high / weeks
    verdict = _verdict(forecast, low, high, days)
    asked = f"{hours_between(low, high)} {_span(days)}"
    return ByDate(days, low, high, verdict, _sentence(forecast, verdict, asked))


def _verdict(forecast: Forecast, low: float, high: float, days: int) -> Verdict:
    fullest = forecast.fullest_week
    if forecast.low > days * AWAKE or (fullest is not None and low > fullest):
        return Verdict.CANNOT
    if fullest is not None and high > fullest:
        return Verdict.NEEDS_MORE
    return Verdict.CAN


def _span(days: int) -> str:
    if days >= DAYS_OF_A_WEEK:
        return "a week"
    return "today" if days == 1 else f"in the {days} days there are"


def _sentence(forecast: Forecast, verdict: Verdict, asked: str) -> str:
    fullest = forecast.fullest_week
    if fullest is None:
        if verdict is Verdict.CANNOT:
            return f"That cannot be done: it takes {asked}, more than a day has."
        return f"That takes {asked}. Your own weeks are not known yet."
    yours = f"your fullest week so far had {hours(fullest)}"
    match verdict:
        case Verdict.CANNOT:
            return (
                f"That cannot be done at your pace: it takes {asked}, and {yours}. "
                "Take a smaller layout, leave out a border, or give it later."
            )
        case Verdict.NEEDS_MORE:
            return f"That takes {asked}; {yours}. It may not be enough."
        case _:
            return f"That takes {asked}; {yours}."


class Habit(Struct, frozen=True):
    """So many minutes so many times a week: `hours` a week, `weeks` (least, most) in all."""

    hours: float
    weeks: tuple[int, int]
    sentence: str


def at_this_habit(forecast: Forecast, minutes: float, times_a_week: int) -> Habit:
    """How many weeks the forecast takes at a steady habit.

    Raises ValueError unless both numbers are above zero.
    """
    a_week = hours_of_habit(minutes, times_a_week)
    weeks = (ceil(forecast.low / a_week - 1e-9), ceil(forecast.high / a_week - 1e-9))
    sentence = f"{hours(a_week)} a week: {several(*weeks, 'week', 'weeks')}."
    return Habit(a_week, weeks, sentence)


def hours_of_habit(minutes: float, times_a_week: int) -> float:
    """Hours a week; raises ValueError unless both numbers are above zero."""
    if minutes <= 0 or times_a_week <= 0:
        raise ValueError("a habit has some minutes, some times a week")
    return minutes * times_a_week / 60
