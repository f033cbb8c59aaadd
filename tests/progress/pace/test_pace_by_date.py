"""A date it is wanted by, and habits."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from msgspec.structs import replace

from sewalong.piecing.method import Noun, Station
from sewalong.progress.pace.by_date import (
    HISTORY,
    Verdict,
    at_this_habit,
    by_date,
    hours_of_habit,
)
from sewalong.progress.pace.forecast import Forecast, StageForecast
from sewalong.progress.pace.forecast_words import summary
from sewalong.progress.pace.hours_ahead import Hours
from sewalong.progress.pace.paces import StagePace
from sewalong.progress.record.route import TopStage
from tests.progress.pace.evenings import MONDAY, Diary, a_quilt, forecast_of

TODAY = date(2024, 3, 1)


def stage(label: str, *, measured: bool, after_units: bool = False) -> StageForecast:
    seams = TopStage(label, label, Station.MACHINE, 9, Noun("seam", "seams"), (), "", "", 1.0)
    pace = StagePace(seams, 1.0, 9 if measured else 0, 2 if measured else 0, 0.1, "")
    return StageForecast(pace, 9, measured, after_units, Hours(1, 2, 3))


LEFT = Forecast(
    measured=Hours(9, 11, 13),
    guessed=None,
    in_all=Hours(9, 11, 13),
    after_units=None,
    sessions=(6, 9),
    session_hours=1.5,
    own_sessions=True,
    stages=(stage("sew", measured=True),),
    spent=20,
    fullest_week=5.0,
    first_day=TODAY - timedelta(days=30),
    evenings=12,
    not_planned=(),
)
"""Everything measured, for long, and nothing to come after the units."""


def test_the_sentence_of_a_forecast() -> None:
    assert summary(LEFT) == (
        "9 to 13 hours left at the stages you have worked at, most likely 11 hours.",
        "6 to 9 sessions like yours.",
    )
    assert summary(replace(LEFT, in_all=None)) == ("Nothing is left to do.",)


def test_two_weeks_ask_half_of_it_each() -> None:
    asked = by_date(replace(LEFT, fullest_week=7.0), TODAY, date(2024, 3, 15))
    assert (asked.days, asked.low, asked.high) == (14, 4.5, 6.5)
    assert asked.verdict is Verdict.CAN
    assert asked.lines == (
        "That can be done: it takes 4 1/2 to 6 1/2 hours a week, and your fullest week had 7 hours.",
    )


def test_more_than_her_fullest_week_at_the_high_end_only() -> None:
    asked = by_date(LEFT, TODAY, date(2024, 3, 15))
    assert asked.verdict is Verdict.NEEDS_MORE
    assert asked.lines[0].startswith("It may not be enough: ")


def test_it_says_plainly_when_it_cannot_be_done() -> None:
    asked = by_date(LEFT, TODAY, date(2024, 3, 8))
    assert asked.verdict is Verdict.CANNOT
    assert asked.lines[0].startswith(
        "That cannot be done at your pace: it takes 9 to 13 hours a week"
    )


@pytest.mark.parametrize(
    ("day", "why"), [(date(2024, 3, 1), "is today"), (date(2024, 2, 1), "is past")]
)
def test_a_day_that_has_come_is_a_fact_and_no_verdict_on_the_pace(day: date, why: str) -> None:
    asked = by_date(LEFT, TODAY, day)
    assert asked.verdict is Verdict.DAY_HAS_COME
    assert asked.lines == (f"The day {why}, and 9 to 13 hours are left.",)


# The habit given


@pytest.mark.parametrize(
    ("a_week", "verdict"),
    [
        (6.5, Verdict.CAN),
        (6.4, Verdict.NEEDS_MORE),
        (4.5, Verdict.NEEDS_MORE),
        (4.4, Verdict.CANNOT),
    ],
)
def test_the_verdict_is_held_against_the_habit_given(a_week: float, verdict: Verdict) -> None:
    """Two weeks ask 4 1/2 to 6 1/2 hours each, whatever her fullest week had."""
    for fullest in (None, 1.0, 50.0):
        asked = by_date(replace(LEFT, fullest_week=fullest), TODAY, date(2024, 3, 15), a_week)
        assert asked.verdict is verdict
        assert "the habit given has " in asked.lines[0]
        assert "your fullest week" not in asked.lines[0]


def test_a_habit_that_is_not_enough_is_told_so() -> None:
    asked = by_date(LEFT, TODAY, date(2024, 3, 15), 1.5)
    assert asked.lines[0].startswith("That cannot be done with that habit: ")
    assert "the habit given has 1 1/2 hours" in asked.lines[0]


# Before two weeks of history


def on_day(days: int, *, evenings: int = 5) -> Forecast:
    return replace(LEFT, first_day=TODAY - timedelta(days=days), evenings=evenings)


@pytest.mark.parametrize("wanted", [2, 7, 14, 60, 400])
@pytest.mark.parametrize("a_week", [None, 0.1, 3.0, 90.0])
@pytest.mark.parametrize(
    "forecast",
    [
        replace(LEFT, first_day=None, evenings=0, fullest_week=None, measured=None),
        on_day(0, evenings=1),
        on_day(HISTORY - 1),
        on_day(400, evenings=1),
        replace(on_day(1), in_all=Hours(500, 900, 1500)),
    ],
)
def test_before_two_weeks_of_history_nothing_final_is_said(
    forecast: Forecast, a_week: float | None, wanted: int
) -> None:
    asked = by_date(forecast, TODAY, TODAY + timedelta(days=wanted), a_week)
    assert asked.verdict is Verdict.TOO_EARLY
    assert asked.lines[0].startswith("Too early to say: it takes ")
    assert "sewing will show" in asked.lines[0]
    assert not any("cannot" in line or "can be done" in line for line in asked.lines)


def test_two_weeks_are_fourteen_days_and_two_sessions() -> None:
    def verdict(days: int, evenings: int) -> Verdict:
        return by_date(on_day(days, evenings=evenings), TODAY, date(2024, 3, 8)).verdict

    assert verdict(14, 2) is Verdict.CANNOT
    assert verdict(13, 2) is Verdict.TOO_EARLY
    assert verdict(14, 1) is Verdict.TOO_EARLY


def test_what_would_have_to_hold_is_said_instead() -> None:
    asked = by_date(on_day(3), TODAY, date(2024, 3, 15))
    assert "It holds if your weeks have that much" in asked.lines[0]
    asked = by_date(on_day(3), TODAY, date(2024, 3, 15), 3.0)
    assert "With the habit given the rest may take 6 hours and no more" in asked.lines[0]


def test_where_no_week_has_a_time_there_is_none_to_judge_by() -> None:
    assert by_date(replace(LEFT, fullest_week=None), TODAY, date(2024, 3, 8)).verdict is (
        Verdict.TOO_EARLY
    )


def test_a_first_evening_is_never_told_that_it_cannot_be_done() -> None:
    """ "That cannot be done" was said after an hour's sewing; of any day, however near."""
    diary = Diary(a_quilt(borders=2, finishing=("layer", "quilt", "bind")))
    for pieces in (0, 20, 40):
        if pieces:
            diary.evening(("pair", pieces, pieces / 3))
        left = forecast_of(diary.state, diary.record, diary.now)
        for days in (-3, 0, 1, 2, 7, 30):
            wanted = diary.now.date() + timedelta(days=days)
            for a_week in (None, 0.25, 2.0):
                asked = by_date(left, diary.now.date(), wanted, a_week)
                assert asked.verdict in (Verdict.TOO_EARLY, Verdict.DAY_HAS_COME)
                assert "cannot be done" not in " ".join(asked.lines)
                assert "a guess" in asked.lines[0]


# The stages after the units

UNITS_AND_MORE = replace(
    LEFT,
    guessed=Hours(4, 6, 9),
    in_all=Hours(16, 24, 36),
    after_units=Hours(8, 12, 18),
    stages=(
        stage("sew", measured=True),
        stage("sew rows", measured=False, after_units=True),
        stage("join rows", measured=False, after_units=True),
    ),
)


def test_the_stages_after_the_units_are_counted_and_keep_their_time() -> None:
    """48 blocks in 8 weeks at 12 a week are made in 4, "so 4 of the 8 weeks stay for the top,
    quilting and binding": plan backward from the day. Source:
    http://candicedewitt.com/dont-panic-dont-panic-dont-panic
    """
    asked = by_date(UNITS_AND_MORE, TODAY, TODAY + timedelta(weeks=8))
    assert asked.lines[1] == (
        "After the units come sew rows and join rows: 8 to 18 hours, all of it a guess. "
        "Have the units made by 29 Mar 2024 to leave time for them."
    )
    assert date(2024, 3, 29) - TODAY == timedelta(weeks=4)
    assert asked.low == 2.0, "sixteen hours and not the eight of the units alone"


def test_a_guess_in_what_a_date_asks_is_marked() -> None:
    asked = by_date(UNITS_AND_MORE, TODAY, TODAY + timedelta(weeks=8))
    assert "2 to 4 1/2 hours a week, partly a guess" in asked.lines[0]
    assert at_this_habit(UNITS_AND_MORE, 60, 4).sentence == (
        "4 hours a week: 4 to 9 weeks, partly a guess."
    )


def test_with_the_units_made_nothing_is_said_of_making_them() -> None:
    rows = replace(UNITS_AND_MORE, stages=UNITS_AND_MORE.stages[1:])
    assert len(by_date(rows, TODAY, TODAY + timedelta(weeks=8)).lines) == 1


def test_finishing_that_is_not_planned_is_said_not_to_be_counted() -> None:
    """The border was forgotten in an estimate, and 30 hours were gone. Source:
    https://safieh.wordpress.com/2012/04/04/wip-wednesday-the-30-hour-quilt/
    """
    diary = Diary(a_quilt(borders=1, finishing=("layer",)))
    left = forecast_of(diary.state, diary.record, MONDAY)
    asked = by_date(left, MONDAY.date(), MONDAY.date() + timedelta(days=60))
    assert asked.lines[-1] == "Not planned, so not counted: quilt and bind."
    assert "sew rows, join rows, add borders and layer" in asked.lines[-2]


# Days, weeks and habits


def test_without_a_week_of_her_own_only_the_length_of_days_can_forbid() -> None:
    unknown = replace(LEFT, fullest_week=None)
    assert by_date(unknown, TODAY, date(2024, 3, 8)).verdict is Verdict.TOO_EARLY
    much = replace(unknown, in_all=Hours(40.0, 50.0, 60.0))
    assert by_date(much, TODAY, date(2024, 3, 3)).verdict is Verdict.CANNOT


def test_a_few_days_are_not_made_a_week_of() -> None:
    asked = by_date(replace(LEFT, in_all=Hours(2, 2.5, 3)), TODAY, date(2024, 3, 4))
    assert (asked.low, asked.high) == (2, 3)
    assert "in the 3 days there are" in asked.lines[0]


def test_nothing_left_is_in_time_for_any_day() -> None:
    asked = by_date(replace(LEFT, in_all=None), TODAY, TODAY)
    assert (asked.verdict, asked.lines) == (Verdict.DONE, ("Nothing is left to do.",))


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
