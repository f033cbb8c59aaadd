"""The one further measurement, and what was measured beside a piece already."""

from __future__ import annotations

from datetime import timedelta
from fractions import Fraction as F
from itertools import islice

import pytest
from msgspec.structs import replace

from sewalong.progress.measuring.beside import AT_ONCE, Beside, beside
from sewalong.progress.measuring.causes.causes import causes
from sewalong.progress.measuring.causes.evidence import Evidence, Other, OtherWay
from sewalong.progress.measuring.causes.evidence_of import evidence_of
from sewalong.progress.measuring.causes.further import What, further
from sewalong.progress.measuring.causes.priors import Why
from sewalong.progress.record.measurable import read_piece
from tests.progress import every_act as c
from tests.progress.building import EVENING, MINUTE, Record, do, opening
from tests.progress.measuring.measuring_quilts import STACKED, measured, of_size
from tests.progress.measuring.wrong_pieces import wrong_pieces

QUARTER = F(1, 4)


def asked(evidence: Evidence) -> What | None:
    """What is to be measured next."""
    found = further(evidence, causes(evidence))
    return None if found is None else found.what


def test_pieces_are_counted_where_a_count_tells() -> None:
    found = measured(of_size("plain-squares", "1.5"), "row", "8.5")
    assert found.further is not None
    assert found.further.what is What.COUNT
    answers = {cause.why: answer for cause, answer in found.further.answers}
    assert answers == {Why.WIDE: 9, Why.MISSING: 8}


def test_an_allowance_tells_a_seam_from_a_mis_cut_piece() -> None:
    found = measured(STACKED, "unit", "6").further
    assert found is not None
    assert found.what is What.ALLOWANCE
    assert [answer for _, answer in found.answers] == [F(3, 8), QUARTER]


def test_the_other_way_tells_where_the_seam_is_known() -> None:
    """A unit over by what a seam could do no more is stretched, another kind, or cut so."""
    other = Other("window", F("9.75"), F(12))
    unit = Evidence(F("9.5"), 4.0, QUARTER, (F("9.75"),) * 3, largest=F("3.5"), others=(other,),
                    other_way=OtherWay(F("9.5"), 4.0, ()), seam_read=QUARTER)  # fmt: skip
    assert asked(unit) is What.KIND
    found = further(unit, causes(unit))
    assert found is not None
    shown = [cause.why for cause, answer in found.answers if answer]
    assert shown == [Why.SWAPPED]
    assert {answer for _, answer in found.answers} == {0, 1}
    assert asked(replace(unit, others=())) is What.PIECES
    seam = replace(unit, others=(), seam_read=None)
    assert asked(seam) is What.ALLOWANCE
    slanting = replace(seam, allowances=0.3, other_way=OtherWay(F("9.5"), 4.0, ()))
    assert asked(slanting) is not What.COUNT


def test_a_small_drift_is_told_by_the_other_way_where_an_allowance_is_too_fine() -> None:
    """Nine-patches 1/8 in over: 1/32 in an allowance, and as much over down if it is the seam."""
    found = measured(of_size("nine-patch", "3.5"), "unit", "9.625", "9.625", "9.625")
    assert found.further is not None
    assert found.further.what is What.OTHER_WAY
    answers = {cause.why: answer for cause, answer in found.further.answers}
    assert answers[Why.NARROW] == F("9.625")
    assert answers[Why.STRETCHED] == F("9.5")
    # All pieces may have been cut alike both ways or one, so that says nothing.
    assert Why.MISCUT not in answers
    assert found.lines[4] == (
        "To tell: measure the same the other way: 9 5/8 in if the seams are too narrow, 9 1/2 in "
        "if it is stretched."
    )


def test_one_cause_needs_no_further_measurement() -> None:
    assert measured(STACKED, "unit", "9.5").further is None
    assert measured(STACKED, "unit", "6.364").further is None


@pytest.mark.parametrize("kind", ["wide foot", "narrow foot"])
def test_an_answer_that_bears_a_seam_out_makes_it_no_less_likely(kind: str) -> None:
    there = 0
    for wrong in islice((one for one in wrong_pieces(4) if one.kind == kind), 50):
        quilt = wrong.quilt
        piece = read_piece(quilt, quilt.target, wrong.piece)
        before = evidence_of(quilt, quilt.target, piece, wrong.readings)
        read = F(round(wrong.truth * 32), 32)
        after = causes(replace(before, seam_read=read))
        assert any(cause.is_seam for cause in after)
        there += after[0].is_seam
    assert there >= 49


def test_what_was_measured_within_the_hour_is_beside_it() -> None:
    record = Record(STACKED)
    state = opening(STACKED)
    state = do(state, record, c.Measure("unit:down", (F("6.375"),)), EVENING)
    state = do(state, record, c.Measure("allowance", (F(1, 4), F(5, 16))), EVENING + MINUTE)
    soon = EVENING + 2 * MINUTE
    seen = Beside(other_way=(F("6.375"),), seam_read=F(9, 32))
    assert beside(state, "unit", soon) == seen
    assert timedelta(hours=1) == AT_ONCE
    assert beside(state, "unit", EVENING + AT_ONCE) == seen
    assert beside(state, "unit", EVENING + AT_ONCE + MINUTE / 2) == replace(seen, other_way=())
    assert beside(state, "unit", EVENING + timedelta(days=1)) == Beside()
    # A row has no other way, and a pile's other piece is none of this one.
    assert beside(state, "row", soon) == Beside(seam_read=F(9, 32))
    assert beside(state, "unit:down", soon) == Beside(seam_read=F(9, 32))


def test_another_foot_makes_what_was_measured_before_void() -> None:
    record = Record(STACKED)
    state = do(opening(STACKED), record, c.Measure("allowance", (F(3, 8),)), EVENING)
    state = do(state, record, c.ChangeTool("foot"), EVENING + MINUTE)
    assert beside(state, "unit", EVENING + 2 * MINUTE) == Beside()
