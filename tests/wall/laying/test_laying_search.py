"""Layings searched: what is asked for is kept, the bound is met or not claimed, a seed is a seed."""

from __future__ import annotations

from collections import Counter
from itertools import islice, pairwise
from random import Random
from statistics import fmean

import pytest
from msgspec.structs import replace

from sewalong.quilt.setting import SetOnPoint
from sewalong.wall.laying.edges import TouchRule
from sewalong.wall.laying.grid import At
from sewalong.wall.laying.laying import Laying, Put, Rules, touches
from sewalong.wall.laying.plans import Plan
from sewalong.wall.laying.search import Asked, Found, laid, search
from sewalong.wall.laying.units import WallUnit
from tests.wall.laying.exact_solver import solved
from tests.wall.laying.walls import laid_anyhow, made, squares

CORNER = Rules(touch=TouchRule.CORNER)


def toned(number: int, families: int = 4, seed: int = 3) -> tuple[WallUnit, ...]:
    """Invented: squares all of different fabrics, of so many families, with values at random."""
    chance = Random(seed)
    return tuple(
        replace(unit, family=f"family {n % families}", value=chance.uniform(15, 90))
        for n, unit in enumerate(squares(number, number))
    )


def values(laying: Laying, units: tuple[WallUnit, ...]) -> list[list[float]]:
    return [[units[put.unit].value or 0.0 for put in row if put] for row in laying.places]


@pytest.mark.parametrize("rule", TouchRule)
@pytest.mark.parametrize("method", ["plain-squares", "stacked-four-patch", "flying-geese-four"])
def test_every_laying_is_of_the_units_and_has_the_touches_said_and_none_is_worse_than_before(
    method: str, rule: TouchRule
) -> None:
    units = made(method, 24, 6)
    asked = Asked(units, 4, 5, rules=Rules(touch=rule, rim="A", stacks=True))
    found = list(islice(search(asked), 12))
    for one in found:
        lying = [put.unit for put in one.laying.in_order if put is not None]
        assert len(set(lying)) == 20
        assert one.touches == len(touches(one.laying, units, asked.rules))
        assert all(put.turns in units[put.unit].turns for put in one.laying.in_order if put)
    numbers = [one.touches for one in found]
    assert numbers == sorted(numbers, reverse=True)
    assert found[-1].least <= found[-1].touches


def test_the_same_seed_gives_the_same_layings_in_the_same_order_and_another_others() -> None:
    units = made("stacked-four-patch", 36, 5)
    asked = Asked(units, 6, 6, rules=CORNER, spread=True)
    once, again = (list(islice(search(asked), 8)) for _ in range(2))
    assert once == again
    other = list(islice(search(replace(asked, seed=2)), 8))
    assert other[-1].laying != once[-1].laying


def test_a_laying_is_there_before_anything_was_tried() -> None:
    # Greedy by itself: far better than chance, at once.
    units = squares(900, 12)
    first = next(search(Asked(units, 30, 30)))
    by_chance = len(touches(laid_anyhow(units, 30, 30, 1), units))
    assert first.touches < by_chance / 10


@pytest.mark.parametrize(
    ("units", "size", "rule", "looks"),
    [
        (made("stacked-four-patch", 84, 42), 9, TouchRule.EDGE, 10),
        (squares(900, 12), 30, TouchRule.EDGE, 20),
        (squares(36, 4), 6, TouchRule.CORNER, 60),
        (squares(144, 4), 12, TouchRule.CORNER, 60),
        (squares(400, 5), 20, TouchRule.CORNER, 60),
        (squares(100, 2), 10, TouchRule.EDGE, 60),
    ],
    ids=["9 x 9 stacked", "30 x 30", "6 x 6 of four", "12 x 12 of four", "20 x 20 of five", "two"],
)
def test_without_a_touch_where_that_can_be(
    units: tuple[WallUnit, ...], size: int, rule: TouchRule, looks: int
) -> None:
    found = laid(Asked(units, size, size, rules=Rules(touch=rule)), looks)
    assert found.touches == found.least == 0
    assert found.is_least


def test_three_fabrics_at_points_come_to_the_bound_and_then_it_ends() -> None:
    # N002 (c): 13, and no laying of three fabrics has fewer.
    found = list(islice(search(Asked(squares(36, 3), 6, 6, rules=CORNER)), 2_000))
    assert found[-1].touches == found[-1].least == 13
    assert len(found) < 2_000


@pytest.mark.parametrize("rule", TouchRule)
@pytest.mark.parametrize(
    ("units", "rows", "columns"),
    [
        (squares(12, 3), 3, 4),
        (squares(20, 4), 4, 5),
        (made("hourglass", 9, 3), 3, 3),
        (made("stacked-four-patch", 4, 3), 2, 2),
        (made("nine-patch", 6, 4), 2, 3),
        (made("flying-geese-four", 6, 3), 3, 2),
    ],
    ids=["12 squares", "20 squares", "hourglass", "stacked", "nine-patch", "geese"],
)
def test_on_small_walls_it_comes_to_what_the_exact_solver_proves(
    units: tuple[WallUnit, ...], rows: int, columns: int, rule: TouchRule
) -> None:
    exact = solved(units, rows, columns, rule, 60)
    assert exact.touches == exact.least
    found = laid(Asked(units, rows, columns, rules=Rules(touch=rule)), 150)
    assert found.least <= exact.least
    assert found.touches == exact.touches


def test_what_is_locked_stays_unit_and_turn_and_the_rest_is_laid_round_it() -> None:
    units = made("stacked-four-patch", 30, 6)
    begun = laid_anyhow(units, 5, 5, 2)
    locked: frozenset[At] = frozenset({(1, 1), (3, 3), (5, 2)})
    found = laid(Asked(units, 5, 5, begun=begun, locked=locked), 20)
    for at in locked:
        assert found.laying.at(at) == begun.at(at)
    assert found.touches < len(touches(begun, units))
    with pytest.raises(ValueError, match="locked"):
        search(Asked(units, 5, 5, locked=locked))
    with pytest.raises(ValueError, match="another layout"):
        search(Asked(units, 5, 6, begun=begun))


def test_it_goes_on_from_what_lies_there_and_is_never_worse() -> None:
    units = squares(36, 6)
    begun = laid(Asked(units, 6, 6), 5).laying
    assert next(search(Asked(units, 6, 6, begun=begun, spread=True))).laying == begun
    gap = begun.with_places([None, *begun.in_order[1:]])
    filled = next(search(Asked(units, 6, 6, begun=gap)))
    assert None not in filled.laying.in_order


def test_with_too_few_units_the_last_places_stay_empty() -> None:
    found = laid(Asked(squares(7, 3), 3, 3), 5)
    assert [put is None for put in found.laying.in_order] == [False] * 7 + [True] * 2
    assert found.touches == 0


def test_on_point_it_lays_every_unit_between_too() -> None:
    found = laid(Asked(squares(13, 3), 3, 3, SetOnPoint("linen"), CORNER), 40)
    assert sorted(put.unit for put in found.laying.in_order if put) == list(range(13))


def test_units_of_one_stack_are_laid_apart_and_the_border_s_fabric_inside() -> None:
    units = made("stacked-four-patch", 36, 12)
    rules = Rules(rim="A", stacks=True)
    before = laid(Asked(units, 6, 6), 1)
    assert touches(before.laying, units, rules) != ()
    assert laid(Asked(units, 6, 6, rules=rules), 60).touches == 0


def test_turns_that_are_not_allowed_are_not_made() -> None:
    upright = tuple(replace(unit, turns=(0,)) for unit in made("stacked-four-patch", 16, 5))
    found = laid(Asked(upright, 4, 4, rules=CORNER), 20)
    assert {put.turns for put in found.laying.in_order if put} == {0}


def by_plan(plan: Plan, rows: int = 8, columns: int = 8) -> tuple[Found, list[list[float]]]:
    units = toned(rows * columns)
    found = laid(Asked(units, rows, columns, plan=plan), 60)
    return found, values(found.laying, units)


def test_light_to_dark_goes_down_row_by_row() -> None:
    _, rows = by_plan(Plan.LIGHT_TO_DARK)
    assert all(min(above) >= max(below) for above, below in pairwise(rows))


def test_rings_are_darker_the_farther_out() -> None:
    _, rows = by_plan(Plan.RINGS)
    rings = [
        [rows[y][x] for y in range(8) for x in range(8) if min(y, x, 7 - y, 7 - x) == ring]
        for ring in range(4)
    ]
    assert all(max(outer) <= min(inner) for outer, inner in pairwise(rings))


def test_checkers_are_light_and_dark_by_turns() -> None:
    _, rows = by_plan(Plan.CHECKER)
    classes = [[rows[y][x] for y in range(8) for x in range(8) if (y + x) % 2 == c] for c in (0, 1)]
    assert min(classes[0]) >= max(classes[1])


def test_both_halves_mirror_each_other() -> None:
    found, rows = by_plan(Plan.MIRRORED, 6, 7)
    apart = [abs(row[x] - row[6 - x]) for row in rows for x in range(3)]
    # The best: values in order, two by two; only the six in the middle column go without a mate.
    assert fmean(apart) < 2.0
    assert found.misses < 0.02


def crowded(laying: Laying, units: tuple[WallUnit, ...]) -> int:
    """Places side by side of one family."""
    return sum(
        units[puts[here].unit].family == units[puts[link.other].unit].family
        for puts in [[put for put in laying.in_order if put]]
        for here, links in enumerate(laying.grid.links)
        for link in links
        if link.other > here
    )


def windows(laying: Laying, units: tuple[WallUnit, ...]) -> float:
    """How far the mean value of a 3 x 3 window is from that of the top, in the mean."""
    rows = values(laying, units)
    whole = fmean(value for row in rows for value in row)
    return fmean(
        abs(fmean(rows[y + dy][x + dx] for dy in range(3) for dx in range(3)) - whole)
        for y in range(len(rows) - 2)
        for x in range(len(rows[0]) - 2)
    )


@pytest.mark.parametrize("plan", [None, Plan.SCATTERED], ids=["spread", "scattered"])
def test_families_and_values_are_spread_evenly(plan: Plan | None) -> None:
    units = toned(64)
    found = laid(Asked(units, 8, 8, plan=plan, spread=True), 60)
    by_chance = [laid_anyhow(units, 8, 8, seed) for seed in range(20)]
    assert crowded(found.laying, units) < min(crowded(one, units) for one in by_chance) / 2
    assert windows(found.laying, units) < min(windows(one, units) for one in by_chance) / 2


def test_touches_come_before_values() -> None:
    units = tuple(replace(unit, value=float(n % 6)) for n, unit in enumerate(squares(36, 6)))
    # By value alone each row would be of one fabric.
    found = laid(Asked(units, 6, 6, plan=Plan.LIGHT_TO_DARK), 60)
    assert found.touches == 0
    rows = values(found.laying, units)
    assert fmean(rows[0]) > fmean(rows[2]) > fmean(rows[5])


def test_what_is_said_to_be_missed_is_counted_anew_the_same() -> None:
    from sewalong.wall.laying.plans import Tones

    units = toned(30)
    asked = Asked(units, 5, 5, plan=Plan.MIRRORED, spread=True)
    found = laid(asked, 10)
    tones = Tones(found.laying.grid, 30, units, asked.plan, spread=True)
    placed = {put.unit for put in found.laying.in_order if put}
    over = [Put(number) for number in range(30) if number not in placed]
    assert found.misses == pytest.approx(tones.total([*found.laying.in_order, *over]))
    assert Counter(put.unit for put in found.laying.in_order if put).most_common(1)[0][1] == 1
