"""Joining in pairs: the seams, their levels, and what can be sewn next."""

from __future__ import annotations

from math import ceil, log2

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.progress.joining.join_order import join_tree, levels
from sewalong.progress.joining.next_joins import joining, pieces
from sewalong.progress.record.joined_rows import unnumbered
from tests.progress import every_act as c
from tests.progress.building import a_quilt, all_units, go_on, opening, play, refusal


def test_twelve_rows_are_eleven_seams_in_four_levels() -> None:
    # Q118, lansdownelife.com: "12 rows: 11 seams either way; in pairs the longest chain
    # handled is halved until the last join; levels = 4."
    tree = join_tree(12)
    assert len(tree) == 11
    assert levels(12) == 4
    assert max(join.level for join in tree) == 4
    assert [(join.first, join.second) for join in tree if join.level == 1] == [
        (1, 2), (3, 4), (5, 6), (7, 8), (9, 10), (11, 12),
    ]  # fmt: skip
    last = tree[-1]
    assert (last.above, last.below) == ((1, 6), (7, 12))


@given(st.integers(1, 100))
def test_every_seam_comes_once_and_none_is_more(rows: int) -> None:
    seams = sorted((join.first, join.second) for join in join_tree(rows))
    assert seams == [(row, row + 1) for row in range(1, rows)]


@given(st.integers(2, 100))
def test_as_few_levels_as_halving_takes_and_no_heavy_piece_before_the_last(rows: int) -> None:
    tree = join_tree(rows)
    assert levels(rows) == ceil(log2(rows)) == max(join.level for join in tree)
    assert all(join.rows <= (rows + 1) // 2 + 1 for join in tree[:-1])
    assert tree[-1].rows == rows


@given(st.integers(2, 60))
def test_sewn_in_its_order_each_join_takes_two_whole_pieces(rows: int) -> None:
    runs = {(row, row) for row in range(1, rows + 1)}
    for join in join_tree(rows):
        runs.remove(join.above)
        runs.remove(join.below)
        runs.add((join.above[0], join.below[1]))
    assert runs == {(1, rows)}


def test_the_next_joins_are_the_pairs_then_the_fours() -> None:
    quilt = a_quilt(pieces=64, rows=5, columns=6)
    state, record = play(quilt, *all_units(quilt), c.Count("sew-rows", 5))
    now = joining(state)
    assert (now.seams, now.done, now.can, now.levels) == (4, 0, 4, 3)
    assert [(join.first, join.second) for join in now.joins] == [(1, 2), (3, 4)]
    assert now.lines == (
        "4 seams to go.",
        "Join R1 to R2.",
        "Join R3 to R4.",
        "Joined so, two by two, no row goes under the needle more than 3 times.",
    )
    state = go_on(state, record, c.Count("join-rows"))
    assert joining(state).joins == ()
    assert "counted without numbers" in joining(state).lines[1]
    state = go_on(state, record, c.Undo(), c.JoinRows(2, 1), c.JoinRows(3, 4))
    assert pieces(state) == ((1, 2), (3, 4), (5, 5))
    assert joining(state).lines[1] == "Join R2 to R3: rows 1 and 2 to rows 3 and 4."
    state = go_on(state, record, c.JoinRows(2, 3))
    assert joining(state).lines[0] == "1 seam to go."
    assert joining(state).lines[1] == "Join R4 to R5: rows 1 to 4 to row 5."
    state = go_on(state, record, c.JoinRows(5, 4))
    assert joining(state).lines == ("All 5 rows are joined.",)
    assert state.done["join-rows"] == 4


def test_rows_joined_in_an_order_of_her_own_are_followed() -> None:
    quilt = a_quilt(pieces=64, rows=5, columns=6)
    state, _ = play(quilt, *all_units(quilt), c.Count("sew-rows", 5), c.JoinRows(2, 3))
    assert pieces(state) == ((1, 1), (2, 3), (4, 4), (5, 5))
    assert [(join.first, join.second) for join in joining(state).joins] == [(1, 2), (3, 4)]


def test_only_rows_that_are_sewn_are_offered() -> None:
    quilt = a_quilt(pieces=64, rows=5, columns=6)
    state, record = play(quilt, *all_units(quilt), c.Count("sew-rows", 3))
    now = joining(state)
    assert [(join.first, join.second) for join in now.joins] == [(1, 2)]
    assert now.lines[-1] == "That is if the rows are sewn from row 1 on, else the tags decide."
    state = go_on(state, record, c.JoinRows(1, 2))
    assert joining(state).lines == (
        "3 seams to go.",
        "Sew the next row first: rows are joined two by two.",
    )


@pytest.mark.parametrize(("first", "second"), [(1, 3), (2, 2), (4, 1)])
def test_rows_that_are_no_neighbours_are_refused(first: int, second: int) -> None:
    quilt = a_quilt(pieces=64, rows=5, columns=6)
    state, _ = play(quilt, *all_units(quilt), c.Count("sew-rows", 5))
    assert "not neighbours" in refusal(state, c.JoinRows(first, second))


def test_a_top_of_one_row_has_nothing_to_join() -> None:
    quilt = a_quilt(pieces=60, rows=1, columns=6)
    state, _ = play(quilt)
    now = joining(state)
    assert now.lines == ("One row is the whole top: there is nothing to join.",)
    assert (now.seams, now.done, now.can, now.levels) == (0, 0, 0, 0)


def test_a_top_of_two_rows_has_one_seam() -> None:
    quilt = a_quilt(pieces=60, rows=2, columns=6)
    state, record = play(quilt, *all_units(quilt), c.Count("sew-rows", 2))
    first, *others = joining(state).lines
    assert first == "1 seam to go."
    assert others == ["Join R1 to R2."]
    state = go_on(state, record, c.JoinRows(1, 2))
    assert joining(state).lines == ("All 2 rows are joined.",)


def test_rows_joined_one_after_another_are_one_piece() -> None:
    quilt = a_quilt(pieces=64, rows=5, columns=6)
    state, _ = play(quilt, *all_units(quilt), c.Count("sew-rows", 5),
                    c.JoinRows(1, 2), c.JoinRows(2, 3), c.JoinRows(3, 4))  # fmt: skip
    assert pieces(state) == ((1, 4), (5, 5))
    assert joining(state).lines[1] == "Join R4 to R5: rows 1 to 4 to row 5."


def test_seams_counted_without_numbers_are_told_one_or_several() -> None:
    quilt = a_quilt(pieces=64, rows=5, columns=6)
    state, record = play(quilt, *all_units(quilt), c.Count("sew-rows", 5), c.Count("join-rows"))
    assert "1 of those sewn was counted" in joining(state).lines[1]
    state = go_on(state, record, c.Count("join-rows", 2))
    assert "3 of those sewn were counted" in joining(state).lines[1]


def test_before_a_row_is_sewn_rows_come_first() -> None:
    quilt = a_quilt(pieces=64, rows=5, columns=6)
    state, _ = play(quilt, *all_units(quilt), c.Count("sew-rows", 1))
    assert joining(state).lines == ("4 seams to go.", "Sew more rows first.")


def test_there_is_no_row_before_the_first_and_none_after_the_last() -> None:
    state, _ = play(a_quilt(pieces=64, rows=5, columns=6))
    for first, second, row in ((0, 1, 0), (5, 6, 6)):
        assert refusal(state, c.JoinRows(first, second)) == (
            f"There is no row {row}: the rows are numbered from 1 to 5. "
            "Read the tag again, the right way up."
        )


def test_rows_that_are_not_neighbours_are_told_where_they_go() -> None:
    state, _ = play(a_quilt(pieces=64, rows=5, columns=6))
    for first, second, goes in (
        (1, 3, "Row 1 goes to 2, row 3 to 2 or 4."),
        (2, 5, "Row 2 goes to 1 or 3, row 5 to 4."),
    ):
        assert goes in refusal(state, c.JoinRows(first, second))


def test_a_quilt_of_one_row_has_no_seam_whose_rows_nobody_said() -> None:
    assert unnumbered(opening(a_quilt(pieces=16, rows=1, columns=8))) == 0
