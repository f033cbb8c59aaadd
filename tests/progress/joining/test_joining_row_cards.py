"""Row cards: they cannot be read upside down, and say of each row its edges, ends and pressing."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
from msgspec.structs import replace

from sewalong.progress.joining.press_directions import Way, press_words
from sewalong.progress.joining.row_cards import row_cards
from sewalong.progress.joining.row_tags import trap_pairs, upside_down
from sewalong.progress.record.state import State
from sewalong.progress.wall.wall_words import row_read
from sewalong.quilt.quilt import Target
from sewalong.quilt.setting import SetOnPoint
from tests.progress import every_act as c
from tests.progress.building import a_quilt, go_on, opening
from tests.progress.wall.test_wall_record import a_wall, sewn


def tall(rows: int) -> State:
    return opening(a_quilt(rows=rows, columns=3))


def test_no_two_cards_of_a_top_can_be_taken_for_each_other() -> None:
    """Q068: 6 and 9, 16 and 91, 66 and 99 read as one another; a tag that begins with a letter does
    not (practice/cases.jsonl, thebarefootheart.com, Checking blocks in)."""
    cards = row_cards(tall(100))
    assert len(cards) == 100
    for card in cards:
        assert re.fullmatch(r"R[0-9]+", card.label)
        assert card.row == f"row {card.number} of 100"
    for one, other in trap_pairs(100):
        assert upside_down(one) == other
        assert cards[one - 1].up != cards[other - 1].up
        assert cards[one - 1].label != cards[other - 1].label


def test_the_edges_of_neighbours_name_each_other() -> None:
    cards = row_cards(tall(9))
    assert cards[0].up == cards[-1].down == "the outer edge"
    for one, other in pairwise(cards):
        assert one.down == f"towards row {other.number}"
        assert other.up == f"towards row {one.number}"


def test_a_row_alone_has_two_outer_edges() -> None:
    (card,) = row_cards(opening(a_quilt(rows=1, columns=3)))
    assert (card.up, card.down) == ("the outer edge", "the outer edge")


def test_once_all_rows_are_joined_there_is_no_row_to_tag() -> None:
    state, record = a_wall()
    state = go_on(sewn(state, record, 3), record, c.Count("join-rows", 1))
    assert len(row_cards(state)) == 3
    assert row_cards(go_on(state, record, c.Count("join-rows", 1))) == ()


def test_on_point_it_says_what_lies_in_each_row() -> None:
    """2 × 3 on point: rows of 1, 3, 3 and 1 units (plane geometry), of which rows 2 and 3 end in a
    corner of the top."""
    quilt = replace(a_quilt(), setting=SetOnPoint("grey"), target=Target(2, 3))
    cards = row_cards(opening(quilt))
    assert [card.holds.partition(",")[0] for card in cards] == [
        "1 unit",
        "3 units",
        "3 units",
        "1 unit",
    ]
    assert [card.holds.count("side triangle at both ends") for card in cards] == [1, 0, 0, 1]
    assert [card.holds.count("side triangle at one end") for card in cards] == [0, 1, 1, 0]
    assert cards[0].up == cards[-1].down == "the outer corner"


def test_pressing_is_what_the_stage_says() -> None:
    assert [card.press for card in row_cards(tall(4))] == [press_words(n) for n in range(1, 5)]


def test_before_anything_is_laid_the_ends_are_left_to_be_written_in() -> None:
    assert {(card.first, card.last) for card in row_cards(tall(3))} == {("", "")}


def test_what_lies_at_both_ends_is_what_is_read_aloud() -> None:
    state, record = a_wall()
    state = go_on(state, record, c.TurnUnit(2, 1))
    for card in row_cards(state):
        first, *_, last = row_read(state, card.number)
        assert card.first
        assert first.startswith(f"Place 1: {card.first}, shows ")
        assert last.startswith(f"Place 4: {card.last}, shows ")


def test_an_end_where_nothing_lies_is_left_empty() -> None:
    state, record = a_wall()
    state = go_on(state, record, c.PutSpare(1, 4, None))
    card = row_cards(state)[0]
    assert card.first
    assert card.last == ""


@pytest.mark.parametrize("rows", [0, 2, 3])
def test_rows_that_are_sewn_say_so(rows: int) -> None:
    state, record = a_wall()
    state = sewn(state, record, rows) if rows else state
    assert [card.is_sewn for card in row_cards(state)] == [n <= rows for n in (1, 2, 3)]


def test_a_row_in_another_place_says_how_it_lies() -> None:
    """Row 2 was pressed away from where it begins; turned end for end its seams point to the start."""
    state, record = a_wall()
    state = sewn(state, record, 3)
    state = go_on(state, record, c.ExchangeRows(1, 2), c.TurnRow(1))
    first, second, third = row_cards(state)
    assert (
        first.press
        == f"Pressed as row 2, turned end for end since: its seams lie {Way.TO_THE_START}."
    )
    assert second.press == f"Pressed as row 1: its seams lie {Way.TO_THE_START}."
    assert third.press == press_words(3)
