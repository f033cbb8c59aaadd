"""What is left beyond the point of flying geese when small squares are cut smaller than asked.

Plane geometry: the small squares' seams meet a seam allowance below the edge when their size is
right, and nearer by as much as they are smaller. Shapely measures it on the polygons.
"""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from msgspec.structs import replace
from shapely import LineString, Polygon

from sewalong.piecing.derive import derive
from sewalong.quilt.derived import derived
from sewalong.quilt.point import beyond_the_point, point_lost, point_words
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.worksheet.worksheet import worksheet
from tests.progress.building import a_quilt

LARGE, ASKED = F(21, 4), F(23, 8)
"""Finished geese of 4 in: 5 1/4 in and 2 7/8 in (published tables, tests/piecing)."""


@pytest.mark.parametrize("smaller", [F(0), F(1, 16), F(1, 8), F(3, 16), F(1, 4)])
def test_a_small_square_cut_smaller_costs_as_much_of_the_allowance(smaller: F) -> None:
    made = derive("flying-geese-four", {"large-square": LARGE, "small-square": ASKED - smaller})
    exact = made.starts["small-square"].exact
    lost = max(0.0, exact - float(ASKED - smaller))
    assert float(point_lost(made)) == pytest.approx(lost, abs=1e-5)
    assert float(beyond_the_point(made) or 0) == pytest.approx(
        0.25 - exact + float(ASKED - smaller), abs=1e-5
    )


@pytest.mark.parametrize("small", [ASKED, F(45, 16), F(11, 4)])
def test_shapely_measures_the_same_from_the_point_to_the_edge(small: F) -> None:
    made = derive("flying-geese-four", {"large-square": LARGE, "small-square": small})
    for unit in made.units:
        goose = Polygon(next(p.points for p in unit.patches if p.letter == "A"))
        top = LineString([(0, 0), (unit.size[0], 0)])
        assert goose.distance(top) == pytest.approx(float(beyond_the_point(made) or 0), abs=1e-6)


def test_it_is_said_with_what_would_keep_the_point() -> None:
    quilt = geese(F(45, 16))
    assert point_words(quilt, derived(quilt)) == (
        "3/16 in of the 1/4 in allowance is left beyond the point, so the seam takes 1/16 in of "
        "the point away. Small squares of 2 7/8 in would keep it."
    )


def test_nothing_is_said_where_all_of_it_is_left_or_there_is_no_point() -> None:
    for quilt in (geese(ASKED), geese(ASKED + F(1, 16))):
        assert point_words(quilt, derived(quilt)) == ""
    squares = derive("half-square-two", F(5))
    assert beyond_the_point(squares) is None
    assert point_lost(squares) == 0


def geese(small: F) -> Quilt:
    quilt = a_quilt("flying-geese-four", 8, rows=4, columns=8)
    large, corner = quilt.starts
    return replace(quilt, starts=(replace(large, size=LARGE), replace(corner, size=small)))


def test_the_plan_says_it_beside_the_unit() -> None:
    lines = worksheet(geese(F(45, 16))).sizes.lines
    (said,) = [line for line in lines if line.label == "point of the unit"]
    assert said.text.startswith("3/16 in of the 1/4 in allowance")
    assert not [line for line in lines if "keeps its allowance" in line.reason]
    right = worksheet(geese(ASKED)).sizes.lines
    assert not [line for line in right if line.label == "point of the unit"]
