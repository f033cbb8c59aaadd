"""Lengths of time in words, as a person would say them."""

from __future__ import annotations

from datetime import date, datetime, timedelta

CLOCKS_DIFFER = timedelta(minutes=5)
"""How far two clocks, or one that was set right, may differ without anybody noticing.
From memory."""


def in_the_future(then: datetime, now: datetime) -> bool:
    """Whether a time in the record lies ahead of the clock: one of the two is wrong."""
    return then - now > CLOCKS_DIFFER


def ago(then: datetime, now: datetime) -> str:
    """How long ago, in days as the calendar counts them where `now` is: "24 days ago"."""
    days = (now.date() - then.astimezone(now.tzinfo).date()).days
    if days <= 0:
        return "today"
    if days == 1:
        return "yesterday"
    if days < 60:
        return f"{days} days ago"
    if days < 730:
        return f"{round(days / 30.44)} months ago"
    return f"{round(days / 365.25)} years ago"


def clock(length: timedelta) -> str:
    """A stretch of time as hours and minutes: "1 h 05"; never below "0 h 00"."""
    minutes = max(0, int(length.total_seconds()) // 60)
    return f"{minutes // 60} h {minutes % 60:02d}"


def spoken(length: timedelta) -> str:
    """A stretch of time in words: "50 minutes", "2 hours 5 minutes"."""
    minutes = max(0, int(length.total_seconds()) // 60)
    hours, rest = divmod(minutes, 60)
    parts = []
    if hours:
        parts.append(f"{hours} hour{'' if hours == 1 else 's'}")
    if rest or not hours:
        parts.append(f"{rest} minute{'' if rest == 1 else 's'}")
    return " ".join(parts)


def day_said(day: date) -> str:
    """A date a person knows: "4 Nov"."""
    return f"{day.day} {_MONTHS[day.month - 1]}"


_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def day(at: datetime) -> str:
    """The day where it was, by its own offset from UTC: "2 Nov 2026"."""
    return f"{at.day} {_MONTHS[at.month - 1]} {at.year}"


def day_and_time(at: datetime) -> str:
    """The day and time where it was: "2 Nov 2026, 20:15"."""
    return f"{day(at)}, {at:%H:%M}"
