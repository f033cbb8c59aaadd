"""The time of each count: gaps left out, heaps shared, several stages and sessions."""

from __future__ import annotations

import pytest

from sewalong.progress.pace.count_times import stretches
from sewalong.progress.pace.session_samples import spells
from sewalong.progress.record.events import every_kind as e
from sewalong.progress.record.events.undoing import effective
from tests.progress.pace.evenings import DAY, Diary, a_quilt

GUESS = {"pair": 0.3, "sew": 2.0, "press": 0.7}


def a_diary() -> Diary:
    diary = Diary(a_quilt())
    diary.sit_down()
    return diary


def minutes(diary: Diary) -> list[tuple[str, int, float | None]]:
    found = stretches(diary.record, GUESS)
    return [(s.stage, s.n, None if s.minutes is None else round(s.minutes, 3)) for s in found]


def test_a_count_took_the_time_since_the_one_before_at_whatever_stage() -> None:
    diary = a_diary()
    diary.count("pair", 10, 4)
    diary.count("sew", 3, 6)
    diary.count("sew", 2, 5)
    assert minutes(diary) == [("pair", 10, 4), ("sew", 3, 6), ("sew", 2, 5)]


def test_a_long_gap_leaves_its_count_without_a_time() -> None:
    diary = a_diary()
    for _ in range(5):
        diary.count("sew", 2, 4)
    diary.count("sew", 2, 75)
    diary.count("sew", 2, 4)
    assert minutes(diary)[5] == ("sew", 2, None)
    assert [s.idle for s in stretches(diary.record, GUESS)] == [False] * 5 + [True, False]
    (spell,) = spells(stretches(diary.record, GUESS))
    assert spell.n == 12
    assert spell.minutes == pytest.approx(24)


def test_a_slow_sewer_is_not_taken_for_one_who_went_away() -> None:
    diary = a_diary()
    for _ in range(4):
        diary.count("sew", 1, 25)
    assert [m for _, _, m in minutes(diary)] == [25, 25, 25, 25]


def test_an_hour_away_is_found_in_a_large_batch_too() -> None:
    diary = a_diary()
    for _ in range(4):
        diary.count("sew", 20, 40)
    diary.count("sew", 20, 100)
    assert minutes(diary)[-1] == ("sew", 20, None)


def test_counts_within_seconds_share_the_stretch_before_them_as_the_guesses_go() -> None:
    diary = a_diary()
    diary.count("pair", 1, 0.3)
    diary.count("sew", 4, 12.0)
    diary.count("press", 4, 0.05)
    sew, press = minutes(diary)[1:]
    assert sew[2] is not None
    assert press[2] is not None
    assert sew[2] + press[2] == pytest.approx(12.05, abs=0.01)
    assert sew[2] / press[2] == pytest.approx(2.0 / 0.7, abs=0.01)


def test_one_key_pressed_for_each_of_a_clipped_chain_is_one_batch() -> None:
    diary = a_diary()
    diary.count("sew", 1, 2)
    diary.pass_by(16)
    for _ in range(8):
        diary.count("sew", 1, 0.01)
    assert minutes(diary)[1] == ("sew", 8, 16.08)


def test_what_was_made_before_the_session_was_opened_has_no_time() -> None:
    diary = a_diary()
    diary.count("pair", 30)
    diary.count("pair", 10, 3)
    assert minutes(diary) == [("pair", 30, None), ("pair", 10, 3)]
    (spell,) = spells(stretches(diary.record, GUESS))
    assert (spell.n, spell.before) == (10, 30)


def test_a_miscount_taken_back_leaves_the_time_to_the_right_count() -> None:
    diary = a_diary()
    diary.count("sew", 2, 4)
    wrong = diary.count("sew", 12, 4)
    diary.pass_by(0.5)
    diary.undo(wrong)
    diary.count("sew", 2, 0.1)
    assert minutes(diary) == [("sew", 2, 4), ("sew", 2, 4.6)]
    kinds = [r.event.kind for r in effective(diary.record)]
    assert kinds == ["session opened", "counted", "counted"]


def test_unpicking_takes_pieces_and_keeps_its_time() -> None:
    diary = a_diary()
    diary.count("sew", 6, 12)
    diary.unpick("sew", 2, 8)
    (spell,) = spells(stretches(diary.record, GUESS))
    assert (spell.n, spell.minutes) == (4, 20)


def test_the_same_stage_in_several_sessions_is_several_spells() -> None:
    diary = Diary(a_quilt())
    diary.evening(("pair", 10, 4), ("sew", 2, 5))
    diary.evening(("sew", 8, 15))
    found = spells(stretches(diary.record, GUESS))
    assert [(s.stage, s.session, s.n, s.before) for s in found] == [
        ("pair", 1, 10, 0),
        ("sew", 1, 2, 0),
        ("sew", 2, 8, 2),
    ]


def test_other_events_and_unknown_stages_are_passed_over() -> None:
    diary = a_diary()
    diary.count("sew", 2, 4)
    diary.pass_by(2)
    diary.add(e.Noted(at=diary.now, session=1, text="blue thread"))
    diary.change("needle")
    diary.count("no-such-stage", 3, 1)
    diary.count("sew", 2, 2)
    assert minutes(diary) == [("sew", 2, 4), ("sew", 2, 5)]


def test_a_clock_set_back_gives_no_time_below_nothing() -> None:
    diary = a_diary()
    diary.count("sew", 2, 4)
    diary.count("sew", 2, -30)
    assert minutes(diary)[1] == ("sew", 2, None)


def test_a_border_begun_one_evening_and_counted_the_next_has_both_evenings() -> None:
    guesses = {**GUESS, "add-borders": 20.0}
    diary = Diary(a_quilt(borders=1))
    diary.sit_down()
    diary.count("add-borders", 1, 22)
    diary.pass_by(15)
    diary.put_away()
    diary.sit_down()
    diary.count("add-borders", 1, 9)
    diary.count("add-borders", 1, 21)
    found = [stretch.minutes for stretch in stretches(diary.record, guesses)]
    assert found == [22, 24, 21]


def test_time_before_putting_away_is_not_carried_to_small_pieces_or_from_a_forgotten_session() -> (
    None
):
    diary = a_diary()
    diary.count("sew", 2, 4)
    diary.pass_by(3)
    diary.put_away()
    diary.sit_down()
    diary.count("sew", 2, 4)
    assert minutes(diary) == [("sew", 2, 4), ("sew", 2, 4)]
    guesses = {**GUESS, "quilt": 60.0}
    left = Diary(a_quilt(finishing=("layer", "quilt")))
    left.sit_down()
    left.pass_by(50)
    left.add(e.SessionClosed(at=left.now, session=1, ended=left.now, forgotten=True))
    left.sit_down()
    left.count("quilt", 1, 40)
    assert [stretch.minutes for stretch in stretches(left.record, guesses)] == [40]


def test_rows_joined_by_their_numbers_are_one_seam() -> None:
    diary = Diary(a_quilt("plain-squares", 4, 2, 2))
    diary.evening(("square-up", 4, 2), ("sew-rows", 2, 6))
    diary.sit_down(diary.now + DAY)
    diary.pass_by(5)
    diary.add(e.RowsJoined(at=diary.now, session=diary.session, first=1, second=2))
    last = stretches(diary.record, {"square-up": 0.5, "sew-rows": 3.0, "join-rows": 5.0})[-1]
    assert (last.stage, last.n, last.minutes) == ("join-rows", 1, 5.0)


ROWS = {"square-up": 0.3, "sew-rows": 13.5}


def of_rows() -> Diary:
    diary = Diary(a_quilt("plain-squares", 36, rows=4, columns=9))
    diary.sit_down()
    diary.count("square-up", 36, 10)
    return diary


def row_minutes(diary: Diary) -> list[tuple[int, float | None]]:
    found = stretches(diary.record, ROWS)
    return [
        (s.n, None if s.minutes is None else round(s.minutes, 3))
        for s in found
        if s.stage == "sew-rows"
    ]


def begin(diary: Diary, rows: int, *pieces: tuple[int, int], minutes: float) -> None:
    diary.pass_by(minutes)
    diary.add(e.RowsBegun(at=diary.now, session=diary.session, pieces=pieces, rows=rows))


def test_a_row_took_what_was_sewn_of_it_before_and_the_rest() -> None:
    """Half on one evening in 7 minutes, the rest weeks later in 6."""
    diary = of_rows()
    begin(diary, 1, (1, 5), minutes=7)
    diary.put_away()
    diary.sit_down(diary.now + 30 * DAY)
    diary.count("sew-rows", 1, 6)
    assert row_minutes(diary) == [(1, 13)]


def test_a_chain_of_pairs_is_shared_out_to_its_rows() -> None:
    """16 pairs of four rows in 24 minutes: 6 to each row, and its own 5."""
    diary = of_rows()
    begin(diary, 4, (16, 2), minutes=24)
    diary.count("sew-rows", 1, 5)
    diary.count("sew-rows", 3, 18)
    diary.put_away()
    assert row_minutes(diary) == [(1, 11), (3, 36)]


def test_a_row_begun_that_was_typed_after_the_work_has_no_time() -> None:
    diary = of_rows()
    diary.put_away()
    diary.sit_down(diary.now + DAY)
    begin(diary, 1, (1, 5), minutes=0)
    diary.count("sew-rows", 1, 6)
    diary.count("sew-rows", 1, 13)
    assert row_minutes(diary) == [(1, None), (1, 13)]
