"""Sewn all round and cut on both diagonals: sizes against two published tables and a shortcut.

Every row in `data/sew_around.csv` names its source. Several published rows cannot be had;
they are kept, and the program must not agree with them.
"""

from __future__ import annotations

from fractions import Fraction as F
from math import sqrt

import pytest

from sewalong.piecing.derive import derive, start_for, unit_size
from sewalong.piecing.faults import SizeRefused
from tests.piecing.published import rows

TABLE = rows("sew_around")
IMPOSSIBLE = [row for row in TABLE if row["verdict"].startswith("published exceeds")]
POSSIBLE = [row for row in TABLE if row["verdict"] == "ok"]


@pytest.mark.parametrize("row", TABLE, ids=lambda row: f"{row['start_square_in']} in")
def test_every_unit_is_the_size_that_plane_geometry_gives(row: dict[str, str]) -> None:
    size = unit_size("paired-squares", F(row["start_square_in"]))
    assert size.width == pytest.approx(float(row["exact_raw_unit_in"]), abs=0.0001)
    assert size.height == pytest.approx(size.width)


@pytest.mark.parametrize("row", POSSIBLE, ids=lambda row: f"{row['start_square_in']} in")
def test_a_possible_published_unit_can_be_trimmed_from_the_start(row: dict[str, str]) -> None:
    start, wanted = F(row["start_square_in"]), F(row["published_in"])
    assert unit_size("paired-squares", start).trim_to()[0] >= wanted
    room = unit_size("paired-squares", start).seam_room_for((wanted, wanted))
    assert room is not None
    assert room >= 0


@pytest.mark.parametrize("row", IMPOSSIBLE, ids=lambda row: f"{row['start_square_in']} in")
def test_an_impossible_published_unit_is_out_of_reach(row: dict[str, str]) -> None:
    start, wanted = F(row["start_square_in"]), F(row["published_in"])
    size = unit_size("paired-squares", start)
    assert size.width < wanted
    room = size.seam_room_for((wanted, wanted))
    assert room is not None
    assert room < 0
    needed = start_for("paired-squares", unfinished=wanted)["square"]
    assert needed.exact > start
    assert needed.cutting > start


def test_both_tables_have_four_rows_that_cannot_be_had() -> None:
    # Classic Quilters of LA, "Easiest HST ever" (2010): 4 of 12.
    # City Stitches, Farmer's Wife posts: 4 of 11, short by 0.02 to 0.03 in.
    guild = [row for row in IMPOSSIBLE if row["source"].startswith("Classic")]
    blog = [row for row in IMPOSSIBLE if row["source"].startswith("City")]
    assert [row["start_square_in"] for row in guild] == ["2.5", "4", "6", "10"]
    assert len(blog) == 4
    for row in blog:
        short = (
            float(row["published_in"])
            - unit_size("paired-squares", F(row["start_square_in"])).width
        )
        assert 0.019 < short < 0.029


@pytest.mark.parametrize(
    "row",
    [row for row in POSSIBLE if row["source"].startswith("City")],
    ids=lambda row: f"{row['start_square_in']} in",
)
def test_the_true_rows_of_the_second_table_are_the_exact_start_rounded_up(
    row: dict[str, str],
) -> None:
    needed = start_for("paired-squares", unfinished=F(row["published_in"]))["square"]
    assert needed.cutting == F(row["start_square_in"])


def test_the_second_table_calls_the_unit_to_its_raw_edges_finished() -> None:
    # City Stitches (Farmer's Wife posts) prints 9 in -> "6 in finished".
    size = unit_size("paired-squares", F(9))
    assert size.width == pytest.approx(6.0104, abs=0.0001)
    assert size.finishes[0] == pytest.approx(5.5104, abs=0.0001)


def test_the_shortcut_of_0_64_is_right_only_near_a_start_of_5_27_in() -> None:
    # Plane geometry: 0.64 L = (L - 1/2) / sqrt 2 only at L = 5.2685.
    where = 0.5 / (1 - 0.64 * sqrt(2))
    assert where == pytest.approx(5.2685, abs=0.0001)
    near = unit_size("paired-squares", F(527, 100)).width
    assert near == pytest.approx(0.64 * 5.27, abs=0.001)
    for start in (F(5, 2), F(4), F(7), F(8), F(10)):
        wrong = abs(unit_size("paired-squares", start).width - 0.64 * float(start))
        assert wrong > 0.08


def test_units_of_five_inch_stacked_four_patches_finish_at_5_864_in() -> None:
    # Common practice: 5 in squares, four-patches of 9 1/2 in, seams of 1/4 in.
    derived = derive("stacked-four-patch", F(5))
    assert derived.piles["four-patch"].size == pytest.approx((9.5, 9.5))
    assert derived.unit.width == pytest.approx(9 / sqrt(2))
    assert derived.unit.finishes == pytest.approx((5.864, 5.864), abs=0.0005)
    assert derived.unit.trim_to() == (F(25, 4), F(25, 4))


def test_half_a_centimetre_is_a_trim_step_too() -> None:
    half = F(1, 2) * F(100, 254)
    width = unit_size("stacked-four-patch", F(5)).trim_to(half)[0]
    assert width == 32 * half
    assert width + half > unit_size("stacked-four-patch", F(5)).width


@pytest.mark.parametrize(
    ("start", "words"),
    [
        (F(1, 2), "2 seams of 1/4 in leave nothing of a 1/2 in square; cut larger."),
        (F(1), "A square of 1 in is all used up by its seams of 1/4 in; cut it over 1 1/4 in."),
        (F(0), "A square of 0 in cannot be cut; give a size larger than nothing."),
        (F(-3), "A square of -3 in cannot be cut; give a size larger than nothing."),
    ],
)
def test_a_start_that_the_seams_use_up_is_refused_with_what_to_do(start: F, words: str) -> None:
    with pytest.raises(SizeRefused) as refused:
        derive("paired-squares", start)
    assert str(refused.value) == words


def test_a_start_just_larger_than_the_seams_use_up_is_taken() -> None:
    # (S - 1/2) / sqrt 2 = 1/2 at S = 1.2071.
    with pytest.raises(SizeRefused):
        derive("paired-squares", F(12071, 10000))
    assert 0 < derive("paired-squares", F(12072, 10000)).unit.finishes[0] < 0.001
