"""What does this measurement mean? The cause, what it comes to, and the ways out."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from sewalong.lengths import Unit
from sewalong.piecing.catalogue import method_ids
from sewalong.progress.measuring.causes.priors import Why
from sewalong.progress.measuring.choices import EaseIn, TrimAll
from sewalong.progress.measuring.diagnosis import diagnose
from sewalong.progress.measuring.projected_top import if_seam
from sewalong.progress.measuring.spread import spread
from sewalong.progress.record.measurable import Unmeasurable, measurable, proof_piece, read_piece
from sewalong.quilt.cloth.row import row_length
from sewalong.quilt.worksheet.basis import basis
from tests.progress.measuring.measuring_quilts import STACKED, in_cm, measured, of_size

F = Fraction
a_little = settings(max_examples=40, deadline=None)
off_seams = st.fractions(F(-1, 10), F(1, 10), max_denominator=64)


def four_patch_stack(seam: Fraction) -> float:
    """A unit from four 5 in squares stacked, sewn round and cut twice: geometry, by hand."""
    four_patch = 2 * 5 - 2 * float(seam)
    return (four_patch - 2 * float(seam)) / 2**0.5


@a_little
@given(off_seams)
def test_the_seam_really_sewn_is_read_back_from_a_unit(off: Fraction) -> None:
    assume(abs(off) > F(1, 60))
    reading = Fraction(four_patch_stack(F(1, 4) + off)).limit_denominator(10**6)
    found = diagnose(STACKED, STACKED.target, "unit", [reading])
    first = next(cause for cause in found.causes if cause.is_seam)
    assert first.seam is not None
    assert float(first.seam) == pytest.approx(0.25 + float(off), abs=1e-5)
    assert first.why is (Why.WIDE if off > 0 else Why.NARROW)
    # An inch of allowance is nearly three of the unit: only stretched cloth reads as far over.
    assert found.causes[0].why in (first.why, Why.STRETCHED)


@a_little
@given(off_seams, st.integers(2, 30), st.sampled_from(("3/2", "5/2", "4")))
def test_the_seam_really_sewn_is_read_back_from_strips(off: Fraction, n: int, cut: str) -> None:
    reading = row_length(n, F(cut), F(1, 4) + off)
    found = diagnose(STACKED, STACKED.target, f"strips:{n}:{cut}", [reading])
    seams = [cause.seam for cause in found.causes if cause.is_seam]
    assert seams == ([] if found.passed else [F(1, 4) + off])


@a_little
@given(off_seams)
def test_if_every_seam_goes_on_so_the_top_is_what_that_seam_makes(off: Fraction) -> None:
    """Worked out again from the unit's own geometry and the rule for a row."""
    seam = F(1, 4) + off
    reading = row_length(3, F(3, 2), seam)
    same = diagnose(STACKED, STACKED.target, "strips:3:3/2", [reading]).later_same
    assert same is not None
    row = 9 * four_patch_stack(seam) - 16 * float(seam)
    assert float(same.row) == pytest.approx(row, abs=1e-4)
    assert float(same.top.width) == pytest.approx(row + 2 * (3 - 2 * float(seam)), abs=1e-4)


@a_little
@given(st.fractions(F(6), F(13, 2), max_denominator=32))
def test_if_all_units_are_like_it_the_row_is_so_many_of_it(reading: Fraction) -> None:
    right = diagnose(STACKED, STACKED.target, "unit", [reading]).later_right
    assert right is not None
    assert right.row == row_length(9, reading, F(1, 4))
    assert right.top.width == right.row + 2 * (3 - F(1, 2))


def test_a_four_patch_an_eighth_small_takes_the_unit_down_by_its_diagonal_share() -> None:
    right = measured(STACKED, "four-patch", "9.375").later_right
    assert right is not None
    assert float(right.unit.width) == pytest.approx((9.375 - 0.5) / 2**0.5, abs=1e-5)


@pytest.mark.parametrize("method_id", method_ids())
def test_what_is_planned_is_what_the_numbers_of_the_quilt_say(method_id: str) -> None:
    quilt = of_size(method_id, "5/2" if "strip" in method_id or "rail" in method_id else "5")
    numbers = basis(quilt)
    for piece in measurable(quilt, quilt.target):
        assert piece.expected > 0
        assert read_piece(quilt, quilt.target, piece.id) == piece
        assert diagnose(quilt, quilt.target, piece.id, [piece.expected]).passed
    for pile, shape in numbers.made.piles.items():
        if pile != quilt.method.unit:
            piece = read_piece(quilt, quilt.target, pile)
            assert float(piece.expected) == pytest.approx(shape.size[0], abs=1e-5)
    if read_piece(quilt, quilt.target, "unit").allowances:
        assert if_seam(quilt, quilt.target, F(0)).centre == numbers.centre
    assert read_piece(quilt, quilt.target, proof_piece(quilt)).allowances > 0


def test_a_row_one_unit_short_lacks_a_unit_and_no_seam_is_blamed() -> None:
    found = measured(STACKED, "row", "47.375")
    assert (found.why, found.causes[0].pieces) == (Why.MISSING, 1)
    assert found.lines[0] == "Stop and count the pieces."
    assert found.lines[2] == "Likeliest: one piece too few (each adds 5 7/8 in; there should be 9)."
    assert (found.choices, found.later_right, found.later_same) == ((), None, None)


def test_a_row_two_units_long_has_two_too_many() -> None:
    found = measured(STACKED, "row:4", "36")
    assert (found.why, found.causes[0].pieces) == (Why.TOO_MANY, 2)


def test_a_row_an_inch_short_is_drift_over_all_its_seams() -> None:
    quilt = of_size("plain-squares", "5", 6, 9)
    found = measured(quilt, "row", "40")
    assert (found.why, found.causes[0].off_each) == (Why.WIDE, F(1, 16))


def test_a_unit_of_the_size_of_a_four_patch_is_taken_for_one() -> None:
    found = measured(STACKED, "unit", "9.5")
    assert (found.looks_like, found.why) == ("four-patch", Why.SWAPPED)
    assert found.lines[0] == "Stop and look at it: a four-patch?"


def test_what_is_longer_than_its_pieces_edge_to_edge_was_not_sewn_from_them() -> None:
    # Three strips of 1 1/2 in laid edge to edge are 4 1/2 in.
    found = measured(STACKED, "strips:3:3/2", "4.75")
    assert not any(cause.is_seam for cause in found.causes)
    assert found.lines[0] == "Stop and sew another test."


def test_a_square_cut_small_is_not_blamed_on_a_seam() -> None:
    found = measured(STACKED, "square", "4.875")
    (cause,) = found.causes
    assert (cause.why, cause.cut_short, cause.seam) == (Why.MISCUT, F(1, 8), None)
    assert "Likeliest: cut or trimmed 1/8 in too small." in found.lines


def test_a_unit_that_is_trimmed_later_passes_as_long_as_it_reaches_the_trim_size() -> None:
    quilt = of_size("half-square-eight", "7")
    trim = read_piece(quilt, quilt.target, "unit").expected
    open_unit = read_piece(quilt, quilt.target, "open-unit").expected
    assert trim < open_unit
    assert measured(quilt, "open-unit", str(trim)).passed
    assert not measured(quilt, "open-unit", str(trim - F(1, 16))).passed
    small = measured(quilt, "open-unit", str(trim - F(1, 16))).later_right
    assert small is not None
    assert small.unit.width == trim - F(1, 8)


def test_easing_names_what_each_edge_takes() -> None:
    (ease, *_) = measured(STACKED, "unit", "6.25").choices
    assert isinstance(ease, EaseIn)
    assert ease.each_edge == read_piece(STACKED, STACKED.target, "unit").expected - F("6.25")
    assert ease.words == "Ease in 1/8 in on each edge (1.8 %): it can be hidden."


def test_trimming_all_names_the_new_top_and_its_borders() -> None:
    found = measured(STACKED, "unit", "6.25", "6.1875", "6.25")
    trim = next(one for one in found.choices if isinstance(one, TrimAll))
    assert (trim.to, trim.most_lost) == (F("6.125"), F(1, 8))
    assert trim.outlook is not None
    centre = 9 * F("6.125") - 16 * F(1, 4)
    (border,) = trim.outlook.borders
    assert (border.each_side, border.each_end) == (centre, centre + 5)
    assert trim.words == (
        "Trim all to 6 1/8 in; the largest loses 1/8 in. The top comes to 56 1/8 × 56 1/8 in; "
        "border 1: sides 51 1/8 in, top and bottom 56 1/8 in."
    )


@pytest.mark.parametrize(("piece", "of"), [("row", 9), ("row:4", 4), ("centre:across", 9)])
def test_a_short_row_is_shared_out_over_its_units(piece: str, of: int) -> None:
    expected = read_piece(STACKED, STACKED.target, piece).expected
    right = measured(STACKED, piece, str(expected - F(1, 2))).later_right
    assert right is not None
    assert right.row_loses == F(1, 2) * 9 / of
    as_planned = if_seam(STACKED, STACKED.target, F(0))
    assert as_planned.unit.width - right.unit.width == F(1, 2) / of


def test_what_came_out_too_large_is_trimmed_to_the_size_planned() -> None:
    found = measured(of_size("nine-patch", "3.5"), "unit", "9.75", "9.625")
    trim = next(one for one in found.choices if isinstance(one, TrimAll))
    assert (trim.to, trim.most_lost) == (F("9.5"), F(1, 4))
    assert trim.outlook is not None
    assert trim.outlook.row_loses == 0
    assert found.choices[-1].words == (
        "Sew again, deeper, no unpicking: 8 seams in each, 16 in all 2."
    )


@a_little
@given(st.lists(st.fractions(F(5), F(7), max_denominator=16), min_size=1, max_size=20))
def test_every_piece_kept_reaches_the_common_size_and_few_are_set_aside(
    readings: list[Fraction],
) -> None:
    found = spread(readings, Unit.INCH)
    assert found.common <= found.smallest < found.common + F(1, 8)
    assert len(found.set_aside) * 4 <= len(readings)
    kept = [one for place, one in enumerate(readings) if place not in found.set_aside]
    assert found.common <= found.common_without <= min(kept)
    assert found.largest - found.common == found.most_lost
    assert found.smallest <= found.typical <= found.largest


def test_an_owner_in_centimetres_reads_centimetres_and_no_fraction_of_an_inch() -> None:
    lines = measured(in_cm(STACKED), "unit", "6.25", "6.3").lines
    inches = re.compile(r"\d in\b(?! all)")
    assert not [line for line in lines if inches.search(line)]
    assert lines[1] == "Unit should be 16.2 cm, reads 15.9 cm, 0.3 cm short."
    # 2.83 allowances: 0.29 cm short of 16.16 are 0.1 cm each, and 0.74 cm is the 7 mm foot.
    assert lines[2] == "Likeliest: seams of 7 mm, each 0.07 cm too wide."


@a_little
@given(
    st.sampled_from(("unit", "row", "square", "four-patch", "top:down", "middle:3/2", "row:2")),
    st.lists(st.fractions(F(1, 16), F(100), max_denominator=64), min_size=1, max_size=5),
)
def test_any_reading_gets_an_answer_in_sentences(piece: str, readings: list[Fraction]) -> None:
    for quilt in (STACKED, in_cm(STACKED)):
        for line in diagnose(quilt, quilt.target, piece, readings).lines:
            assert line.endswith((".", "?"))
            assert line[0].isupper() or line[0].isdigit()


NO_PIECES = ["", "knit", "row:0", "row:x", "strips:3", "strips:1:2", "strips:3:1/2", "middle:x",
             "top", "centre:up", "unit:up", "row:9999", "strips:3:1/0", "column:-1"]  # fmt: skip


@pytest.mark.parametrize("piece", NO_PIECES)
def test_what_is_no_piece_is_refused_in_a_sentence(piece: str) -> None:
    with pytest.raises(Unmeasurable) as refused:
        read_piece(STACKED, STACKED.target, piece)
    assert str(refused.value).endswith(".")


def test_a_quilt_whose_sizes_cannot_be_says_so() -> None:
    quilt = of_size("flipped-corners", "5")
    wrong = replace(quilt, starts=tuple(replace(s, size=F(5)) for s in quilt.starts))
    with pytest.raises(Unmeasurable, match="cannot be worked out"):
        read_piece(wrong, wrong.target, "unit")


@pytest.mark.parametrize("readings", [[], [F(0)], [F(-1), F(6)]])
def test_no_reading_or_none_above_nothing_is_refused(readings: list[Fraction]) -> None:
    with pytest.raises(Unmeasurable, match="at least one reading"):
        diagnose(STACKED, STACKED.target, "unit", readings)
