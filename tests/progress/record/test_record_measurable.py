"""What a piece should come to, worked out here again from its cuts and seams."""

from __future__ import annotations

from fractions import Fraction

import pytest

from sewalong.progress.record.measurable import (
    Unmeasurable,
    decided,
    measurable,
    proof_piece,
    read_piece,
)
from tests.progress.building import a_quilt
from tests.progress.measuring.measuring_quilts import of_size

WIDE = a_quilt("plain-squares", pieces=40, rows=4, columns=5, borders=2)
"""Squares of 5 in, a seam of 1/4 in, two borders cut at 3 in."""


def test_a_four_patch_is_two_squares_side_by_side_either_way() -> None:
    quilt = a_quilt("four-patch", pieces=80, rows=4, columns=5)
    for piece in ("unit", "unit:down"):
        found = read_piece(quilt, quilt.target, piece)
        assert (found.expected, found.allowances, found.seams) == (Fraction(19, 2), 2.0, 1)
        assert (found.of, found.each, found.at_least) == (2, Fraction(9, 2), None)


def test_a_nine_patch_is_three_squares_and_a_strip_set_two_strips_as_long_as_they_were() -> None:
    quilt = a_quilt("nine-patch", pieces=90, rows=2, columns=5)
    found = read_piece(quilt, quilt.target, "unit")
    assert (found.expected, found.allowances, found.seams) == (Fraction(14), 4.0, 2)
    assert (found.of, found.each) == (3, Fraction(9, 2))
    strips = a_quilt("four-patch-strips", pieces=20, rows=5, columns=5)
    across, down = (
        read_piece(strips, strips.target, piece) for piece in ("strip-set", "strip-set:down")
    )
    assert (across.expected, across.of, across.each) == (Fraction(9, 2), 2, Fraction(2))
    assert (down.expected, down.seams, down.of, down.each) == (Fraction(40), 0, 1, None)


def test_a_slanting_seam_is_no_seam_straight_across() -> None:
    quilt = a_quilt("half-square-two", pieces=40, rows=4, columns=5)
    found = read_piece(quilt, quilt.target, proof_piece(quilt))
    assert (found.seams, found.of, found.each) == (None, 1, None)
    assert found.at_least is not None


@pytest.mark.parametrize(
    ("piece", "length", "seams", "of"),
    [
        ("row", 5 * Fraction(9, 2) + Fraction(1, 2), 4, 5),
        ("row:3", 3 * Fraction(9, 2) + Fraction(1, 2), 2, 3),
        ("column:4", 4 * Fraction(9, 2) + Fraction(1, 2), 3, 4),
        ("column:2", 2 * Fraction(9, 2) + Fraction(1, 2), 1, 2),
        ("centre:across", 5 * Fraction(9, 2) + Fraction(1, 2), 4, 5),
        ("centre:down", 4 * Fraction(9, 2) + Fraction(1, 2), 3, 4),
        # Each border adds two strips, each of them less its two seam allowances.
        ("top:across", 5 * Fraction(9, 2) + Fraction(1, 2) + 4 * Fraction(5, 2), 8, 5),
        ("top:down", 4 * Fraction(9, 2) + Fraction(1, 2) + 4 * Fraction(5, 2), 7, 4),
        ("strips:3:3/2", Fraction(7, 2), 2, 3),
        ("strips:2:2", Fraction(7, 2), 1, 2),
        ("middle:3/2", Fraction(1), 1, 1),
    ],
)
def test_rows_columns_and_tops(piece: str, length: Fraction, seams: int, of: int) -> None:
    found = read_piece(WIDE, WIDE.target, piece)
    assert (found.id, found.expected, found.seams, found.of) == (
        "row" if piece == "row:5" else piece,
        length,
        seams,
        of,
    )


def test_a_row_of_all_its_units_is_the_row() -> None:
    assert read_piece(WIDE, WIDE.target, "row:5") == read_piece(WIDE, WIDE.target, "row")


def test_a_unit_that_is_not_square_is_measured_and_trimmed_both_ways() -> None:
    quilt = of_size("flying-geese-four", "9", rows=2, columns=4)
    trim = decided(quilt)
    assert trim.width > trim.length
    across, down = (read_piece(quilt, quilt.target, piece) for piece in ("unit", "unit:down"))
    assert (across.expected, down.expected) == (trim.width, trim.length)
    assert (across.words, down.words) == ("unit", "unit down")
    assert "unit:down" in [one.id for one in measurable(quilt, quilt.target)]
    assert "unit:down" not in [one.id for one in measurable(WIDE, WIDE.target)]


def test_what_can_be_measured_stands_in_the_order_of_making() -> None:
    assert [one.id for one in measurable(WIDE, WIDE.target)] == [
        "square",
        "unit",
        "row",
        "centre:across",
        "centre:down",
        "border:1:sides",
        "border:1:ends",
        "border:2:sides",
        "border:2:ends",
        "top:across",
        "top:down",
        "strips:3:3/2",
        "middle:3/2",
        "allowance",
    ]
    bare = a_quilt("plain-squares", pieces=40, rows=4, columns=5)
    assert "top:down" not in [one.id for one in measurable(bare, bare.target)]


@pytest.mark.parametrize(
    ("piece", "why"),
    [
        ("sleeve", "Nothing called “sleeve” can be measured here. There are: square, unit, row, "),
        ("unit:up", "Nothing called “unit:up” can be measured here."),
        ("centre", "Nothing called “centre” can be measured here."),
        ("row:0", "Give the number of units as a number up to 200."),
        ("row:201", "Give the number of units as a number up to 200."),
        ("column:x", "Give the number of rows as a number up to 200."),
        ("strips:1:3/2", "A strip test takes at least two strips; three are best."),
        ("strips:3:1/2", "Say how wide the strips were cut, more than both their seams"),
        ("middle:wide", "Say how wide the strips were cut"),
    ],
)
def test_what_cannot_be_measured_is_told_with_what_can(piece: str, why: str) -> None:
    with pytest.raises(Unmeasurable) as told:
        read_piece(WIDE, WIDE.target, piece)
    assert str(told.value).startswith(why)


def test_two_hundred_side_by_side_and_the_narrowest_strip_are_measured() -> None:
    assert read_piece(WIDE, WIDE.target, "row:200").of == 200
    assert read_piece(WIDE, WIDE.target, "strips:2:9/16").expected == Fraction(5, 8)
