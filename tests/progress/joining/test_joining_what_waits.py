"""What is said to wait at joining is what lies there: rows, pairs of rows, larger pieces.

N rows and n seams are N - n pieces, whichever rows were joined.
"""

from __future__ import annotations

import pytest

from sewalong.progress.joining.join_order import join_tree
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.state import State
from sewalong.progress.resuming.resume_facts import next_thing
from tests.progress import every_act as c
from tests.progress.building import a_quilt, all_units, play

EIGHT = a_quilt("plain-squares", 48, rows=8, columns=6)
MADE = all_units(EIGHT)


def waits(state: State) -> str:
    line = plan(state).line("join-rows")
    return line.waiting_noun.count(line.waiting) if line.waiting else "nothing"


def joined(*pairs: tuple[int, int], sewn: int = 8) -> State:
    acts = [c.JoinRows(first, second) for first, second in pairs]
    return play(EIGHT, *MADE, c.Count("sew-rows", sewn), *acts)[0]


LIES_THERE = {
    "rows": ((), "8 rows"),
    "pairs of rows": (((1, 2), (3, 4), (5, 6), (7, 8)), "4 pairs of rows"),
    "a pair and rows": (((1, 2),), "7 pieces of 1 or 2 rows"),
    "pieces of four": (
        ((1, 2), (3, 4), (5, 6), (7, 8), (2, 3), (6, 7)),
        "2 pieces of 4 rows",
    ),
    "a piece of four and pairs": (
        ((1, 2), (3, 4), (5, 6), (7, 8), (2, 3)),
        "3 pieces of 2 to 4 rows",
    ),
    "one after another": (((1, 2), (2, 3), (3, 4)), "5 pieces of 1 to 4 rows"),
    "the whole top": (tuple((n, n + 1) for n in range(1, 8)), "nothing"),
}


@pytest.mark.parametrize(("pairs", "words"), LIES_THERE.values(), ids=LIES_THERE)
def test_what_lies_there_is_what_waits(pairs: tuple[tuple[int, int], ...], words: str) -> None:
    assert waits(joined(*pairs)) == words


def test_rows_sewn_so_far_wait_in_their_pairs() -> None:
    assert waits(joined((1, 2), (3, 4), sewn=5)) == "3 pieces of 1 or 2 rows"
    assert waits(joined((1, 2), sewn=2)) == "1 pair of rows"


def test_joined_without_numbers_only_how_many_pieces_there_are_is_known() -> None:
    state, _ = play(EIGHT, *MADE, c.Count("sew-rows", 8), c.Count("join-rows", 4))
    assert waits(state) == "4 pieces (8 rows in all)"
    state, _ = play(EIGHT, *MADE, c.Count("sew-rows", 8), c.JoinRows(1, 2), c.Count("join-rows"))
    assert waits(state) == "6 pieces (8 rows in all)"


def test_the_next_thing_is_said_of_the_pieces_there_are() -> None:
    line = plan(joined((1, 2), (3, 4), (5, 6), (7, 8))).line("join-rows")
    assert next_thing(line) == "Join rows (at the machine): 4 pairs of rows wait; 3 seams to go."


@pytest.mark.parametrize("rows", range(2, 24))
def test_every_join_in_pairs_leaves_one_piece_less(rows: int) -> None:
    quilt = a_quilt("plain-squares", 2 * rows, rows=rows, columns=2)
    acts: list[c.Act] = [*all_units(quilt), c.Count("sew-rows", rows)]
    for seams, join in enumerate(join_tree(rows), start=1):
        acts.append(c.JoinRows(join.first, join.second))
        line = plan(play(quilt, *acts)[0]).line("join-rows")
        assert line.waiting == (rows - seams if seams < rows - 1 else 0)
