"""Boxes to tick: as many as there is to do, no more than fit, counted at a glance."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from sewalong.sheets.tick_boxes import MOST_BOXES, Group, TickBoxes, tick_boxes


def test_a_few_stand_in_fives() -> None:
    assert tick_boxes(12) == TickBoxes(1, 1, (Group(5, 5), Group(5, 10), Group(2, 12)))
    assert tick_boxes(0) == TickBoxes(1, 0, ())


def test_many_stand_in_tens() -> None:
    assert tick_boxes(108).groups[-2:] == (Group(10, 100), Group(8, 108))


def test_of_very_many_a_box_is_several() -> None:
    assert tick_boxes(336) == TickBoxes(
        5, 1, (*(Group(10, 50 * n) for n in range(1, 7)), Group(8, 336))
    )


def test_where_fives_end_and_where_a_box_becomes_several() -> None:
    assert [tick_boxes(n).groups[0].boxes for n in (50, 51)] == [5, 10]
    assert [tick_boxes(n).each for n in (200, 201, 1000, 1001, 2000, 2001)] == [1, 5, 5, 10, 10, 50]


@given(st.integers(min_value=1, max_value=10**6))
def test_all_boxes_together_are_what_there_is_to_do(to_do: int) -> None:
    found = tick_boxes(to_do)
    boxes = sum(group.boxes for group in found.groups)
    assert boxes <= MOST_BOXES
    assert (boxes - 1) * found.each + found.last == to_do
    assert 1 <= found.last <= found.each
    assert found.groups[-1].up_to == to_do
    sizes = {group.boxes for group in found.groups[:-1]}
    assert sizes <= {5} or sizes <= {10}
    done = 0
    for group in found.groups[:-1]:
        done += group.boxes * found.each
        assert group.up_to == done
