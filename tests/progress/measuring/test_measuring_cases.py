"""What practitioners measured, and what it meant. The case id stands before each.

The cases are paraphrased from public forums and blogs; their answers were worked out again
here by hand, beside the page they came from.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from sewalong.lengths import Unit
from sewalong.progress.measuring.causes.priors import Why
from sewalong.progress.measuring.choices import CutBordersTo, EaseIn, Resew, SetAside, TrimAll
from sewalong.progress.measuring.diagnosis import Diagnosis
from sewalong.progress.measuring.projected_top import if_like
from sewalong.progress.measuring.spread import spread
from sewalong.progress.measuring.verdict import Outcome, outcome
from sewalong.progress.record.measurable import read_piece
from sewalong.quilt.as_fraction import diagonal
from sewalong.quilt.cloth.row import carried_across, row_of
from sewalong.quilt.size import Size
from tests.progress.measuring.measuring_quilts import STACKED, inches, measured, of_size

F = Fraction


def the(kind: type, diagnosis: Diagnosis) -> object:
    """The one choice of a kind."""
    (found,) = [choice for choice in diagnosis.choices if isinstance(choice, kind)]
    return found


def test_q001_five_strips_half_an_inch_short_are_sewn_a_sixteenth_too_wide() -> None:
    """andiejohnsonsews.com/2011/01/making-lemonade.html"""
    found = measured(STACKED, "strips:5:5/2", "10")
    assert found.piece.expected == F("10.5")
    cause = found.causes[0]
    assert (cause.why, cause.short) == (Why.WIDE, F(1, 2))
    assert cause.off_each == F(1, 16)
    assert cause.seam == F(5, 16)
    assert found.lines[2] == "Likeliest: seams of 5/16 in, each 1/16 in too wide."


def test_q003_an_eighth_in_each_of_four_seams_is_half_an_inch_and_four_inches_in_a_row() -> None:
    """quilted-connections.com, What is a scant 1/4 seam"""
    found = measured(STACKED, "strips:5:5/2", "10")
    assert found.causes[0].off_each == F(1, 16)
    assert carried_across(found.short, 8) == 4


def test_q003_a_unit_half_an_inch_small_makes_a_row_of_eight_four_inches_short() -> None:
    quilt = of_size("nine-patch", "4.5", 8, 8)
    found = measured(quilt, "unit", "12")
    assert found.piece.expected == F("12.5")
    assert found.later_right is not None
    assert found.later_right.row_loses == 4


def test_q005_three_strips_at_three_and_a_quarter_mean_a_sixteenth_too_wide() -> None:
    """howdyblogs.blogspot.com/2009/01/quarter-ain-quarter-all-time.html"""
    found = measured(STACKED, "strips:3:3/2", "3.25")
    assert found.piece.expected == F("3.5")
    assert found.causes[0].off_each == F(1, 16)
    assert not found.passed
    assert measured(STACKED, "strips:3:3/2", "3.5").passed


def test_q006_nine_patches_an_eighth_under_are_eased_and_a_quarter_under_are_not() -> None:
    """onforwardmotion.blogspot.com/2013/09/doesnt-measure-up-tuesday.html"""
    quilt = of_size("nine-patch", "3.5")
    eighth, quarter = measured(quilt, "unit", "9.375"), measured(quilt, "unit", "9.25", pieces=20)
    assert eighth.piece.expected == F("9.5")
    assert eighth.causes[0].seam == F(9, 32)
    assert quarter.causes[0].seam == F(5, 16)
    ease = the(EaseIn, eighth)
    assert isinstance(ease, EaseIn)
    assert (ease.possible, ease.each_edge) == (True, F(1, 8))
    too_much, trim, resew = quarter.choices
    assert isinstance(too_much, EaseIn)
    assert not too_much.possible
    assert isinstance(trim, TrimAll)
    assert trim.to == F("9.25")
    assert isinstance(resew, Resew)
    # Eight seams are sewn in a nine-patch, six in its rows of three and two between them.
    assert (resew.seams_each, resew.seams) == (8, 160)


def test_q016_stacks_of_eight_inch_squares_make_a_pinwheel_that_finishes_at_nine_and_a_half() -> (
    None
):
    """robotmomsews.blogspot.com/2011/12/pinwheel-tutorial.html; (8 - 1/2) / root 2 = 5.303"""
    quilt = of_size("paired-squares", "8", 2, 2)
    piece = read_piece(quilt, quilt.target, "unit")
    assert float(piece.expected) == pytest.approx(5.3033, abs=1e-4)
    common = spread([piece.expected] * 4, Unit.INCH).common
    assert common == F("5.25")
    top = if_like(quilt, quilt.target, piece, common).top
    assert top.grown(-quilt.seam) == Size.square(F("9.5"))


def test_q022_pieces_that_sum_to_twelve_sew_up_to_eleven() -> None:
    """ragdollquilting.blogspot.com/2007/03/ghi-block.html"""
    cuts = inches(["4.75", "3.5", "3.75"])
    assert sum(cuts) == 12
    assert row_of(cuts, F(1, 4)) == 11


def test_q024_trimming_old_blocks_to_the_smallest_costs_an_inch_and_a_half() -> None:
    """quiltedforyoucolorado.blogspot.com/2010/03; 23 blocks from 11 to 12 1/2 in"""
    found = spread(inches(["12.5", "12", "11.75", "11"]), Unit.INCH)
    assert (found.common, found.most_lost, found.apart) == (F(11), F("1.5"), F("1.5"))
    assert diagonal(found.largest) == pytest.approx(17.68, abs=0.005)


def test_q026_swapped_blocks_cut_down_an_inch_lose_four_in_a_row_of_four() -> None:
    """jobutterfield.blogspot.com, Hunter's Star"""
    quilt = of_size("nine-patch", "4.5", 4, 4)
    found = measured(quilt, "unit", "12.5", "11.5", "12.25", "12.5")
    trim = the(TrimAll, found)
    assert isinstance(trim, TrimAll)
    assert trim.to == F("11.5")
    assert trim.outlook is not None
    assert trim.outlook.row_loses == 4
    aside = the(SetAside, found)
    assert isinstance(aside, SetAside)
    assert (aside.places, aside.common) == ((1,), F("12.25"))


def test_q027_three_per_cent_of_the_unit_is_blocked_to_shape_and_more_is_remade() -> None:
    """A French workshop's rule, boutsdechiffons.logipatch.com: 4.5 mm on 15 cm."""
    unit = read_piece(STACKED, STACKED.target, "unit")
    assert float(unit.expected) * 0.03 == pytest.approx(0.19, abs=0.002)
    assert outcome(unit, F("6.36")) is Outcome.PASS
    assert outcome(unit, unit.expected - F("0.19")) is Outcome.BLOCK
    assert outcome(unit, unit.expected + F("0.19")) is Outcome.BLOCK
    assert outcome(unit, unit.expected - F("0.192")) is Outcome.REMAKE
    assert "Within 3 % of its size: block to shape." in measured(STACKED, "unit", "6.2").lines


def test_q029_sides_half_an_inch_apart_are_both_bordered_to_the_mean() -> None:
    """madaboutpatchwork.wordpress.com, Fabric stretch: the two sides differ by 1/2 in."""
    found = measured(STACKED, "centre:down", "53", "53.5")
    cut = the(CutBordersTo, found)
    assert isinstance(cut, CutBordersTo)
    assert (cut.length, cut.ease_each) == (F("53.25"), F(1, 4))
    across = the(CutBordersTo, measured(STACKED, "centre:across", "52.75", "53"))
    assert isinstance(across, CutBordersTo)
    assert across.ease_each == F(1, 8)


def test_q034_a_side_at_six_tenths_of_what_was_promised_is_no_drift() -> None:
    """againmommy.blogspot.com/2010/06; 12 × 12 pieces, 56 in instead of 90."""
    quilt = of_size("plain-squares", "8", 12, 12)
    found = measured(quilt, "centre:across", "56.5")
    assert found.piece.expected == F("90.5")
    assert found.why is Why.OTHER
    assert (found.piece.expected - F("89.125")) == 11 * 2 * F(1, 16)
    drift = measured(quilt, "centre:across", "89.125")
    assert (drift.why, drift.causes[0].off_each) == (Why.WIDE, F(1, 16))
    assert "Measure one piece of it first." in " ".join(found.lines)
    assert found.choices == ()


Q012 = [
    ("2.5", "1.5", False),
    ("4", "2.5", False),
    ("6", "4", False),
    ("9", "6", True),
    ("10", "7", False),
]


@pytest.mark.parametrize(("square", "claimed", "can_be"), Q012)
def test_q012_a_cheat_sheet_claims_units_that_its_squares_cannot_give(
    square: str, claimed: str, can_be: bool
) -> None:
    """classicquiltersofla.blogspot.com/2010/06/easiest-hst-ever.html: (square - 1/2) / root 2"""
    quilt = of_size("paired-squares", square)
    unit = read_piece(quilt, quilt.target, "unit").expected
    assert float(unit) == pytest.approx((float(square) - 0.5) / 2**0.5, abs=1e-5)
    assert (unit >= F(claimed)) is can_be


def test_q015_squares_of_four_and_a_quarter_leave_a_seventh_of_an_inch_to_trim() -> None:
    """quiltingboard.com/2622724-post64.html"""
    quilt = of_size("paired-squares", "4.25")
    unit = read_piece(quilt, quilt.target, "unit").expected
    assert float(unit - F("2.5")) == pytest.approx(0.152, abs=0.0005)
