"""Just enough and a hair more: what a tape can tell, what passes, what is set aside, what is blamed."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from msgspec.structs import replace

from sewalong.lengths import Unit, from_cm
from sewalong.progress.measuring.causes.cause import Cause
from sewalong.progress.measuring.causes.priors import Why
from sewalong.progress.measuring.choices import Choice, EaseIn, Resew, TrimAll
from sewalong.progress.measuring.decision import Do, decide, planned_size
from sewalong.progress.measuring.length_words import finely, plainly
from sewalong.progress.measuring.projected_top import if_seam
from sewalong.progress.measuring.seams_sewn import seams_sewn
from sewalong.progress.measuring.spread import spread
from sewalong.progress.measuring.tape import near_enough
from sewalong.progress.measuring.verdict import Outcome, outcome
from sewalong.progress.record.measurable import Measured, Unmeasurable, read_piece
from sewalong.quilt.quilt import Border
from sewalong.quilt.setting import Cornerstones, Sashing, SetOnPoint, Setting
from tests.progress.measuring.measuring_quilts import STACKED, inches, measured, of_size
from tests.quilt.file.own_method import OWN
from tests.quilt.file.test_quilt_file_own_method import QUILT, with_method

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


@pytest.mark.parametrize(
    ("piece", "edges"),
    [
        ("unit", "raw edge to raw edge"),
        ("row", "raw edge to raw edge"),
        ("strips:3:3/2", "raw edge to raw edge"),
        ("middle:3/2", "seam to seam"),
        ("allowance", "stitches to raw edge"),
    ],
)
def test_the_tape_lies_from_where_to_where_the_words_of_the_piece_say(
    piece: str, edges: str
) -> None:
    found = read_piece(STACKED, STACKED.target, piece)
    assert found.edges == edges
    assert edges in found.words or edges == "raw edge to raw edge"


def test_a_border_is_cut_to_its_length_and_a_unit_to_a_mark_of_the_ruler() -> None:
    assert planned_size(piece(F("86.53"), "border:1:ends"), Unit.INCH) == F("86.53")
    assert planned_size(piece(F("6.364")), Unit.INCH) == F("6.375")
    assert planned_size(piece(F("6.364"), at_least=F("6.2")), Unit.INCH) == F("6.2")


def test_a_likeliest_cause_that_is_looked_for_is_so_however_many_others_there_are() -> None:
    """Of eight causes about as likely, none may be as likely as is looked for besides the first."""
    unit, readings = piece(F("9.5")), [F("9.25")]
    other = Cause(Why.SWAPPED, QUARTER, (0,), all_alike=True, likely=0.15, like="goose")
    seam = Cause(Why.WIDE, QUARTER, (0,), all_alike=True, likely=0.14)
    for found, do in (((other, seam), Do.SORT), ((seam, other), Do.TRIM)):
        apart = spread(readings, Unit.INCH)
        assert decide(unit, [Outcome.BLOCK], found, apart, Unit.INCH).do is do


# What it is taken for.


def test_a_unit_as_large_as_another_pile_s_piece_may_be_one() -> None:
    # A four-patch of 5 in squares is 9 1/2 in; a tape and a careful hand tell 1/4 in of that.
    for sign in (1, -1):
        found = measured(STACKED, "unit", str(F("9.5") + sign * F(1, 16)))
        assert found.looks_like == "four-patch"
        assert measured(STACKED, "unit", str(F("9.5") + sign * F(1, 4))).looks_like == ""


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


# Borders. Nine-patches of 3 1/2 in squares, 4 rows of 9: 36 1/2 by 81 1/2 in.


def test_a_strip_for_a_border_is_measured_against_the_numbers_of_the_border() -> None:
    quilt = replace(of_size("nine-patch", "3.5", 4, 9), borders=(Border(F(3), "plain"),))
    side, end = (read_piece(quilt, quilt.target, f"border:1:{s}") for s in ("sides", "ends"))
    # Sides first: as long as the centre; then the ends over both borders of 2 1/2 in.
    assert (side.expected, end.expected) == (F("36.5"), F("81.5") + 5)
    assert measured(quilt, "border:1:sides", "36.5").lines[0] == "Go on."
    short = measured(quilt, "border:1:ends", "85.75")
    assert short.lines[0] == "Go on, and ease it in."
    assert short.lines[2] == "Likeliest: cut or trimmed 3/4 in too small."
    for readings in (["88"], ["88", "86.5"]):
        assert measured(quilt, "border:1:ends", *readings).lines[0] == "Trim all to 86 1/2 in."
    assert measured(quilt, "border:1:ends", "80").lines[0] == "Stop and cut it again."
    taken = measured(quilt, "border:1:sides", "86.5")
    assert taken.lines[0] == "Stop and look at it: a strip for top or bottom of border 1?"
    for wrong in ("border", "border:2:ends", "border:1:up"):
        with pytest.raises(Unmeasurable, match="Name a strip of a border"):
            read_piece(quilt, quilt.target, wrong)


# What is said first.


SAID_FIRST = [
    (["9.5"], "Go on.", "Unit should be 9 1/2 in: right.", ""),
    (
        ["9.375"],
        "Trim all to 9 3/8 in.",
        "Unit should be 9 1/2 in, reads 9 3/8 in, 1/8 in short.",
        "Within 3 % of its size: block to shape.",
    ),
    (
        ["9.875"],
        "Stop and resew it.",
        "Unit should be 9 1/2 in, reads 9 7/8 in, 3/8 in over.",
        "Beyond 3 % of its size: make again.",
    ),
    (
        ["9.5", "9.375", "9.125"],
        "Stop and resew this one: reading 3 (9 1/8 in).",
        "Unit should be 9 1/2 in, reads 9 3/8 in, 1/8 in short.",
        "Of 3: 1 right, 1 block to shape, 1 make again (up to 3 % of its size).",
    ),
    (
        ["9.5", "8.875", "9.5", "8.875", "9.5", "9.5", "9.5"],
        "Stop and make these two again: readings 2 and 4 (8 7/8 in, 8 7/8 in).",
        "Unit should be 9 1/2 in, and most are about that.",
        "Of 7: 5 right, 2 make again (up to 3 % of its size).",
    ),
]


@pytest.mark.parametrize(("readings", "do", "read", "rule"), SAID_FIRST)
def test_what_to_do_comes_first_then_the_reading(
    readings: list[str], do: str, read: str, rule: str
) -> None:
    lines = measured(of_size("nine-patch", "3.5"), "unit", *readings).lines
    assert lines[:2] == (do, read)
    assert rule in (*lines, "")


def test_a_row_can_be_eased_or_not() -> None:
    quilt = of_size("nine-patch", "3.5")
    # Nine times 9 in and 1/2 in; two in a hundred of 81 1/2 in are 1 5/8 in.
    lines = measured(quilt, "row", "80").lines
    assert lines[0] == "Go on, and ease it in."
    assert lines[1] == "Row of 9 units should be 81 1/2 in, reads 80 in, 1 1/2 in short."
    assert "Within 2 % of its size: can be eased." in lines
    lines = measured(quilt, "row", "79.5").lines
    assert lines[0] == "Stop and resew it."
    assert "Beyond 2 % of its size: too much to ease." in lines


def test_a_unit_smaller_than_planned_may_still_be_trimmed() -> None:
    # Eight at a time from 8 1/8 in: half of it less root 2 of the seam, 3.709 in, trimmed to 3 5/8.
    quilt = of_size("half-square-eight", "8.125")
    _, said = measured(quilt, "open-unit", "3.65").lines
    assert said.endswith("should be 3 11/16 in: right, it still trims to 3 5/8 in.")
    for right in ("3.7", "3.75"):
        _, said = measured(quilt, "open-unit", right).lines
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


def test_resewing_counts_the_seams_a_person_sews() -> None:
    # A four-patch has three, two short and one long; a nine-patch eight, six short and two long.
    assert words(Resew, "four-patch", "6.375") == "Unpick and resew: 3 seams."
    assert words(Resew, "four-patch", "6.375", 3) == (
        "Unpick and resew: 3 seams in each, 9 in all 3."
    )
    assert words(Resew, "nine-patch", "9.25") == "Unpick and resew: 8 seams."
    assert words(Resew, "nine-patch", "9.25", 20) == (
        "Unpick and resew: 8 seams in each, 160 in all 20."
    )
    assert words(Resew, "nine-patch", "9.75") == "Sew again, deeper, no unpicking: 8 seams."


SEWN = [
    # By counting: a pair of triangles has one seam, four of them three, an hourglass of four
    # triangles three, a goose with two corners two, five squares in a row four.
    ("paired-squares", "unit", 1),
    ("half-square-two", "open-unit", 1),
    ("half-square-eight", "open-unit", 1),
    ("hourglass", "open-unit", 3),
    ("flying-geese-four", "open-unit", 2),
    ("flipped-corners", "unit", 4),
    ("stacked-four-patch", "unit", 3),
    ("stacked-four-patch", "four-patch", 3),
    ("four-patch", "two-patch", 1),
    ("nine-patch", "three", 2),
    ("plain-squares", "row", 4),
    # Five four-patches of three seams and the four between them; trimmed units only the four.
    ("four-patch", "row", 19),
    ("half-square-two", "row", 4),
    # Three rows of that, and two seams between them; a border has four.
    ("four-patch", "centre:across", 3 * 19 + 2),
    ("four-patch", "column:2", 2 * 19 + 1),
    ("four-patch", "top:down", 3 * 19 + 2 + 4),
]


SASHES = Sashing(F(2), "grey")
FRAMED = replace(SASHES, frame=True, cornerstones=Cornerstones("red"))
SET = [
    # 3 rows of 5 four-patches, by counting pieces, one seam fewer than there are: 5 units and 4
    # sashes in a row, 2 long sashes between the rows.
    (SASHES, "row", 5 * 3 + 9 - 1),
    (SASHES, "row:2", 2 * 3 + 3 - 1),
    (SASHES, "column:2", 10 * 3 + 2 * 9 + 1 - 1),
    (SASHES, "centre:down", 15 * 3 + 3 * 9 + 2 - 1),
    # With a frame 6 sashes in a row, and four rows of 5 sashes and 6 cornerstones.
    (FRAMED, "row", 5 * 3 + 11 - 1),
    (FRAMED, "column:2", 10 * 3 + 2 * 11 + 11 - 1),
    (FRAMED, "column:3", 15 * 3 + 3 * 11 + 4 * 11 - 1),
    (FRAMED, "top:across", 15 * 3 + 3 * 11 + 4 * 11 - 1 + 4),
    # On point 3 * 5 and 2 * 4 between them, 12 triangles along the edges and 4 at the corners.
    (SetOnPoint("white"), "centre:across", 23 * 3 + 23 + 12 + 4 - 1),
]


@pytest.mark.parametrize(("setting", "id", "seams"), SET)
def test_the_seams_of_sashed_tops_and_tops_on_point(setting: Setting, id: str, seams: int) -> None:
    quilt = replace(
        of_size("four-patch", "5", 3, 5), setting=setting, borders=(Border(F(3), "plain"),)
    )
    assert seams_sewn(quilt, quilt.target, read_piece(quilt, quilt.target, id)) == seams


def test_of_a_sashed_row_a_unit_a_sash_or_both_may_be_missing() -> None:
    # Nine-patches that finish at 9 in, sashes at 1 1/2.
    quilt = replace(of_size("nine-patch", "3.5", 3, 5), setting=SASHES)
    row = read_piece(quilt, quilt.target, "row").expected
    assert row == 5 * 9 + 4 * F("1.5") + F("0.5")
    for lacks in ("9", "1.5", "10.5"):
        found = measured(quilt, "row", str(row), str(row - F(lacks))).causes[0]
        assert (found.why, found.adds, found.places) == (Why.MISSING, F(lacks), (1,))
    assert "there should be 9" in " ".join(measured(quilt, "row", str(row - 9)).lines)


@pytest.mark.parametrize(("method", "id", "seams"), SEWN)
def test_the_seams_of_pieces_rows_and_tops(method: str, id: str, seams: int) -> None:
    quilt = replace(of_size(method, "5", 3, 5), borders=(Border(F(3), "plain"),))
    measured_piece = read_piece(quilt, quilt.target, id)
    assert seams_sewn(quilt, quilt.target, measured_piece) == seams


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


# Names


@pytest.mark.parametrize("head", ["row", "column", "centre", "top", "border", "middle"])
def test_a_pile_whose_name_begins_like_a_row_is_measured_as_any_pile(head: str) -> None:
    """The program's own strip method has middle sets and middle segments; a maker's may have more."""

    def said(pile: str) -> list[tuple[str, ...]]:
        method = OWN.replace('"two"', f'"{pile}"').replace("take two", f"take {pile}")
        quilt = with_method(QUILT, method)
        readings = (["4"], ["4.25"], ["4.4375"] * 2, ["4.75"], ["2.5"])
        return [measured(quilt, pile, *some).lines for some in readings]

    assert said(f"{head}-two") == said("two")
