"""Layouts: which fit, how they meet a size, what the neighbours take, parity, factors."""

from fractions import Fraction as F
from math import isqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.lengths import Unit, from_cm
from sewalong.quilt.layouts.fit import fit
from sewalong.quilt.layouts.layout import LayoutChoice, Reach, Shape, corners_alike, layouts
from sewalong.quilt.layouts.neighbouring_layouts import (
    around,
    factor_layouts,
    grow,
    neighbours,
)
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.size import Size

SEVEN_HALF = Size.square(F(15, 2))


def size(width: int | str, length: int | str) -> Size:
    return Size(F(width), F(length))


def test_every_layout_within_reach_is_there_and_nothing_else() -> None:
    reach = Reach(fewest=2, most=60, stretch=F(2))
    found = {(one.rows, one.columns) for one in layouts(LayoutChoice(30, SEVEN_HALF), reach)}
    expected = {
        (r, c)
        for r in range(2, 61)
        for c in range(2, 61)
        if r * c <= 30 and max(r, c) <= 2 * min(r, c)
    }
    assert found == expected


def test_what_a_layout_leaves_of_the_units_in_words() -> None:
    choice = LayoutChoice(1200, SEVEN_HALF)
    assert choice.layout(30, 40).leaves == "takes every unit"
    assert choice.layout(1, 1).leaves == "1,199 spare"
    assert choice.layout(60, 60).leaves == "2,400 short"


def test_least_left_over_first_when_no_size_is_wanted() -> None:
    found = layouts(LayoutChoice(81, Size.square(F(6))))
    assert (found[0].rows, found[0].columns, found[0].spare) == (9, 9, 0)
    assert found[0].shape is Shape.SQUARE
    assert [one.spare for one in found] == sorted(one.spare for one in found)


def shapes(choice: LayoutChoice, reach: Reach | None = None) -> list[tuple[int, int]]:
    """Rows and columns of every layout, in the order they are given."""
    return [(one.rows, one.columns) for one in layouts(choice, reach)]


def test_nothing_narrower_than_two_or_with_more_than_sixty_is_shown_unasked() -> None:
    assert shapes(LayoutChoice(2, SEVEN_HALF)) == []
    assert shapes(LayoutChoice(4, SEVEN_HALF)) == [(2, 2)]
    # 61 x 61 and 61 x 60 would leave fewer over.
    assert shapes(LayoutChoice(61 * 61, SEVEN_HALF), Reach(spare=121)) == [(60, 60)]


def test_nothing_that_is_short_is_shown_unasked() -> None:
    assert shapes(LayoutChoice(3, SEVEN_HALF)) == []
    assert shapes(LayoutChoice(3, SEVEN_HALF), Reach(short=1)) == [(2, 2)]


def test_of_two_that_take_every_unit_the_squarer_comes_first_and_upright_before_wide() -> None:
    # 24 is 4 by 6 (one and a half times as long as wide), 3 by 8 (2 2/3) and 2 by 12 (6).
    found = layouts(LayoutChoice(24, SEVEN_HALF), Reach(spare=0, stretch=F(6)))
    assert [(one.rows, one.columns) for one in found] == [
        (6, 4),
        (4, 6),
        (8, 3),
        (3, 8),
        (12, 2),
        (2, 12),
    ]
    assert [one.stretch for one in found] == [F(3, 2)] * 2 + [F(8, 3)] * 2 + [F(6)] * 2
    assert [one.shape for one in found] == [Shape.UPRIGHT, Shape.WIDE] * 3


def test_a_unit_over_and_a_unit_short_count_alike() -> None:
    # Of 35: 5 x 7 takes all, 6 x 6 is one short, 4 x 8 leaves three over.
    found = shapes(LayoutChoice(35, SEVEN_HALF), Reach(spare=3, short=1))
    assert found[:3] == [(7, 5), (5, 7), (6, 6)]
    assert found[3:5] == [(8, 4), (4, 8)]


def test_borders_make_a_long_layout_squarer() -> None:
    # 5 by 2 of 6 in is 30 by 12: with 3 in each side 36 by 18, just twice as long as wide.
    choice = LayoutChoice(10, Size.square(F(6)), border=F(3))
    assert (5, 2) in shapes(choice)
    assert choice.layout(5, 2).stretch == 2
    narrower = LayoutChoice(10, Size.square(F(6)), border=F("2.5"))
    assert (5, 2) not in shapes(narrower)


def test_a_size_is_met_exactly_over_or_short_each_way() -> None:
    wanted = size(48, 60)
    assert fit(size(48, 60), wanted).reason == "covers: exact across, exact down"
    assert fit(size("48.5", 61), wanted).reason == "covers: 1/2 in over across, 1 in over down"
    assert (
        fit(size("47.5", 59), wanted).reason == "falls short: 1/2 in short across, 1 in short down"
    )
    assert fit(size(47, 61), wanted).off == 2


@pytest.mark.parametrize("have", [pytest.param(54, id="Q056")])
def test_nearest_to_a_wanted_size_first(have: int) -> None:
    # 54 blocks, really 10 in, wanted 48 x 72: 5 across by 7 down makes 50 x 70, 19 too many;
    # all of them as 6 by 9 make 60 x 90.
    choice = LayoutChoice(have, Size.square(F(10)), wanted=size(48, 72))
    first = layouts(choice)[0]
    assert (first.columns, first.rows, first.spare) == (5, 7, 19)
    assert first.size == size(50, 70)
    assert choice.layout(9, 6).size == size(60, 90)
    assert first.fit is not None
    assert first.fit.reason == "falls short: 2 in over across, 2 in short down"


def test_an_even_miss_is_settled_by_covering() -> None:
    choice = LayoutChoice(100, Size.square(F(10)), wanted=size(55, 60))
    first, second = layouts(choice)[:2]
    assert first.fit is not None
    assert second.fit is not None
    assert first.fit.off == second.fit.off == 5
    assert (first.fit.covers, second.fit.covers) == (True, False)


@pytest.mark.parametrize("published", [pytest.param((11, 15, 165), id="Q073")])
def test_a_chart_that_rounds_one_bed_down(published: tuple[int, int, int]) -> None:
    # the-littlest-thistle.com 2018: 70 x 91 in of 6 in blocks "is 165".
    choice = LayoutChoice(165, Size.square(F(6)), wanted=size(70, 91))
    found = around(choice)
    covering, within = found.covering, found.within
    assert (covering.columns, covering.rows, covering.units) == (12, 16, 192)
    assert covering.size == size(72, 96)
    assert covering.fit is not None
    assert covering.fit.covers
    assert covering.short == 27
    assert within is not None
    assert (within.columns, within.rows, within.units) == published
    assert within.fit is not None
    assert within.fit.across == -4
    assert within.fit.down == -1
    assert within.fit.reason == "falls short: 4 in short across, 1 in short down"


@pytest.mark.parametrize(
    ("rows", "columns", "short", "width", "length"),
    [
        pytest.param(6, 6, 1, "45", "45", id="Q072-one-more"),
        pytest.param(7, 6, 7, "45", "105/2", id="Q072-seven-more"),
    ],
)
def test_what_a_neighbour_takes(
    rows: int, columns: int, short: int, width: str, length: str
) -> None:
    # grammilousgarden.blogspot.com 2016: 35 blocks, 5 across by 7 down at 7 1/2 in.
    choice = LayoutChoice(35, SEVEN_HALF)
    assert choice.layout(7, 5).size == size("75/2", "105/2")
    by_shape = {(one.rows, one.columns): one for one in neighbours(choice, 7, 5)}
    assert by_shape[rows, columns].short == short
    assert by_shape[rows, columns].size == size(width, length)


def test_neighbours_stay_at_one_row_or_more_and_leave_out_the_layout_itself() -> None:
    found = neighbours(LayoutChoice(10, SEVEN_HALF), 1, 5)
    assert [(one.rows, one.columns) for one in found] == [(1, 4), (1, 6), (2, 4), (2, 5), (2, 6)]
    found = neighbours(LayoutChoice(10, SEVEN_HALF), 5, 1)
    assert [(one.rows, one.columns) for one in found] == [(4, 1), (6, 1), (4, 2), (5, 2), (6, 2)]


@pytest.mark.parametrize("rows", [pytest.param(7, id="Q071")])
def test_alike_corners_need_both_odd_and_steps_of_two(rows: int) -> None:
    # francesquilts.com 2024, Which size is best.
    choice = LayoutChoice(100, SEVEN_HALF)
    assert corners_alike(rows, 5)
    assert not corners_alike(rows + 1, 5)
    assert not corners_alike(rows, 6)
    for one in layouts(choice, alike=True):
        assert one.rows % 2 == one.columns % 2 == 1
    for one in neighbours(choice, rows, 5, alike=True):
        assert one.corners_alike


@given(st.integers(1, 12), st.integers(1, 12))
def test_alternating_corners_by_drawing(rows: int, columns: int) -> None:
    def unit(row: int, column: int) -> int:
        return (row + column) % 2

    four = {unit(r, c) for r in (0, rows - 1) for c in (0, columns - 1)}
    # A single row or column of odd length is alike too, and so the rule holds there as well.
    assert corners_alike(rows, columns) == (len(four) == 1)


@pytest.mark.parametrize(
    ("units", "expected"),
    [
        # knitnkwilt.wordpress.com 2019: "160 factors 10x16, 8x20".
        pytest.param(160, {(10, 16), (8, 20)}, id="Q104"),
        # laurainstitches.typepad.com: layouts of 80 units.
        pytest.param(80, {(2, 40), (4, 20), (5, 16), (8, 10)}, id="Q038-80"),
        pytest.param(84, {(2, 42), (3, 28), (4, 21), (6, 14), (7, 12)}, id="Q038-84"),
        # mavanellstudio.com, Let's talk charm packs.
        pytest.param(140, {(10, 14)}, id="Q036"),
    ],
)
def test_layouts_that_take_every_unit(units: int, expected: set[tuple[int, int]]) -> None:
    found = set(factor_layouts(units))
    assert expected <= found
    if units in (80, 84):
        assert found == expected


@pytest.mark.parametrize("have", [pytest.param(84, id="Q038-nine-by-nine")])
def test_nine_by_nine_with_three_over(have: int) -> None:
    layout = LayoutChoice(have, Size.square(F(6))).layout(9, 9)
    assert (layout.spare, layout.short, layout.size) == (3, 0, size(54, 54))


@pytest.mark.parametrize("have", [pytest.param(80, id="Q038-size")])
def test_eighty_units_trimmed_to_six_and_a_half(have: int) -> None:
    assert LayoutChoice(have, Size.square(F(6))).layout(10, 8).size == size(48, 60)


@pytest.mark.parametrize("have", [pytest.param(20, id="Q039-size")])
def test_twenty_units_trimmed_to_six_and_a_quarter(have: int) -> None:
    # nationalquilterscircle.com, Measuring precuts: 4 x 5 finishing at 5 3/4 in each.
    assert LayoutChoice(have, Size.square(F(23, 4))).layout(5, 4).size == size("23", "115/4")


@given(st.integers(1, 3000))
def test_factor_layouts_are_all_the_factors(units: int) -> None:
    found = factor_layouts(units)
    assert all(a * b == units and 2 <= a <= b for a, b in found)
    assert len(found) == sum(1 for a in range(2, isqrt(units) + 1) if units % a == 0)


@pytest.mark.parametrize("old", [pytest.param((6, 5), id="Q069")])
def test_twice_as_wide_and_long_takes_four_times_the_squares(old: tuple[int, int]) -> None:
    # handmadehappy.wordpress.com 2011: 30 squares of 7 1/2 in make 43 x 51 with the border.
    border = (F(43) - 5 * F(15, 2)) / 2
    choice = LayoutChoice(30, SEVEN_HALF, border, wanted=size(77, 92))
    covering = around(choice).covering
    assert (covering.columns, covering.rows) == (10, 12)
    found = grow(choice, old, (covering.rows, covering.columns))
    assert (found.units, found.more, found.times) == (120, 90, F(4))
    assert "4.00 times as many" in found.reason
    sixty = LayoutChoice(60, SEVEN_HALF).layout(10, 6)
    assert sixty.size == size(45, 75)
    # Doubling the border with the rest: 75 + 11 by 90 + 12 is her 86 x 102 (the two borders of
    # the small quilt differ, 5 1/2 and 6 in in all).
    assert Size(10 * F(15, 2) + 11, 12 * F(15, 2) + 12) == size(86, 102)


@pytest.mark.parametrize("new", [pytest.param((4, 4), id="Q079")])
def test_nine_blocks_grown_to_sixteen(new: tuple[int, int]) -> None:
    # grayedgerider.blogspot.com 2017.
    found = grow(LayoutChoice(9, Size.square(F(12))), (3, 3), new)
    assert found.more == 7
    assert float(found.times) == pytest.approx(1.78, abs=0.005)
    assert found.layout.short == 7


@pytest.mark.parametrize("have", [pytest.param(23, id="Q024-fillers")])
def test_twenty_three_old_blocks_in_five_by_five(have: int) -> None:
    # quiltedforyoucolorado.blogspot.com 2010.
    assert LayoutChoice(have, Size.square(F(12))).layout(5, 5).short == 2


@pytest.mark.parametrize("made", [pytest.param(56, id="Q065")])
def test_a_row_missing_from_the_plan(made: int) -> None:
    assert LayoutChoice(made, SEVEN_HALF).layout(8, 8).short == 8


@pytest.mark.parametrize("width", [pytest.param(80, id="Q081")])
def test_width_and_length_read_the_wrong_way_round_shows(width: int) -> None:
    # dandltravel.blogspot.com 2020: 80 wide by 88 long against 88 by 80. The answer is makers'
    # practice, but the slip can be seen.
    found = fit(size(88, 80), size(width, 88))
    assert not found.covers
    assert found.covers_turned
    assert found.reason.endswith("turned on its side it covers")


def test_reach_keeps_out_what_is_over_and_lets_in_what_can_still_be_made() -> None:
    choice = LayoutChoice(35, SEVEN_HALF)
    assert all(one.spare <= 3 for one in layouts(choice, Reach(spare=3)))
    with_more = layouts(choice, Reach(spare=0, short=1))
    assert {(one.rows, one.columns) for one in with_more} == {(7, 5), (5, 7), (6, 6)}


def test_a_layout_in_centimetres() -> None:
    wanted = Size(from_cm(F(75)), from_cm(F(95)))
    choice = LayoutChoice(30, Size.square(from_cm(F(15))), wanted=wanted, shown_in=Unit.CM)
    meets = choice.layout(6, 5).fit
    assert meets is not None
    assert meets.reason == "falls short: exact across, 5 cm short down"


def test_borders_count_into_the_shape_and_the_size() -> None:
    choice = LayoutChoice(6, Size(F(6), F(4)), border=F(3))
    layout = choice.layout(3, 2)
    assert layout.size == size(18, 18)
    assert layout.shape is Shape.SQUARE


@given(
    st.integers(1, 200),
    st.fractions(1, 12, max_denominator=8),
    st.fractions(10, 120, max_denominator=4),
    st.fractions(10, 120, max_denominator=4),
)
def test_what_covers_and_what_lies_within_bracket_the_size(
    have: int, unit: F, width: F, length: F
) -> None:
    wanted = Size(width, length)
    found = around(LayoutChoice(have, Size.square(unit), wanted=wanted))
    assert found.covering.size.covers(wanted)
    if found.within is not None:
        assert wanted.covers(found.within.size)
        assert found.covering.columns - found.within.columns <= 1
        assert found.covering.rows - found.within.rows <= 1


def test_a_size_the_units_and_their_border_come_to_just_so_lies_between_nothing() -> None:
    # 7 by 9 of 6 in and 4 in each side: 42 + 8 by 54 + 8.
    found = around(LayoutChoice(63, Size.square(F(6)), border=F(4), wanted=size(50, 62)))
    assert found.within == found.covering
    assert (found.covering.columns, found.covering.rows) == (7, 9)
    one = around(LayoutChoice(1, Size.square(F(6)), border=F(4), wanted=size(14, 14)))
    assert one.within == one.covering
    assert one.covering.units == 1


def test_a_pattern_may_come_to_as_many_units_or_to_fewer() -> None:
    choice = LayoutChoice(12, SEVEN_HALF)
    assert "0 more than 12: 1.00 times" in grow(choice, (2, 6), (3, 4)).reason
    assert "6 fewer than 12: 0.50 times" in grow(choice, (2, 6), (2, 3)).reason


@pytest.mark.parametrize("call", [(0, 3), (3, 0), (-1, 2)])
def test_no_rows_or_columns_is_refused(call: tuple[int, int]) -> None:
    with pytest.raises(NumbersFault, match="at least 1"):
        LayoutChoice(10, SEVEN_HALF).layout(*call)


def test_when_not_one_unit_fits_nothing_lies_within() -> None:
    choice = LayoutChoice(4, Size.square(F(20)), wanted=size(12, 12))
    assert around(choice).within is None
    assert around(choice).covering.units == 1
