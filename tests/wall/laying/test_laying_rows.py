"""Rows turned end for end, put in order again, and exchanged after they were pressed."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations, pairwise, permutations, product
from random import Random

import pytest

from sewalong.progress.joining.exchanged_rows import exchanged
from sewalong.quilt.quilt import Target
from sewalong.wall.laying.edges import TouchRule, turned_sides
from sewalong.wall.laying.laying import Laying, Rules, touches
from sewalong.wall.laying.pressing import not_nesting, pressed_anew
from sewalong.wall.laying.rows import (
    MOST_PROVED,
    Row,
    end_for_end,
    order_of_rows,
    perhaps_turned,
    touches_if_turned,
    with_row_turned,
)
from sewalong.wall.laying.search import Asked, laid
from sewalong.wall.laying.units import WallUnit
from tests.wall.laying.walls import laid_anyhow, made, squares, typed

N008 = "ABCDE / CDEAB / EABCD / BCDEA"


def test_a_row_turned_end_for_end_shows_as_new_touches() -> None:
    # N008: row 1 or 4 turned gives 1 touch, row 2 or 3 turned 2.
    units, laying = typed(N008)
    assert touches(laying, units) == ()
    for row, new in ((1, 1), (2, 2), (3, 2), (4, 1)):
        assert len(touches_if_turned(laying, units, Rules(), row)) == new
        turned = with_row_turned(laying, row)
        assert perhaps_turned(turned, units, Rules())[0] == (row, new)
        assert with_row_turned(turned, row) == laying
    with pytest.raises(KeyError):
        with_row_turned(laying, 5)


def test_a_turned_row_has_its_units_in_the_other_order_each_half_turned() -> None:
    units = made("stacked-four-patch", 6, 8)
    laying = laid_anyhow(units, 2, 3, 4)
    row = laying.places[0]
    turned = end_for_end(row)
    assert [put.unit for put in turned if put] == [put.unit for put in row if put][::-1]
    assert all(
        a and b and (a.turns - b.turns) % 4 == 2 for a, b in zip(turned, row[::-1], strict=True)
    )


def between(upper: Row, lower: Row, units: tuple[WallUnit, ...], rules: Rules) -> int:
    """Touches of two rows with each other, laid alone."""
    laying = Laying(2, len(upper), (upper, lower))
    return sum(
        len({row for row, _ in touch.places}) == 2 for touch in touches(laying, units, rules)
    )


def at_side(row: Row, side: int, units: tuple[WallUnit, ...], fabric: str | None) -> int:
    """Units of a row that show this fabric along one of their sides."""
    return sum(
        any(span.fabric == fabric and span.end > span.start for span in sides[side])
        for put in row
        if put is not None
        for sides in [turned_sides(units[put.unit].sides, put.turns)]
    )


@pytest.mark.parametrize("turning", [False, True], ids=["as they lie", "either way round"])
@pytest.mark.parametrize(
    ("rows", "rules"),
    [(1, Rules()), (5, Rules(rim="A")), (4, Rules(touch=TouchRule.CORNER)), (8, Rules())],
    ids=["one", "five and a rim", "four by corners", "eight"],
)
def test_the_order_is_the_best_of_all_permutations_and_so_many_are_as_good(
    rows: int, rules: Rules, turning: bool
) -> None:
    if turning:
        rows = min(rows, 5)
    for seed in range(2):
        units = made("stacked-four-patch", rows * 3, 4, seed)
        lost = laid_anyhow(units, rows, 3, seed).places
        ways = [(n, row) for n, row in enumerate(lost)]
        if turning:
            ways += [(n, end_for_end(row)) for n, row in enumerate(lost)]
        joins = {
            (a, b): between(ways[a][1], ways[b][1], units, rules)
            for a, b in permutations(range(len(ways)), 2)
            if ways[a][0] != ways[b][0]
        }
        upper = [at_side(row, 0, units, rules.rim) for _, row in ways]
        lower = [at_side(row, 2, units, rules.rim) for _, row in ways]
        every = [
            upper[order[0]] + sum(joins[pair] for pair in pairwise(order)) + lower[order[-1]]
            for rows_in_order in permutations(range(rows))
            for order in product(*([n, n + rows][: 1 + turning] for n in rows_in_order))
        ]
        found = order_of_rows(lost, units, rules, turning=turning)
        assert found.is_least
        assert found.touches == min(every)
        assert found.as_good == every.count(min(every))
        lying = [n + rows * turned for n, turned in zip(found.order, found.turned, strict=True)]
        assert upper[lying[0]] + sum(joins[p] for p in pairwise(lying)) + lower[lying[-1]] == min(
            every
        )


def test_rows_of_a_good_wall_are_found_again_and_the_claim_is_no_larger_than_that() -> None:
    units = squares(60, 7)
    good = laid(Asked(units, 10, 6), 30)
    assert good.touches == 0
    lost = Random(3).sample(good.laying.places, 10)
    found = order_of_rows(lost, units, Rules())
    assert found.touches == 0
    assert found.is_least
    assert found.as_good is not None
    assert found.as_good >= 2


def test_beyond_so_many_rows_an_order_is_found_and_nothing_is_claimed() -> None:
    rows = MOST_PROVED + 4
    units = squares(rows * 6, 9)
    good = laid(Asked(units, rows, 6), 40)
    lost = Random(4).sample(good.laying.places, rows)
    found = order_of_rows(lost, units, Rules())
    assert sorted(found.order) == list(range(rows))
    assert not found.is_least
    assert found.as_good is None
    lying = [lost[n] for n in found.order]
    assert found.touches == sum(between(a, b, units, Rules()) for a, b in pairwise(lying))
    assert found.touches <= 2
    assert order_of_rows(lost, units, Rules()) == found


def test_rows_of_different_lengths_have_no_order() -> None:
    _, laying = typed("ABC")
    with pytest.raises(ValueError, match="one length"):
        order_of_rows([laying.places[0], laying.places[0][:2]], (), Rules())
    with pytest.raises(ValueError, match="one length"):
        order_of_rows([], (), Rules())


@pytest.mark.parametrize(
    ("first", "second", "joins", "crossings"), [(3, 6, 4, 20), (3, 5, 0, 0), (2, 3, 2, 10)]
)
def test_exchanged_rows_of_the_same_parity_still_nest(
    first: int, second: int, joins: int, crossings: int
) -> None:
    # N009: 8 rows of 6.
    order = list(range(1, 9))
    order[first - 1], order[second - 1] = second, first
    found = pressed_anew(order, 6)
    nests = {place for place, row in enumerate(order, start=1) if (row - place) % 2 == 0}
    ridge_on_ridge = tuple((p, p + 1) for p in range(1, 8) if (p in nests) != (p + 1 in nests))
    assert found.collide == ridge_on_ridge
    assert (len(found.collide), found.crossings) == (joins, crossings)
    assert found.anew == (
        () if joins == 0 else (second, first) if order.index(second) < order.index(first) else ()
    )


@pytest.mark.parametrize("rows", [1, 2, 3, 5])
def test_so_few_rows_are_pressed_anew_that_no_fewer_let_all_nest(rows: int) -> None:
    for order in permutations(range(1, rows + 1)):
        found = pressed_anew(order, 4)
        fewest = next(
            n
            for n in range(rows + 1)
            for chosen in combinations(order, n)
            if all(
                ((a % 2) ^ (a in chosen)) != ((b % 2) ^ (b in chosen)) for a, b in pairwise(order)
            )
        )
        assert len(found.anew) == fewest
        ways = [(row % 2) ^ (row in found.anew) for row in order]
        assert all(a != b for a, b in pairwise(ways))


def test_it_says_the_same_of_two_rows_as_what_was_said_of_them_before() -> None:
    for first, second in combinations(range(1, 8), 2):
        order = list(range(1, 8))
        order[first - 1], order[second - 1] = second, first
        found = pressed_anew(order, 5)
        assert found.crossings == exchanged(Target(7, 5), first, second).crossings
    with pytest.raises(ValueError, match="named once"):
        pressed_anew([1, 1, 2], 3)


def test_rows_that_would_touch_less_are_those_of_all_touches_counted_anew() -> None:
    for seed in range(8):
        units = made("stacked-four-patch", 24, 5, seed)
        rules = Rules(touch=list(TouchRule)[seed % 2], rim="B", stacks=True)
        laying = laid_anyhow(units, 4, 6, seed)
        now = len(touches(laying, units, rules))
        fewer = {
            row: now - len(touches(with_row_turned(laying, row), units, rules))
            for row in range(1, 5)
        }
        wanted = {row: n for row, n in fewer.items() if n > 0}
        assert dict(perhaps_turned(laying, units, rules)) == wanted


@pytest.mark.parametrize("rows", [1, 2, 3, 4, 5])
def test_rows_pressed_anew_are_so_few_that_no_fewer_let_every_row_nest(rows: int) -> None:
    # Exhaustive: each row was pressed one way (True) or the other, or is not sewn yet (None).
    for ways in product((True, False, None), repeat=rows):
        pressed = [None if way is None else 1 if way else 2 for way in ways]
        found = not_nesting(pressed)
        assert found.collide == tuple(
            (n, n + 1)
            for n, (one, other) in enumerate(pairwise(ways), start=1)
            if one is not None and one == other
        )
        sewn = [n for n, way in enumerate(ways, start=1) if way is not None]
        fewest = next(
            n for n in range(rows + 1) for anew in combinations(sewn, n) if _can_nest(ways, anew)
        )
        assert len(found.anew) == fewest
        assert _can_nest(ways, found.anew)
        turned = [None if one is None else -one for one in pressed]
        assert not_nesting(turned).collide == found.collide, "all end for end, and nothing changes"


def _can_nest(ways: Sequence[bool | None], anew: Sequence[int]) -> bool:
    """Whether rows not sewn yet can be pressed so that every two that meet go opposite ways."""
    now = [way if n not in anew else not way for n, way in enumerate(ways, start=1)]
    return any(
        all(a is not b for a, b in pairwise(full))
        and all(n in (None, f) for n, f in zip(now, full, strict=True))
        for full in product((True, False), repeat=len(ways))
    )


def test_a_row_turned_end_for_end_no_longer_nests_with_its_neighbours() -> None:
    assert not_nesting([1, 2, -3, 4]).collide == ((2, 3), (3, 4))
    assert not_nesting([1, 2, -3, 4]).anew == (3,)
    # Of as few either way, those that lie where others were pressed for.
    assert not_nesting([2, 2]).anew == (1,)
    assert not_nesting([1, 1]).anew == (2,)
    # N009 (a): rows 3 and 6 of 8 exchanged collide at 4 joins.
    assert len(not_nesting([1, 2, 6, 4, 5, 3, 7, 8]).collide) == 4
    assert not_nesting([1, 2, 6, 4, 5, 3, 7, 8]).anew == (3, 6)
