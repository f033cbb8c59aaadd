"""A centre on point against shapely: units laid on a corner, and what is left of the top."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction as F
from math import sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from shapely.geometry import MultiPolygon, Point, Polygon, box
from shapely.ops import unary_union

from sewalong.lengths import Unit
from sewalong.progress.record.measurable import read_piece
from sewalong.progress.record.route import route_for
from sewalong.progress.record.stages.on_point import FROM_A_SQUARE
from sewalong.quilt.layouts.centre import centre
from sewalong.quilt.layouts.centre_seams import centre_seams
from sewalong.quilt.layouts.layout import LayoutChoice, layouts
from sewalong.quilt.quilt import Quilt, StartPile, Target
from sewalong.quilt.set_rows import most_columns, set_rows, units_in
from sewalong.quilt.setting import SetOnPoint
from sewalong.quilt.size import Size
from sewalong.quilt.worksheet.basis import basis
from sewalong.quilt.worksheet.setting_cloth import setting_cuts
from sewalong.quilt.worksheet.worksheet import worksheet

SEAM = F(1, 4)
ON_POINT = SetOnPoint("grey")


def squares(rows: int, columns: int, finished: F, setting: SetOnPoint = ON_POINT) -> Quilt:
    """Plain squares, which are units as they are cut."""
    return Quilt(
        name="Test",
        method_id="plain-squares",
        unit=Unit.INCH,
        seam=SEAM,
        starts=(StartPile("square", finished + 2 * SEAM, 200),),
        target=Target(rows, columns),
        setting=setting,
    )


class LaidOut:
    """The units of a top on point, each a square on its corner, by their slanting row; and the
    pieces of the top that no unit covers. Lengths in diagonals of a unit, down the page."""

    def __init__(self, rows: int, columns: int) -> None:
        whole = [(c + 0.5, r + 0.5) for r in range(rows) for c in range(columns)]
        between = [(c + 1.0, r + 1.0) for r in range(rows - 1) for c in range(columns - 1)]
        self.rows: dict[int, list[tuple[float, float]]] = {}
        for x, y in sorted(whole + between):
            self.rows.setdefault(round(x + y), []).append((x, y))
        self.top = box(0, 0, columns, rows)
        self.units = [_on_a_corner(*place) for row in self.rows.values() for place in row]
        left = self.top.difference(unary_union(self.units))
        parts = left.geoms if isinstance(left, MultiPolygon) else [left]
        self.triangles = [part for part in parts if isinstance(part, Polygon) and part.area > 1e-9]

    def is_side(self, triangle: Polygon) -> bool:
        """A side triangle is half a unit, a corner triangle a quarter."""
        return bool(triangle.area == pytest.approx(0.25))

    def sides_at_ends(self, row: int) -> int:
        """Side triangles that lie against the first and the last edge of a row."""
        (x0, y0), (x1, y1) = self.rows[row][0], self.rows[row][-1]
        ends = (Point(x0 - 0.3, y0 + 0.3), Point(x1 + 0.3, y1 - 0.3))
        beside = [one for end in ends for one in self.triangles if one.contains(end)]
        return sum(map(self.is_side, beside))


def _on_a_corner(x: float, y: float) -> Polygon:
    return Polygon([(x, y - 0.5), (x + 0.5, y), (x, y + 0.5), (x - 0.5, y)])


COUNTS = st.integers(1, 6)


@settings(max_examples=40, deadline=None)
@given(COUNTS, COUNTS)
def test_units_and_triangles_fill_the_top_and_are_as_many_as_are_counted(
    rows: int, columns: int
) -> None:
    laid = LaidOut(rows, columns)
    assert all(unit.within(laid.top.buffer(1e-9)) for unit in laid.units)
    filled = sum(one.area for one in [*laid.units, *laid.triangles])
    assert filled == pytest.approx(laid.top.area)
    assert units_in(ON_POINT, rows, columns) == len(laid.units)
    by_hand = [
        (len(laid.rows[row]), laid.sides_at_ends(row)) for row in range(1, len(laid.rows) + 1)
    ]
    found = set_rows(ON_POINT, rows, columns)
    assert [(row.units, row.sides) for row in found] == by_hand
    sides = sum(map(laid.is_side, laid.triangles))
    assert (sides, len(laid.triangles) - sides) == (sum(row.sides for row in found), 4)


@settings(max_examples=40, deadline=None)
@given(COUNTS, COUNTS, st.integers(12, 96).map(lambda eighths: F(eighths, 8)))
def test_the_centre_the_cut_list_and_the_stages_agree_with_what_is_laid(
    rows: int, columns: int, finished: F
) -> None:
    quilt, laid = squares(rows, columns, finished), LaidOut(rows, columns)
    found = basis(quilt)
    inner = centre(quilt, quilt.target, found.unit).grown(-SEAM)
    diagonal = float(finished) * sqrt(2)
    _, _, across, down = laid.top.bounds
    assert float(inner.width) == pytest.approx(across * diagonal, abs=1e-5)
    assert float(inner.length) == pytest.approx(down * diagonal, abs=1e-5)
    triangles = Counter(laid.is_side(one) for one in laid.triangles)
    for cut in setting_cuts(found):
        wanted = triangles[cut.pile.id == "side-triangle"]
        each = FROM_A_SQUARE[cut.pile.id]
        assert (cut.count - 1) * each < wanted <= cut.count * each
    used = Counter(
        {t.pile: 0 for stage in route_for(quilt, quilt.target).stages for t in stage.takes}
    )
    for stage in route_for(quilt, quilt.target).stages:
        for taken in stage.takes:
            times = {"sew-rows": len(laid.units), "add-side-triangles": triangles[True]}
            used[taken.pile] += taken.count * times.get(stage.id, getattr(stage, "steps", 0))
    assert used["unit"] == len(laid.units)
    assert used["side-triangle"] == triangles[True]
    assert used["corner-triangle"] == triangles[False]


@settings(max_examples=30, deadline=None)
@given(COUNTS, COUNTS)
def test_every_edge_of_a_unit_and_of_a_triangle_is_sewn_once(rows: int, columns: int) -> None:
    """The seams of the centre come to half of all edges that do not lie outside: shapely adds
    them up. A seam's own ends beyond its last crossing are left out of it."""
    quilt, laid = squares(rows, columns, F(6)), LaidOut(rows, columns)
    edges = sum(one.exterior.length for one in [*laid.units, *laid.triangles])
    inside = (edges - laid.top.exterior.length) / 2 * 6 * sqrt(2)
    seams = centre_seams(quilt, quilt.target, basis(quilt).unit)
    ends = 2 * SEAM * sum(run.times for run in seams.runs)
    assert float(sum(run.length for run in seams.runs) - ends) == pytest.approx(inside)


# Setting and corner triangle chart, "round up to 1/8": lukas.is-a-geek.org/tani/chart.htm.
@pytest.mark.parametrize(
    ("finished", "side", "corner"),
    [
        ("5", "8.375", "4.5"),
        ("6", "9.75", "5.125"),
        ("12", "18.25", "9.375"),
        ("15", "22.5", "11.5"),
    ],
)
def test_squares_for_triangles_are_cut_as_the_published_chart_has_them(
    finished: str, side: str, corner: str
) -> None:
    cuts = {one.pile.id: one for one in setting_cuts(basis(squares(3, 3, F(finished))))}
    assert cuts["side-triangle"].size == Size.square(F(side))
    assert cuts["corner-triangle"].size == Size.square(F(corner))


def test_squares_cut_larger_on_purpose_are_that_much_larger_and_the_top_is_the_same() -> None:
    # Krista Moser 2023 cuts 10 1/2 for 9 3/4 in, to trim later: kristamoser.com/post/quilt-math-made-easy.
    usual, larger = squares(3, 3, F(6)), squares(3, 3, F(6), SetOnPoint("grey", larger=F(3, 4)))
    (side, _) = setting_cuts(basis(larger))
    assert side.size == Size.square(F("10.5"))
    assert basis(larger).centre == basis(usual).centre


def test_the_worksheet_of_a_top_on_point() -> None:
    """Three by two of 6 in: 25.456 × 16.971 in finished, 8 units, 6 side triangles from 2 squares."""
    sheet = worksheet(squares(3, 2, F(6)))
    sizes = {line.label: line for line in sheet.sizes.lines}
    assert sizes["centre"].inches == pytest.approx(16.9706 + 0.5, abs=1e-4)
    assert sizes["centre"].inches_down == pytest.approx(25.4558 + 0.5, abs=1e-4)
    assert "8 units in all" in sizes["centre"].reason
    assert [line.reason for line in sheet.rows.lines] == [
        "1 unit, 2 side triangles",
        "3 units, 1 side triangle",
        "3 units, 1 side triangle",
        "1 unit, 2 side triangles",
    ]
    cuts = {line.label: line.text for line in sheet.cut_list.lines}
    assert cuts["squares for side triangles, grey"].startswith("2 squares for side triangles of")
    assert {"grey"} <= {line.label for line in sheet.shopping.lines}


@settings(max_examples=30, deadline=None)
@given(COUNTS, COUNTS)
def test_what_is_measured_of_the_centre_follows_it_and_its_seams(rows: int, columns: int) -> None:
    quilt = squares(rows, columns, F(6))
    unit = basis(quilt).unit
    inner, wider = (centre(quilt, quilt.target, unit, seam) for seam in (SEAM, SEAM + F(1, 16)))
    for way, side in (("across", "width"), ("down", "length")):
        measured = read_piece(quilt, quilt.target, f"centre:{way}")
        assert measured.expected == getattr(inner, side)
        lost = float(getattr(inner, side) - getattr(wider, side))
        assert lost == pytest.approx(measured.allowances / 16, abs=1e-5)
    longest = max(len(row) for row in LaidOut(rows, columns).rows.values())
    assert read_piece(quilt, quilt.target, "row").expected == 6 * longest + 2 * SEAM


@pytest.mark.parametrize("rows", range(1, 6))
@pytest.mark.parametrize("units", [1, 4, 5, 13, 40])
def test_the_most_columns_that_units_fill_are_found_by_trying(rows: int, units: int) -> None:
    tried = [n for n in range(1, 60) if units_in(ON_POINT, rows, n) <= units]
    assert most_columns(ON_POINT, rows, units) == max(tried, default=0)


def test_layouts_that_fit_count_the_units_between_too() -> None:
    choice = LayoutChoice(13, Size.square(F(6)), setting=ON_POINT)
    (first, *_) = layouts(choice)
    assert (first.rows, first.columns, first.units, first.spare) == (3, 3, 13, 0)
    assert float(first.size.width) == pytest.approx(18 * sqrt(2), abs=1e-5)


def test_units_that_are_not_square_say_so_in_a_line() -> None:
    geese = replace(
        squares(3, 2, F(6)),
        method_id="flying-geese-four",
        starts=(StartPile("large-square", F(21, 4), 2), StartPile("small-square", F(23, 8), 8)),
    )
    assert worksheet(geese).refusal == (
        "Only square units are set on point here. Set these straight."
    )
