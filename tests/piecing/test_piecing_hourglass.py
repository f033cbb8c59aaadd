"""Hourglass (quarter-square) units against the 1 1/4 rule and published examples."""

from __future__ import annotations

from fractions import Fraction as F
from math import sqrt

import pytest

from sewalong.piecing.derive import derive, start_for, unit_size
from tests.piecing.published import rows

TABLE = rows("quarter_square")
BY_RULE = [row for row in TABLE if "1 1/4" in row["rule"]]


@pytest.mark.parametrize("row", BY_RULE, ids=lambda row: row["source"][:20])
def test_one_and_a_quarter_is_the_exact_amount_rounded_up(row: dict[str, str]) -> None:
    finished = F(row["finished_in"])
    square = start_for("hourglass", finishes=finished)["square"]
    assert square.exact - float(finished) == pytest.approx(1.2071067811865475)
    assert square.cutting == F(row["published_cut_in"]) == finished + F(5, 4)


def test_a_start_one_inch_over_the_unfinished_unit_leaves_three_tenths_to_trim() -> None:
    # Open Gate Quilts, "Fit to be Quarter": 5 in squares for units unfinished 4 in.
    row = next(row for row in TABLE if row["rule"].startswith("hourglass"))
    size = unit_size("hourglass", F(row["published_cut_in"]))
    assert size.width == pytest.approx(5 - sqrt(0.5))
    assert size.width - 4 == pytest.approx(0.2929, abs=0.0001)
    assert size.trim_to()[0] >= F(row["finished_in"]) + F(1, 2)


def test_four_triangles_meet_with_like_fabrics_opposite() -> None:
    for unit in derive("hourglass", F(5)).units:
        first, second, third, fourth = unit.patches
        assert {first.letter, second.letter} == {"A", "B"}
        # In reading order the four are top, one side, other side, bottom.
        assert first.letter == fourth.letter
        assert second.letter == third.letter


def test_two_squares_make_two_units() -> None:
    derived = derive("hourglass", F(5))
    assert derived.unit_count == 2
    assert derived.per_unit == {"square": 1}
