"""How a unit lies is told by as few sides as tell its turns apart."""

from __future__ import annotations

import re
from itertools import combinations

import pytest

from sewalong.piecing.catalogue import method_ids
from sewalong.quilt.setting import SetOnPoint
from sewalong.wall.laying.edges import SAME_PLACE, turned_sides
from sewalong.wall.laying.lying_words import lying_words
from sewalong.wall.laying.move_words import ON_POINT, STRAIGHT
from sewalong.wall.laying.units import WallUnit, plain_unit, wall_unit
from tests.wall.laying.walls import derived


def shown(unit: WallUnit, turns: int) -> tuple[tuple[str, ...], ...]:
    """What is seen along each side: patches that only end in a point there are not."""
    return tuple(
        tuple(fabric for start, end, fabric in side if end - start > SAME_PLACE)
        for side in turned_sides(unit.sides, turns)
    )


@pytest.mark.parametrize("method", method_ids())
def test_two_turns_are_told_alike_where_they_look_alike_and_only_there(method: str) -> None:
    made = derived(method)
    for flat in made.units:
        unit = wall_unit(flat, float(made.seam))
        for one, other in combinations(unit.turns, 2):
            alike = shown(unit, one) == shown(unit, other)
            assert (lying_words(unit, one) == lying_words(unit, other)) is alike


@pytest.mark.parametrize("method", method_ids())
def test_what_is_told_is_what_shows_there_and_no_fewer_sides_would_do(method: str) -> None:
    made = derived(method)
    for flat in made.units:
        unit = wall_unit(flat, float(made.seam))
        others = {shown(unit, turn) for turn in unit.turns}
        for turn in unit.turns:
            said = re.findall(r"(?:^|, )(.+?) towards (.+?)(?=, |$)", lying_words(unit, turn))
            told = {towards: fabrics for fabrics, towards in said}
            mine = shown(unit, turn)
            for towards, fabrics in told.items():
                assert tuple(fabrics.split(" and ")) == mine[STRAIGHT.index(towards)]
            fewer = [
                sides
                for sides in combinations(range(4), max(0, len(told) - 1))
                if all(any(one[side] != mine[side] for side in sides) for one in others - {mine})
            ]
            assert not fewer or not told


def test_on_point_it_is_told_by_the_rows_on_the_slant() -> None:
    made = derived("paired-squares")
    unit = wall_unit(made.units[0], float(made.seam), {"A": "G", "B": "K"})
    said = lying_words(unit, 0, SetOnPoint("chalk"), {"G": "G moss", "K": "K coal"})
    assert any(towards in said for towards in ON_POINT)
    assert "G moss" in said or "K coal" in said


def test_nothing_is_told_of_a_unit_that_shows_the_same_all_round() -> None:
    assert lying_words(plain_unit("A"), 0) == ""
