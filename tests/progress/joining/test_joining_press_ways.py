"""Seams that nest: by row and by the place of a unit, never said by hands."""

from __future__ import annotations

import re
from itertools import product

from sewalong.progress.joining.orientation_checks import which_way_up
from sewalong.progress.joining.press_directions import (
    Way,
    press_rule,
    press_words,
    row_way,
    unit_ways,
)

ROWS, COLUMNS = 9, 8
HANDS = re.compile(r"\b(left|right hand|to the right|clockwise)\b", re.IGNORECASE)


def nests(one: Way, other: Way) -> bool:
    """Whether two seams lock where they meet end to end: their allowances lie on opposite sides."""
    return {one, other} in (
        {Way.TO_THE_START, Way.FROM_THE_START},
        {Way.TO_ROW_1, Way.FROM_ROW_1},
    )


def test_the_seams_of_every_row_nest_with_those_of_the_next() -> None:
    assert all(nests(row_way(row), row_way(row + 1)) for row in range(1, ROWS))
    assert not any(nests(row_way(row), row_way(row + 2)) for row in range(1, ROWS - 1))


def test_the_seams_of_every_unit_nest_with_those_of_all_its_neighbours() -> None:
    """By the parity of the place: level seams meet beside, upright ones before and after."""
    for row, column in product(range(1, ROWS), range(1, COLUMNS)):
        here = unit_ways(row, column)
        assert nests(here.along, unit_ways(row, column + 1).along)
        assert nests(here.upright, unit_ways(row + 1, column).upright)


def test_placement_not_settled_means_press_open() -> None:
    # Q126, quiltingboard.com: "Undecided layout -> press open, or fix placement first."
    assert press_rule(placed=False).startswith("open")


def test_two_rows_pressed_alike_would_lie_ridge_on_ridge() -> None:
    assert not nests(row_way(1), row_way(1))
    assert not nests(Way.TO_ROW_1, Way.FROM_THE_START)


def test_the_words_name_the_tape() -> None:
    assert press_words(1) == "Row 1: press its seams towards where the row begins."
    assert press_words(2) == "Row 2: press its seams away from where the row begins."
    assert press_rule() == ("odd rows towards where the row begins, even rows away from there")


def test_nothing_is_said_by_hands() -> None:
    # Q165, alefthandedquilter.blogspot.com: "Avoid left/right for hands".
    said = [*map(press_words, (1, 2)), press_rule(placed=False)]
    said.append(press_rule())
    for stage in ("sew-rows", "join-rows", "add-borders"):
        said += which_way_up(stage)
    assert not [line for line in said if HANDS.search(line)]


def test_a_border_is_looked_at_twice_before_it_is_sewn() -> None:
    # Q091, thefabricofherreality.blogspot.com: "Check two things before sewing: which edge
    # is inner, which end is top."
    assert which_way_up("add-borders") == (
        "Which edge of the border is inner?",
        "Which end of it is the top?",
    )


def test_where_nothing_can_be_turned_nothing_is_asked() -> None:
    assert which_way_up("layer") == ()
