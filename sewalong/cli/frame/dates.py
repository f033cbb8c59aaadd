"""Dates and times as a person reads them, in the local zone and in English whatever the locale."""

from __future__ import annotations

from datetime import datetime

_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def day(at: datetime) -> str:
    """The local day: "2 Nov 2026"."""
    local = at.astimezone()
    return f"{local.day} {_MONTHS[local.month - 1]} {local.year}"


def day_and_time(at: datetime) -> str:
    """The local day and time: "2 Nov 2026, 20:15"."""
    return f"{day(at)}, {at.astimezone():%H:%M}"
