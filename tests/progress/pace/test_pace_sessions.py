"""The sessions as facts for looking at and for lines."""

from __future__ import annotations

from datetime import timedelta

import pytest
from msgspec.structs import replace

from sewalong.progress.pace.duration_words import each_takes, hours, hours_between, listed, several
from sewalong.progress.pace.hours_ahead import Hours
from sewalong.progress.pace.measured import measured
from sewalong.progress.pace.sessions import (
    SessionFacts,
    fullest_week,
    hours_so_far,
    minutes_per_unit,
    session_facts,
    usual_hours,
    what_took_the_time,
)
from sewalong.progress.record.events import every_kind as e
from tests.progress.pace.evenings import DAY, MONDAY, Diary, a_quilt, session_of


def facts(diary: Diary) -> tuple[SessionFacts, ...]:
    return session_facts(diary.state, measured(diary.state, diary.record), diary.now)


def eighty_blocks() -> Diary:
    """80 blocks of two rounds: everything is done at once, at the very end.

    Eleven hours: 2 for the pairs, 1 1/2 to sew and 4 1/2 to press them and go on; of the last
    3 two blocks were made before the others.
    """
    diary = Diary(a_quilt("stacked-four-patch", 160, 8, 10))
    diary.evening(*[("pair", 20, 30.0)] * 4, at=MONDAY)
    diary.evening(*[("sew", 10, 22.5)] * 4, at=MONDAY + 1 * DAY)
    diary.evening(
        *[("press", 10, 30.0)] * 4,
        *[("stack", 5, 15.0)] * 4,
        *[("sew-around", 5, 22.5)] * 4,
        at=MONDAY + 2 * DAY,
    )
    diary.evening(("cut-twice", 1, 5.0), ("press-open", 2, 4.0), at=MONDAY + 9 * DAY)
    diary.evening(*[("cut-twice", 1, 5.0)] * 19, ("press-open", 78, 76.0), at=MONDAY + 10 * DAY)
    return diary


def test_eleven_hours_for_eighty_blocks_and_two_of_them_two_hours_before_the_end() -> None:
    """8.2 min a block; at 82 % of the work there were 2 of 80. Source:
    https://scrambledmeggs.wordpress.com/2011/01/21/how-many-hours-does-it-take-to-make-80-quilt-blocks/
    (the hours of its stages are filled in here; its sums are those of the page).
    """
    diary = Diary(a_quilt("plain-squares", 80, 8, 10))
    diary.evening(("square-up", 2, 1.0))
    parts = [
        session_of(2.0, 1, MONDAY),
        session_of(1.5, 2, MONDAY + DAY),
        session_of(4.5, 3, MONDAY + 2 * DAY),
        session_of(1.0, 4, MONDAY + 3 * DAY, units=2),
        session_of(2.0, 5, MONDAY + 4 * DAY, units=80),
    ]
    assert minutes_per_unit(parts) == pytest.approx(8.25)
    so_far = hours_so_far(parts)
    assert so_far[-1] == 11
    assert (parts[-2].units, round(so_far[-2] / so_far[-1], 2)) == (2, 0.82)


def test_from_a_record_the_units_come_last_and_the_work_does_not() -> None:
    diary = eighty_blocks()
    assert [one.units for one in facts(diary)] == [0, 0, 0, 2, 80]
    so_far = hours_so_far(facts(diary))
    assert so_far[2] / so_far[-1] > 0.7
    assert minutes_per_unit(facts(diary)) == pytest.approx(so_far[-1] * 60 / 80)
    assert minutes_per_unit(()) is None


def test_a_session_holds_its_pieces_and_its_hours() -> None:
    diary = Diary(a_quilt())
    diary.evening(("pair", 10, 4), ("sew", 2, 5))
    diary.evening(("sew", 3, 6))
    first, second = facts(diary)
    assert (first.pieces, second.pieces) == (12, 3)
    assert first.hours == pytest.approx(9 / 60)
    assert usual_hours(facts(diary)) == pytest.approx(7.5 / 60)
    assert usual_hours(()) is None


def test_a_session_spent_at_what_is_no_stage_any_more_keeps_the_units_there_are() -> None:
    diary = Diary(a_quilt("plain-squares", 40, 2, 2))
    diary.evening(("square-up", 8, 4))
    diary.evening(("sew-rows", 2, 6))
    diary.evening(("join-rows", 1, 3))
    diary.unpick("join-rows", 1)
    diary.add(e.TargetChanged(at=diary.now, session=0, rows=1, columns=2))
    found = facts(diary)
    assert [one.units for one in found] == [8, 8, 8]
    assert [one.pieces for one in found] == [8, 2, 1]
    assert found[-1].hours == 0
    assert minutes_per_unit(found) == pytest.approx(sum(one.hours for one in found) * 60 / 8)


def test_the_open_session_has_no_length_yet() -> None:
    diary = Diary(a_quilt())
    diary.evening(("pair", 10, 4))
    diary.sit_down()
    diary.count("pair", 2, 1)
    assert usual_hours(facts(diary)) == pytest.approx(4 / 60)
    assert facts(diary)[-1].is_open


def test_the_fullest_week_is_any_seven_days() -> None:
    def of(day: int, spent: float) -> SessionFacts:
        return session_of(spent, day, MONDAY + day * DAY)

    assert fullest_week([of(0, 1), of(5, 2), of(6, 3), of(7, 4), of(20, 5)]) == 9
    assert fullest_week(()) is None


def test_what_took_the_time_comes_longest_first_and_adds_up() -> None:
    diary = eighty_blocks()
    times = what_took_the_time(diary.state.route, measured(diary.state, diary.record))
    assert [one.hours for one in times] == sorted((one.hours for one in times), reverse=True)
    assert sum(one.share for one in times) == pytest.approx(1)
    press = next(one for one in times if one.stage == "press")
    assert press.hours == pytest.approx(2)
    assert (
        press.sentence
        == "press: 2 hours, 18% of the time measured, 40 pressed four-patches, about 3 minutes each"
    )


@pytest.mark.parametrize(
    ("low", "high", "text"),
    [
        (9.2, 12.6, "9 to 13 hours"),
        (1.2, 3.1, "1 to 3 1/2 hours"),
        (0.2, 0.7, "10 to 50 minutes"),
        (0.3, 2.4, "10 minutes to 2 1/2 hours"),
        (0.001, 0.01, "a minute"),
        (30, 30, "30 hours"),
    ],
)
def test_ranges_of_hours_are_rounded_outwards(low: float, high: float, text: str) -> None:
    assert hours_between(Hours(low, low, high)) == text


def test_times_and_lists_in_words() -> None:
    assert each_takes(0.42) == "about 25 seconds"
    assert each_takes(1.0) == "about 1 minute"
    assert each_takes(2.4) == "about 2 1/2 minutes"
    assert each_takes(42) == "about 42 minutes"
    assert each_takes(150) == "about 2 1/2 hours"
    assert (hours(0.02), hours(0.9), hours(1), hours(13.6)) == (
        "1 minute",
        "54 minutes",
        "1 hour",
        "14 hours",
    )
    assert (several(1, 1, "week", "weeks"), several(2, 3, "week", "weeks")) == (
        "1 week",
        "2 to 3 weeks",
    )
    assert (listed(()), listed(("a",)), listed(("a", "b", "c"))) == ("", "a", "a, b and c")


def test_an_evening_is_as_long_as_it_was_and_without_its_gaps() -> None:
    diary = Diary(a_quilt())
    diary.evening(("pair", 20, 0), ("pair", 4, 2), ("pair", 4, 2))
    diary.evening(*[("pair", 4, 2)] * 4, ("pair", 4, 90))
    diary.evening(("pair", 2, 0))
    first, second, third = facts(diary)
    assert (first.untimed, second.gaps, second.untimed) == (20, 1, 4)
    assert first.at_work == pytest.approx(4 / 60)
    assert second.length == timedelta(minutes=98)
    assert second.at_work == second.hours == pytest.approx(8 / 60)
    assert third.at_work == 0
    assert usual_hours(facts(diary)) == pytest.approx(6 / 60)
    assert fullest_week(facts(diary)) == pytest.approx(12 / 60)
    typed_at_once = Diary(a_quilt())
    typed_at_once.evening(("pair", 20, 0))
    assert fullest_week(facts(typed_at_once)) is None


def test_what_took_the_time_leaves_out_counts_without_one() -> None:
    diary = Diary(a_quilt())
    diary.evening(("pair", 40, 0), ("pair", 10, 5), ("sew", 2, 5))
    diary.evening(("press", 2, 0))
    pair, sew, press = what_took_the_time(diary.state.route, measured(diary.state, diary.record))
    assert (pair.n, pair.untimed, pair.each) == (50, 40, 0.5)
    assert pair.hours == pytest.approx(5 / 60)
    assert pair.sentence == (
        "pair: 5 minutes, 50% of the time measured, 50 pairs, 40 of them without a time, "
        "about 30 seconds each"
    )
    assert sew.untimed == 0
    assert sew.share == pytest.approx(0.5)
    assert (press.each, press.hours) == (None, 0)
    assert press.sentence == "press: 2 pressed four-patches counted without a time"


def test_a_stage_is_told_to_the_minute() -> None:
    diary = Diary(a_quilt())
    diary.evening(("sew", 28, 57))
    (sew,) = what_took_the_time(diary.state.route, measured(diary.state, diary.record))
    assert sew.sentence.startswith("sew: 57 minutes, 100% of the time measured, 28 four-patches, ")


def test_what_a_count_without_a_time_may_have_taken_is_a_guess_apart() -> None:
    diary = Diary(a_quilt())
    diary.evening(("sew", 10, 0), ("sew", 1, 3), ("press", 4, 6), ("press", -4, 2))
    known = measured(diary.state, diary.record)
    assert known.each["sew"] == 3, "one count with a time is a pace"
    assert "press" not in known.each, "nothing is left of it"
    untimed, timed = known.stretches[:2]
    assert known.guess(untimed) == 30
    assert known.guess(timed) == 0
    assert known.guess(replace(untimed, n=-2)) == 0, "unpicking was no sewing"
    pairs = Diary(a_quilt())
    pairs.evening(("pair", 6, 0))
    known = measured(pairs.state, pairs.record)
    assert known.guess(known.stretches[0]) == pytest.approx(6 * known.guesses["pair"])
