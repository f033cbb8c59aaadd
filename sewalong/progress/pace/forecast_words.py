"""A forecast in words: what was measured, what is a guess, and never the one as the other."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from sewalong.progress.pace.duration_words import (
    each_short,
    hours,
    hours_between,
    hours_short,
    how_sure,
    listed,
    several,
)
from sewalong.progress.pace.forecast import Forecast, StageForecast
from sewalong.progress.pace.hours_ahead import HELD


def surely(stages: Sequence[StageForecast]) -> str:
    """What is to be said behind a time for these stages: ", partly a guess"."""
    return how_sure([one.pace.measured for one in stages])


def hours_left(forecast: Forecast) -> str:
    """All that is left in one range: "6 to 15 hours left, most likely 9"; empty when nothing is.

    The unit is said once where both have the same.
    """
    left = forecast.in_all
    if left is None:
        return ""
    range_, middle = hours_between(left), hours(left.middle)
    unit = range_.rpartition(" ")[2]
    if middle.endswith(f" {unit}"):
        middle = middle.removesuffix(f" {unit}")
    return f"{range_} left, most likely {middle}"


def sessions_left(forecast: Forecast) -> str:
    """ "11 to 24 sessions like yours, partly a guess"; empty when nothing is left."""
    if forecast.in_all is None:
        return ""
    whose = "like yours" if forecast.own_sessions else f"of {_length(forecast.session_hours)}"
    many = several(*forecast.sessions, "session", "sessions")
    return f"{many} {whose}{surely(forecast.stages)}"


def summary(forecast: Forecast) -> tuple[str, ...]:
    """What is left, the verdict first: one line for what was measured, one for what is guessed,
    one for the sessions it takes."""
    measured, guessed = forecast.measured, forecast.guessed
    if forecast.in_all is None:
        return ("Nothing is left to do.",)
    lines = []
    if measured is not None:
        lines.append(
            f"{_first(hours_between(measured))} left at the stages you have worked at, "
            f"most likely {hours(measured.middle)}."
        )
    if guessed is not None:
        lines.append(_guess(forecast, hours_between(guessed)))
    lines.append(f"{_first(sessions_left(forecast))}.")
    return tuple(lines)


def _guess(forecast: Forecast, words: str) -> str:
    if not forecast.spent:
        what = "counted with a time" if forecast.evenings else "sewn"
        return f"{_first(words)}, a guess until you have {what}."
    which = "never begun" if all(not one.begun for one in _guessed(forecast)) else "never timed"
    more = " more" if forecast.measured is not None else ""
    return f"{_first(words)}{more} at stages {which}: a guess, drawn in by your pace so far."


def _guessed(forecast: Forecast) -> list[StageForecast]:
    return [one for one in forecast.stages if not one.pace.measured]


def by_stage(forecast: Forecast) -> tuple[str, ...]:
    """For each stage a line with its hours and lines with why, then which are only guessed."""
    lines = []
    for one in forecast.stages:
        name = _first(one.pace.stage.label)
        lines.append(f"{name}: {one.to_do_in_words}, {hours_between(one.hours)}")
        lines += [f"why: {why}" for why in one.pace.reason.split("; ")]
    if forecast.not_begun:
        lines.append(f"Not begun: {listed(forecast.not_begun)}.")
    return tuple(lines)


class Columns(Struct, frozen=True):
    """One stage in a table that lines up; `source` says from what: "your 16", "a guess"."""

    label: str
    to_go: str
    each: str
    in_all: str
    source: str


HEADINGS = Columns("", "to go", "each", "in all", "from")


def table(forecast: Forecast) -> tuple[Columns, ...]:
    """A row for each stage that has something to do."""
    return tuple(
        Columns(
            label=one.pace.stage.label,
            to_go=str(one.to_do),
            each=each_short(one.pace.minutes),
            in_all=hours_short(one.hours),
            source=f"your {one.pace.timed}" if one.pace.measured else "a guess",
        )
        for one in forecast.stages
    )


def why(one: StageForecast) -> tuple[str, ...]:
    """What a stage's hours come from, a sentence each."""
    return (
        f"{_first(one.to_do_in_words)} to go: {hours_between(one.hours)}.",
        f"{_first(one.pace.reason)}.",
    )


def why_in_all(forecast: Forecast) -> tuple[str, ...]:
    """What the whole is made of, and how sure a range is."""
    return (
        *summary(forecast),
        f"A range is so made that it holds the truth {HELD * 10:.0f} times in 10.",
    )


def _first(text: str) -> str:
    return text[:1].upper() + text[1:]


def _length(hours: float) -> str:
    minutes = round(hours * 60)
    if minutes == 60:
        return "an hour"
    return f"{minutes} minutes"
