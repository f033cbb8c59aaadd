"""Lengths of time and ranges as a person would say them."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, floor

from sewalong.progress.pace.hours_ahead import Hours


def each_takes(minutes: float) -> str:
    """The time of one piece: "about 25 seconds", "about 2 minutes", "about 1 1/2 hours"."""
    if minutes < 0.95:
        seconds = max(5, round(minutes * 60 / 5) * 5)
        return f"about {seconds} seconds"
    if minutes < 9.75:
        return f"about {_halves(minutes)} minute{'' if _half_steps(minutes) == 2 else 's'}"
    if minutes < 90:
        return f"about {round(minutes)} minutes"
    return f"about {_halves(minutes / 60)} hours"


def hours_between(found: Hours) -> str:
    """A range of hours: "9 to 13 hours", "about 40 minutes to 1 1/2 hours"; rounded outwards.

    Below two hours it goes in steps of 10 minutes, below ten in half hours, then in whole
    hours; a longer range in fives or tens would hide how far apart its ends are, so it
    never does.
    """
    low, high = found.low, found.high
    if high <= 1 / 60:
        return "a minute"
    if high < 2:
        least, most = _ten_minutes(low, down=True), _ten_minutes(high, down=False)
        return f"{least} minutes" if least == most else f"{least} to {most} minutes"
    if high < 10:
        least_half, most_half = floor(low * 2) / 2, ceil(high * 2) / 2
        if least_half == 0:
            return f"{_ten_minutes(low, down=True)} minutes to {_halves(most_half)} hours"
        if least_half == most_half:
            return f"{_halves(least_half)} hours"
        return f"{_halves(least_half)} to {_halves(most_half)} hours"
    first, last = floor(low), ceil(high)
    return f"{first} to {last} hours" if first != last else f"{first} hours"


def hours(value: float) -> str:
    """One length of time: "50 minutes", "1 hour", "3 1/2 hours", "14 hours"."""
    if value < 0.96:
        return f"{max(1, round(value * 60))} minute{'' if round(value * 60) <= 1 else 's'}"
    if value < 10:
        return f"{_halves(value)} hour{'' if _half_steps(value) == 2 else 's'}"
    return f"{round(value)} hours"


def each_short(minutes: float) -> str:
    """One length of time for a column: "45 s", "1 min 30 s", "18 min", "1 1/2 h"."""
    if minutes < 0.95:
        return f"{max(5, round(minutes * 60 / 5) * 5)} s"
    if minutes < 9.75:
        whole, half = divmod(_half_steps(minutes), 2)
        return f"{whole} min 30 s" if half else f"{whole} min"
    if minutes < 90:
        return f"{round(minutes)} min"
    return f"{_halves(minutes / 60)} h"


def hours_short(found: Hours) -> str:
    """A range for a column: "10–50 min", "1/2–3 1/2 h", "9–13 h"; rounded as in a sentence."""
    words = hours_between(found).replace(" minutes", " min").replace(" hours", " h")
    return words.replace("a minute", "1 min").replace(" to ", "–")


def how_sure(measured: Sequence[bool]) -> str:
    """What is to be said behind a time whose parts were measured or not: ", partly a guess"."""
    if all(measured):
        return ""
    return ", partly a guess" if any(measured) else ", all of it a guess"


def several(low: int, high: int, one: str, many: str) -> str:
    """A range of whole things: "6 to 9 sessions", "1 session"."""
    if low == high:
        return f"{low} {one if low == 1 else many}"
    return f"{low} to {high} {many}"


def listed(things: tuple[str, ...]) -> str:
    """ "rows, borders and binding"; empty for none."""
    if len(things) < 2:
        return "".join(things)
    return f"{', '.join(things[:-1])} and {things[-1]}"


def _ten_minutes(value: float, *, down: bool) -> int:
    tens = value * 6
    return max(5, 10 * (floor(tens) if down else ceil(tens)))


def _half_steps(value: float) -> int:
    return round(value * 2)


def _halves(value: float) -> str:
    whole, half = divmod(_half_steps(value), 2)
    if not half:
        return str(whole)
    return f"{whole} 1/2" if whole else "1/2"
