"""Lengths of time and days, as a person would say them."""

from __future__ import annotations

import time
from datetime import UTC, date, datetime, timedelta, timezone

import pytest

from sewalong.progress.record.time_words import ago, clock, day, day_and_time, day_said, spoken
from tests.progress.building import EVENING


@pytest.mark.parametrize(
    ("days", "words"),
    [
        (-1, "today"),
        (0, "today"),
        (1, "yesterday"),
        (2, "2 days ago"),
        (24, "24 days ago"),
        (59, "59 days ago"),
        (60, "2 months ago"),
        (90, "3 months ago"),
        (729, "24 months ago"),
        (730, "2 years ago"),
        (1100, "3 years ago"),
    ],
)
def test_how_long_ago_is_said_as_a_person_would(days: int, words: str) -> None:
    assert ago(EVENING, EVENING + timedelta(days=days)) == words


def test_yesterday_begins_at_midnight_where_the_person_is() -> None:
    late = datetime(2023, 11, 4, 23, 30, tzinfo=UTC)
    assert ago(late, late + timedelta(hours=1)) == "yesterday"
    assert ago(late, (late + timedelta(hours=1)).astimezone(EVENING.tzinfo)) == "today"


@pytest.mark.parametrize(
    ("seconds", "on_the_clock", "words"),
    [
        (-60, "0 h 00", "0 minutes"),
        (0, "0 h 00", "0 minutes"),
        (59, "0 h 00", "0 minutes"),
        (60, "0 h 01", "1 minute"),
        (50 * 60, "0 h 50", "50 minutes"),
        (59 * 60 + 59, "0 h 59", "59 minutes"),
        (60 * 60, "1 h 00", "1 hour"),
        (61 * 60, "1 h 01", "1 hour 1 minute"),
        (125 * 60, "2 h 05", "2 hours 5 minutes"),
        (30 * 60 * 60, "30 h 00", "30 hours"),
    ],
)
def test_a_stretch_of_time_by_the_clock_and_in_words(
    seconds: int, on_the_clock: str, words: str
) -> None:
    length = timedelta(seconds=seconds)
    assert (clock(length), spoken(length)) == (on_the_clock, words)


@pytest.mark.parametrize(
    ("month", "word"), [(1, "Jan"), (2, "Feb"), (8, "Aug"), (11, "Nov"), (12, "Dec")]
)
def test_a_day_is_named_by_its_month(month: int, word: str) -> None:
    assert day_said(date(2023, month, 4)) == f"4 {word}"
    noon = datetime(2023, month, 4, 12, 5).astimezone()
    assert day(noon) == f"4 {word} 2023"
    assert day_and_time(noon) == f"4 {word} 2023, 12:05"


def test_a_day_is_told_as_it_was_where_it_was_whatever_zone_the_machine_is_in(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Half past eleven at night in one place is the next day in another, and stays the 4th."""
    late = datetime(2023, 11, 4, 23, 30, tzinfo=timezone(timedelta(hours=-5)))
    for zone in ("UTC", "Pacific/Auckland"):
        monkeypatch.setenv("TZ", zone)
        time.tzset()
        assert day(late) == "4 Nov 2023"
        assert day_and_time(late) == "4 Nov 2023, 23:30"
    monkeypatch.undo()
    time.tzset()
