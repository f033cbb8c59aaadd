"""A date it is wanted by, and habits."""

from __future__ import annotations

from datetime import date

import pytest
from msgspec.structs import replace

from sewalong.progress.pace.by_date import (
    Verdict,
    at_this_habit,
    by_date,
    hours_of_habit,
)
from sewalong.progress.pace.forecast import Forecast

TODAY = date(2024, 3, 1)
LEFT = Forecast(
    low=9,
    middle=11,
    high=13,
    sessions=(6, 9),
    session_hours=1.5,
    own_sessions=True,
    stages=(object(),),  # type: ignore[arg-type]
    not_begun=(),
    spent=20,
    fullest_week=5.0,
)


def test_the_sentence_of_a_forecast() -> None:
    assert LEFT.sentence == "About 9 to 13 hours, 6 to 9 sessions like yours."


def test_two_weeks_ask_half_of_it_each() -> None:
    asked = by_date(replace(LEFT, fullest_week=7.0), TODAY, date(2024, 3, 15))
    assert (asked.days, asked.low, asked.high) == (14, 4.5, 6.5)
    assert asked.verdict is Verdict.CAN
    assert (
        asked.sentence
        == "That takes 4 1/2 to 6 1/2 hours a week; your fullest week so far had 7 hours."
    )


def test_more_than_her_fullest_week_at_the_high_end_only() -> None:
    asked = by_date(LEFT, TODAY, date(2024, 3, 15))
    assert asked.verdict is Verdict.NEEDS_MORE
    assert "It may not be enough." in asked.sentence


def test_it_says_plainly_when_it_cannot_be_done() -> None:
    asked = by_date(LEFT, TODAY, date(2024, 3, 8))
    assert asked.verdict is Verdict.CANNOT
    assert asked.sentence.startswith(
        "That cannot be done at your pace: it takes 9 to 13 hours a week"
    )


@pytest.mark.parametrize(
    ("day", "why"), [(date(2024, 3, 1), "is today"), (date(2024, 2, 1), "is past")]
)
def test_a_day_that_has_come(day: date, why: str) -> None:
    asked = by_date(LEFT, TODAY, day)
    assert asked.verdict is Verdict.CANNOT
    assert why in asked.sentence


def test_without_a_week_of_her_own_only_the_length_of_days_can_forbid() -> None:
    unknown = replace(LEFT, fullest_week=None)
    assert by_date(unknown, TODAY, date(2024, 3, 8)).verdict is Verdict.CAN
    assert "not known yet" in by_date(unknown, TODAY, date(2024, 3, 8)).sentence
    much = replace(unknown, low=40.0, high=60.0)
    assert by_date(much, TODAY, date(2024, 3, 3)).verdict is Verdict.CANNOT


def test_a_few_days_are_not_made_a_week_of() -> None:
    asked = by_date(replace(LEFT, low=2, high=3), TODAY, date(2024, 3, 4))
    assert (asked.low, asked.high) == (2, 3)
    assert "in the 3 days there are" in asked.sentence


def test_nothing_left_is_in_time_for_any_day() -> None:
    assert by_date(replace(LEFT, stages=()), TODAY, TODAY).verdict is Verdict.DONE


def test_half_an_hour_a_day_is_three_and_a_half_hours_a_week() -> None:
    """7 * 30 / 60. Source: https://old.quiltube.com/forum/quilting-with-disabilities/
    684-quilting-with-disabilities?limitstart=0
    """
    assert hours_of_habit(30, 7) == 3.5
    habit = at_this_habit(LEFT, 30, 7)
    assert habit.weeks == (3, 4)
    assert habit.sentence == "3 1/2 hours a week: 3 to 4 weeks."
    with pytest.raises(ValueError, match="habit"):
        hours_of_habit(0, 7)
