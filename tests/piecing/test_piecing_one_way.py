"""One-way prints: worked by folding paper, as makers meet them."""

from __future__ import annotations

from fractions import Fraction as F

import pytest

from sewalong.piecing.derive import derive
from sewalong.piecing.one_way import standing_one_way, ways_up

BACK = dict.fromkeys("EFGH", 180)
"""The back of a stack of four-patches, turned over its top edge instead of like a page."""


def test_both_prints_of_a_stack_stand_one_way_in_two_of_four_units_however_they_are_turned() -> (
    None
):
    # A worked case: paired squares sewn all round and cut twice, both upright when laid down.
    units = derive("paired-squares", F(5)).units
    as_a_page = ways_up(units, 0.25)
    over_the_top = ways_up(units, 0.25, {"B": 180})
    assert [set(shown) for shown in as_a_page] == [{"A", "B"}] * 4
    assert all(way % 90 == 45 for shown in as_a_page for ways in shown.values() for way in ways)
    first, second = (standing_one_way(ways, "AB") for ways in (as_a_page, over_the_top))
    assert len(first) == len(second) == 2
    assert sorted(first + second) == [0, 1, 2, 3]
    for place in second:
        (a,), (b,) = as_a_page[place]["A"], as_a_page[place]["B"]
        assert (a - b) % 360 == 180


@pytest.mark.parametrize("turned", [{}, BACK], ids=["like a page", "over its top edge"])
def test_never_in_more_than_two_of_four_units_of_stacked_four_patches(
    turned: dict[str, int],
) -> None:
    units = derive("stacked-four-patch", F(5)).units
    assert len(standing_one_way(ways_up(units, 0.25, turned), "ABCDEFGH")) <= 2


def test_squares_joined_edge_to_edge_all_stand_as_they_were_laid() -> None:
    units = derive("nine-patch", F(3)).units
    assert standing_one_way(ways_up(units, 0.25), "ABCDEFGHI") == (0,)
    assert ways_up(units, 0.25)[0]["E"] == {0}
    assert ways_up(units, 0.25, {"E": 90})[0]["E"] == {90}
    assert standing_one_way(ways_up(units, 0.25, {"E": 90}), "AE") == ()


def test_a_fabric_that_does_not_show_turns_nowhere() -> None:
    units = derive("half-square-two", F(5)).units
    assert standing_one_way(ways_up(units, 0.25), "Q") == (0, 1)
