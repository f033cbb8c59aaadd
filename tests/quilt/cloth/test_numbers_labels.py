"""Cuts of one cloth nearer than half an inch are labelled, no others; by trying every pair."""

from __future__ import annotations

from fractions import Fraction as F

from hypothesis import given
from hypothesis import strategies as st

from sewalong.lengths import Unit
from sewalong.quilt.cloth.labels import Cut, to_label
from sewalong.quilt.size import Size
from sewalong.quilt.worksheet.worksheet import worksheet
from tests.quilt.worksheet.quilts import common, plain

SIZES = st.integers(8, 48).map(lambda n: F(n, 8))
CUTS = st.builds(
    Cut, st.sampled_from(["sand", "Sand", "sea"]), st.sampled_from("abc"), SIZES, st.none() | SIZES
)


def test_two_and_a_half_and_two_and_three_quarters_of_one_cloth_are_labelled() -> None:
    (found,) = to_label(
        [
            Cut("sand", "border 1", F(5, 2)),
            Cut("sand", "border 3", F(11, 4)),
            Cut("sea", "x", F(5, 2)),
        ]
    )
    assert found.words(Unit.INCH) == "2 1/2 in for border 1 and 2 3/4 in for border 3, 1/4 in apart"


def test_half_an_inch_and_no_difference_at_all_are_told_apart() -> None:
    assert not to_label([Cut("sand", "a", F(5, 2)), Cut("sand", "b", F(3))])
    assert not to_label([Cut("sand", "a", F(5, 2)), Cut("sand", "b", F(5, 2))])
    assert to_label([Cut("sand", "a", F(5, 2)), Cut("sand", "b", F("2.99"))])


def test_pieces_are_alike_only_when_both_their_sides_are() -> None:
    long = Cut.of("sand", "sides", Size(F(5), F(60)))
    assert not to_label([long, Cut.of("sand", "ends", Size(F(5), F(61)))])
    near = to_label([long, Cut.of("sand", "ends", Size(F(5), F("60.25")))])
    assert near[0].words(Unit.INCH) == (
        "5 × 60 in for sides and 5 × 60 1/4 in for ends, 1/4 in apart"
    )


@given(st.lists(CUTS, max_size=6))
def test_every_pair_that_can_be_mixed_up_and_no_other(cuts: list[Cut]) -> None:
    found = [(one.first, one.second) for one in to_label(cuts)]
    for place, first in enumerate(cuts):
        for second in cuts[place + 1 :]:
            strips = first.length is None and second.length is None
            pieces = first.length is not None and second.length is not None
            apart = abs(first.width - second.width)
            if pieces:
                assert first.length is not None
                assert second.length is not None
                apart = max(apart, abs(first.length - second.length))
            mixed = (
                first.cloth.lower() == second.cloth.lower()
                and (strips or pieces)
                and 0 < apart < F(1, 2)
            )
            assert ((first, second) in found) == mixed


def test_the_cut_list_says_which_cuts_of_one_cloth_to_label() -> None:
    border = '[[border]]\ncut = "{}"\ncloth = "{}"\n'
    more = border.format("2 1/2", "Sand") + border.format("2 3/4", "sand")
    squares = '[squares]\nsize = "5"\ncount = 99\n'
    lines = [
        str(one) for one in worksheet(plain("plain-squares", squares, more=more)).cut_list.lines
    ]
    (label,) = [
        line
        for line in lines
        if line.startswith("label") and "apart" in line and "border 2," in line
    ]
    assert label.startswith("label, Sand: 2 1/2 in for border 1 and 2 3/4 in for border 2, 1/4 in")


def test_the_usual_quilt_has_nothing_to_label() -> None:
    assert not [one for one in worksheet(common()).cut_list.lines if one.label.startswith("label")]
