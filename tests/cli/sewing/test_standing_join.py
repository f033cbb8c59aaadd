"""`join`: rows by their tags, and which joins come next."""

from __future__ import annotations

import pytest

from tests.cli.conftest import Desk
from tests.cli.sewing.conftest import Sewn


@pytest.fixture
def rows(sewn: Sewn) -> Desk:
    """Five rows of six, sewn."""
    return sewn(
        pair=32, sew=16, press=16, stack=8, sew_around=8, cut_twice=8, press_open=32, sew_rows=5
    )


def test_alone_it_says_which_joins_come_next_and_how_to_press(rows: Desk) -> None:
    said = rows.ok("join")
    assert said.lines[:3] == [
        "4 seams to go.",
        "Join R1 to R2.",
        "Join R3 to R4.",
    ]
    assert any("odd rows towards where the row begins" in line for line in said.lines)
    data = rows.ok("join", "--json").data
    assert (data["seams"], data["possible_now"], data["levels"]) == (4, 4, 3)
    assert data["tags"] == ["R1", "R2", "R3", "R4", "R5"]


def test_before_the_placement_is_settled_seams_are_pressed_open(rows: Desk) -> None:
    # Q126, quiltingboard.com: "Undecided layout -> press open, or fix placement first."
    assert any("open, until the placement" in line for line in rows.ok("join", "--unsettled").lines)


def test_two_tags_join_two_rows_after_the_caution(rows: Desk) -> None:
    rows.wait(minutes=61)
    assert "Caution" in rows.refused("join", "R1", "R2").err
    rows.ok("join", "R2", "R1", "--caution-read")
    rows.ok("join", "3", "row 4")
    said = rows.ok("join", "R2", "R3")
    assert "Joined rows 2 and 3." in said.lines
    assert rows.ok("join", "--json").data["pieces"] == [[1, 4], [5, 5]]
    rows.ok("undo")
    assert rows.ok("join", "--json").data["pieces"] == [[1, 2], [3, 4], [5, 5]]


def test_rows_that_are_no_neighbours_or_no_rows_are_refused(rows: Desk) -> None:
    assert "not neighbours" in rows.refused("join", "R1", "R3").err
    assert "There is no row 9" in rows.refused("join", "R5", "R9").err
    assert "upside down" in rows.refused("join", "2R", "R1").err
    assert "such as R6" in rows.refused("join", "first", "second").err
    assert "Name two rows" in rows.refused("join", "R1").err
    assert "Name two rows" in rows.refused("join", "R1", "R2", "R3").err


def test_seams_counted_without_numbers_leave_it_open_which(rows: Desk) -> None:
    counted = rows.ok("count", "join-rows", "2", "--caution-read")
    assert any("counted without numbers" in line for line in counted.lines)
    said = rows.ok("join")
    assert "counted without numbers" in said.lines[1]
    assert rows.ok("join", "--json").data["next"] == []


def test_rows_that_change_places_after_pressing(rows: Desk) -> None:
    """N009 on five rows of six: rows 2 and 3 exchanged collide in 2 joins, 5 crossings each."""
    before = rows.record()
    data = rows.ok("join", "R2", "R3", "--exchange", "--json").data
    assert (data["collide"], data["crossings"]) == ([[1, 3], [2, 4]], 10)
    assert "every join still nests" in rows.ok("join", "R2", "R4", "--exchange").out
    assert rows.record() == before
    assert "Name the two rows" in rows.refused("join", "--exchange").err


def test_before_each_join_it_is_asked_which_end_is_up(rows: Desk) -> None:
    """By number and by count: what is said after one stands before the next."""
    rows.ok("go-on", "join-rows")
    rows.ok("stage", "join-rows")
    rows.ok("answer", "iron", "yes")
    for words in (("join", "R1", "R2"), ("count", "join-rows")):
        assert "which end is up" in rows.ok(*words, "--caution-read").out
