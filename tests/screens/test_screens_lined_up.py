"""Numbers below one another: what they are counted in stands in one column."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from sewalong.screens.widgets.lined_up import lined_up


def test_lengths_and_both_sides_of_sizes_line_up() -> None:
    assert lined_up(
        [
            "4 1/2 in",
            "41 3/4 in across × 4 in down",
            "all four on the bias",
            "less than 1/64 in: 0.011 in",
            "8 1/2 in across × 46 7/8 in down",
            "6 strips of 2 1/2 in",
        ]
    ) == [
        " 4 1/2 in",
        "41 3/4 in across ×      4 in down",
        "all four on the bias",
        "less than 1/64 in: 0.011 in",
        " 8 1/2 in across × 46 7/8 in down",
        "6 strips of 2 1/2 in",
    ]


def test_sizes_without_a_unit_between_line_up_too() -> None:
    assert lined_up(["42 × 72 7/8 in", "52 1/4 × 52 in", "7 × 8 in"]) == [
        "    42 × 72 7/8 in",
        "52 1/4 ×     52 in",
        "     7 ×      8 in",
    ]


@given(st.lists(st.text(alphabet="0123456789 /.×inacrosdw", max_size=30)))
def test_nothing_but_spaces_is_added(numbers: list[str]) -> None:
    shown = lined_up(numbers)
    assert [one.replace(" ", "") for one in shown] == [one.replace(" ", "") for one in numbers]
