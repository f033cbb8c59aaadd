"""Lines, spans, moves and clipping, each by hand or against shapely."""

from __future__ import annotations

from math import cos, radians, sin, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.affinity import rotate, scale
from shapely.geometry import LineString
from shapely.geometry import Polygon as Drawn

from sewalong.piecing.geometry import (
    Line,
    Polygon,
    area,
    box,
    centre,
    clipped,
    fold,
    line_through,
    shift,
    span,
    turn,
    turn_to,
    union_of_spans,
)

KITE: Polygon = ((0.0, 2.0), (3.0, 0.0), (7.0, 2.0), (3.0, 5.0))
PLACES = st.floats(-8, 8)


def test_a_line_measures_depth_on_its_normals_side_and_place_along_itself() -> None:
    line = line_through((1.0, 2.0), (4.0, 6.0))
    # Three across and four down: five long, and the normal is (4, -3) by 5.
    assert line.normal == pytest.approx((0.8, -0.6))
    assert line.along((4.0, 6.0)) == pytest.approx(5)
    assert line.along((1.0, 2.0)) == 0
    assert line.depth((1.8, 1.4)) == pytest.approx(1)
    assert line.reversed().depth((1.8, 1.4)) == pytest.approx(-1)
    assert line.shifted(3.0).depth((1.8, 1.4)) == pytest.approx(-2)
    assert line.shifted(3.0).at == pytest.approx((3.4, 0.2))


def test_a_line_needs_two_places() -> None:
    with pytest.raises(ValueError, match="two different points"):
        line_through((1.0, 1.0), (1.0, 1.0 + 1e-9))


@given(st.floats(0, 360), PLACES, PLACES)
def test_what_is_kept_of_a_polygon_is_what_shapely_keeps(
    degrees: float, x: float, y: float
) -> None:
    normal = (cos(radians(degrees)), sin(radians(degrees)))
    line = Line((x, y), normal)
    far = 100.0
    a = (x - far * normal[1], y + far * normal[0])
    b = (x + far * normal[1], y - far * normal[0])
    side = Drawn(
        [a, b, (b[0] + far * normal[0], b[1] + far * normal[1]),
         (a[0] + far * normal[0], a[1] + far * normal[1])]
    )  # fmt: skip
    kept = clipped(KITE, line)
    wanted = Drawn(KITE).intersection(side)
    assert (area(kept) if kept else 0.0) == pytest.approx(wanted.area, abs=1e-5)
    crossing = span(KITE, line)
    met = Drawn(KITE).intersection(LineString([a, b]))
    assert (crossing[1] - crossing[0] if crossing else 0.0) == pytest.approx(met.length, abs=1e-5)


def test_a_polygon_only_touched_by_the_line_is_kept_whole_or_not_at_all() -> None:
    left_of_it = Line((0.0, 0.0), (1.0, 0.0))
    assert clipped(KITE, left_of_it) is KITE
    assert clipped(KITE, left_of_it.reversed()) == ()


def test_a_sliver_that_nobody_could_see_is_nothing() -> None:
    square: Polygon = ((0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0))

    def corner(depth: float) -> float:
        """What lies beyond a cut across the corner at (4, 4), at right angles to its diagonal."""
        half = sqrt(0.5)
        at = (4.0 - depth * half, 4.0 - depth * half)
        return area(clipped(square, Line(at, (half, half))))

    # A corner of this depth has an area of the depth squared.
    assert corner(0.001) == pytest.approx(1e-6)
    assert corner(0.0002) == 0


def test_a_line_along_an_edge_crosses_and_one_through_a_corner_does_not() -> None:
    square: Polygon = ((0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0))
    assert span(square, Line((0.0, 0.0), (0.0, 1.0))) == (-4.0, 0.0)
    assert span(square, Line((0.0, 0.0), (sqrt(0.5), sqrt(0.5)))) is None
    assert span(square, Line((0.0, 5.0), (0.0, 1.0))) is None
    assert span(square, line_through((0.0, 0.0), (4.0, 4.0))) == pytest.approx((0, 4 * sqrt(2)))


def test_the_centre_of_a_polygon_is_its_centre_of_gravity() -> None:
    drawn = Drawn(KITE).centroid
    assert centre(KITE) == pytest.approx((drawn.x, drawn.y))
    assert area(KITE) == Drawn(KITE).area
    assert area(KITE[::-1]) == Drawn(KITE).area


def test_spans_that_touch_or_overlap_are_joined_and_others_are_not() -> None:
    assert union_of_spans([(3.0, 5.0), None, (0.0, 1.0), (2.0, 4.0)]) == [(0.0, 1.0), (2.0, 5.0)]
    assert union_of_spans([(0.0, 1.0), (2.0, 6.0), (3.0, 5.0)]) == [(0.0, 1.0), (2.0, 6.0)]
    assert union_of_spans([(0.0, 1.0), (2.0, 3.0), (3.0, 4.0)]) == [(0.0, 1.0), (2.0, 4.0)]
    assert union_of_spans([(0.0, 6.0), (1.0, 2.0)]) == [(0.0, 6.0)]
    assert union_of_spans([None]) == []


@pytest.mark.parametrize("eighths", range(-2, 10))
def test_a_turn_goes_from_x_towards_y(eighths: int) -> None:
    # y runs down here and up in shapely, so that the same angle is the same numbers.
    wanted = rotate(Drawn(KITE), 45 * eighths, origin=(0, 0))
    assert Drawn(turn(eighths).polygon(KITE)).symmetric_difference(wanted).area < 1e-9
    assert turn(eighths).direction((1.0, 0.0)) == pytest.approx(
        (cos(radians(45 * eighths)), sin(radians(45 * eighths)))
    )


def test_a_turn_takes_one_direction_to_another() -> None:
    three_four = (0.6, 0.8)
    move = turn_to(three_four, (0.0, -1.0))
    assert move.direction(three_four) == pytest.approx((0.0, -1.0))
    # A quarter further on goes a quarter further on.
    assert move.direction((-0.8, 0.6)) == pytest.approx((1.0, 0.0))


def test_folding_over_a_line_is_a_reflection_in_it() -> None:
    upright = Line((3.0, 1.0), (1.0, 0.0))
    wanted = scale(Drawn(KITE), -1, 1, origin=(3, 0))
    assert Drawn(fold(upright).polygon(KITE)).symmetric_difference(wanted).area < 1e-9
    slanting = line_through((1.0, 2.0), (4.0, 6.0))
    for point in KITE:
        folded = fold(slanting).point(point)
        assert slanting.depth(folded) == pytest.approx(-slanting.depth(point))
        assert slanting.along(folded) == pytest.approx(slanting.along(point))


def test_what_is_turned_over_keeps_its_area_above_zero() -> None:
    def signed(points: Polygon) -> float:
        return sum(
            points[i - 1][0] * points[i][1] - points[i][0] * points[i - 1][1]
            for i in range(len(points))
        )

    for move in (fold(Line((3.0, 1.0), (1.0, 0.0))), turn(3), shift(2.0, -1.0)):
        assert signed(KITE) > 0
        assert signed(move.polygon(KITE)) > 0


def test_a_box_lies_around_all() -> None:
    assert box([KITE, shift(1.0, -4.0).polygon(KITE)]) == (0.0, -4.0, 8.0, 5.0)
