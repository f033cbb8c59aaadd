"""A session has one length wherever it is shown, and guesses are in none of it."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from tests.cli.conftest import Desk


def one_count(desk: Desk) -> None:
    """A whole evening's work typed in one count as the session is opened."""
    desk.ok("count", "pair", "20")


def put_away_later(desk: Desk) -> None:
    desk.ok("count", "pair", "20")
    desk.wait(minutes=6)
    desk.ok("close")


def a_heap_at_the_end(desk: Desk) -> None:
    desk.ok("count", "pair", "2")
    desk.wait(minutes=40)
    desk.ok("count", "pair", "20")
    desk.ok("count", "sew", "10", "--caution-read")
    desk.ok("close", "--answer", "machine=yes")


def still_open(desk: Desk) -> None:
    desk.ok("count", "pair", "2")
    desk.wait(minutes=6)
    desk.ok("count", "pair", "20")
    desk.wait(minutes=43)


def left_open(desk: Desk) -> None:
    desk.ok("count", "pair", "2")
    desk.wait(minutes=6)
    desk.ok("count", "pair", "20")
    desk.wait(days=3)


def forgotten(desk: Desk) -> None:
    left_open(desk)
    desk.ok("stage", "pair")


def with_an_idle_gap(desk: Desk) -> None:
    for minutes in (0, 2, 2, 2, 100):
        desk.wait(minutes=minutes)
        desk.ok("count", "pair", "4")
    desk.ok("close")


def clock_set_back(desk: Desk) -> None:
    desk.ok("count", "pair", "2")
    desk.wait(minutes=30)
    desk.ok("count", "pair", "10")
    desk.wait(minutes=-20)


FAMILY = (
    (one_count, "0 minutes"),
    (put_away_later, "6 minutes"),
    (a_heap_at_the_end, "40 minutes"),
    (still_open, "49 minutes"),
    (left_open, "6 minutes"),
    (forgotten, "6 minutes"),
    (with_an_idle_gap, "1 hour 46 minutes"),
    (clock_set_back, "30 minutes"),
)


@pytest.mark.parametrize(("evening", "length"), FAMILY)
def test_a_session_has_one_length_wherever_it_is_shown(
    begun: Desk, evening: Callable[[Desk], None], length: str
) -> None:
    """Once 0 minutes, 6 minutes and 7 1/2 hours were said of one session."""
    evening(begun)
    status = begun.ok("status").out
    pace = begun.ok("pace").out
    if evening is not forgotten:
        assert re.search(r"^Last time: .*, for ([^:]+)\.$", status, re.MULTILINE)[1] == length  # type: ignore[index]
    assert re.search(r"^Session 1, [^:]*: (.+)\.$", pace, re.MULTILINE)[1] == length  # type: ignore[index]
    hours = begun.ok("pace", "--json").data["sessions"][0]["hours"]
    spoken = {"hour": 60, "minute": 1}
    minutes = sum(int(n) * spoken[unit] for n, unit in re.findall(r"(\d+) (hour|minute)", length))
    assert hours == pytest.approx(minutes / 60, abs=0.005)


def test_closing_says_the_same_length(begun: Desk) -> None:
    begun.ok("count", "pair", "20")
    begun.wait(minutes=6)
    said = begun.ok("close")
    assert "Session 1: 6 minutes." in said.lines
    assert ", for 6 minutes." in begun.ok("status").out


@pytest.mark.parametrize(("evening", "length"), FAMILY)
def test_what_is_guessed_is_never_added_to_what_was_measured(
    begun: Desk, evening: Callable[[Desk], None], length: str
) -> None:
    evening(begun)
    data = begun.ok("pace", "--json").data
    for session in data["sessions"]:
        assert session["measured_hours"] <= session["hours"] + 0.005
    measured = sum(session["measured_hours"] for session in data["sessions"])
    assert sum(stage["hours"] for stage in data["stages"]) == pytest.approx(measured, abs=0.02)
    assert begun.ok("forecast", "--json").data["spent"] == pytest.approx(measured, abs=0.02)
    for stage in data["stages"]:
        assert (stage["minutes_each"] is None) == (stage["hours"] == 0)


def test_counts_without_a_time_are_said_to_have_none(begun: Desk) -> None:
    one_count(begun)
    said = begun.ok("pace")
    assert said.lines[:4] == [
        "Session 1, 2 Nov 2026: 0 minutes.",
        "Session 1: 20 pairs at pair.",
        "Session 1: still open.",
        "Session 1: 20 without a time.",
    ]
    assert "Pair: 20 pairs counted without a time." in said.lines
    assert "So far: nothing measured." in begun.ok("forecast").lines


def test_a_gap_is_told_with_the_length_it_is_in(begun: Desk) -> None:
    with_an_idle_gap(begun)
    said = begun.ok("pace").lines
    assert said[0].endswith(": 1 hour 46 minutes.")
    assert {"Session 1: 8 without a time.", "Session 1: a gap in it."} <= set(said)
