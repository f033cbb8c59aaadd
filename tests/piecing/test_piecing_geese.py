"""Flying geese, four from one large and four small squares, against published tables."""

from __future__ import annotations

from fractions import Fraction as F

import pytest

from sewalong.piecing.derive import derive, start_for
from sewalong.piecing.faults import SizeRefused
from tests.piecing.published import rows

TABLE = rows("geese")


def _width(row: dict[str, str]) -> F:
    return F(row["finished_in"].split("x")[0])


@pytest.mark.parametrize(
    "row", [row for row in TABLE if row["verdict"] == "ok"], ids=lambda row: row["finished_in"]
)
def test_published_squares_are_the_exact_ones_rounded_up(row: dict[str, str]) -> None:
    sizes = start_for("flying-geese-four", finishes=_width(row))
    assert sizes["large-square"].cutting == F(row["published_large_or_side_in"])
    assert sizes["small-square"].cutting == F(row["published_small_or_corner_in"])


def test_a_printed_sum_that_is_wrong_is_not_agreed_with() -> None:
    # Marly's Quilts (2014), worked example: 1 1/2 + 7/8 is printed as 2 1/4.
    (row,) = [row for row in TABLE if row["verdict"] == "PUBLISHED ERROR"]
    printed = F(row["published_small_or_corner_in"])
    sizes = start_for("flying-geese-four", finishes=F(3))
    assert printed == F(9, 4)
    assert sizes["small-square"].cutting == F(19, 8)
    assert sizes["small-square"].exact > float(printed)
    # With the printed square the unit cannot finish at 1 1/2 in.
    cut = {"large-square": sizes["large-square"].cutting, "small-square": printed}
    assert derive("flying-geese-four", cut).unit.finishes[1] < 1.5


def test_exact_sizes_are_the_quarter_and_half_square_amounts() -> None:
    for seam in (F(3, 16), F(1, 4), F(5, 16)):
        s, root = float(seam), 2**0.5
        sizes = start_for("flying-geese-four", finishes=F(4), seam=seam)
        assert sizes["large-square"].exact == pytest.approx(4 + 2 * s + 2 * s * root)
        assert sizes["small-square"].exact == pytest.approx(2 + 2 * s + s * root)


def test_a_large_square_of_ones_own_gives_the_small_ones() -> None:
    sizes = derive("flying-geese-four", F(17, 4)).starts
    assert sizes["large-square"].cutting == F(17, 4)
    assert sizes["small-square"].cutting == F(19, 8)


def test_one_large_and_four_small_squares_make_four() -> None:
    derived = derive("flying-geese-four", F(17, 4))
    assert derived.unit_count == 4
    assert derived.per_unit == {"large-square": F(1, 4), "small-square": 1}


def test_the_large_triangle_has_the_long_edge_and_its_point_a_seam_below_the_other() -> None:
    derived = derive("flying-geese-four", F(17, 4))
    for unit in derived.units:
        width, height = unit.size
        goose = next(patch for patch in unit.patches if patch.letter == "A")
        assert width > height
        lowest = sorted(x for x, y in goose.points if y > height - 1e-6)
        assert lowest == pytest.approx([0.0, width])
        assert min(y for _, y in goose.points) == pytest.approx(0.25, abs=1e-6)


def test_the_large_fabric_turns_a_quarter_from_one_unit_to_the_next() -> None:
    units = derive("flying-geese-four", F(17, 4)).units
    turns = sorted(
        next(patch.turn for patch in unit.patches if patch.letter == "A") for unit in units
    )
    assert turns == [0, 90, 180, 270]


@pytest.mark.parametrize("small", [F(1, 4), F(2), F(4), F(5)])
def test_small_squares_that_leave_a_gap_or_reach_too_far_are_refused(small: F) -> None:
    with pytest.raises(SizeRefused):
        derive("flying-geese-four", {"large-square": F(17, 4), "small-square": small})


def test_the_large_square_must_be_given() -> None:
    with pytest.raises(SizeRefused, match="large-square, small-square"):
        derive("flying-geese-four", {"small-square": F(2)})


def test_larger_small_squares_only_leave_more_above_the_point() -> None:
    cut = {"large-square": F(17, 4), "small-square": F(5, 2)}
    unit = derive("flying-geese-four", cut).units[0]
    goose = next(patch for patch in unit.patches if patch.letter == "A")
    assert unit.is_rectangle
    assert min(y for _, y in goose.points) == pytest.approx(0.25 + 0.125)


@pytest.mark.parametrize("small", [F(7, 2), F(4)])
def test_small_squares_that_lap_far_over_each_other_are_refused(small: F) -> None:
    # Plane geometry: cut exactly for 5 1/4 in they lap by two seams, 1/2 in; these by 1 3/4 and more.
    with pytest.raises(SizeRefused, match="lap too far"):
        derive("flying-geese-four", {"large-square": F(21, 4), "small-square": small})


def test_small_squares_cut_an_eighth_large_still_open_out() -> None:
    # Common practice: cut a little large and trim.
    derived = derive("flying-geese-four", {"large-square": F(21, 4), "small-square": F(3)})
    assert derived.unit.height > 2.5
