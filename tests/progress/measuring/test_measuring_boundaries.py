"""Just enough and a hair more: what a tape can tell, what passes, what is set aside, what is blamed."""

from __future__ import annotations

from fractions import Fraction as F
from math import sqrt

import pytest

from sewalong.lengths import Unit, from_cm
from sewalong.progress.measuring.choices import Choice, EaseIn, Resew, TrimAll
from sewalong.progress.measuring.length_words import finely, plainly
from sewalong.progress.measuring.likely_cause import Cause, Why, cause_of
from sewalong.progress.measuring.projected_top import if_seam
from sewalong.progress.measuring.retarget import relaid
from sewalong.progress.measuring.spread import spread
from sewalong.progress.measuring.verdict import Outcome, near_enough, outcome
from sewalong.progress.record.measurable import Measured
from sewalong.quilt.quilt import Target
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.size import Size
from tests.progress.measuring.measuring_quilts import STACKED, inches, measured, of_size

HAIR = F(1, 1000)
QUARTER, HALF = F(1, 4), F(1, 2)


def piece(expected: F, id: str = "unit", allowances: float = 4.0, **more: object) -> Measured:
    return Measured(id, "the piece", expected, allowances, **more)  # type: ignore[arg-type]


# What a tape can tell: half a sixteenth up to a foot, a sixteenth up to a yard, an eighth beyond.


@pytest.mark.parametrize(
    ("length", "near"),
    [
        ("1", "1/32"),
        ("12", "1/32"),
        ("12.001", "1/16"),
        ("36", "1/16"),
        ("36.001", "1/8"),
        ("90", "1/8"),
    ],
)
def test_how_near_a_reading_is_believed(length: str, near: str) -> None:
    assert near_enough(F(length)) == F(near)


def test_a_unit_passes_as_near_as_the_tape_and_is_remade_beyond_three_in_a_hundred() -> None:
    unit = piece(F(10))
    for sign in (1, -1):
        assert outcome(unit, 10 + sign * F(1, 32)) is Outcome.PASS
        assert outcome(unit, 10 + sign * (F(1, 32) + HAIR)) is Outcome.BLOCK
        assert outcome(unit, 10 + sign * F("0.3")) is Outcome.BLOCK
        assert outcome(unit, 10 + sign * (F("0.3") + HAIR)) is Outcome.REMAKE


def test_a_row_is_eased_up_to_two_in_a_hundred() -> None:
    for id in ("row:4", "column:4", "centre:across", "top:down"):
        row = piece(F(50), id)
        assert outcome(row, F(51)) is Outcome.BLOCK
        assert outcome(row, 51 + HAIR) is Outcome.REMAKE


def test_what_is_trimmed_later_passes_down_to_its_trim_size() -> None:
    unit = piece(F("6.364"), at_least=F("6.25"))
    assert outcome(unit, F("6.25")) is Outcome.PASS
    assert outcome(unit, F("6.25") - HAIR) is Outcome.BLOCK
    # Three in a hundred of 6.364 in are 0.19092 in: larger than that is no matter of trimming.
    assert outcome(unit, F("6.364") + F("0.19092")) is Outcome.PASS
    assert outcome(unit, F("6.364") + F("0.191")) is Outcome.REMAKE


# What is set aside.


def test_a_reading_three_in_a_hundred_under_is_kept_and_a_hair_less_is_set_aside() -> None:
    kept = spread([F(10), F("9.7"), F(10), F(10)], Unit.INCH)
    assert (kept.set_aside, kept.common, kept.common_without) == ((), F("9.625"), F("9.625"))
    aside = spread([F(10), F("9.7") - HAIR, F(10), F(10)], Unit.INCH)
    assert (aside.set_aside, aside.common, aside.common_without) == ((1,), F("9.625"), F(10))


def test_one_in_four_is_set_aside_and_more_are_not() -> None:
    assert spread([F(9), F(10), F(10), F(10)], Unit.INCH).set_aside == (0,)
    assert spread([F(9), F(10), F(10)], Unit.INCH).set_aside == ()
    assert spread([F(9), F(9), F(10), F(10), F(10), F(10), F(10)], Unit.INCH).set_aside == ()


def test_the_typical_reading_is_the_middle_one_or_the_smaller_of_two() -> None:
    assert spread(inches(["9.9", "10.1", "10"]), Unit.INCH).typical == 10
    assert spread(inches(["9.9", "10.1", "10", "10.05"]), Unit.INCH).typical == 10
    found = spread(inches(["9.9", "10.1"]), Unit.INCH)
    assert found.typical == F("9.9")
    assert (found.smallest, found.largest, found.apart) == (F("9.9"), F("10.1"), F("0.2"))
    assert (found.common, found.most_lost) == (F("9.875"), F("10.1") - F("9.875"))


# What is blamed.


def test_a_seam_is_blamed_for_half_its_allowance_and_for_no_more() -> None:
    # Four allowances of 1/4 in: 1/8 in each is 1/2 in.
    unit = piece(F(10))
    for sign, why in ((1, Why.WIDE), (-1, Why.NARROW)):
        found = cause_of(unit, 10 - sign * HALF, QUARTER)
        assert found == Cause(why, sign * HALF, sign * F(1, 8), QUARTER + sign * F(1, 8))
        assert found.is_seam
        assert cause_of(unit, 10 - sign * (HALF + HAIR), QUARTER).why is Why.OTHER


def test_what_a_tape_cannot_tell_is_right() -> None:
    assert cause_of(piece(F(10)), 10 - F(1, 32), QUARTER).why is Why.RIGHT
    assert cause_of(piece(F(10)), 10 - F(1, 32) - HAIR, QUARTER).why is Why.WIDE
    assert not cause_of(piece(F(10)), F(10), QUARTER).is_seam


def test_where_no_seam_decides_the_size_it_was_cut_so() -> None:
    found = cause_of(piece(F(10), allowances=0.0), F("9.75"), QUARTER)
    assert found == Cause(Why.CUT, QUARTER, None, None)


def test_a_slanting_seam_shares_out_by_its_own_number() -> None:
    found = cause_of(piece(F(10), allowances=sqrt(2)), F(10) - F(1, 10), QUARTER)
    assert float(found.off_each or 0) == pytest.approx(0.1 / sqrt(2), abs=1e-6)


def test_about_a_whole_piece_is_a_piece_and_no_drift() -> None:
    # Nine units that add 5 in each. A piece is 5 in, give or take 15 in 100: 0.75 in.
    row = piece(F("45.5"), "row", 18.0, of=9, each=F(5))
    for sign, why in ((1, Why.MISSING), (-1, Why.TOO_MANY)):
        for short in (F(5), F("5.75"), F("4.25")):
            found = cause_of(row, F("45.5") - sign * short, QUARTER)
            assert (found.why, found.pieces) == (why, 1)
        for short in (F("5.751"), F("4.249")):
            assert cause_of(row, F("45.5") - sign * short, QUARTER).pieces == 0
    assert cause_of(row, F("45.5") - 10, QUARTER).pieces == 2
    assert cause_of(row, F("45.5") - 40, QUARTER).pieces == 8
    # All nine cannot be missing of a row that is there to be measured.
    assert cause_of(row, F("0.5"), QUARTER).pieces == 0


def test_one_piece_alone_cannot_lack_a_piece() -> None:
    assert cause_of(piece(F(5), "row", 2.0, of=1, each=F(5)), F(10), QUARTER).why is Why.OTHER
    pair = piece(F(10), "row", 2.0, of=2, each=F(5))
    assert cause_of(pair, F(5), QUARTER).why is Why.MISSING


def test_small_pieces_are_missing_or_too_many_by_the_same_rule() -> None:
    row = piece(F("10.5"), "row", 38.0, of=20, each=HALF)
    assert cause_of(row, F(10), QUARTER).why is Why.MISSING
    assert cause_of(row, F(11), QUARTER).why is Why.TOO_MANY


def test_a_unit_as_large_as_another_pile_s_piece_may_be_one() -> None:
    # A four-patch of 5 in squares is 9 1/2 in, and a tape tells 1/32 in of that.
    for sign in (1, -1):
        found = measured(STACKED, "unit", str(F("9.5") + sign * F(1, 32)))
        assert found.looks_like == "four-patch"
        assert measured(STACKED, "unit", str(F("9.5") + sign * (F(1, 32) + HAIR))).looks_like == ""


# What it comes to. Nine-patches of 3 1/2 in squares are 9 1/2 in.


def test_what_a_row_and_a_top_lose_each_way() -> None:
    quilt = of_size("nine-patch", "3.5", 4, 9)
    found = measured(quilt, "unit", "9.375")
    assert found.later_right is not None
    assert found.later_right.row_loses == F(9, 8)
    planned = if_seam(quilt, quilt.target, F(0)).top
    right = found.later_right.top
    assert (planned.width - right.width, planned.length - right.length) == (F(9, 8), HALF)
    # Each allowance is 1/32 in wide: the seams between the units take 1/16 in more as well.
    assert found.later_same is not None
    assert found.later_same.row_loses == F(9, 8) + F(8, 16)
    same = found.later_same.top
    assert planned.width - same.width == F(9, 8) + F(8, 16)
    assert planned.length - same.length == HALF + F(3, 16)


def test_what_is_planned_loses_nothing() -> None:
    assert if_seam(STACKED, STACKED.target, F(0)).row_loses == 0


def test_a_strip_test_says_nothing_of_what_is_sewn_already() -> None:
    for strips, reading in (("strips:3:3/2", "3.25"), ("middle:3/2", "0.9")):
        found = measured(STACKED, strips, reading)
        assert found.later_right is None
        assert found.later_same is not None


# What is said first.


@pytest.mark.parametrize(
    ("readings", "said"),
    [
        (["9.5"], "Unit should be 9 1/2 in: right."),
        (
            ["9.375"],
            "Unit should be 9 1/2 in, reads 9 3/8 in, 1/8 in short: "
            "block to shape (within 3 % of it, 9/32 in).",
        ),
        (
            ["9.875"],
            "Unit should be 9 1/2 in, reads 9 7/8 in, 3/8 in over: "
            "remake (beyond 3 % of it, 9/32 in).",
        ),
        (
            ["9.5", "9.375", "9.125"],
            "Unit should be 9 1/2 in, reads 9 3/8 in, 1/8 in short: "
            "of 3, 1 right, 1 block to shape, 1 remake (up to 3 % of it, 9/32 in, can be saved).",
        ),
    ],
)
def test_the_verdict_comes_first_with_its_rule(readings: list[str], said: str) -> None:
    assert measured(of_size("nine-patch", "3.5"), "unit", *readings).lines[0] == said


def test_a_row_can_be_eased_or_not() -> None:
    quilt = of_size("nine-patch", "3.5")
    # Nine times 9 in and 1/2 in; two in a hundred of 81 1/2 in are 1 5/8 in.
    assert measured(quilt, "row", "80").lines[0] == (
        "Row of 9 units should be 81 1/2 in, reads 80 in, 1 1/2 in short: "
        "can be eased (within 2 % of it, 1 5/8 in)."
    )
    assert "too much to ease (beyond 2 % of it" in measured(quilt, "row", "79.5").lines[0]


def test_a_unit_smaller_than_planned_may_still_be_trimmed() -> None:
    # Eight at a time from 8 1/8 in: half of it less root 2 of the seam, 3.709 in, trimmed to 3 5/8.
    quilt = of_size("half-square-eight", "8.125")
    (said,) = measured(quilt, "open-unit", "3.65").lines
    assert said.endswith("should be 3 11/16 in: right, it still trims to 3 5/8 in.")
    for right in ("3.7", "3.75"):
        (said,) = measured(quilt, "open-unit", right).lines
        assert said.endswith("should be 3 11/16 in: right.")


def test_readings_that_lie_apart_are_told_from_two_on() -> None:
    quilt = of_size("nine-patch", "3.5")
    assert "2 readings from 9 1/4 in to 9 3/8 in, 1/8 in apart." in (
        measured(quilt, "unit", "9.25", "9.375").lines
    )
    for alike in (["9.375"], ["9.375", "9.375"]):
        assert not any("apart" in line for line in measured(quilt, "unit", *alike).lines)


# What can be done.


def words(kind: type[Choice], quilt: str, reading: str, pieces: int | None = None) -> str:
    """What a choice of this kind says of a unit that reads so."""
    found = measured(of_size(quilt, "3.5"), "unit", reading, pieces=pieces)
    (one,) = (choice for choice in found.choices if isinstance(choice, kind))
    return one.words


def test_resewing_counts_the_seams_across_one_and_across_all() -> None:
    # Four-patches of 3 1/2 in squares are 6 1/2 in and cross one seam; nine-patches are 9 1/2 in
    # and cross two.
    assert words(Resew, "four-patch", "6.375") == "Unpick and resew: 1 seam."
    assert words(Resew, "four-patch", "6.375", 3) == (
        "Unpick and resew: 1 seam across each, 3 in all 3."
    )
    assert words(Resew, "nine-patch", "9.25") == "Unpick and resew: 2 seams across it."
    assert words(Resew, "nine-patch", "9.25", 20) == (
        "Unpick and resew: 2 seams across each, 40 in all 20."
    )
    assert words(Resew, "nine-patch", "9.75") == (
        "Sew again, deeper, no unpicking: 2 seams across it."
    )


def test_a_unit_that_slanting_seams_decide_crosses_one_of_them() -> None:
    found = measured(STACKED, "unit", "6.2")
    (resew,) = (choice for choice in found.choices if isinstance(choice, Resew))
    # A four-patch loses 2 in for an inch of seam and its stack 2 more, by root 2: 2.83, so two.
    assert resew.seams_each == 2
    pair = measured(of_size("paired-squares", "8"), "unit", "5.15")
    (resew,) = (choice for choice in pair.choices if isinstance(choice, Resew))
    # Root 2 for an inch of seam: 1.41, so one.
    assert resew.seams_each == 1


@pytest.mark.parametrize(
    ("reading", "share"),
    [("9.375", "1.3 %"), ("9.0625", "4.8 %"), ("9.05", "5.0 %"), ("9.625", "1.3 %")],
)
def test_easing_says_its_share_of_the_edge(reading: str, share: str) -> None:
    assert f"({share})" in words(EaseIn, "nine-patch", reading)


def test_units_that_are_right_and_apart_are_trimmed_alike_and_alike_ones_left() -> None:
    found = measured(of_size("nine-patch", "3.5"), "unit", "9.5", "9.5", "9.625")
    assert [type(choice) for choice in found.choices] == [TrimAll]
    assert found.choices[0].words.startswith("Trim all to 9 1/2 in; the largest loses 1/8 in.")
    assert measured(of_size("nine-patch", "3.5"), "unit", "9.5", "9.5").choices == ()


# Words


def test_a_length_too_small_for_its_mark_is_less_than_the_mark_and_never_nought() -> None:
    assert plainly(F(1, 32), Unit.INCH) == "1/16 in"
    assert plainly(F(1, 32) - HAIR, Unit.INCH) == "less than 1/16 in"
    assert plainly(F(1, 32) - F(1, 32), Unit.INCH) == "0 in"
    assert finely(F(1, 128), Unit.INCH) == "1/64 in"
    assert finely(F(1, 129), Unit.INCH) == "less than 1/64 in"
    assert plainly(from_cm(F("0.05")), Unit.CM) == "0.1 cm"
    assert plainly(from_cm(F("0.049")), Unit.CM) == "less than 0.1 cm"
    assert finely(from_cm(F("0.005")), Unit.CM) == "0.01 cm"
    assert finely(from_cm(F("0.0049")), Unit.CM) == "less than 0.01 cm"


# Another layout


def test_the_nearest_layout_is_at_least_one_unit_and_says_what_is_over() -> None:
    found = relaid(Target(3, 4), F(10), Size(F(46), F(64)), 40)
    assert found.planned == Size(F(40), F(30))
    assert (found.target, found.finishes) == (Target(6, 5), Size(F(50), F(60)))
    assert found.over == 10
    small = relaid(Target(3, 4), F(10), Size(F(4), F(3)), 1)
    assert (small.target, small.over) == (Target(1, 1), 0)
    with pytest.raises(NumbersFault, match="at least 1"):
        relaid(Target(3, 4), F(10), Size(F(46), F(64)), 0)
