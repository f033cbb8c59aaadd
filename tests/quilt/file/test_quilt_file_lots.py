"""Squares of several sizes in one pile: each lot has its size, and units follow the smallest."""

from __future__ import annotations

from fractions import Fraction
from math import sqrt

import pytest

from sewalong.quilt.derived import derived
from sewalong.quilt.file.reader import QuiltFileFaults, read_quilt
from sewalong.quilt.quilt import Lot, StartPile, with_more
from sewalong.quilt.unit_size import decided_unit
from sewalong.quilt.worksheet.basis import basis
from sewalong.quilt.worksheet.sizes import sizes

TWO_LOTS = """\
name = "Two tins"
method = "stacked-four-patch"
[squares]
size = "5"
packs = 2
in_a_pack = 42
[[more]]
pile = "square"
size = "4 1/2"
count = 16
[layout]
rows = 6
columns = 8
"""


def test_a_pile_of_two_lots_is_as_small_as_the_smaller_and_as_many_as_both() -> None:
    (pile,) = read_quilt(TWO_LOTS).starts
    lots = (Lot(Fraction(9, 2), 16), Lot(Fraction(5), 84, 2))
    assert pile == StartPile("square", Fraction(9, 2), 100, None, None, lots)


def test_more_squares_of_a_size_there_is_join_their_lot_and_of_another_make_one() -> None:
    (pile,) = read_quilt(TWO_LOTS).starts
    more = with_more(pile, Fraction(5), 6)
    # 84 in packs and 6 besides are no longer so many packs: they are counted.
    assert more.lots == (Lot(Fraction(9, 2), 16), Lot(Fraction(5), 90))
    assert (more.count, more.size) == (106, Fraction(9, 2))
    smaller = with_more(StartPile("square", Fraction(5), 84, 2), Fraction(4), 10)
    assert smaller.lots == (Lot(Fraction(4), 10), Lot(Fraction(5), 84, 2))
    assert (smaller.count, smaller.size, smaller.packs) == (94, Fraction(4), None)


def test_the_unit_follows_the_smallest_by_plane_geometry() -> None:
    """A four-patch of squares s with seams a is 2s − 2a wide. Sewn to another a inside every edge
    and cut twice on the diagonal, it leaves quarters that open along a seam of 2s − 4a: that is the
    diagonal of the unit, whose side is (2s − 4a)/√2 to the raw edges."""
    quilt = read_quilt(TWO_LOTS)
    small = read_quilt(TWO_LOTS.replace('size = "5"', 'size = "4 3/4"'))
    made = derived(quilt)
    assert decided_unit(quilt, made) == decided_unit(small, derived(small))
    assert abs(made.unit.width - (2 * 4.5 - 4 * 0.25) / sqrt(2)) < 1e-6


def test_each_lot_is_told_with_what_it_would_give() -> None:
    told = [str(line) for line in sizes(basis(read_quilt(TWO_LOTS))).lines[:4]]
    assert told == [
        "squares: 4 1/2 in (16 at their label)",
        "squares: 5 in (84 in 2 packs, at their label)",
        "units of squares of 4 1/2 in: 5 5/8 in across × 5 5/8 in down (rounded down from "
        "5.657 × 5.657 in) (which all units follow)",
        "units of squares of 5 in: 6 3/8 in across × 6 3/8 in down (rounded up from "
        "6.364 × 6.364 in) (if they were all so)",
    ]


def test_lots_together_are_no_more_than_a_pile_may_have() -> None:
    with pytest.raises(QuiltFileFaults) as faults:
        read_quilt(TWO_LOTS.replace("count = 16", "count = 9990"))
    assert [fault.key for fault in faults.value.faults] == ["more"]
