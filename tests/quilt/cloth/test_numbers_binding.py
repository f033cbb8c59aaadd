"""Binding: strips counted whole, published rows that are right and wrong, bias, remnants."""

from fractions import Fraction as F
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.lengths import YARD, Unit, cloth_length, from_cm
from sewalong.quilt.cloth.bias_binding import (
    bias_binding,
    bias_from,
    bias_tube,
    side_by_area,
)
from sewalong.quilt.cloth.binding import binding, binding_from_remnant, binding_length
from sewalong.quilt.cloth.strips import Join
from sewalong.quilt.cloth.to_cut import to_cut
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.size import Size


def size(width: int | str, length: int | str) -> Size:
    return Size(F(width), F(length))


# (source, width, length, allowance, usable, strip, inches, strips, cloth, bought)
# Joins are not counted in these sources.
PUBLISHED = [
    ("Castilleja Cotton 2013", "50", "60", 0, 38, "2.5", "220", 6, "15", "1/2 yd"),
    ("Sylvia's Quilt Depot", "46", "46", 0, 40, "2.5", "184", 5, "12.5", "3/8 yd"),
    ("Quilts by Jen", "63.5", "42.75", 0, 40, "2.25", "212.5", 6, "13.5", "3/8 yd"),
    ("Always in Stitches 2009", "40", "50", 0, 40, "2.5", "180", 5, "12.5", "3/8 yd"),
    ("M. Curry 2019", "54", "60", 10, 42, "2.5", "238", 6, "15", "1/2 yd"),
]


@pytest.mark.parametrize(
    (
        "source",
        "width",
        "length",
        "allowance",
        "usable",
        "strip",
        "inches",
        "strips",
        "cloth",
        "bought",
    ),
    PUBLISHED,
)
def test_published_bindings(
    source: str,
    width: str,
    length: str,
    allowance: int,
    usable: int,
    strip: str,
    inches: str,
    strips: int,
    cloth: str,
    bought: str,
) -> None:
    found = binding(
        size(width, length),
        strip=F(strip),
        allowance=F(allowance),
        usable=F(usable),
        join=Join.NONE,
    )
    assert found.length == F(inches), source
    assert found.strips.count == strips, source
    assert found.strips.cloth == F(cloth), source
    assert cloth_length(found.strips.cloth) == bought


def test_eleven_strips_are_not_26_and_a_half_inches() -> None:
    # quiltingboard.com t189575: 96 x 110, 12 in allowance, "424; 10.6 -> 11; 26.5 in", buy 3/4 yd.
    found = binding(size(96, 110), allowance=F(12), join=Join.NONE)
    assert (found.length, found.strips.count) == (F(424), 11)
    assert found.strips.cloth == F("27.5") != F("26.5")
    assert F("0.75") * YARD == 27
    assert found.strips.cloth - 27 == F(1, 2)
    assert cloth_length(found.strips.cloth) == "7/8 yd"
    assert found.reason.startswith(
        "412 in around and 12 in allowance; 11 strips: 424 in at 40 in usable, 10.6"
    )


def test_strips_are_not_multiplied_before_they_are_whole() -> None:
    # cottonpatchfabrics.com: 40 x 50, 180 / 42 = 4.29 x 3.5 = 15 in.
    found = binding(size(40, 50), strip=F("3.5"), allowance=F(0), usable=F(42), join=Join.NONE)
    assert found.strips.count == 5
    assert found.strips.cloth == F("17.5")
    assert found.strips.cloth > 15


# Park Bench Quilt Shop FAQ, yards by bed size. Strip width and allowance are not stated there:
# 2 1/2 in strips at 40 in usable and 12 in allowance are taken here. All of these suffice.
PARK_BENCH = [
    (45, 60, "0.5", 6),
    (72, 90, "0.75", 9),
    (81, 96, "1", 10),
    (90, 108, "1", 11),
    (120, 120, "1.25", 13),
]


@pytest.mark.parametrize(("width", "length", "yards", "strips"), PARK_BENCH)
def test_a_printed_table_that_suffices(width: int, length: int, yards: str, strips: int) -> None:
    found = binding(size(width, length), allowance=F(12), join=Join.NONE)
    assert found.strips.count == strips
    assert found.strips.cloth <= F(yards) * YARD


@pytest.mark.parametrize(
    ("allowance", "source"),
    [
        (0, "Lucky Quilt Co., 2(W+L)/42 up, x2.5, /36"),
        (24, "Quick Tips Sewing 2011, 2(W+L)+24, /40 up, x2.5"),
        (20, "Quiltingboard t189575, area form"),
    ],
)
def test_published_allowances_are_a_setting(allowance: int, source: str) -> None:
    assert binding_length(size(50, 60), F(allowance)) == 220 + allowance, source


def test_twelve_inches_are_added_unless_told_otherwise() -> None:
    # quiltingboard.com t189575: 96 x 110 takes 412 in and 12.
    assert binding_length(size(96, 110)) == 424


def test_the_area_form() -> None:
    # quiltingboard.com t189575: ((96+96+110+110+20)*2.5)/(36*42) = 0.714.
    need = binding_length(size(96, 110), F(20))
    assert float(need * F(5, 2) / (36 * 42)) == pytest.approx(0.714, abs=5e-4)
    assert side_by_area(need, F(5, 2)) == pytest.approx(sqrt(432 * 2.5))


def test_bias_for_a_square_quilt() -> None:
    # quiltingboard.com 8276918: 64 x 64 bias: 256 + 16 = 272.
    need = binding_length(size(64, 64), F(16))
    assert need == 272
    found = bias_binding(need, F(5, 2))
    assert found.by_area == pytest.approx(26.08, abs=0.005)
    assert found.gives >= 272
    # The area rule's 27 in square gives 7 whole loops, 262 in: short.
    loops, gives = bias_from(F(27), F(5, 2))
    assert loops == 7
    assert gives == pytest.approx(262.3, abs=0.05)
    assert found.side == 28


def test_a_square_no_wider_than_its_seams_gives_no_bias() -> None:
    # Two allowances of 1/4 in leave 1/2 in of 1 in, too little for a strip at a slant; of 1 1/2 in
    # they leave 1 in, for one loop.
    assert bias_from(F(1), F(1, 2)) == (0, 0.0)
    loops, gives = bias_from(F(3, 2), F(1, 2))
    assert loops == 1
    assert gives == pytest.approx(sqrt(2))
    assert bias_binding(F(1), F(1, 2)).side == 2
    # At 1/8 in half an inch is left: one loop of 0.707 in.
    assert bias_binding(F("0.7"), F(1, 2), seam=F(1, 8)).side == 1


@pytest.mark.parametrize("across", ["0.25", "0.5"])
def test_a_long_piece_no_wider_than_its_seams_gives_no_bias(across: str) -> None:
    # 9 1/2 in of its length would hold two strips of 2 1/2 in, but two allowances of 1/4 in leave
    # nothing of its width to go round.
    assert bias_tube(size(across, 10), F("2.5")) == (0, 0.0)


def test_a_long_piece_just_wider_than_its_seams_gives_short_loops() -> None:
    # 9 1/2 in hold two steps of 2 1/2 * root 2 = 3.54 in; a loop is 1/2 * root 2 = 0.71 in.
    loops, gives = bias_tube(size(1, 10), F("2.5"))
    assert loops == 2
    assert gives == pytest.approx(2 * 0.5 * sqrt(2))


def test_in_centimetres_the_square_for_bias_is_a_whole_number_of_them() -> None:
    # Two allowances take 1.5 cm. Of 43 cm 41.5 are left, for 4 steps of 6 * root 2 = 8.49 cm:
    # 4 * 41.5 * root 2 = 234.8 cm, short. Of 44 cm 42.5 are left, for 5: 300.5 cm.
    assert 4 * 41.5 * sqrt(2) < 300 < 5 * 42.5 * sqrt(2)
    found = bias_binding(from_cm(F(300)), from_cm(F(6)), seam=from_cm(F("0.75")), unit=Unit.CM)
    assert found.side == from_cm(F(44))
    assert found.reason == (
        "a square of 44 cm gives 5 loops of 6 cm, 300.5 cm of 300 cm needed "
        "(by area alone 42.43 cm)"
    )


@pytest.mark.parametrize("short", [pytest.param(2, id="Q099")])
def test_ten_inches_and_more_over_the_way_round(short: int) -> None:
    # quiltmaker.com 2013: binding cut to the way round is two inches short once turned and joined.
    way_round = size(50, 60).around
    assert binding_length(size(50, 60), F(10)) - way_round == 10 > short
    assert binding(size(50, 60), allowance=F(10)).strips.joined >= way_round + 10


def test_diagonal_joins_are_counted_unless_left_out() -> None:
    found = binding(size(96, 110), allowance=F(16))
    left_out = binding(size(96, 110), allowance=F(16), join=Join.NONE)
    assert (found.strips.count, left_out.strips.count) == (12, 11)


def test_a_remnant_is_cut_the_way_that_gives_more() -> None:
    found = binding_from_remnant(size(20, 12), F(90))
    # Four strips of 20 in: 80 less three joins; eight of 12 in: 96 less seven.
    assert (found.strips, found.each, found.gives) == (8, F(12), F("78.5"))
    assert not found.enough
    assert found.reason == "8 strips of 12 in join to 78 1/2 in: 11 1/2 in short"
    assert binding_from_remnant(size(44, 10), F(160)).enough


def test_a_remnant_may_give_just_what_is_needed() -> None:
    found = binding_from_remnant(size(40, "2.5"), F(40))
    assert (found.over, found.enough) == (F(0), True)
    assert found.reason == "1 strip of 40 in join to 40 in: 0 in over"
    found = binding_from_remnant(size(40, "2.5"), F("40.5"))
    assert (found.over, found.enough) == (F("-0.5"), False)
    assert found.reason.endswith(": 1/2 in short")


def test_strips_no_longer_than_their_join_are_not_joined() -> None:
    # Two inches joined on the diagonal of a 2 1/2 in strip would only shorten the binding.
    found = binding_from_remnant(size(2, 30), F(10))
    assert (found.strips, found.each, found.gives) == (1, F(2), F(2))
    # A straight join takes 1/2 in, all there is.
    found = binding_from_remnant(size("0.5", 30), F(10), join=Join.STRAIGHT)
    assert (found.strips, found.gives) == (1, F("0.5"))
    found = binding_from_remnant(size("0.75", 30), F(10), join=Join.STRAIGHT)
    assert (found.strips, found.gives) == (12, 12 * F("0.75") - 11 * F("0.5"))


def test_a_remnant_too_small_for_a_strip_is_refused() -> None:
    with pytest.raises(NumbersFault, match="Not one strip"):
        binding_from_remnant(size(2, 2), F(10))


@given(
    st.fractions(1, 60, max_denominator=8),
    st.fractions(1, 60, max_denominator=8),
    st.fractions(1, 4, max_denominator=4),
)
def test_a_remnant_never_gives_more_than_its_area(width: F, length: F, strip: F) -> None:
    strip = to_cut(strip).length
    if max(width, length) < strip:
        return
    found = binding_from_remnant(Size(width, length), F(40), strip=strip)
    assert found.gives * strip <= width * length
    assert found.enough == (found.gives >= 40)


@given(st.integers(20, 600), st.fractions(1, 4, max_denominator=8))
def test_bias_never_gives_more_than_its_area_and_is_the_smallest_square(
    need: int, strip: F
) -> None:
    found = bias_binding(F(need), strip)
    assert found.gives >= need
    assert found.gives * float(strip) <= float(found.side) ** 2 + 1e-6
    assert bias_from(found.side - 1, to_cut(strip).length)[1] < need if found.side > 1 else True
