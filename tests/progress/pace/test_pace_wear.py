"""What wears out, said once and not in the middle of a chain."""

from __future__ import annotations

from datetime import timedelta
from fractions import Fraction

import pytest

from sewalong.owner.preferences import AS_USUAL, Preferences
from sewalong.piecing.method import Noun
from sewalong.progress.pace.break_points import at_a_chains_end, at_a_stage_boundary
from sewalong.progress.pace.measured import measured
from sewalong.progress.pace.supplies.ran_out import RanOut, ran_out
from sewalong.progress.pace.supplies.use_since_change import changes, use_between
from sewalong.progress.pace.supplies.wear import Wear, worn
from sewalong.progress.pace.supplies.wear_choices import WearChoices, chosen_by
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.events import every_kind as e
from tests.progress.pace.evenings import Diary, a_quilt

NEVER_STOP = WearChoices(stop_minutes=0)


def said(diary: Diary, choices: WearChoices = NEVER_STOP) -> tuple[Wear, ...]:
    return worn(diary.state, diary.record, diary.now, choices)


def bobbin(diary: Diary) -> None:
    diary.add(e.ToolChanged(at=diary.now, session=diary.session, tool="bobbin"))


def pairs_laid(pieces: int = 1800) -> Diary:
    diary = Diary(a_quilt(pieces=pieces, rows=30, columns=30))
    diary.evening(("pair", pieces // 2, pieces / 6))
    return diary


def test_a_needle_is_due_after_the_hours_sewn_and_not_the_hours_sat() -> None:
    """Changed after 6 to 8 hours, but nobody times their sewing: the sum of the sessions since.
    Source: http://stitchedbykiriaki.blogspot.com/2016/02/sewing-machince-neddle.html
    """
    diary = pairs_laid()
    diary.sit_down()
    diary.change("needle")
    diary.put_away()
    for _ in range(7):
        diary.evening(*[("sew", 5, 10.0)] * 6)
    assert said(diary) == ()
    known = measured(diary.state, diary.record)
    assert use_between(diary.state, known, 0).machine_hours == pytest.approx(7, abs=0.1)
    diary.evening(*[("sew", 5, 10.0)] * 6, ("press", 20, 15))
    (needle,) = said(diary)
    assert (
        needle.sentence
        == "About 8 hours at the machine on this needle; a new one is usual after 8 hours."
    )
    assert worn(diary.state, diary.record, diary.now, NEVER_STOP, {needle.id}) == ()
    assert said(diary, WearChoices(needle_hours=12, stop_minutes=0)) == ()
    diary.sit_down()
    diary.change("needle")
    assert said(diary) == ()


def test_nothing_is_said_in_the_middle_of_a_chain() -> None:
    diary = pairs_laid()
    for _ in range(9):
        diary.evening(*[("sew", 5, 10.0)] * 6)
    assert said(diary)
    diary.sit_down()
    assert at_a_stage_boundary(diary.state, plan(diary.state)), "the session has just begun"
    diary.count("sew", 1, 2)
    assert not at_a_chains_end(diary.state, plan(diary.state))
    assert said(diary, WearChoices(stop_minutes=1)) == ()
    diary.count("sew", 6, 12)
    assert at_a_chains_end(diary.state, plan(diary.state))
    assert [wear.id.split("-")[0] for wear in said(diary, WearChoices(stop_minutes=10))] == ["stop"]
    diary.add(e.StageChosen(at=diary.now, session=diary.session, stage="press"))
    assert [wear.id.split("-")[0] for wear in said(diary)] == ["needle"]


def test_a_bobbin_says_nothing_before_two_changes_and_then_learns() -> None:
    diary = pairs_laid()
    diary.sit_down()
    diary.count("sew", 40, 80)
    bobbin(diary)
    diary.count("sew", 60, 120)
    diary.put_away()
    assert said(diary) == ()
    diary.sit_down()
    bobbin(diary)
    diary.count("sew", 20, 40)
    diary.count("sew", 10, 20)
    diary.put_away()
    assert said(diary) == ()
    diary.sit_down()
    diary.count("sew", 26, 52)
    diary.put_away()
    (due,) = said(diary)
    # A four-patch takes 5 + 5 + 9.5 in of seam: 56 of them 30 yd, 60 of them 32 1/2.
    assert due.sentence.startswith("30 yd of seam on this bobbin; one lasts about 32 yd")
    assert due.id.startswith("bobbin-")


def test_a_bobbin_that_ran_out_is_a_bobbin_changed() -> None:
    diary = pairs_laid()
    diary.sit_down()
    for changed in (True, False):
        if changed:
            bobbin(diary)
        else:
            diary.add(e.BobbinRanOut(at=diary.now, session=diary.session, stage="sew", unsewn=1))
        diary.count("sew", 10, 20)
    seqs = changes(diary.record, "bobbin")
    kinds = [diary.record[seq - 1].event.kind for seq in seqs]
    assert kinds == ["tool changed", "bobbin ran out"]
    assert changes(diary.record, "needle") == ()


def test_a_blade_is_learned_or_told_and_else_silent() -> None:
    diary = Diary(a_quilt("plain-squares", 400, 20, 20))
    diary.sit_down()
    diary.count("square-up", 100, 30)
    diary.put_away()
    assert said(diary) == ()
    told = WearChoices(blade_inches=1900, stop_minutes=0)
    (due,) = said(diary, told)
    assert due.id == "blade-0"
    assert due.sentence.startswith("56 yd cut with this blade; you change it after 53 yd.")
    diary.sit_down()
    diary.change("blade")
    diary.count("square-up", 50, 15)
    diary.change("blade")
    diary.count("square-up", 49, 15)
    diary.put_away()
    assert said(diary, told) == ()
    assert said(diary) == ()
    diary.evening(("square-up", 1, 0.4))
    assert [wear.id[:6] for wear in said(diary)] == ["blade-"]


def test_a_stop_comes_at_a_chains_end_once_for_each_interval() -> None:
    """5 to 10 minutes after 50 to 60 is likely better than 15 every 2 h (display screens only).
    Source: HSE L26 guidance as given by LRD, https://www.lrdpublications.org.uk/
    publications.php?id=idp248816&iss=1880&pub=bk ; for sewing, common practice.
    """
    diary = pairs_laid()
    diary.sit_down()
    for _ in range(4):
        diary.count("sew", 5, 11)
    assert said(diary, WearChoices()) == ()
    diary.count("sew", 5, 11)
    (first,) = said(diary, WearChoices())
    assert first.sentence.startswith("55 minutes at it: stand up")
    diary.count("sew", 5, 11)
    assert worn(diary.state, diary.record, diary.now, WearChoices(), {first.id}) == ()
    for _ in range(4):
        diary.count("sew", 5, 11)
    (second,) = worn(diary.state, diary.record, diary.now, WearChoices(), {first.id})
    assert second.id != first.id


def test_a_gap_was_a_rest() -> None:
    diary = pairs_laid()
    diary.sit_down()
    for _ in range(4):
        diary.count("sew", 5, 10)
    diary.count("sew", 5, 70)
    assert said(diary, WearChoices()) == ()


def test_what_has_no_length_takes_its_hours_all_the_same() -> None:
    diary = Diary(a_quilt("plain-squares", 4, 2, 2, finishing=("layer", "quilt")))
    diary.evening(
        ("square-up", 4, 2),
        ("sew-rows", 2, 6),
        ("join-rows", 1, 3),
        ("layer", 1, 60),
        ("quilt", 1, 20),
    )
    known = measured(diary.state, diary.record)
    assert use_between(diary.state, known, 0).machine_hours > 0.4


def test_ten_of_thirty_minutes_without_a_bobbin_is_a_third_of_the_run() -> None:
    """120 blocks in the run: 40 unsewn. Source: https://www.midnightcrafts.net/chain-piecing-blooper/"""
    found = ran_out(120, 30, 10)
    assert (found.sewn, found.unsewn) == (80, 40)
    assert found.sentence(Noun("block", "blocks")).startswith(
        "Likely from piece 81 on: 40 blocks of 120 not sewn."
    )
    assert ran_out(7, 20, 1).unsewn == 1
    assert [ran_out(10, 30, without).unsewn for without in (0, 0.1, 3, 3.1, 30)] == [0, 1, 1, 2, 10]
    assert ran_out(1, 0.5, 0.1) == RanOut(0, 1)
    for wrong in ((0, 30, 10), (10, 0, 0), (10, -1, 0), (10, 5, 6), (10, 5, -0.5)):
        with pytest.raises(ValueError, match="run"):
            ran_out(*wrong)


def test_a_later_now_changes_no_hours() -> None:
    diary = pairs_laid()
    for _ in range(9):
        diary.evening(*[("sew", 5, 10.0)] * 6)
    later = worn(diary.state, diary.record, diary.now + timedelta(days=90), NEVER_STOP)
    assert later == said(diary)


def test_the_needle_that_counts_is_the_last_one() -> None:
    diary = pairs_laid()
    for _ in range(8):
        diary.sit_down()
        diary.change("needle")
        diary.put_away()
        diary.evening(*[("sew", 5, 10.0)] * 6)
    assert said(diary) == ()
    last = max(r.seq for r in diary.record if isinstance(r.event, e.ToolChanged))
    known = measured(diary.state, diary.record)
    used = use_between(diary.state, known, last).machine_hours
    assert used == pytest.approx(1, abs=0.02)
    (due,) = said(diary, WearChoices(needle_hours=used, stop_minutes=0))
    assert due.id == f"needle-{last}"
    assert said(diary, WearChoices(needle_hours=used * 1.01, stop_minutes=0)) == ()


def test_without_a_needle_in_the_record_it_says_so() -> None:
    diary = pairs_laid()
    for _ in range(9):
        diary.evening(*[("sew", 5, 10.0)] * 6)
    (due,) = said(diary)
    assert due.id == "needle-0"
    assert "at the machine and no new needle is in the record; " in due.sentence


def test_a_blade_is_named_by_its_change() -> None:
    diary = Diary(a_quilt("plain-squares", 400, 20, 20))
    diary.sit_down()
    diary.change("blade")
    diary.count("square-up", 100, 30)
    diary.change("blade")
    diary.count("square-up", 100, 30)
    diary.put_away()
    (due,) = said(diary)
    assert due.id == "blade-4"


def test_a_stop_is_named_by_its_session_its_rest_and_how_often_it_came() -> None:
    diary = pairs_laid()
    diary.sit_down()
    for _ in range(5):
        diary.count("sew", 5, 11.1)
    (first,) = said(diary, WearChoices())
    assert first.id == "stop-2-0-1"
    assert first.sentence.startswith("56 minutes at it: ")
    diary.count("sew", 5, 90)
    rested = diary.count("sew", 5, 90)
    for _ in range(5):
        diary.count("sew", 5, 11)
    (after,) = said(diary, WearChoices())
    assert after.id == f"stop-2-{rested}-1"


def test_hours_of_counts_without_a_time_are_said_apart_as_the_guess_they_are() -> None:
    diary = pairs_laid()
    for _ in range(5):
        diary.evening(*[("sew", 5, 10.0)] * 6)
    diary.sit_down()
    diary.count("sew", 90, 0.0)
    diary.put_away()
    known = measured(diary.state, diary.record)
    used = use_between(diary.state, known, 0)
    assert used.machine_hours == pytest.approx(5, abs=0.1)
    assert used.guessed_hours == pytest.approx(3, abs=0.1), "90 at two minutes each"
    (due,) = said(diary)
    assert due.sentence == (
        "About 5 hours at the machine and no new needle is in the record, and a guess of 3 hours "
        "more for counts without a time; a new one is usual after 8 hours."
    )
    typed_later = pairs_laid()
    typed_later.sit_down()
    typed_later.count("sew", 400, 0.0)
    typed_later.put_away()
    (due,) = said(typed_later)
    assert due.sentence.startswith("A guess of 13 hours at the machine and no new needle")


def test_what_she_prefers_holds_and_the_usual_where_she_says_nothing() -> None:
    assert chosen_by(AS_USUAL) == WearChoices()
    hers = Preferences(needle_hours=0.0, stop_minutes=20, blade_inches=Fraction(900))
    assert chosen_by(hers) == WearChoices(0.0, 900.0, 20)
