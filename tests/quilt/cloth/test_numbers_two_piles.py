"""Methods that begin with two unlike piles: the scarcer decides, judged by trying every order."""

from __future__ import annotations

from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.piecing.catalogue import method, method_ids
from sewalong.piecing.method import Method
from sewalong.quilt.layouts.yield_of_method import made_by_stage, pieces_for, units_from

TWO_PILES = [id for id in method_ids() if len(method(id).starts) == 2]


def most_by_trying(one: Method, pieces: dict[str, int]) -> int:
    """The most units of any order in which the stages can be done."""
    piles = [pile.id for pile in one.piles]

    @cache
    def best(lying: tuple[int, ...]) -> int:
        most = lying[piles.index(one.unit)]
        for stage in one.stages:
            left = list(lying)
            for taken in stage.takes:
                left[piles.index(taken.pile)] -= taken.count
            if min(left) >= 0:
                left[piles.index(stage.makes.pile)] += stage.makes.count
                most = max(most, best(tuple(left)))
        return most

    return best(tuple(pieces.get(pile, 0) for pile in piles))


def test_10_large_and_33_small_squares_make_32_geese_and_every_stage_says_so() -> None:
    geese = method("flying-geese-four")
    have = {"large-square": 10, "small-square": 33}
    made = {one.stage: one for one in made_by_stage(geese, have)}
    # Four small squares to a large one: 8 large are used, not 10.
    assert units_from(geese, have) == 32
    assert (made["trim"].made, made["cut-again"].made, made["pair"].made) == (32, 32, 8)
    assert made["pair"].over == {"large-square": 2}
    assert made["add-corner"].over == {"small-square": 1}


def test_33_small_squares_finish_8_squares_with_flipped_corners() -> None:
    flipped = method("flipped-corners")
    have = {"large-square": 10, "small-square": 33}
    made = {one.stage: one for one in made_by_stage(flipped, have)}
    assert units_from(flipped, have) == made["press-open"].made == 8
    assert made["lay"].over == {"large-square": 2, "marked-square": 1}


@pytest.mark.parametrize("id", ["flying-geese-four", "flipped-corners"])
@given(large=st.integers(0, 3), small=st.integers(0, 11))
def test_no_order_of_stages_makes_more_and_the_stages_make_as_many(
    id: str, large: int, small: int
) -> None:
    one = method(id)
    have = {"large-square": large, "small-square": small}
    most = most_by_trying(one, have)
    assert units_from(one, have) == most
    assert made_by_stage(one, have)[-1].made == most


@pytest.mark.parametrize("id", TWO_PILES)
@given(first=st.integers(0, 60), second=st.integers(0, 60))
def test_the_last_stage_makes_what_is_promised(id: str, first: int, second: int) -> None:
    one = method(id)
    have = dict(zip(one.starts, (first, second), strict=True))
    units = units_from(one, have)
    assert made_by_stage(one, have)[-1].made == units
    need, more = pieces_for(one, units), pieces_for(one, units + 1)
    assert all(need[pile] <= have[pile] for pile in one.starts)
    assert any(more[pile] > have[pile] for pile in one.starts)


@pytest.mark.parametrize("id", method_ids())
@given(st.lists(st.integers(0, 40), min_size=3, max_size=3))
def test_nothing_is_lost_or_made_of_nothing(id: str, counts: list[int]) -> None:
    one = method(id)
    have = dict(zip(one.starts, counts, strict=False))
    made = made_by_stage(one, have)
    # What was taken of every pile is what came into it, less what is over.
    came = {pile.id: have.get(pile.id, 0) for pile in one.piles}
    over = dict.fromkeys(came, 0)
    taken = dict.fromkeys(came, 0)
    for batch in made:
        stage = one.stage(batch.stage)
        times, rest = divmod(batch.made, stage.makes.count)
        assert rest == 0
        came[stage.makes.pile] += batch.made
        for pieces in stage.takes:
            taken[pieces.pile] += times * pieces.count
        over.update(batch.over)
    for pile in came:
        if pile != one.unit:
            assert came[pile] == taken[pile] + over[pile]
