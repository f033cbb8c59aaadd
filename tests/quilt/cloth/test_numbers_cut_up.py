"""Pieces cut up and resewn, and blocks at another size, against doing it piece by piece."""

from __future__ import annotations

from fractions import Fraction as F
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import BufferJoinStyle, Polygon

from sewalong.lengths import Unit, from_cm
from sewalong.quilt.cloth.cut_up import cut_up, to_cut_up
from sewalong.quilt.cloth.scaled import Piece, scaled
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.size import Size

EIGHTHS = st.integers(8, 96).map(lambda n: F(n, 8))


def test_a_four_patch_of_8_1_2_in_cut_twice_each_way_comes_to_7_1_2_in() -> None:
    # tamarinis.typepad.com, The disappearing four patch: the block loses 1 in, not 2.
    found = cut_up(Size.square(F("8.5")), 2, 2)
    assert found.after == Size.square(F("7.5"))
    assert found.pieces == 9
    # Two seams of 8 1/2 in, then two across the 7 1/2 in that are left.
    assert found.sewn == 2 * F("8.5") + 2 * F("7.5")


def test_four_5_in_squares_cut_1_in_from_the_seam_come_to_8_1_2_in() -> None:
    # alamosaquilter.blogspot.com, Disappearing four patch: 9 1/2 in before, 8 1/2 in after.
    assert cut_up(Size.square(F("9.5")), 2, 2).after == Size.square(F("8.5"))


@given(
    st.lists(EIGHTHS, min_size=1, max_size=6),
    st.lists(EIGHTHS, min_size=1, max_size=6),
    st.integers(0, 3).map(lambda n: F(n, 8)),
)
def test_it_does_not_matter_where_the_cuts_lie(across: list[F], down: list[F], seam: F) -> None:
    # Pieces of these widths and heights, laid side by side and sewn together.
    before = Size(sum(across, F(0)), sum(down, F(0)))
    if len(across) == len(down) == 1:
        with pytest.raises(NumbersFault, match="cuts"):
            cut_up(before, 0, 0, seam=seam)
        return
    width, length = across[0], down[0]
    for piece in across[1:]:
        width = (width - seam) + (piece - seam)
    for piece in down[1:]:
        length = (length - seam) + (piece - seam)
    found = cut_up(before, len(across) - 1, len(down) - 1, seam=seam)
    assert found.after == Size(width, length)
    assert to_cut_up(found.after, found.upright, found.lying, seam=seam) == before


def test_a_piece_cut_until_nothing_is_left_is_refused() -> None:
    with pytest.raises(NumbersFault, match="fewer cuts"):
        cut_up(Size.square(F(2)), 4, 0)


def test_a_piece_cut_up_says_what_its_seams_take_each_way() -> None:
    # Two cuts take 4 times 1/4 in from the width, one takes 2 times 1/4 in from the length.
    found = cut_up(Size(F(10), F(8)), 2, 1)
    assert found.after == Size(F(9), F("7.5"))
    assert found.reason == (
        "each cut takes two allowances, 1/2 in: 1 in less across, 1/2 in less down"
    )


@pytest.mark.parametrize(
    ("upright", "lying", "what"), [(-1, 3, "upright cuts"), (3, -1, "lying cuts")]
)
def test_fewer_than_no_cuts_are_refused_both_ways_of_asking(
    upright: int, lying: int, what: str
) -> None:
    # Else a cut below nothing would make the piece larger by its seam.
    with pytest.raises(NumbersFault, match=f"number of {what} must be at least 0, not -1"):
        cut_up(Size(F(10), F(8)), upright, lying)
    with pytest.raises(NumbersFault, match=f"number of {what} must be at least 0, not -1"):
        to_cut_up(Size(F(10), F(8)), upright, lying)


@pytest.mark.parametrize(
    ("before", "times", "piece", "after"),
    [
        # Finished 2 in, doubled 4 in: the trade's 1/2, 7/8 and 1 1/4 in are added once.
        (F("2.5"), F(2), Piece.STRAIGHT, F("4.5")),
        (F("2.875"), F(2), Piece.HALF, F("4.875")),
        (F("3.25"), F(2), Piece.QUARTERS, F("5.25")),
        (F("4.5"), F(1, 2), Piece.STRAIGHT, F("2.5")),
        (F("2.5"), F(3, 2), Piece.STRAIGHT, F("3.5")),
    ],
)
def test_a_piece_of_a_block_at_another_size(before: F, times: F, piece: Piece, after: F) -> None:
    assert scaled(before, times, piece=piece).cut.length == after


def test_a_size_no_ruler_shows_says_what_it_then_finishes_at() -> None:
    found = scaled(F("2.5"), F(5, 3))
    assert found.cut.text == "3 7/8 in, rounded up from 3 5/6 in"
    assert found.reason.endswith("as cut it finishes at 3 3/8 in")


def test_in_centimetres_a_square_keeps_its_seam_too() -> None:
    found = scaled(from_cm(F("6.5")), F(2), seam=from_cm(F("0.75")), unit=Unit.CM)
    assert found.cut.text == "11.5 cm"


def finished_leg(cut: float, seam: float) -> float:
    """The short side left of a half-square triangle when its allowances are folded in."""
    triangle = Polygon([(0, 0), (cut, 0), (0, cut)])
    inner = triangle.buffer(-seam, join_style=BufferJoinStyle.mitre, mitre_limit=20)
    return sqrt(2 * inner.area)


@given(st.integers(16, 64).map(lambda n: F(n, 8)), st.integers(2, 12).map(lambda n: F(n, 4)))
def test_a_triangle_finishes_at_least_so_many_times_as_large(finished: F, times: F) -> None:
    found = scaled(finished + F(7, 8), times, piece=Piece.HALF)
    leg = finished_leg(float(found.cut.length), 0.25)
    assert 0 <= leg - float(finished * times) < 1 / 16 + 7 / 8 - 0.85355


def test_a_piece_that_is_all_seam_is_refused() -> None:
    with pytest.raises(NumbersFault, match="all seam"):
        scaled(F(1, 2), F(2))


def test_a_scaled_piece_says_how_it_came_about() -> None:
    assert scaled(F("2.5"), F(2)).reason == (
        "2 1/2 in less 1/2 in of seam finishes at 2 in; 4 in and the seam"
    )


def test_in_centimetres_a_triangle_is_given_whole_millimetres() -> None:
    # 0.75 * (2 + root 2) = 2.56 cm, taken as 2.6 cm; 10 cm finished become 20.
    seam = from_cm(F("0.75"))
    found = scaled(from_cm(F("12.6")), F(2), piece=Piece.HALF, seam=seam, unit=Unit.CM)
    assert found.cut.text == "22.6 cm"
