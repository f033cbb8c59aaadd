"""From a size to the blocks, against laying blocks until it is covered."""

from __future__ import annotations

from fractions import Fraction as F
from math import sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Point, box

from sewalong.quilt.cloth.beds import bed, quilt_over
from sewalong.quilt.layouts.blocks_for_size import Sash, blocks_for_size
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.size import Size

WANTED = st.builds(Size, st.integers(30, 110).map(F), st.integers(30, 110).map(F))
BLOCKS = st.integers(12, 60).map(lambda n: F(n, 4))
BORDERS = st.integers(0, 24).map(lambda n: F(n, 4))


def least(length_of: list[float], wanted: float) -> int:
    """How many of them, one by one, until the length is reached."""
    return next(n for n, length in enumerate(length_of, start=1) if length >= wanted - 1e-9)


def test_a_queen_bed_with_a_13_in_drop_from_6_in_blocks() -> None:
    wanted = quilt_over(bed("queen").size, drop=F(13))
    assert wanted == Size(F(86), F(93))
    block = Size.square(F(6))
    straight = blocks_for_size(wanted, block).covering
    assert (straight.rows, straight.columns, straight.blocks) == (16, 15, 240)
    sashed = blocks_for_size(wanted, block, sash=Sash(F(3, 2))).covering
    assert (sashed.rows, sashed.columns, sashed.blocks) == (13, 12, 156)
    assert sashed.size == Size(F("91.5"), F(99))
    pointed = blocks_for_size(wanted, block, on_the_point=True).covering
    # 93 / (6 * root 2) = 10.96 rows and 86 / 8.485 = 10.1 columns, and 10 * 10 between them.
    assert (pointed.rows, pointed.columns, pointed.blocks) == (11, 11, 221)


@given(WANTED, BLOCKS, BORDERS)
def test_straight_blocks_just_cover_and_just_lie_within(wanted: Size, side: F, border: F) -> None:
    found = blocks_for_size(wanted, Size.square(side), border=border)
    reach = [float(n * side + 2 * border) for n in range(1, 60)]
    assert found.covering.columns == least(reach, float(wanted.width))
    assert found.covering.rows == least(reach, float(wanted.length))
    assert found.covering.fit.covers
    columns = sum(1 for length in reach if length <= wanted.width)
    rows = sum(1 for length in reach if length <= wanted.length)
    if found.within is None:
        assert min(columns, rows) == 0
    else:
        assert (found.within.rows, found.within.columns) == (rows, columns)
        assert wanted.covers(found.within.size)


@given(WANTED, BLOCKS, BORDERS, st.integers(4, 24).map(lambda n: F(n, 8)), st.booleans())
def test_sashed_blocks_just_cover(wanted: Size, side: F, border: F, width: F, outer: bool) -> None:
    found = blocks_for_size(wanted, Size.square(side), sash=Sash(width, outer), border=border)
    more = 1 if outer else -1
    reach = [float(n * side + (n + more) * width + 2 * border) for n in range(1, 60)]
    assert found.covering.columns == least(reach, float(wanted.width))
    assert found.covering.rows == least(reach, float(wanted.length))
    assert found.covering.blocks == found.covering.rows * found.covering.columns
    if found.within is not None:
        assert wanted.covers(found.within.size)


@settings(max_examples=40)
@given(WANTED, BLOCKS)
def test_blocks_on_point_are_those_whole_ones_shapely_finds_in_the_top(
    wanted: Size, side: F
) -> None:
    found = blocks_for_size(wanted, Size.square(side), on_the_point=True)
    step = float(side) * sqrt(2)
    top = found.covering
    assert top.columns == least([n * step for n in range(1, 60)], float(wanted.width))
    assert top.rows == least([n * step for n in range(1, 60)], float(wanted.length))
    cloth = box(0, 0, float(top.size.width), float(top.size.length)).buffer(1e-4)
    # A block on point is the ball of radius half a diagonal in the taxicab metric.
    whole = 0
    for down in range(2 * top.rows + 1):
        for across in range(2 * top.columns + 1):
            if (down + across) % 2 == 0:
                middle = Point(across * step / 2, down * step / 2)
                block = middle.buffer(step / 2, quad_segs=1)
                whole += cloth.covers(block)
    assert top.blocks == whole


def test_a_border_that_is_the_whole_quilt_leaves_no_blocks() -> None:
    with pytest.raises(NumbersFault, match="borders alone"):
        blocks_for_size(Size(F(20), F(40)), Size.square(F(6)), border=F(10))


def test_a_long_block_is_not_set_on_point() -> None:
    with pytest.raises(NumbersFault, match="square blocks"):
        blocks_for_size(Size(F(20), F(40)), Size(F(6), F(7)), on_the_point=True)


def test_blocks_larger_than_the_quilt_cover_it_with_one_and_none_lies_within() -> None:
    found = blocks_for_size(Size(F(10), F(10)), Size.square(F(12)))
    assert (found.covering.blocks, found.within) == (1, None)


@pytest.mark.parametrize(
    ("wanted", "covering", "within"),
    [
        pytest.param(Size(F(40), F(60)), 1080, 1040, id="N026-40-by-60"),
        pytest.param(Size(F(50), F(70)), 1598, 1518, id="N026-50-by-70"),
    ],
)
def test_a_published_count_of_1_1_2_in_squares_is_short(
    wanted: Size, covering: int, within: int
) -> None:
    # quiltinggallery.com/postage-stamp-quilt: 1,040 and 1,380. The first lies just within the size; the second is 46 x 30.
    found = blocks_for_size(wanted, Size.square(F(3, 2)))
    assert found.covering.blocks == covering
    assert found.within is not None
    assert found.within.blocks == within


def test_no_block_lies_within_a_quilt_too_narrow_for_one_or_for_its_sashes() -> None:
    assert blocks_for_size(Size(F(10), F(60)), Size.square(F(12))).within is None
    assert blocks_for_size(Size(F(60), F(10)), Size.square(F(12))).within is None
    sash = Sash(F(3))
    assert blocks_for_size(Size.square(F(1)), Size.square(F(2)), sash=sash).within is None
