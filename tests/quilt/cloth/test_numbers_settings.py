"""Straight, sashed and on-point settings."""

from collections import Counter
from fractions import Fraction as F
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.lengths import Rounding, Unit, from_cm, round_to
from sewalong.quilt.cloth.squares import cloth_for
from sewalong.quilt.layouts.setting_on_point import on_point, square_around
from sewalong.quilt.layouts.setting_sashed import Meeting, sashed
from sewalong.quilt.layouts.setting_straight import straight_top, with_own_seam
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.size import Size

EIGHTH = F(1, 8)
TWELVE = Size.square(F(12))


# Setting and corner triangle chart, "round up to 1/8": lukas.is-a-geek.org/tani/chart.htm.
CHART = [
    (5, "8.375", "4.5"),
    (6, "9.75", "5.125"),
    (7, "11.25", "5.875"),
    (8, "12.625", "6.625"),
    (9, "14", "7.25"),
    (10, "15.5", "8"),
    (11, "16.875", "8.75"),
    (12, "18.25", "9.375"),
    (13, "19.75", "10.125"),
    (14, "21.125", "10.875"),
    (15, "22.5", "11.5"),
]


@pytest.mark.parametrize(("unit", "side", "corner"), CHART)
def test_the_published_chart_is_the_rule_rounded_up(unit: int, side: str, corner: str) -> None:
    found = on_point(3, 3, F(unit))
    assert found.side.cut_at == F(side)
    assert found.corner.cut_at == F(corner)


def test_at_sixteen_the_chart_used_1_414() -> None:
    # The chart prints 23 7/8 for 16 in: 16 * 1.414 + 1 1/4 = 23.874. With the root of two itself
    # it is 23.877, and so 24. By geometry alone 23.835 is enough, which also rounds to 23 7/8.
    found = on_point(3, 3, F(16))
    assert round_to(16 * F("1.414") + F(5, 4), EIGHTH, Rounding.UP) == F("23.875")
    assert found.side.cut_at == 24
    assert found.side.exact == pytest.approx(23.8345, abs=1e-4)
    assert found.side.least == F("23.875")
    assert found.corner.cut_at == F("12.25")


@pytest.mark.parametrize("unit", [5, 8, 11, 12, 14, 15, 16])
def test_a_guild_sheet_that_rounds_to_the_nearest_is_too_small(unit: int) -> None:
    # moonlightquilters.org, Tip: on point settings, "x1.41, nearest 1/8".
    by_sheet = round_to(unit * F("1.41") + F(5, 4), EIGHTH, Rounding.NEAREST)
    assert float(by_sheet) < on_point(2, 2, F(unit)).side.exact


@pytest.mark.parametrize(
    ("unit", "side", "corner", "source"),
    [
        (6, "9.75", None, "moonlightquilters.org, Tip: on point settings"),
        (6, "9.75", None, "Everyone Deserves a Quilt, Math pt 2 (2014)"),
        (12, None, "9.375", "pinemeadowsdesigns.com, Block on point"),
        (10, "15.5", None, "10*1.414+1.25=15.39 -> 15 1/2, stockingisthenewplanking.com"),
    ],
)
def test_worked_examples(unit: int, side: str | None, corner: str | None, source: str) -> None:
    found = on_point(2, 2, F(unit))
    if side is not None:
        assert found.side.cut_at == F(side), source
    if corner is not None:
        assert found.corner.cut_at == F(corner), source


@pytest.mark.parametrize("rows", [pytest.param(4, id="Q078")])
def test_edge_triangles_of_a_six_inch_block(rows: int) -> None:
    # kristamoser.com, Quilt math made easy; 9.735 and 5.118 are with 1 1/4 and 7/8 added.
    found = on_point(rows, 4, F(6))
    assert 6 * sqrt(2) + 1.25 == pytest.approx(9.735, abs=1e-3)
    assert 6 / sqrt(2) + 0.875 == pytest.approx(5.118, abs=1e-3)
    assert (found.side.cut_at, found.corner.cut_at) == (F("9.75"), F("5.125"))
    assert (found.side.triangles, found.side.squares) == (12, 3)
    assert (found.corner.triangles, found.corner.squares) == (4, 2)
    assert found.side.reason == (
        "3 squares cut twice corner to corner, cut at 9 3/4 in (exactly 9.692 in)"
    )
    assert found.reason.startswith("25 units, 12 side triangles from 3 squares")


def test_one_unit_on_point_needs_corners_only() -> None:
    found = on_point(1, 1, F(6))
    assert found.side.reason == "none needed"
    assert found.reason.startswith("1 unit, 0 side triangles from 0 squares, 4 corner triangles")
    assert found.slanting == (1,)


def test_four_side_triangles_come_from_one_square() -> None:
    found = on_point(2, 2, F(6))
    assert found.reason.startswith("5 units, 4 side triangles from 1 square, 4 corner triangles")
    assert found.side.reason.startswith("1 square cut twice corner to corner, cut at 9 3/4 in")


def test_oversize_on_purpose() -> None:
    # kristamoser.com 2023 cuts 10 1/2 and 5 3/4 for 6 in, to trim later.
    assert on_point(4, 4, F(6), larger=F(3, 4)).side.cut_at == F("10.5")
    assert on_point(4, 4, F(6), larger=F(5, 8)).corner.cut_at == F("5.75")


@pytest.mark.parametrize("columns", [pytest.param(3, id="Q090")])
def test_size_on_point(columns: int) -> None:
    # patchworktimes.com 2016: 50.912 x 67.882.
    found = on_point(4, columns, F(12))
    assert float(found.size.width) == pytest.approx(50.912, abs=1e-3)
    assert float(found.size.length) == pytest.approx(67.882, abs=1e-3)
    assert found.slanting == (1, 3, 5, 5, 3, 1)


@pytest.mark.parametrize("largest", [pytest.param("12.5", id="Q024-frame")])
def test_framing_an_old_block_on_point(largest: str) -> None:
    # quiltedforyoucolorado.blogspot.com 2010: at least 17.68 in, trimmed to 18.
    assert square_around(F(largest)) == pytest.approx(17.678, abs=1e-3)
    assert square_around(F(largest)) < 18


def test_setting_triangles_in_centimetres() -> None:
    # 15 cm with 0.75 cm seams: 15 * root 2 + 3.62 is 24.83; the allowance rounded up to a half
    # centimetre first gives 25.5.
    half = from_cm(F(1, 2))
    found = on_point(3, 3, from_cm(F(15)), seam=from_cm(F(3, 4)), fineness=half, shown_in=Unit.CM)
    assert found.side.least == from_cm(F(25))
    assert found.side.cut_at == from_cm(F("25.5"))
    assert found.side.reason.endswith("cut at 25.5 cm (exactly 24.83 cm)")


@given(st.integers(1, 12), st.integers(1, 12))
def test_on_point_counts_by_laying_them_out(rows: int, columns: int) -> None:
    whole = [(2 * c, 2 * r) for r in range(rows) for c in range(columns)]
    between = [(2 * c + 1, 2 * r + 1) for r in range(rows - 1) for c in range(columns - 1)]
    found = on_point(rows, columns, F(6))
    assert found.units == len(whole) + len(between)
    slants = Counter((x + y) // 2 for x, y in whole + between)
    assert found.slanting == tuple(slants[k] for k in range(rows + columns - 1))


@given(st.integers(1, 12), st.integers(1, 12), st.fractions(1, 20, max_denominator=8))
def test_units_and_triangles_fill_the_top(rows: int, columns: int, unit: F) -> None:
    found = on_point(rows, columns, unit)
    area = float(found.size.width) * float(found.size.length)
    # A side triangle is half a unit and a corner a quarter, by area.
    pieces = found.units + found.side.triangles / 2 + found.corner.triangles / 4
    assert area == pytest.approx(pieces * float(unit) ** 2, rel=1e-6)


@given(st.fractions(1, 30, max_denominator=16), st.sampled_from([F(3, 16), F(1, 4), F(5, 16)]))
def test_the_cut_square_holds_the_triangle_with_its_seams(unit: F, seam: F) -> None:
    # A square of side S cut twice gives triangles of long side S; their inside, an allowance in
    # from each side, has the long side S - seam * (2 + 2 * root 2), since an allowance at a half
    # right angle takes seam / tan(22.5 degrees) from each end.
    found = on_point(2, 2, unit, seam=seam)
    inside = float(found.side.cut_at) - 2 * float(seam) * (1 + sqrt(2))
    assert inside >= float(unit) * sqrt(2) - 1e-9
    assert found.side.cut_at >= found.side.least
    leg = float(found.corner.cut_at) - float(seam) * (2 + sqrt(2))
    assert leg >= float(unit) / sqrt(2) - 1e-9


@pytest.mark.parametrize("outer", [pytest.param(True, id="Q075")])
def test_sampler_blocks_with_sashing(outer: bool) -> None:
    # delawarequilts.com, Sizes: 5 x 6 blocks of 12 in, 3 in sash: 72 x 87, all round 78 x 93.
    assert sashed(6, 5, TWELVE, F(3), outer=False).size == Size(F(72), F(87))
    assert sashed(6, 5, TWELVE, F(3), outer=outer).size == Size(F(78), F(93))


def test_size_row_by_row() -> None:
    found = sashed(3, 2, TWELVE, F(3))
    assert list(found.down_to) == [3, 15, 18, 30, 33, 45, 48]
    assert found.down_to[-1] == found.size.length
    inside = sashed(3, 2, TWELVE, F(3), outer=False)
    assert list(inside.down_to) == [12, 15, 27, 30, 42]


@pytest.mark.parametrize("rows", [pytest.param(4, id="Q076")])
def test_sashes_and_cornerstones(rows: int) -> None:
    # susanintexas.blogspot.com 2009: 4 rows x 5 columns sashed all round.
    found = sashed(rows, 5, TWELVE, F(2))
    assert (found.cornerstones, found.sashes) == (30, 49)
    inside = sashed(rows, 5, TWELVE, F(2), outer=False)
    assert (inside.cornerstones, inside.sashes) == (12, 31)
    # Between 5 columns 4 stand in each of 4 rows; between 4 rows 3 times 5 lie.
    assert inside.reason.startswith(
        "31 sashes: 16 standing between the columns, 15 lying between the rows; 12 cornerstones"
    )


@pytest.mark.parametrize("printed", [pytest.param(9, id="Q077")])
def test_a_ninth_strip_is_not_needed(printed: int) -> None:
    # sewingwithstitcher.com, Sashings and cornerstones: 3 x 4 blocks, 8 1/4 in sashes, 9 strips.
    sashes = sashed(4, 3, Size.square(F("7.75")), F(1)).sashes
    assert sashes == 31
    found = cloth_for(sashes, Size(F("8.25"), F("1.5")))
    assert (found.per_strip, found.strips, found.over) == (4, 8, 1)
    assert found.strips < printed
    assert found.purchase.need == 8 * F("1.5")
    assert found.reason == "8 strips of 1 1/2 in: 31 pieces, 4 a strip at 40 in usable, 1 over"


def test_one_strip_may_be_enough_for_the_sashes() -> None:
    assert cloth_for(3, Size(F("8.25"), F("1.5"))).reason.startswith(
        "1 strip of 1 1/2 in: 3 pieces, 4 a strip"
    )


def test_sashes_are_cut_with_their_seams() -> None:
    found = sashed(4, 5, Size(F(12), F(10)), F(2))
    assert found.cut_standing == Size(F("2.5"), F("10.5"))
    assert found.cut_lying == Size(F("12.5"), F("2.5"))
    assert found.cut_cornerstone == Size.square(F("2.5"))


def test_long_sashes_have_no_cornerstones() -> None:
    found = sashed(4, 5, TWELVE, F(2), meeting=Meeting.LONG_SASHES)
    assert (found.standing, found.lying, found.cornerstones) == (24, 5, 0)
    assert found.cut_lying.width == found.size.width + F(1, 2)
    assert found.cut_cornerstone is None


@given(st.integers(1, 12), st.integers(1, 12), st.booleans())
def test_sashes_cornerstones_and_units_fill_the_top(rows: int, columns: int, outer: bool) -> None:
    unit, sash = Size(F(9), F(6)), F(2)
    found = sashed(rows, columns, unit, sash, outer=outer)
    area = (
        rows * columns * unit.width * unit.length
        + found.standing * sash * unit.length
        + found.lying * sash * unit.width
        + found.cornerstones * sash * sash
    )
    assert area == found.size.width * found.size.length


def test_a_sash_longer_than_the_cloth_is_refused() -> None:
    with pytest.raises(NumbersFault, match="wider than the 40 in of usable cloth"):
        cloth_for(4, Size(F(41), F(2)))
    with pytest.raises(NumbersFault, match="sash"):
        sashed(3, 3, TWELVE, F(0))


def test_a_real_top_against_the_exact_one() -> None:
    # paulalynnsbin.blogspot.com 2010: 4 x 5 units of 13 1/2 in, measured 51 x 63.
    top = straight_top(5, 4, Size.square(F(27, 2)), F(1, 4))
    assert top == Size(F("52.5"), F("65.5"))


@pytest.mark.parametrize("width", [pytest.param(4, id="Q026")])
def test_swapped_blocks_cut_to_the_smallest(width: int) -> None:
    # jobutterfield.blogspot.com: 11 1/2 in for 12 1/2 loses 4 in over a row of 4.
    found = with_own_seam(
        straight_top(4, width, Size.square(F("12.5")), F(1, 4)),
        straight_top(4, width, Size.square(F("11.5")), F(1, 4)),
    )
    assert found.across == found.down == 4


def test_a_wider_seam_makes_the_whole_top_smaller() -> None:
    five = Size.square(F(5))
    planned = straight_top(9, 9, five, F(1, 4))
    found = with_own_seam(planned, straight_top(9, 9, five, F(9, 32)))
    assert found.across == F(1, 2)
    assert (
        found.reason
        == "40 1/2 × 40 1/2 in instead of 41 × 41 in: 1/2 in less across, 1/2 in less down"
    )
    assert with_own_seam(planned, planned).reason.endswith("the same down")


def test_a_narrower_seam_makes_it_larger() -> None:
    # 8 seams, each 1/16 in narrower on both pieces: 1 in; with 4 seams half of that.
    five = Size.square(F(5))
    found = with_own_seam(straight_top(5, 9, five, F(1, 4)), straight_top(5, 9, five, F(3, 16)))
    assert (found.across, found.down) == (F(-1), F(-1, 2))
    assert found.reason.endswith("1 in more across, 1/2 in more down")
