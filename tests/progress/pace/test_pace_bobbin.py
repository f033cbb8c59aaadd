"""How much seam one bobbin lasts: learned from the owner's own, or guessed and told as a guess."""

from __future__ import annotations

from fractions import Fraction
from statistics import median

import pytest
from msgspec.structs import replace

from sewalong.lengths import METRE, Unit
from sewalong.progress.pace.break_points import something_may_be_worn
from sewalong.progress.pace.supplies.bobbin import (
    USUAL_METRES,
    bobbin,
    lasts_in_words,
    likely_unsewn,
    may_run_out,
    seam_from,
)
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.events import every_kind as e
from sewalong.progress.record.state import State
from tests.progress.pace.evenings import Diary, a_quilt

EACH = 5 + 5 + 9.5
"""Inches of seam in a four-patch of 5 in squares: two short seams and a long one."""


def at_sewing(metres: int | None = None, unit: Unit = Unit.INCH) -> Diary:
    quilt = a_quilt(pieces=1800, rows=30, columns=30)
    chosen = replace(quilt.choices, bobbin_metres=metres)
    diary = Diary(replace(quilt, choices=chosen, unit=unit))
    diary.evening(("pair", 900, 300))
    diary.sit_down()
    return diary


def full_one(diary: Diary) -> None:
    diary.add(e.ToolChanged(at=diary.now, session=diary.session, tool="bobbin"))


def lots(diary: Diary, *counts: int) -> None:
    """Four-patches sewn, a full bobbin after each lot."""
    for n in counts:
        diary.count("sew", n, n * 2.0)
        full_one(diary)


def words(diary: Diary, stage: str = "sew") -> str:
    found = diary.state.route.stage(stage)
    assert found is not None
    return lasts_in_words(diary.state, diary.record, found)


def warned(diary: Diary) -> str:
    found = may_run_out(diary.state, diary.record)
    return found[1] if found else ""


def test_it_is_the_middle_one_of_the_last_five_so_that_one_changed_early_says_little() -> None:
    diary = at_sewing()
    full_one(diary)
    lots(diary, 500, 60, 62, 3, 58, 61)
    found = bobbin(diary.state, diary.record)
    assert found.lasts == pytest.approx(median([60, 62, 3, 58, 61]) * EACH)
    assert found.is_hers
    assert "learned from your last 5 bobbins" in words(diary)
    assert words(diary).startswith("One bobbin lasts about 60 four-patches here, 32 yd of seam")


def test_what_was_sewn_before_the_first_full_one_is_no_bobbin() -> None:
    diary = at_sewing()
    lots(diary, 10)
    assert not bobbin(diary.state, diary.record).is_hers
    lots(diary, 40)
    assert bobbin(diary.state, diary.record).lasts == pytest.approx(40 * EACH)


def test_what_a_bobbin_that_ran_out_did_not_sew_is_not_counted() -> None:
    diary = at_sewing()
    full_one(diary)
    diary.count("sew", 60, 120)
    diary.count("sew", 1, 2)
    diary.add(e.BobbinRanOut(at=diary.now, session=diary.session, stage="sew", unsewn=13))
    found = bobbin(diary.state, diary.record)
    assert found.lasts == pytest.approx(48 * EACH)
    assert found.since == 0


def test_what_was_unpicked_was_sewn_all_the_same_and_what_was_undone_was_not() -> None:
    diary = at_sewing()
    full_one(diary)
    diary.count("sew", 30, 60)
    diary.unpick("sew", 5)
    seq = diary.count("sew", 5, 10)
    diary.undo(seq)
    full_one(diary)
    assert bobbin(diary.state, diary.record).lasts == pytest.approx(30 * EACH)


def test_rows_begun_are_sewn_when_they_are_written_down_and_not_again_when_counted() -> None:
    """A row of 9 squares of 5 in has 8 seams of 5 in; 16 pairs are 16 of them."""
    diary = Diary(a_quilt("plain-squares", 36, rows=4, columns=9))
    diary.evening(("square-up", 32, 10))
    diary.sit_down()
    full_one(diary)
    diary.add(e.RowsBegun(at=diary.now, session=diary.session, pieces=((16, 2),), rows=4))
    assert bobbin(diary.state, diary.record).since == pytest.approx(16 * 5)
    # Squared up in between: nothing is sewn, and no row is counted.
    diary.count("square-up", 4, 2)
    assert bobbin(diary.state, diary.record).since == pytest.approx(16 * 5)
    diary.count("sew-rows", 4, 40)
    assert bobbin(diary.state, diary.record).since == pytest.approx(4 * 8 * 5)


def test_a_guess_is_from_the_metres_she_gave_else_common_practice_and_told_as_one() -> None:
    """Half of 2.5 times the seam, and 15 % waste, is the bobbin's (Coats; see thread)."""
    assert float(seam_from(Fraction(1150))) == pytest.approx(800)
    said = at_sewing(60)
    assert bobbin(said.state, said.record).lasts == pytest.approx(float(60 * METRE) / (1.25 * 1.15))
    assert "(a guess from 60 m on a bobbin)" in words(said)
    unsaid = at_sewing()
    # 45 m are 49.2 yd, and 49.2 / (1.25 * 1.15) = 34.2.
    assert f"34 yd of seam (a guess from {USUAL_METRES} m on a bobbin, common practice)" in (
        words(unsaid)
    )
    metric = at_sewing(60, Unit.CM)
    assert " 42 m of seam" in words(metric)


def test_it_says_how_many_more_the_one_in_the_machine_sews() -> None:
    diary = at_sewing()
    full_one(diary)
    lots(diary, 60)
    diary.count("sew", 20, 40)
    assert words(diary).endswith("11 yd are sewn since a full one went in: 40 more.")
    assert words(diary, "press") == ""
    assert "row" in words(diary, "sew-rows")


def test_at_the_end_of_a_chain_near_its_end_it_is_said_that_it_may_run_out() -> None:
    diary = at_sewing()
    full_one(diary)
    lots(diary, 60, 60)
    diary.count("sew", 20, 40)
    assert warned(diary) == ""
    assert looked_for(diary.state, diary)
    diary.count("sew", 20, 40)
    assert warned(diary) == (
        "22 yd of seam on this bobbin; one lasts about 32 yd (learned from your last 2 bobbins). "
        "It may run out in the next chain."
    )
    diary.count("sew", 1, 2)
    assert warned(diary) == ""
    assert not looked_for(diary.state, diary), "one out of a chain: the chain goes on"


def looked_for(state: State, diary: Diary) -> bool:
    return something_may_be_worn(state, plan(state), diary.now)


def test_without_a_change_written_down_or_with_anybodys_guess_nothing_is_said_unasked() -> None:
    diary = at_sewing(60)
    diary.count("sew", 200, 400)
    assert warned(diary) == ""
    full_one(diary)
    diary.count("sew", 90, 180)
    assert "a guess from 60 m on a bobbin" in warned(diary)
    anybody = at_sewing()
    full_one(anybody)
    anybody.count("sew", 200, 400)
    assert warned(anybody) == ""


def test_quilting_of_unknown_length_teaches_nothing() -> None:
    diary = Diary(a_quilt("plain-squares", 4, 2, 2, finishing=("layer", "quilt")))
    diary.evening(("square-up", 4, 2), ("sew-rows", 2, 6), ("join-rows", 1, 3), ("layer", 1, 60))
    diary.sit_down()
    full_one(diary)
    diary.count("quilt", 1, 20)
    full_one(diary)
    found = bobbin(diary.state, diary.record)
    assert not found.is_hers
    assert words(diary, "quilt") == ""


def test_where_it_likely_ran_out_is_what_was_counted_beyond_what_one_lasts() -> None:
    """One lasts 60; 40 and 30 were counted since, so the last 10 of the 30 had no thread."""
    diary = at_sewing()
    full_one(diary)
    lots(diary, 60, 60)
    diary.count("sew", 40, 80)
    assert ran_out_at(diary) == ""
    diary.count("sew", 20, 40)
    assert ran_out_at(diary) == "", "to the last inch"
    diary.undo(len(diary.record))
    diary.count("sew", 30, 60)
    assert ran_out_at(diary).startswith(
        "Likely from piece 21 on: 10 four-patches of 30 not sewn. Look from the end of the chain"
    )
    assert ran_out_at(diary, "sew-rows") == ""
    anybody = at_sewing()
    full_one(anybody)
    anybody.count("sew", 400, 800)
    assert ran_out_at(anybody) == ""


def ran_out_at(diary: Diary, stage: str = "sew") -> str:
    found = diary.state.route.stage(stage)
    assert found is not None
    return likely_unsewn(diary.state, diary.record, found)
