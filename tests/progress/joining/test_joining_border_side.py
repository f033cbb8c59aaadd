"""How long the side of a border in hand will be, beside the centre worked out by hand."""

from __future__ import annotations

from fractions import Fraction

import pytest
from msgspec.structs import replace

from sewalong.progress.joining.border_side import expected_in_words
from sewalong.quilt.choices import Choices
from sewalong.quilt.quilt import Border
from sewalong.quilt.size import Size
from tests.progress.building import a_quilt

BORDERS = (Border(Fraction(3), "plain"), Border(Fraction(5), "stripe"))
QUILT = replace(
    a_quilt("plain-squares", 200, 9, 7), borders=BORDERS, trim=Size.square(Fraction(9, 2))
)
"""Nine rows of seven units that finish at 4 in: 28 1/2 × 36 1/2 in to the raw edges. The borders
finish at 2 1/2 and 4 1/2 in."""


@pytest.mark.parametrize(
    ("corners", "lengths"),
    [
        # Along the sides as long as the top; the ends two finished borders longer.
        ("sides first", ("36 1/2", "36 1/2", "33 1/2", "33 1/2", "41 1/2", "41 1/2", "42 1/2")),
        ("ends first", ("28 1/2", "28 1/2", "41 1/2", "41 1/2", "33 1/2", "33 1/2", "50 1/2")),
    ],
)
def test_the_side_in_hand(corners: str, lengths: tuple[str, ...]) -> None:
    quilt = replace(QUILT, choices=replace(Choices(), corners=corners))
    said = [expected_in_words(quilt, quilt.target, done) for done in range(len(lengths))]
    assert said == [f"About {length} in: measure the top first." for length in lengths]


def test_mitred_both_lengths_are_said_as_the_order_is_hers() -> None:
    quilt = replace(QUILT, choices=replace(Choices(), corners="mitred"))
    said = expected_in_words(quilt, quilt.target, 0)
    # 36 in and two borders and 2 in of spare: 43 in; 28 in so: 35 in.
    assert said == "About 43 in for the sides, 35 in for the ends: measure the top first."


def test_it_is_no_finer_than_a_person_expects() -> None:
    quilt = replace(QUILT, trim=Size.square(Fraction(67, 16)))
    # Nine of 3 11/16 in finished are 33 3/16 in, with both seams 33 11/16 in.
    assert expected_in_words(quilt, quilt.target, 0) == "About 33 3/4 in: measure the top first."


def test_after_the_last_side_nothing_is_said() -> None:
    assert expected_in_words(QUILT, QUILT.target, 8) == ""
