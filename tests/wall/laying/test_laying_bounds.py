"""How few touches can be: bounds against every laying of small walls, and known cases."""

from __future__ import annotations

from itertools import product

import pytest

from sewalong.quilt.setting import Sashing, SetOnPoint, Setting
from sewalong.wall.laying.bounds import least_of_one, least_touches, most_apart
from sewalong.wall.laying.edges import TouchRule
from sewalong.wall.laying.four import four_fabrics
from sewalong.wall.laying.grid import grid_of
from sewalong.wall.laying.laying import Laying, Put, Rules, empty_laying, touches
from sewalong.wall.laying.units import plain_unit
from sewalong.wall.laying.verdict import TooMany, verdict
from sewalong.wall.laying.verdict_words import verdict_words
from tests.wall.laying.exact_solver import solved
from tests.wall.laying.exhaustive import fewest_touches, pairs, splits
from tests.wall.laying.walls import counted, made, squares

EDGE, CORNER = TouchRule.EDGE, TouchRule.CORNER
ON_POINT = SetOnPoint("linen")
SMALL = [(1, 1), (1, 5), (2, 2), (2, 3), (3, 3), (2, 5), (3, 4), (4, 4), (3, 5)]


@pytest.mark.parametrize("rule", TouchRule)
@pytest.mark.parametrize("size", SMALL, ids=str)
def test_one_fabric_is_apart_no_oftener_than_said_and_touches_no_less(
    size: tuple[int, int], rule: TouchRule
) -> None:
    grid = grid_of(*size)
    places = len(grid.places)
    meeting = pairs(grid, rule)
    least = [places * places] * (places + 1)
    for laid in product((False, True), repeat=places):
        n = sum(laid)
        least[n] = min(least[n], sum(laid[a] and laid[b] for a, b in meeting))
    bounds = [least_of_one(grid, rule, n) for n in range(places + 1)]
    assert all(ours <= true for ours, true in zip(bounds, least, strict=True))
    # Known: ceil(rc/2), and ceil(r/2) * ceil(c/2) (checks W03).
    rows, columns = size
    known = -(-places // 2) if rule is EDGE else -(-rows // 2) * -(-columns // 2)
    assert most_apart(grid, rule) == known == max(n for n in range(places + 1) if not least[n])
    assert bounds[known + 1 :] == [] or min(bounds[known + 1 :]) > 0
    assert bounds[-1] == least[-1] == len(meeting)


@pytest.mark.parametrize("rule", TouchRule)
@pytest.mark.parametrize("size", [(1, 3), (2, 2), (2, 3), (3, 3)], ids=str)
def test_on_point_too(size: tuple[int, int], rule: TouchRule) -> None:
    grid = grid_of(*size, ON_POINT)
    places = len(grid.places)
    meeting = pairs(grid, rule)
    least = [places * places] * (places + 1)
    for laid in product((False, True), repeat=places):
        n = sum(laid)
        least[n] = min(least[n], sum(laid[a] and laid[b] for a, b in meeting))
    bounds = [least_of_one(grid, rule, n) for n in range(places + 1)]
    assert all(ours <= true for ours, true in zip(bounds, least, strict=True))
    apart = max(n for n in range(places + 1) if not least[n])
    assert most_apart(grid, rule) >= apart
    if rule is EDGE:
        assert most_apart(grid, rule) == apart == size[0] * size[1]


@pytest.mark.parametrize("rule", TouchRule)
@pytest.mark.parametrize("size", [(2, 2), (2, 3), (3, 3), (2, 5), (3, 4)], ids=str)
@pytest.mark.parametrize("fabrics", [1, 2, 3, 4])
def test_the_least_is_never_more_than_every_laying_has(
    size: tuple[int, int], fabrics: int, rule: TouchRule
) -> None:
    grid = grid_of(*size)
    for counts in splits(len(grid.places), fabrics):
        units = [plain_unit("ABCD"[n]) for n, count in enumerate(counts) for _ in range(count)]
        true = fewest_touches(grid, rule, counts)
        said = verdict(units, *size, rules=Rules(touch=rule))
        assert said.least <= true, counts
        if said.possible is not None:
            assert said.possible is (true == 0), counts
        if rule is EDGE:
            assert said.possible is (true == 0), counts


@pytest.mark.parametrize(
    "size",
    [(2, 2), (2, 3), (2, 5), (3, 3), (3, 4), pytest.param((4, 4), marks=pytest.mark.long)],
    ids=str,
)
def test_four_fabrics_lie_apart_at_points_just_where_every_laying_says_so(
    size: tuple[int, int],
) -> None:
    grid = grid_of(*size)
    for counts in splits(len(grid.places), 4):
        laid = four_fabrics(*size, counts)
        assert (laid is not None) == (fewest_touches(grid, CORNER, counts) == 0), counts
        if laid is not None:
            assert [laid.count(fabric) for fabric in range(4)] == list(counts)
            assert all(laid[a] != laid[b] for a, b in pairs(grid, CORNER))


@pytest.mark.parametrize(
    ("counts", "size", "rule", "least"),
    [
        # N001, by trying all 167,960 places; N002 and N004 with layouts that meet the bound; W05.
        pytest.param({"A": 7, "B": 7, "C": 6}, (4, 5), EDGE, 0, id="N001-a"),
        pytest.param({"A": 10, "B": 6, "C": 4}, (4, 5), EDGE, 0, id="N001-b"),
        pytest.param({"A": 11, **dict.fromkeys("BCDEFGHIJ", 1)}, (4, 5), EDGE, 2, id="N001-c"),
        pytest.param(dict.fromkeys("ABCD", 9), (6, 6), CORNER, 0, id="N002-a"),
        pytest.param({"A": 10, "B": 9, "C": 9, "D": 8}, (6, 6), CORNER, 1, id="N002-b"),
        pytest.param(dict.fromkeys("ABC", 12), (6, 6), CORNER, 13, id="N002-c"),
        pytest.param(dict.fromkeys("ABC", 12), (6, 6), EDGE, 0, id="N002-d"),
        pytest.param({"A": 13}, (6, 8), CORNER, 1, id="N004-13"),
        pytest.param({"A": 18}, (6, 8), CORNER, 6, id="N004-18"),
        pytest.param({"A": 24}, (6, 8), EDGE, 0, id="N004-24"),
        pytest.param({"A": 22}, (8, 9), CORNER, 2, id="W05"),
    ],
)
def test_known_least_numbers_of_touches(
    counts: dict[str, int], size: tuple[int, int], rule: TouchRule, least: int
) -> None:
    others = size[0] * size[1] - sum(counts.values())
    units = (*counted(**counts), *(plain_unit(f"other {n}") for n in range(others)))
    assert least_touches(grid_of(*size), units, Rules(touch=rule)) == least
    assert verdict(units, *size, rules=Rules(touch=rule)).possible is (least == 0)


def test_two_fabrics_alternate_only_in_halves() -> None:
    # N033 and W04: a grid is bipartite, so that the counts of two fabrics are its two classes.
    for a in range(1, 15):
        found = verdict(counted(A=a, B=15 - a), 3, 5)
        assert found.possible is (a in (7, 8))


def test_the_fabric_that_is_one_too_many_is_named() -> None:
    units = (*counted(A=11), *(plain_unit(letter) for letter in "BCDEFGHIJ"))
    found = verdict(units, 4, 5)
    assert found.too_many == (TooMany("A", 11, 10),)
    assert verdict_words(found, EDGE, {"A": "A rust"}) == (
        "Not possible: like fabrics meet along a seam 2 times at least.",
        "A rust: 11 units, and 10 can lie apart: 1 too many.",
    )
    # One of B more, and an A stays over: nothing is too many then.
    assert verdict((*units, plain_unit("B")), 4, 5).possible


def test_by_the_corner_rule_four_fabrics_are_needed_and_are_not_always_enough() -> None:
    three = verdict(squares(36, 3), 6, 6, rules=Rules(touch=CORNER))
    assert three.too_few
    assert "four fabrics" in verdict_words(three, CORNER)[-1]
    nine = verdict(squares(81, 4), 9, 9, rules=Rules(touch=CORNER))
    assert nine.possible is False
    assert nine.four
    assert nine.least >= 1
    assert "by turns" in verdict_words(nine, CORNER)[-1]
    assert solved(squares(25, 4), 5, 5, CORNER, 20).least >= 1
    assert verdict(squares(25, 4), 5, 5, rules=Rules(touch=CORNER)).possible is False


def test_with_sashes_nothing_touches_however_alike() -> None:
    found = verdict(counted(A=6), 2, 3, Sashing(2, "linen"))  # type: ignore[arg-type]
    assert found.possible
    assert most_apart(grid_of(2, 3, Sashing(2, "linen")), CORNER) == 6  # type: ignore[arg-type]


def test_what_is_not_known_is_not_claimed() -> None:
    found = verdict(made("stacked-four-patch", 9, 12), 3, 3)
    assert found.possible is None
    assert "is seen as it is laid" in verdict_words(found, EDGE)[0]


@pytest.mark.parametrize("setting", [None, ON_POINT], ids=["straight", "on point"])
@pytest.mark.parametrize("rule", TouchRule)
@pytest.mark.parametrize("method", ["hourglass", "rail-fence", "half-square-two", "nine-patch"])
def test_with_several_fabrics_the_bound_is_true_too(
    method: str, rule: TouchRule, setting: Setting | None
) -> None:
    # Every order and turn of four or five units of few fabrics.
    for seed in range(3):
        places = 5 if setting is not None else 4
        units = made(method, places, 2, seed)
        empty = empty_laying(2, 2, setting)
        rules = Rules(touch=rule)
        true = min(
            len(touches(laying, units, rules))
            for turns in product(range(4), repeat=places)
            for laying in [_laid(empty, turns)]
        )
        assert least_touches(empty.grid, units, rules) <= true


def test_a_fabric_at_nearly_all_sides_must_meet_itself() -> None:
    # Rail fence of one fabric and one thin stripe: by hand, 16 sides, 12 lengths of room on 2 x 2.
    units = made("rail-fence", 4, 1)
    assert least_touches(grid_of(2, 2), units, Rules()) == 4


def _laid(empty: Laying, turns: tuple[int, ...]) -> Laying:
    return empty.with_places([Put(n, quarters) for n, quarters in enumerate(turns)])
