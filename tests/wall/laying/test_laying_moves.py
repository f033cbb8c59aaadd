"""What moves mend and cost, against counting all touches anew; the fewest that mend all."""

from __future__ import annotations

from itertools import combinations
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from sewalong.quilt.setting import SetOnPoint
from sewalong.wall.laying.blobs import Blob, blobs, family_blobs, value_blobs
from sewalong.wall.laying.board import Board
from sewalong.wall.laying.edges import TouchRule
from sewalong.wall.laying.laying import Laying, Rules, touches
from sewalong.wall.laying.mending import mend
from sewalong.wall.laying.move_words import move_words, moves_words, turn_words
from sewalong.wall.laying.moves import (
    Move,
    best_exchange,
    carry_out,
    cost,
    effect,
    exchanges,
    moved,
    turns,
    worst_spots,
)
from sewalong.wall.laying.search import Asked, laid
from sewalong.wall.laying.units import WallUnit
from tests.wall.laying.walls import laid_anyhow, made, squares, typed

MAZE = "ABCDE / CDEAB / EABBC / DCADE"
"""N006: one touch, row 3, B in columns 3 and 4; exactly 8 of the 160 swaps of unlike squares mend."""


@settings(max_examples=60, deadline=None)
@given(
    method=st.sampled_from(["plain-squares", "stacked-four-patch", "nine-patch"]),
    rule=st.sampled_from(TouchRule),
    seed=st.integers(0, 999),
)
def test_what_a_move_costs_is_what_all_touches_counted_anew_say(
    method: str, rule: TouchRule, seed: int
) -> None:
    chance = Random(seed)
    units = made(method, 14, 4, seed)
    rules = Rules(touch=rule, rim="B", stacks=True)
    laying = laid_anyhow(units, 3, 4, seed)
    board = Board(laying, units, rules)
    one, other = chance.sample(range(14), 2)
    one, other = min(one, other), max(one, other)
    moves = [*turns(board, one), *exchanges(board, one, other)] if one < 12 else []
    now = touches(laying, units, rules)
    for move in moves:
        then = touches(moved(laying, move), units, rules)
        assert cost(board, move) == len(then) - len(now)
        found = effect(board, move)
        assert (found.before, found.after) == (len(now), len(then))
        assert set(found.mends) == set(now) - set(then)
        assert set(found.makes) == set(then) - set(now)
        assert board.as_laying() == laying
    if one < 12:
        more, best = best_exchange(board, one, other)
        assert (
            more == cost(board, best) == min(cost(board, m) for m in exchanges(board, one, other))
        )
        carry_out(board, best)
        assert board.as_laying() == moved(laying, best)
        assert board.touches() == len(now) + more


def test_exactly_eight_of_the_swaps_mend_the_maze() -> None:
    units, laying = typed(MAZE)
    board = Board(laying, units, Rules())
    unlike = [
        (one, other)
        for one, other in combinations(range(20), 2)
        if units[one].plain != units[other].plain
    ]
    assert len(unlike) == 160
    mending = [pair for pair in unlike if best_exchange(board, *pair)[0] == -1]
    assert len(mending) == 8
    places = board.grid.places
    named = {(places[one], places[other]) for one, other in mending}
    assert ((1, 4), (3, 3)) in named
    assert ((3, 4), (4, 4)) in named


def test_one_swap_mends_the_maze_and_is_said_for_somebody_kneeling() -> None:
    units, laying = typed(MAZE)
    found = mend(laying, units, Rules())
    assert found.left == ()
    assert found.fewest
    (move,) = found.moves
    assert moved(laying, move) == found.after
    assert move.other is not None
    (row, place), (other_row, other_place) = move.at, move.other
    assert move_words(move, laying, units) == (
        f"Row {row} place {place} with row {other_row} place {other_place}."
    )


def fewest_by_all_ways(
    laying: Laying, units: tuple[WallUnit, ...], rules: Rules, most: int
) -> int | None:
    """The fewest moves that mend all, every move tried after every other."""
    seen = {laying}
    level = [laying]
    for moves in range(most + 1):
        if any(not touches(one, units, rules) for one in level):
            return moves
        grown = set()
        for one in level:
            board = Board(one, units, rules)
            slots = range(len(board.lies))
            ways = [move for slot in slots[: board.places] for move in turns(board, slot)]
            ways += [
                move for a, b in combinations(slots, 2) if a < board.places
                for move in exchanges(board, a, b)
            ]  # fmt: skip
            grown |= {moved(one, move) for move in ways}
        level = list(grown - seen)
        seen |= grown
    return None


@pytest.mark.parametrize("seed", range(6))
@pytest.mark.parametrize("kind", ["squares", "hourglass"])
def test_the_moves_are_as_few_as_all_ways_say(kind: str, seed: int) -> None:
    units = squares(9, 3) if kind == "squares" else made("hourglass", 4, 3, seed)
    laying = laid_anyhow(units, *((2, 4) if kind == "squares" else (2, 2)), seed)
    found = mend(laying, units, Rules())
    true = fewest_by_all_ways(laying, units, Rules(), 2)
    if true is None:
        assert found.left or len(found.moves) > 2
        assert found.at_least <= len(found.moves) or found.left
    else:
        assert len(found.moves) == true
        assert found.fewest
    after = laying
    for move in found.moves:
        after = moved(after, move)
    assert after == found.after
    assert found.left == touches(after, units, Rules())


@pytest.mark.parametrize("rule", TouchRule)
def test_a_wall_that_was_good_is_good_again_after_no_more_moves_than_spoiled_it(
    rule: TouchRule,
) -> None:
    units = made("stacked-four-patch", 50, 14)
    rules = Rules(touch=rule)
    good = laid(Asked(units, 7, 7, rules=rules), 60)
    assert good.touches == 0
    board = Board(good.laying, units, rules)
    chance = Random(5)
    for _ in range(2):
        one, other = chance.sample(range(49), 2)
        carry_out(board, list(exchanges(board, one, other))[5])
    found = mend(board.as_laying(), units, rules)
    assert found.left == ()
    assert len(found.moves) <= 2


def test_what_is_locked_is_not_moved_and_what_cannot_be_mended_is_left() -> None:
    units, laying = typed("AAB")
    found = mend(laying, units, Rules())
    assert len(found.moves) == 1
    locked = frozenset({(1, 1), (1, 2)})
    stuck = mend(laying, units, Rules(), locked)
    assert stuck.moves == ()
    assert stuck.left == touches(laying, units)
    assert not stuck.fewest
    three, all_alike = typed("AAA")
    hopeless = mend(all_alike, three, Rules())
    assert len(hopeless.left) == 2
    assert not hopeless.fewest


def test_a_spare_is_brought_in_where_that_mends_and_is_allowed() -> None:
    squares_, laying = typed("AA")
    units = (*squares_, *typed("B")[0])
    found = mend(laying, units, Rules())
    assert found.moves == (Move((1, 1), 0, spare=2),)
    assert moves_words(found.moves, laying, units, {"B": "B moss"}) == (
        "Bring a spare of B moss to row 1 place 1; what lay there is a spare.",
    )
    assert mend(laying, units, Rules(), with_spares=False).left != ()


def test_the_worst_spots_come_in_order() -> None:
    units, laying = typed("AAB / CAC / BBC")
    board = Board(laying, units, Rules())
    assert worst_spots(board) == ((1, 2), (1, 1), (2, 2), (2, 3), (3, 1), (3, 2), (3, 3))
    spots = worst_spots(board)
    around = [board.around(board.slot(at)) for at in spots]
    assert around == sorted(around, reverse=True)


def test_moves_of_what_is_not_there_are_refused_and_change_nothing() -> None:
    units, laying = typed("AB")
    board = Board(laying, units, Rules())
    for move, wrong in (
        (Move((1, 3), 0), KeyError),
        (Move((1, 1), 0, (2, 1)), KeyError),
        (Move((1, 1), 0, spare=7), KeyError),
    ):
        with pytest.raises(wrong):
            cost(board, move)
    gap = Board(laying.with_places([None, laying.in_order[1]]), units, Rules())
    with pytest.raises(ValueError, match="nothing lies"):
        cost(gap, Move((1, 1), 1))
    assert board.as_laying() == laying


def test_a_quarter_is_said_by_where_an_edge_goes_and_never_by_hands() -> None:
    assert turn_words(0) == ""
    assert turn_words(2) == "turn {} half way round"
    assert turn_words(1).endswith("its edge towards row 1 comes towards the end of the row")
    assert turn_words(-1) == turn_words(3)
    assert turn_words(3).endswith("towards the start of the row")
    on_point = turn_words(1, SetOnPoint("linen"))
    assert on_point.endswith("its edge towards the start of the row comes towards the next row")
    units = made("stacked-four-patch", 4, 8)
    laying = laid_anyhow(units, 2, 2, 2)
    mine, theirs = laying.at((1, 1)), laying.at((2, 2))
    assert mine is not None
    assert theirs is not None
    assert (mine.turns, theirs.turns) == (1, 1)
    swap = Move((1, 1), (theirs.turns + 1) % 4, (2, 2), (mine.turns + 2) % 4)
    assert move_words(swap, laying, units) == (
        "Row 1 place 1 with row 2 place 2; turn the first half way round; turn the second a "
        "quarter: its edge towards row 1 comes towards the end of the row."
    )
    back = Move((1, 1), (theirs.turns + 3) % 4, (2, 2), (mine.turns + 3) % 4)
    assert move_words(back, laying, units).count("comes towards the start of the row") == 2
    turned = move_words(Move((1, 1), (mine.turns + 2) % 4), laying, units)
    assert turned == "Row 1 place 1: turn it half way round."
    for said in (move_words(swap, laying, units), turned):
        assert not {"left", "right", "clockwise"} & set(said.split())


def test_a_spare_of_several_fabrics_is_known_by_what_it_shows_towards_row_1() -> None:
    units = made("stacked-four-patch", 5, 8)
    laying = laid_anyhow(units[:4], 2, 2, 1)
    top = max(units[4].sides[3], key=lambda span: span.end - span.start).fabric
    said = move_words(Move((2, 1), 1, spare=4), laying, units, {top: f"{top} plum"})
    assert (
        said
        == f"Bring a spare with {top} plum towards row 1 to row 2 place 1; what lay there is a spare."
    )


def test_blobs_are_what_hangs_together_the_largest_first() -> None:
    units, laying = typed("DDLD / LDLL / DLLL / DDLD")
    words = [unit.plain for unit in units]
    assert blobs(laying, words, 2) == (
        Blob("L", ((1, 3), (2, 3), (2, 4), (3, 2), (3, 3), (3, 4), (4, 3))),
        Blob("D", ((1, 1), (1, 2), (2, 2))),
        Blob("D", ((3, 1), (4, 1), (4, 2))),
    )
    assert blobs(laying, words, 3) == blobs(laying, words, 2)[:1]
    at_points = blobs(laying, words, 3, TouchRule.CORNER)
    assert len(at_points) == 2
    assert blobs(laying, [None] * 16, 1) == ()


def test_blobs_by_family_and_by_the_five_values() -> None:
    units, laying = typed("ABC / DEF")
    known = tuple(
        replace(unit, family="red" if n < 2 else None, value=10.0 if n in (0, 1, 4) else 80.0)
        for n, unit in enumerate(units)
    )
    assert [blob.word for blob in family_blobs(laying, known, 1)] == ["red"]
    dark, light = value_blobs(laying, known, 1)[:2]
    assert (dark.word, dark.places) == ("dark", ((1, 1), (1, 2), (2, 2)))
    assert (light.word, light.places) == ("light", ((1, 3), (2, 3)))
