"""Batting: the smallest listed size that covers, the largest top a batting allows."""

from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.quilt.cloth.batting import BATTINGS, largest_top, smallest_batting
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.size import Size


def size(width: int | str, length: int | str) -> Size:
    return Size(F(width), F(length))


# (batting, top). carrieactually.com, Quilty math: Quilters Dream Cotton sizes and "top + 8 in both
# ways".
ALLOWED = [
    ((46, 36), (38, 28)),
    ((46, 60), (38, 52)),
    ((60, 60), (52, 52)),
    ((93, 72), (85, 64)),
    ((96, 93), (88, 85)),
    ((108, 93), (100, 85)),
    ((93, 121), (85, 113)),
    ((122, 122), (114, 114)),
]


@pytest.mark.parametrize(("batting", "top"), ALLOWED)
def test_largest_top_with_four_inches_each_side(
    batting: tuple[int, int], top: tuple[int, int]
) -> None:
    assert largest_top(size(*batting)) == size(*top)


# The sizes listed are those of: honeybegood.com 2012 (Primitive Quilts and Embroidery Press print
# the same), project12quilts.blogspot.com 2012, primitivequiltsandprojects.com.
PRINTED = [
    ("crib", 45, 60),
    ("twin", 72, 90),
    ("full", 81, 96),
    ("queen", 90, 108),
    ("king", 120, 120),
    ("craft", 34, 45),
    ("twin, long", 72, 96),
    ("queen, wide", 96, 108),
]


@pytest.mark.parametrize(("name", "width", "length"), PRINTED)
def test_listed_sizes_are_the_printed_ones(name: str, width: int, length: int) -> None:
    assert [one.size for one in BATTINGS if one.name == name] == [size(width, length)]


def test_the_smallest_that_covers() -> None:
    found = smallest_batting(size(60, 76))
    assert found.batting is not None
    assert found.batting.name == "twin"
    assert found.over == (F(4), F(6))
    assert found.reason == "twin, 72 × 90 in, for 68 × 84 in: 4 in over across, 6 in over down"
    # honeybegood.com 2012 adds 3 in each side.
    crib = smallest_batting(size(39, 54), margin=F(3)).batting
    assert crib is not None
    assert crib.name == "crib"


def test_a_batting_may_lie_on_its_side() -> None:
    found = smallest_batting(size(80, 60))
    assert found.turned
    assert "on its side" in found.reason


def test_none_covers() -> None:
    found = smallest_batting(size(120, 120))
    assert found.batting is None
    assert (found.turned, found.over) == (False, (F(0), F(0)))
    assert (
        found.reason == "no listed batting covers 128 × 128 in: buy it from the roll, or join two"
    )


@given(st.integers(10, 110), st.integers(10, 110))
def test_a_covering_batting_allows_the_top(width: int, length: int) -> None:
    top = size(width, length)
    found = smallest_batting(top)
    if found.batting is None:
        assert all(not one.size.covers(top.grown(F(4))) for one in BATTINGS)
        return
    laid = found.batting.size.turned if found.turned else found.batting.size
    assert largest_top(laid).covers(top)
    for one in BATTINGS:
        if one.size.covers(top.grown(F(4))) or one.size.turned.covers(top.grown(F(4))):
            assert one.size.width * one.size.length >= laid.width * laid.length


def test_a_margin_that_leaves_nothing_is_refused() -> None:
    assert largest_top(size(34, 45), F(16)) == size(2, 13)
    with pytest.raises(NumbersFault, match="leaves no top"):
        largest_top(size(34, 45), F(17))
