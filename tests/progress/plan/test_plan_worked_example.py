"""The worked example: common practice for packs of five-inch squares, 42 in a pack."""

from __future__ import annotations

import pytest

from sewalong.piecing.method import Pieces
from sewalong.progress.plan.plan import plan
from sewalong.quilt.quilt import Target
from tests.progress import every_act as c
from tests.progress.building import a_quilt, all_units, everything, go_on, opening, play

PACK = 42


def test_four_packs_of_42_become_42_four_patches_21_stacks_and_84_units() -> None:
    quilt = a_quilt(pieces=4 * PACK)
    state, _ = play(quilt, *all_units(quilt))
    assert state.done == {
        "pair": 84,
        "sew": 42,
        "press": 42,
        "stack": 21,
        "sew-around": 21,
        "cut-twice": 21,
        "press-open": 84,
        "sew-rows": 0,
        "join-rows": 0,
    }
    assert state.piles["unit"] == 84
    assert {pile for pile, n in state.piles.items() if n} == {"unit"}


@pytest.mark.parametrize("sewn", [False, True], ids=["before a stitch", "all units made"])
def test_nine_by_nine_leaves_3_spare_and_eight_by_ten_leaves_4(sewn: bool) -> None:
    quilt = a_quilt(pieces=4 * PACK)
    state, record = play(quilt, *(all_units(quilt) if sewn else ()))
    now = plan(state)
    assert (now.units.possible, now.units.spare, now.over, now.shortfall) == (84, 3, (), None)
    state = go_on(state, record, c.ChangeTarget(8, 10))
    now = plan(state)
    assert (now.units.possible, now.units.spare, now.over, now.shortfall) == (84, 4, (), None)


@pytest.mark.parametrize(
    ("packs", "four_patches", "stacks", "units", "over"),
    [
        (1, 10, 5, 20, Pieces("square", 2)),
        (2, 21, 10, 40, Pieces("four-patch", 1)),
    ],
)
def test_an_odd_number_of_packs_leaves_something_over(
    packs: int, four_patches: int, stacks: int, units: int, over: Pieces
) -> None:
    quilt = a_quilt(pieces=packs * PACK, rows=4, columns=5)
    fresh = plan(opening(quilt))
    assert (fresh.units.possible, fresh.over) == (units, (over,))
    state, _ = play(quilt, *all_units(quilt))
    assert state.done["sew"] == four_patches
    assert state.done["stack"] == stacks
    assert state.piles["unit"] == units


def test_one_pack_pairs_itself_to_the_end_and_the_odd_pair_is_said_to_be_over() -> None:
    quilt = a_quilt(pieces=PACK, rows=4, columns=5)
    state, _ = play(quilt, *all_units(quilt))
    assert plan(state).over == (Pieces("pair", 1),)
    assert state.piles["pair"] == 1


def test_what_is_over_is_named_as_it_will_lie_not_as_it_could_be_pressed() -> None:
    """A second pack leaves a four-patch over; pressed by hand, it is a pressed one."""
    quilt = a_quilt(pieces=2 * PACK, rows=4, columns=5)
    state, _ = play(quilt, *everything(quilt, "press"))
    assert plan(state).over == (Pieces("pressed-four-patch", 1),)


def test_one_pack_by_paired_squares_gives_84_units() -> None:
    quilt = a_quilt("paired-squares", pieces=PACK)
    assert plan(opening(quilt)).units.possible == 84
    state, _ = play(quilt, *all_units(quilt))
    assert (state.done["pair"], state.done["cut-twice"], state.piles["unit"]) == (21, 21, 84)


def test_four_spoiled_units_leave_nine_by_nine_one_short() -> None:
    quilt = a_quilt(pieces=4 * PACK)
    state, _record = play(quilt, *all_units(quilt), c.Spoil("unit", 4, "cut through the seam"))
    short = plan(state).shortfall
    assert short is not None
    assert short.units == 1
    assert short.pieces == (Pieces("square", 8),)
    assert short.spare_after == 3
    assert short.layouts[0] == Target(8, 10)


def test_eight_squares_more_make_one_stack_and_leave_3_spare() -> None:
    quilt = a_quilt(pieces=4 * PACK)
    state, record = play(
        quilt,
        *all_units(quilt),
        c.Spoil("unit", 4, "cut through the seam"),
        c.Find("square", 8, how="bought"),
    )
    now = plan(state)
    assert now.shortfall is None
    assert {line.stage.id: line.to_do for line in now.lines} == {
        "pair": 4,
        "sew": 2,
        "press": 2,
        "stack": 1,
        "sew-around": 1,
        "cut-twice": 1,
        "press-open": 1,
        "sew-rows": 9,
        "join-rows": 8,
    }
    state = go_on(
        state,
        record,
        c.Count("pair", 4),
        c.Count("sew", 2),
        c.Count("press", 2),
        c.Count("stack"),
        c.Count("sew-around"),
        c.Count("cut-twice"),
        c.Count("press-open", 4),
    )
    assert plan(state).units.spare == 3


def test_eight_by_ten_is_whole_with_the_80_left() -> None:
    quilt = a_quilt(pieces=4 * PACK)
    state, _ = play(
        quilt,
        *all_units(quilt),
        c.Spoil("unit", 4, "cut through the seam"),
        c.ChangeTarget(8, 10),
    )
    now = plan(state)
    assert now.shortfall is None
    assert (now.units.to_go, now.units.spare) == (0, 0)


@pytest.mark.parametrize("spoiled_at", ["pair", "four-patch", "stack", "sewn-stack", "cut-unit"])
def test_the_shortfall_shows_at_the_stage_where_it_happens(spoiled_at: str) -> None:
    """One spoiled piece of any pile costs a stack at most: 84 - 4 = 80 units, one short."""
    quilt = a_quilt(pieces=4 * PACK)
    stage = next(s for s in quilt.method.stages if s.makes.pile == spoiled_at)
    n = 4 if spoiled_at == "cut-unit" else 1
    state, _ = play(quilt, *everything(quilt, stage.id), c.Spoil(spoiled_at, n, "frayed"))
    short = plan(state).shortfall
    assert short is not None
    assert short.units == 1
    assert short.layouts[0] == Target(8, 10)
    squares = {"pair": 2, "four-patch": 4}.get(spoiled_at, 8)
    assert short.pieces == (Pieces("square", squares),)
    assert short.spare_after == 3
