"""Tags of rows: numbers that turn into one another upside down, and tags that cannot."""

from __future__ import annotations

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.progress.joining.row_tags import read_label, row_label, trap_pairs, upside_down
from sewalong.progress.record.joined_rows import neighbours
from sewalong.progress.record.refused import Refused
from sewalong.quilt.rules import MOST_ROWS


def test_the_numbers_that_read_as_another_upside_down_to_a_hundred() -> None:
    # Q068, thebarefootheart.com: "Between 1 and 100 these read as another number upside
    # down …: 6/9, 16/91, 18/81, 19/61, 66/99, 68/89, 86/98."
    assert trap_pairs(100) == (
        (6, 9), (16, 91), (18, 81), (19, 61), (66, 99), (68, 89), (86, 98),
    )  # fmt: skip


def test_a_number_of_three_digits_as_it_was_written_by_hand() -> None:
    # The case's own input: "hand-written numbers such as 698".
    assert upside_down(698) == 869


@pytest.mark.parametrize("number", [1, 8, 11, 69, 88, 96, 101, 609])
def test_some_read_the_same_either_way_and_are_no_trap(number: int) -> None:
    assert upside_down(number) == number
    assert all(number not in pair for pair in trap_pairs(1000))


@pytest.mark.parametrize("number", [2, 3, 4, 5, 7, 10, 60, 90, 12, 67])
def test_what_is_no_number_upside_down_cannot_be_misread(number: int) -> None:
    assert upside_down(number) is None


@given(st.integers(1, 99_999))
def test_turning_twice_gives_the_number_back(number: int) -> None:
    other = upside_down(number)
    assert other is None or upside_down(other) == number


def test_no_misread_tags_pass_for_neighbours_on_any_top() -> None:
    """Whichever of two neighbours' tags is misread, or both, the rows are refused."""
    for row in range(1, MOST_ROWS):
        readings = [{n, upside_down(n) or n} for n in (row, row + 1)]
        for first, second in product(*readings):
            if (first, second) != (row, row + 1):
                assert not neighbours(first, second), (row, first, second)


@given(st.integers(1, MOST_ROWS))
def test_a_tag_reads_back_as_its_row(row: int) -> None:
    assert read_label(row_label(row)) == row


@pytest.mark.parametrize("text", ["R6", "r6", "R 6", "row 6", "6", " R-6 ", "R_6_", "Rows 6"])
def test_a_tag_may_be_said_in_several_ways(text: str) -> None:
    assert read_label(text) == 6


@given(st.integers(1, MOST_ROWS))
def test_a_tag_held_upside_down_is_never_taken_for_a_row(row: int) -> None:
    other = upside_down(row)
    for letter in ("Я", "R"):
        with pytest.raises(Refused) as refused:
            read_label(f"{other if other is not None else row}{letter}")
        assert "upside down" in str(refused.value)


def test_a_tag_read_upside_down_says_what_it_may_be() -> None:
    with pytest.raises(Refused, match="it may say R16"):
        read_label("91Я")


@pytest.mark.parametrize("text", ["no such row, and no tag either", "123456 1234567890123 R"])
def test_no_more_than_twenty_characters_of_a_tag_are_said_again(text: str) -> None:
    with pytest.raises(Refused) as refused:
        read_label(text)
    assert f"“{text[:20]}”" in str(refused.value)


def test_a_tag_upside_down_is_quoted_to_twenty_characters_too() -> None:
    text = "......... 91......... R"
    with pytest.raises(Refused) as refused:
        read_label(text)
    assert f"“{text[:20]}” has its letter last" in str(refused.value)


@pytest.mark.parametrize("text", ["", "R", "six", "6 7", "-", "M6", "6/9", "²"])
def test_what_is_no_tag_is_refused_with_an_example(text: str) -> None:
    with pytest.raises(Refused, match="such as R6"):
        read_label(text)
