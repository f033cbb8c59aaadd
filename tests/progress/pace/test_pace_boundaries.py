"""Where words change, dates tip, and evidence begins and ends."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from msgspec.structs import replace

from sewalong.piecing.method import Hazard, Station
from sewalong.progress.pace.by_date import (
    Verdict,
    at_this_habit,
    by_date,
    hours_of_habit,
)
from sewalong.progress.pace.count_times import Stretch, longest_likely, stretches, usual_minutes
from sewalong.progress.pace.duration_words import each_takes, hours, hours_between, listed, several
from sewalong.progress.pace.exclusions import is_left_out, labels_left_out, leave_out
from sewalong.progress.pace.hours_ahead import Hours
from sewalong.progress.pace.session_samples import UNEVEN, spells, unevenness
from sewalong.progress.pace.sessions import (
    SessionFacts,
    fullest_week,
    hours_so_far,
    minutes_per_unit,
    usual_hours,
)
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.route import route_for
from tests.progress.pace.evenings import DAY, MONDAY, Diary, a_quilt, session_of
from tests.progress.pace.test_pace_by_date import LEFT, TODAY

# Words


@pytest.mark.parametrize(
    ("minutes", "words"),
    [
        (0.01, "about 5 seconds"),
        (0.94, "about 55 seconds"),
        (0.95, "about 1 minute"),
        (1.24, "about 1 minute"),
        (1.26, "about 1 1/2 minutes"),
        (2.0, "about 2 minutes"),
        (9.74, "about 9 1/2 minutes"),
        (9.75, "about 10 minutes"),
        (89.9, "about 90 minutes"),
        (90.0, "about 1 1/2 hours"),
        (134.0, "about 2 hours"),
        (136.0, "about 2 1/2 hours"),
    ],
)
def test_the_time_of_one_piece(minutes: float, words: str) -> None:
    assert each_takes(minutes) == words


@pytest.mark.parametrize(
    ("low", "high", "words"),
    [
        (0.0, 1 / 60, "a minute"),
        (0.0, 0.02, "5 to 10 minutes"),
        (0.5, 0.5, "30 minutes"),
        (1.0, 1.99, "60 to 120 minutes"),
        (1.0, 2.0, "1 to 2 hours"),
        (0.5, 2.0, "1/2 to 2 hours"),
        (0.49, 2.0, "20 minutes to 2 hours"),
        (3.0, 3.0, "3 hours"),
        (9.5, 9.99, "9 1/2 to 10 hours"),
        (9.5, 10.0, "9 to 10 hours"),
        (9.9, 12.1, "9 to 13 hours"),
    ],
)
def test_a_range_of_hours(low: float, high: float, words: str) -> None:
    assert hours_between(Hours(low, low, high)) == words


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (0.001, "1 minute"),
        (1 / 60, "1 minute"),
        (2 / 60, "2 minutes"),
        (0.955, "57 minutes"),
        (0.96, "1 hour"),
        (1.3, "1 1/2 hours"),
        (2.0, "2 hours"),
        (9.99, "10 hours"),
        (10.4, "10 hours"),
    ],
)
def test_one_length_of_time(value: float, words: str) -> None:
    assert hours(value) == words


def test_whole_things_and_lists() -> None:
    assert several(0, 0, "week", "weeks") == "0 weeks"
    assert several(2, 2, "week", "weeks") == "2 weeks"
    assert listed(("a", "b")) == "a and b"


# A date


def by(days: int, low: float, high: float, fullest: float | None = None) -> tuple[Verdict, str]:
    """What is said of so many hours within so many days."""
    forecast = replace(LEFT, in_all=Hours(low, (low + high) / 2, high), fullest_week=fullest)
    asked = by_date(forecast, TODAY, TODAY + timedelta(days=days))
    return asked.verdict, asked.lines[0]


def test_seven_days_are_a_week_and_fewer_are_days() -> None:
    assert "it takes 3 to 4 hours a week." in by(7, 3, 4)[1]
    assert "it takes 3 to 4 hours a week." in by(14, 6, 8)[1]
    assert "it takes 3 to 4 hours in the 6 days there are." in by(6, 3, 4)[1]
    assert "it takes 3 to 4 hours in the 2 days there are." in by(2, 3, 4)[1]
    assert "it takes 3 to 4 hours today." in by(1, 3, 4)[1]


def test_sixteen_hours_a_day_can_be_and_more_cannot() -> None:
    assert by(1, 16, 16, fullest=20)[0] is Verdict.CAN
    verdict, sentence = by(1, 16.1, 17, fullest=20)
    assert verdict is Verdict.CANNOT
    assert by(3, 48, 48, fullest=50)[0] is Verdict.CAN
    assert by(3, 48.1, 49, fullest=50)[0] is Verdict.CANNOT
    assert by(14, 16 * 14, 16 * 14, fullest=200)[0] is Verdict.CAN
    assert by(14, 16 * 14.1, 16 * 14.1, fullest=200)[0] is Verdict.CANNOT
    verdict, sentence = by(1, 16.1, 17)
    assert verdict is Verdict.CANNOT
    assert sentence.endswith("more than a day has.")


def test_as_much_as_the_fullest_week_can_be_done() -> None:
    assert by(7, 4, 5, fullest=5)[0] is Verdict.CAN
    assert by(7, 4, 5.1, fullest=5)[0] is Verdict.NEEDS_MORE
    assert by(7, 5, 6, fullest=5)[0] is Verdict.NEEDS_MORE
    assert by(7, 5.1, 6, fullest=5)[0] is Verdict.CANNOT


def test_the_days_are_counted_and_never_below_none() -> None:
    assert by_date(LEFT, date(2024, 3, 1), date(2024, 3, 2)).days == 1
    assert by_date(LEFT, date(2024, 3, 1), date(2024, 2, 1)).days == 0
    done = by_date(replace(LEFT, in_all=None), date(2024, 3, 1), date(2024, 2, 1))
    assert (done.days, done.low, done.high) == (0, 0, 0)


def test_a_habit_that_comes_out_even_takes_no_week_more() -> None:
    # 9 to 13 hours at three times an hour and a half are 2 and 2.9 weeks.
    assert at_this_habit(LEFT, 90, 3).weeks == (2, 3)
    assert hours_of_habit(1, 1) == 1 / 60
    for minutes, times in ((30, 0), (-1, 7)):
        with pytest.raises(ValueError, match="habit"):
            hours_of_habit(minutes, times)


# Evidence


def stretch(n: int, minutes: float | None, session: int = 1, stage: str = "sew") -> Stretch:
    return Stretch(session, stage, n, minutes, MONDAY, 1)


def test_unpicking_more_than_was_made_leaves_none_before() -> None:
    found = spells([stretch(2, 4.0), stretch(-5, 3.0), stretch(3, 6.0, session=2)])
    assert [(one.session, one.n, one.minutes, one.before) for one in found] == [(2, 3, 6.0, 0)]


def test_a_session_in_which_nothing_stands_or_no_time_is_known_teaches_nothing() -> None:
    assert spells([stretch(2, 4.0), stretch(-2, 3.0)]) == ()
    assert spells([stretch(2, None)]) == ()
    assert spells([stretch(2, 0.0)]) == ()
    assert [one.minutes for one in spells([stretch(2, 0.5)])] == [0.5]
    (one,) = spells([stretch(2, None), stretch(1, 3.0)])
    assert (one.n, one.before, one.each) == (1, 2, 3.0)


def test_how_uneven_a_stage_goes_is_read_within_its_sessions_and_not_between_them() -> None:
    # Two sessions, the second twice as slow, both as even as a clock: nothing but the prior,
    # worth six stretches, with one lost to each session's own average.
    even = [stretch(1, 2.0)] * 4 + [stretch(1, 4.0, session=2)] * 4
    assert unevenness(even, spells(even)) == {"sew": pytest.approx(6 * UNEVEN / (6 + 8 - 2))}
    # A stretch of four says four times as much of one count's variance as its average does.
    rough = [stretch(4, 6.0), stretch(4, 10.0)]
    squares = 4 * 0.25**2 + 4 * 0.25**2
    assert unevenness(rough, spells(rough))["sew"] == pytest.approx(
        (6 * UNEVEN + squares) / (6 + 2 - 1)
    )
    assert unevenness([stretch(2, None)], []) == {}


# The time of a count


def test_how_long_a_count_may_take_before_it_holds_a_gap() -> None:
    # Four usual times and five minutes for one; for n, n (1.5 + 2.5 / root n).
    assert longest_likely(1, 2.0) == 13
    assert longest_likely(4, 2.0) == 4 * 2 * 2.75 + 5
    assert longest_likely(100, 1.0) == 100 * 1.75 + 5


def test_three_times_make_the_usual_one_and_fewer_leave_the_guess() -> None:
    def usual(*minutes: float) -> float:
        return usual_minutes([stretch(1, each) for each in minutes], {"sew": 2.0})["sew"]

    assert usual() == 2.0
    assert usual(1.0, 1.5) == 2.0
    assert usual(3.0) == 3.0
    assert usual(3.0, 5.0) == 3.0
    assert usual(5.0, 3.0) == 3.0
    assert usual(1.0, 1.5, 1.2) == 1.2
    # Faster than a twentieth of the guess is no time of a piece; a twentieth is one.
    assert usual(0.1, 0.1, 0.1) == 0.1
    assert usual(0.099, 0.099, 0.099) == 2.0


def test_the_longest_likely_time_is_no_gap_and_a_fifth_of_the_usual_is_no_afterthought() -> None:
    def timed(minutes: float) -> float | None:
        diary = Diary(a_quilt())
        diary.sit_down()
        for _ in range(3):
            diary.count("sew", 1, 2.0)
        diary.count("sew", 1, minutes)
        return stretches(diary.record, {"sew": 2.0})[-1].minutes

    assert timed(13.0) == 13.0
    assert timed(13.1) is None
    assert timed(0.4) == 0.4
    assert timed(0.39) is None


def test_counts_ten_seconds_apart_are_one_heap_and_eleven_are_two() -> None:
    def heaps(seconds: float) -> int:
        diary = Diary(a_quilt())
        diary.sit_down()
        diary.count("sew", 1, 2.0)
        diary.count("sew", 1, seconds / 60)
        return len(stretches(diary.record, {"sew": 2.0}))

    assert (heaps(10), heaps(11)) == (1, 2)


# Sessions


def facts(*spent: float, units: int = 0, apart: timedelta = DAY) -> list[SessionFacts]:
    return [
        session_of(one, n, MONDAY + n * apart, units=units) for n, one in enumerate(spent, start=1)
    ]


def test_the_last_ten_sessions_make_the_usual_length() -> None:
    assert usual_hours(facts(9, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10)) == 5.5
    assert usual_hours(facts(0.0, 3.0)) == 3.0


def test_the_eighth_day_is_another_week() -> None:
    assert fullest_week(facts(1, 2, apart=timedelta(days=7))) == 2
    assert fullest_week(facts(1, 2, apart=timedelta(days=7, minutes=-1))) == 3


def test_minutes_for_each_unit_are_told_from_the_first_unit_on() -> None:
    assert minutes_per_unit(facts(1.0, 2.0, units=1)) == 180
    assert minutes_per_unit(facts(1.0, 2.0, units=0)) is None
    assert minutes_per_unit([*facts(1.0, 2.0), *facts(3.0, units=4)]) == 90
    assert hours_so_far(facts(1.0, 2.0, 0.5)) == (1.0, 3.0, 3.5)


# Leaving out


def test_what_is_left_out_is_a_place_or_a_thing_in_the_hands() -> None:
    stages = {stage.id: stage for stage in route_for(a_quilt(), a_quilt().target).stages}
    sewing, cutting, pairing = stages["sew"], stages["cut-twice"], stages["pair"]
    for word, out in (("machine", sewing), ("sewing", sewing), ("cutting", cutting),
                      ("hands", cutting), ("table", pairing)):  # fmt: skip
        assert [stage for stage in (sewing, cutting, pairing)
                if is_left_out(stage, leave_out([word]))] == [out]  # fmt: skip
    assert leave_out([" Cutting ", "PINS"]) == {
        Station.MAT,
        Hazard.CUTTER,
        Hazard.CROSS_CUT,
        Hazard.PINS,
    }
    assert labels_left_out((sewing, cutting), leave_out(["machine"])) == "sew"
    with pytest.raises(Refused, match=r"Nothing is called “gardening”\. Leave out one of: cutting"):
        leave_out(["gardening"])
