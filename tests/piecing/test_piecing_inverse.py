"""From the unit wanted to the square to cut, and back; seam room; refusals."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sewalong.lengths import CENTIMETRE, Unit
from sewalong.piecing.catalogue import method_ids
from sewalong.piecing.derive import derive, start_for, unit_size
from sewalong.piecing.faults import SizeRefused

IDS = st.sampled_from(method_ids())
SEAMS = st.fractions(F(1, 8), F(3, 8), max_denominator=32)
WANTED = st.fractions(F(3), F(12), max_denominator=16)


@settings(max_examples=60, deadline=None)
@given(id=IDS, finishes=WANTED, seam=SEAMS)
def test_the_cutting_size_is_large_enough_and_by_less_than_an_eighth(
    id: str, finishes: F, seam: F
) -> None:
    sizes = start_for(id, finishes=finishes, seam=seam)
    for entry in sizes.values():
        assert 0 <= float(entry.cutting) - entry.exact + 1e-8 < 0.125 + 1e-8
    main = next(iter(sizes.values())).cutting
    derived = derive(id, main, seam, strip_length=F(400))
    assert derived.unit.finishes[0] >= float(finishes) - 1e-8


@settings(max_examples=60, deadline=None)
@given(id=IDS, finishes=WANTED, seam=SEAMS)
def test_there_and_back_is_the_same_size(id: str, finishes: F, seam: F) -> None:
    entry = next(iter(start_for(id, finishes=finishes, seam=seam).values()))
    exact = F(entry.exact)
    back = derive(id, exact, seam, strip_length=F(400)).unit.finishes[0]
    assert back == pytest.approx(float(finishes), abs=1e-7)


@settings(max_examples=40, deadline=None)
@given(id=IDS, main=st.fractions(F(5), F(12), max_denominator=16), seam=SEAMS)
def test_seams_wider_by_the_room_just_reach_the_trim_size(id: str, main: F, seam: F) -> None:
    cut = {pile: entry.cutting for pile, entry in derive(id, main, seam).starts.items()}
    size = unit_size(id, cut, seam)
    trim = size.trim_to()
    room = size.seam_room_for(trim)
    if room is None:
        assert size.width_per_seam == pytest.approx(0)
        return
    wider = derive(id, cut, seam + F(room)).unit
    assert wider.width >= float(trim[0]) - 1e-6
    assert wider.height >= float(trim[1]) - 1e-6
    assert min(wider.width - float(trim[0]), wider.height - float(trim[1])) < 1e-5


def test_finished_and_unfinished_are_both_answered() -> None:
    # Practice case: 8 in from sewing all round. L = u sqrt 2 + 2 s.
    as_unfinished = start_for("paired-squares", unfinished=F(8))["square"]
    as_finished = start_for("paired-squares", finishes=F(8))["square"]
    assert as_unfinished.exact == pytest.approx(11.814, abs=0.0005)
    assert as_finished.exact == pytest.approx(12.521, abs=0.0005)
    assert as_unfinished.cutting == F(95, 8)
    assert as_finished.cutting == F(101, 8)


def test_coarser_rulers_round_further_up() -> None:
    entry = start_for("paired-squares", finishes=F(8), fineness=F(1, 4))["square"]
    assert entry.cutting == F(51, 4)


def test_a_metric_quilter_cuts_to_her_own_step_at_her_own_seam() -> None:
    # Quilteuse forever (2012): 0.75 cm seams add 1.5, 2.5 and 3.5 cm. Exactly it is
    # 1.5, s (2 + sqrt 2) = 2.56 and s (2 + 2 sqrt 2) = 3.62 cm.
    seam = F(3, 4) * CENTIMETRE
    finishes = 10 * CENTIMETRE
    added = [
        (start_for(id, finishes=finishes, seam=seam)["square"].exact / float(CENTIMETRE)) - 10
        for id in ("plain-squares", "half-square-two", "hourglass")
    ]
    assert added == pytest.approx([1.5, 2.5607, 3.6213], abs=0.0001)
    scant = F(7, 10) * CENTIMETRE
    added = [
        (start_for(id, finishes=finishes, seam=scant)["square"].exact / float(CENTIMETRE)) - 10
        for id in ("half-square-two", "hourglass")
    ]
    assert added == pytest.approx([2.39, 3.38], abs=0.005)
    half = start_for("half-square-two", finishes=finishes, seam=seam, fineness=CENTIMETRE / 10)
    assert half["square"].cutting == F(126, 10) * CENTIMETRE


def test_widths_that_cannot_be_are_refused_in_the_owners_unit() -> None:
    for finishes in (F(0), F(-1)):
        with pytest.raises(SizeRefused, match="2 seams of 1/4 in leave nothing"):
            start_for("paired-squares", finishes=finishes)
    with pytest.raises(SizeRefused, match="2 seams of 1/4 in leave nothing"):
        start_for("paired-squares", unfinished=F(1, 2))
    with pytest.raises(SizeRefused, match=r"2 seams of 0\.635 cm leave nothing"):
        start_for("paired-squares", finishes=F(0), unit=Unit.CM)
    with pytest.raises(
        SizeRefused, match=r"2 seams of 0\.635 cm leave nothing of a 1\.267 cm square"
    ):
        derive("paired-squares", F("1.267") * CENTIMETRE, unit=Unit.CM)
    with pytest.raises(SizeRefused, match="A seam of 0 in cannot be sewn"):
        derive("paired-squares", F(5), F(0))


@pytest.mark.parametrize("seam", [F(0), F(-1, 4)])
def test_no_unit_is_worked_out_for_a_seam_of_nothing(seam: F) -> None:
    with pytest.raises(SizeRefused, match="must be larger than nothing"):
        start_for("paired-squares", finishes=F(8), seam=seam)


def test_one_of_finishes_and_unfinished_is_asked_for() -> None:
    with pytest.raises(ValueError, match="either"):
        start_for("paired-squares")
    with pytest.raises(ValueError, match="either"):
        start_for("paired-squares", finishes=F(1), unfinished=F(2))


@settings(max_examples=80, deadline=None)
@given(id=IDS, main=st.fractions(F(1, 16), F(4), max_denominator=32), seam=SEAMS)
def test_small_starts_are_either_sewn_or_refused_in_words(id: str, main: F, seam: F) -> None:
    refusal, finishes = "", 0.0
    try:
        finishes = min(derive(id, main, seam).unit.finishes)
    except SizeRefused as refused:
        refusal = str(refused)
    assert finishes > 0 or refusal.endswith(".")


def test_nothing_to_trim_to_is_refused() -> None:
    size = derive("paired-squares", F(5, 4)).unit
    assert size.finishes[0] > 0
    with pytest.raises(SizeRefused, match="only the seams are left"):
        size.trim_to()


def test_corners_that_would_overlap_are_refused() -> None:
    with pytest.raises(SizeRefused, match="two corners overlap"):
        start_for("flipped-corners", finishes=F(1))
    with pytest.raises(SizeRefused, match="two corners overlap"):
        derive("flipped-corners", F(3, 2))
    assert derive("flipped-corners", F(9, 4)).unit.finishes == pytest.approx((1.75, 1.75))
