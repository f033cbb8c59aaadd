"""Backs: margin each side, which way the seams run, how many panels really reach."""

from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.lengths import YARD, cloth_length
from sewalong.quilt.cloth.backing import Seams, backing, backing_from, panels_reach
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.size import Size

NONE = F(0)


def size(width: int, length: int) -> Size:
    return Size(F(width), F(length))


def test_four_inches_each_side() -> None:
    # lovelyfrankensteindesigns.blogspot.com 2011: 55 x 70 and 4 in each side is 63 x 78.
    assert backing(size(55, 70)).size == size(63, 78)


@pytest.mark.parametrize("more", [pytest.param(8, id="Q096")])
def test_the_margin_stated_is_eight_inches_more_in_each_direction(more: int) -> None:
    # anitaestes.blogspot.com 2010: on a frame, 8 in more in both; thick batting takes more still.
    assert backing(size(60, 80)).size == size(60 + more, 80 + more)


def test_two_lengths_the_cheaper_way() -> None:
    # quiltingboard.com 7400852 (2015): back of 65 x 78: 2 x 65 = 130 in, 3 5/8 yd; 2 x 78 = 156 in,
    # "4 1/3 yd".
    found = backing(size(65, 78), margin=NONE)
    assert found.best.seams is Seams.CROSSWISE
    assert (found.best.cloth, found.other.cloth) == (F(130), F(156))
    assert cloth_length(found.best.cloth) == "3 5/8 yd"
    assert float(found.other.cloth / YARD) == pytest.approx(4.333, abs=1e-3)


@pytest.mark.parametrize("width", [pytest.param(51, id="Q093")])
def test_four_inches_all_round_is_eight_each_way(width: int) -> None:
    found = backing(size(width, 61))
    assert found.size == size(59, 69)
    assert (found.best.seams, found.best.cloth) == (Seams.CROSSWISE, F(118))
    assert found.other.cloth == 138
    assert float(found.best.cloth / YARD) == pytest.approx(3.28, abs=0.005)
    assert (cloth_length(found.best.cloth), cloth_length(found.other.cloth)) == (
        "3 3/8 yd",
        "3 7/8 yd",
    )


@pytest.mark.parametrize("width", [pytest.param(42, id="Q094")])
def test_the_seam_direction_saves_more_than_a_yard(width: int) -> None:
    # quiltsocial.com: 42 x 64 top, back at least 48 x 72, 40 in cloth. The margin there is 3 in
    # across and 4 down, so the back itself is given.
    found = backing(size(width + 6, 64 + 8), margin=NONE)
    assert (found.best.cloth, found.other.cloth) == (F(96), F(144))
    assert found.best.seams is Seams.CROSSWISE
    assert float(found.saves / YARD) == pytest.approx(1.33, abs=0.005)
    assert found.reason == (
        "48 × 72 in with 0 in each side; seams across the width: 2 panels of 48 in reach 79 in "
        "of the 72 in needed, so many down to 36 1/2 in usable; saves 48 in of cloth"
    )


# Park Bench Quilt Shop FAQ, backing by bed size; usable width not stated, 42 in taken here.
# (bed, width, length, printed yards, enough with 4 in each side, inches needed so)
PARK_BENCH = [
    ("crib", 45, 60, "1.5", False, 106),
    ("twin", 72, 90, "5.5", True, 196),
    ("double", 81, 96, "6", False, 267),
    ("queen", 90, 108, "9", True, 294),
    ("king", 120, 120, "10", False, 512),
]


@pytest.mark.parametrize(("name", "width", "length", "yards", "enough", "need"), PARK_BENCH)
def test_a_printed_table_of_backs(
    name: str, width: int, length: int, yards: str, enough: bool, need: int
) -> None:
    found = backing_from(F(yards) * YARD, size(width, length), usable=F(42))
    assert found.enough is enough, name
    assert found.need.cloth == need, name


def test_a_printed_crib_back_cannot_cover_even_with_no_margin() -> None:
    found = backing_from(F("1.5") * YARD, size(45, 60), margin=NONE, usable=F(42))
    assert not found.enough
    assert found.short == 90 - 54
    assert found.reason == (
        "54 in in hand, 36 in short: 2 panels of 45 in reach 83 in of the 60 in needed, "
        "so many down to 30 1/2 in usable"
    )


def test_a_printed_king_back_reaches_only_without_margin_and_in_wider_cloth() -> None:
    ten_yards = F(10) * YARD
    assert backing_from(ten_yards, size(120, 120), margin=NONE, usable=F(42)).enough
    # Three panels of 40 in are 120 in before they are sewn together.
    assert panels_reach(3, F(40)) == 118
    assert not backing_from(ten_yards, size(120, 120), margin=NONE, usable=F(40)).enough
    assert backing(size(120, 120)).best.panels == 4


def test_two_panels_of_forty_do_not_reach_eighty() -> None:
    # Seams take an inch: 79 in. A count that forgets them stops at two.
    assert panels_reach(2, F(40)) == 79
    assert backing(size(80, 98), margin=NONE).other.panels == 3
    assert backing(size(79, 98), margin=NONE).best.panels == 2


# Piece-ful Living 2011, Figuring out yardage for quilt backings (read as an excerpt): one length
# for the first five, two for the last two; usable width 42. The margin is not stated there.
PIECEFUL = [
    (28, 28, "1", 1),
    (28, 40, "1", 1),
    (34, 44, "1.25", 1),
    (40, 52, "1.5", 1),
    (42, 56, "1.75", 1),
    (48, 54, "3", 2),
    (48, 60, "3", 2),
]


@pytest.mark.parametrize(("width", "length", "yards", "lengths"), PIECEFUL)
def test_a_table_that_covers_tops_without_a_margin(
    width: int, length: int, yards: str, lengths: int
) -> None:
    found = backing(size(width, length), margin=NONE, usable=F(42))
    # 28 x 40 on one yard lies across the cloth: its 40 in within the 42.
    assert found.best.panels == lengths
    assert found.best.cloth <= F(yards) * YARD


def test_saint_croix_prints_no_sizes_so_only_that_a_size_in_reach_exists() -> None:
    # stcroixquilters.com: twin 5 1/4 yd with 2 to 3 in each side at 40 to 42 in usable. A 72 x 90
    # top with 2 in each side at 42 in takes 5.22 yd.
    found = backing(size(72, 90), margin=F(2), usable=F(42))
    assert found.best.cloth == 188
    assert backing_from(F("5.25") * YARD, size(72, 90), margin=F(2), usable=F(42)).enough
    assert not backing_from(F("5.25") * YARD, size(72, 90), margin=F(3), usable=F(42)).enough


def test_of_two_ways_that_take_as_much_the_one_with_fewer_panels_is_better() -> None:
    # Along 48 in one panel of 40 lies across 24: 48 in. The other way two panels of 24 do.
    upright = backing(size(24, 48), margin=NONE)
    assert (upright.best.seams, upright.best.panels) == (Seams.LENGTHWISE, 1)
    assert (upright.best.cloth, upright.other.cloth) == (F(48), F(48))
    assert upright.reason.endswith(
        "1 panel of 48 in reach 40 in of the 24 in needed, so many down to 24 in usable; no more cloth than the other way"
    )
    wide = backing(size(48, 24), margin=NONE)
    assert (wide.best.seams, wide.best.panels) == (Seams.CROSSWISE, 1)


def test_for_a_square_the_seams_run_along_the_length() -> None:
    assert backing(size(60, 60)).best.seams is Seams.LENGTHWISE


def test_a_back_narrower_than_a_seam_is_one_panel() -> None:
    found = backing(Size(F(1, 2), F(1, 2)), margin=NONE).best
    assert (found.panels, found.reach) == (1, F(40))


def test_wide_cloth_needs_no_seam() -> None:
    found = backing(size(84, 92), usable=F(108))
    assert (found.best.panels, found.best.cloth) == (1, F(92))
    assert found.best.seams is Seams.CROSSWISE


@given(
    st.fractions(20, 120, max_denominator=4),
    st.fractions(20, 120, max_denominator=4),
    st.fractions(36, 60, max_denominator=2),
)
def test_panels_reach_and_one_fewer_does_not(width: F, length: F, usable: F) -> None:
    found = backing(Size(width, length), usable=usable)
    for way in (found.best, found.other):
        needed = found.size.width if way.seams is Seams.LENGTHWISE else found.size.length
        assert way.reach >= needed
        assert way.over == way.reach - needed
        if way.panels > 1:
            assert panels_reach(way.panels - 1, usable) < needed
        assert way.cloth * usable >= found.size.width * found.size.length
    assert found.best.cloth <= found.other.cloth
    assert backing_from(found.best.cloth, Size(width, length), usable=usable).enough


def test_impossible_backs_are_refused() -> None:
    with pytest.raises(NumbersFault, match="margin"):
        backing(size(40, 40), margin=F(-1))
    with pytest.raises(NumbersFault, match="no wider than its own seam"):
        backing(size(40, 40), usable=F(1))
