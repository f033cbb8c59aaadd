"""Half-square triangles, two and eight at a time, against published sizes with sources."""

from __future__ import annotations

from fractions import Fraction as F
from math import sqrt

import pytest

from sewalong.piecing.derive import derive, start_for, unit_size
from tests.piecing.published import rows

METHODS = {"two_at_a_time": "half-square-two", "eight_at_a_time": "half-square-eight"}
TABLE = rows("half_square")


@pytest.mark.parametrize("row", TABLE, ids=lambda row: f"{row['method']} {row['cut_square_in']}")
def test_the_unit_is_as_large_as_recomputed_and_reaches_the_published_size(
    row: dict[str, str],
) -> None:
    size = unit_size(METHODS[row["method"]], F(row["cut_square_in"]))
    assert size.width == pytest.approx(float(row["exact_raw_unit_in"]), abs=0.0001)
    assert size.trim_to()[0] >= F(row["finished_in"]) + F(1, 2)


@pytest.mark.parametrize("finished", [F(1), F(3, 2), F(2), F(5, 2), F(3), F(4), F(6)])
def test_seven_eighths_is_the_exact_amount_rounded_up(finished: F) -> None:
    # The 7/8 rule: Quiltmaker, "Quilt Blocks & Easy Math pt 4" (2013).
    square = start_for("half-square-two", finishes=finished)["square"]
    assert square.exact - float(finished) == pytest.approx(0.8535533905932737)
    assert square.cutting - finished == F(7, 8)


@pytest.mark.parametrize("finished", [F(3, 2), F(2), F(5, 2), F(3), F(5)])
def test_twice_seven_eighths_is_the_amount_for_eight_rounded_up(finished: F) -> None:
    # 2 x (F + 7/8): Craftsy blog, "How to make half-square triangles" (2014).
    square = start_for("half-square-eight", finishes=finished)["square"]
    assert square.exact == pytest.approx(2 * (float(finished) + 0.8535533905932737))
    assert square.cutting == 2 * (finished + F(7, 8))


def test_eight_at_a_time_is_half_the_square_less_the_seam_on_the_diagonal() -> None:
    for seam in (F(3, 16), F(1, 4), F(5, 16)):
        size = unit_size("half-square-eight", F(8), seam)
        assert size.width == pytest.approx(4 - sqrt(2) * float(seam))


def test_two_and_eight_at_a_time_give_two_and_eight() -> None:
    assert derive("half-square-two", F(4)).unit_count == 2
    assert derive("half-square-eight", F(8)).unit_count == 8


def test_the_seams_sewn_are_two_or_four_rows_beside_the_diagonals() -> None:
    # A row at 1/4 in beside the diagonal of a square S is S sqrt 2 - 1/2 in long.
    row = 4 * sqrt(2) - 0.5
    assert derive("half-square-two", F(4)).stage("sew-both-sides").sewn == pytest.approx(2 * row)
    assert derive("half-square-eight", F(4)).stage("sew-both-sides").sewn == pytest.approx(4 * row)


def test_outer_edges_are_on_the_straight_grain_unlike_those_sewn_around() -> None:
    assert not derive("half-square-two", F(4)).has_bias_edges
    assert not derive("half-square-eight", F(8)).has_bias_edges
    assert derive("paired-squares", F(4)).has_bias_edges
