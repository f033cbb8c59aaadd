"""How the wall stands, one fact a line: what can be had, what touches, every row, what is spare."""

from __future__ import annotations

from collections import Counter
from itertools import pairwise

import pytest

from tests.cli.conftest import Desk
from tests.cli.test_one_fact_a_line import packed
from tests.cli.wall.conftest import MAZE, squares


def like_pairs(rows: list[str]) -> list[tuple[int, int]]:
    """Places with a like one beside or below, counted over the letters themselves."""
    down = [("".join(column)) for column in zip(*rows, strict=True)]
    across = [
        (r, p)
        for r, row in enumerate(rows, 1)
        for p, (a, b) in enumerate(pairwise(row), 1)
        if a == b
    ]
    below = [
        (r, p)
        for p, column in enumerate(down, 1)
        for r, (a, b) in enumerate(pairwise(column), 1)
        if a == b
    ]
    return across + below


def test_alone_it_says_what_is_missing_and_how_to_begin(begun: Desk) -> None:
    said = begun.ok("wall")
    assert said.lines[0].startswith("Nothing is known of the units yet.")
    assert "To propose a layout: sewalong wall --propose" in said.lines
    begun.refused("wall", "--propose")
    assert "Nothing is laid on the wall yet" in begun.refused("wall", "--row", "1").err


def test_the_verdict_comes_first_then_what_touches_and_where(maze: Desk) -> None:
    said = maze.ok("wall")
    assert said.lines[0] == "Possible: no like fabrics meet along a seam."
    assert "20 of 20 places have a unit." in said.lines
    assert "1 touch." in said.lines
    assert "Row 3 place 3 meets row 3 place 4: B along a seam." in said.lines
    rows = [line for line in said.lines if line.startswith("Row ") and ", " in line]
    assert rows == [f"Row {n}: {', '.join(row)}." for n, row in enumerate(MAZE.split(" / "), 1)]
    assert said.lines[-1] == "No unit is spare."
    data = maze.ok("wall", "--json").data
    assert [one["places"] for one in data["touches"]] == [[[3, 3], [3, 4]]]
    assert data["rules"] == {"touch": "seams", "stacks": "apart", "rim": None}
    assert [place["unit"]["squares"] for place in data["rows"][2]] == [[x] for x in "EABBC"]


@pytest.mark.parametrize(
    "wall", ["AB / BA", "AAB / BBA / AAB", "ABCAB / BCABC / AABBC", "AAAA / AAAA"]
)
def test_as_many_touches_are_told_as_like_letters_meet(desk: Desk, wall: str) -> None:
    data = squares(desk, wall).ok("wall", "--json").data
    assert len(data["touches"]) == len(like_pairs(wall.split(" / ")))
    assert data["least"] <= len(data["touches"])
    assert data["possible"] is (data["least"] == 0)


def test_a_fabric_that_is_one_too_many_is_named(desk: Desk) -> None:
    # N001 (c): 11 of one fabric on 4 x 5; at most 10 lie apart, and 2 seams touch at best.
    lines = squares(desk, "AAAAA / AAAAA / ABCDE / FGHIJ").ok("wall").lines
    assert lines[0].startswith("Not possible: like fabrics meet along a seam ")
    assert "A: 11 units, and 10 can lie apart: 1 too many." in lines


def test_by_points_too_it_looks_otherwise_and_records_nothing(desk: Desk) -> None:
    squares(desk, "ABAB / BABA")
    before = desk.record()
    assert "Nothing touches." in desk.ok("wall").lines
    said = desk.ok("wall", "--touch", "points")
    assert said.lines[0].startswith("Not possible")
    assert "Where points count, four fabrics are needed at least." in said.lines
    assert len(desk.ok("wall", "--touch", "points", "--json").data["touches"]) == 6
    assert desk.record() == before


def test_a_row_is_read_place_by_place(laid: Desk) -> None:
    said = laid.ok("wall", "--row", "2")
    assert said.lines[0] == "Row 2, 6 units."
    assert [line.split(":")[0] for line in said.lines[1:]] == [f"Place {n}" for n in range(1, 7)]
    data = laid.ok("wall", "--row", "2", "--json").data
    (row,) = data["rows"]
    for line, place in zip(said.lines[1:], row, strict=True):
        assert f"unit {place['unit']['unit']} of set {place['unit']['set']}" in line
    assert "no row 9" in laid.refused("wall", "--row", "9").err


def test_after_the_cat_every_row_is_read_and_what_belongs_to_none(laid: Desk) -> None:
    laid.ok("wall", "out", "4.4")
    lines = laid.ok("wall", "--rebuild").lines
    assert [line for line in lines if line.endswith(" 6 units.")] == [
        f"Row {n}, 6 units." for n in range(1, 6)
    ]
    assert "Row 4: place 4: nothing." in lines
    # 8 sets make 32 units for 30 places, and one was taken out.
    assert sum(line.startswith("In no row: unit ") for line in lines) == 3
    units = Counter(
        (place["unit"]["set"], place["unit"]["unit"])
        for row in laid.ok("wall", "--rebuild", "--json").data["rows"]
        for place in row
        if place["unit"]
    )
    assert set(units.values()) == {1}
    assert len(units) == 29


def test_a_unit_in_hand_is_found_by_its_fabrics(laid: Desk) -> None:
    laid.ok("wall", "out", "3.3")
    data = laid.ok("wall", "--json").data
    every = [place for row in data["rows"] for place in row if place["unit"]]
    for place in (every[0], every[-1]):
        read = laid.ok("wall", "--row", str(place["row"])).lines[place["place"]]
        shown = read.partition(" shows ")[2].rstrip(".").split(", ")
        said = laid.ok("wall", "--with", ", ".join(shown))
        assert any(
            line.startswith(f"Row {place['row']} place {place['place']}: unit ")
            for line in said.lines
        )
        found = laid.ok("wall", "--with", ", ".join(shown), "--json").data["units"]
        assert all(set(shown_letters(shown)) <= set(one["squares"]) for one in found)
    told = {line for letter in "ABCDEFGH" for line in laid.ok("wall", "--with", letter).lines}
    for spare in data["spares"]:
        assert f"Spare: unit {spare['unit']} of set {spare['set']}." in told
    assert laid.ok("wall", "--with", "A,B,C,D,E").lines == [
        "No unit on the wall has A chalk and B oat and C butter and D rust dots and E moss sprig."
    ]
    laid.refused("wall", "--with", "purple")


def shown_letters(shown: list[str]) -> list[str]:
    return [one.split()[0] for one in shown]


def test_rows_that_are_sewn_are_said_to_be(laid: Desk) -> None:
    laid.ok("find", "unit", "6")
    laid.ok("count", "sew-rows", "1", "--caution-read")
    assert "6 units are sewn to a row." in laid.ok("wall").lines
    assert all(line.endswith(", sewn.") for line in laid.ok("wall", "--row", "1").lines[1:])


def test_every_line_is_one_fact(laid: Desk) -> None:
    laid.ok("wall", "out", "1.1")
    laid.ok("wall", "lock", "2.2")
    for words in (
        [], ["--row", "1"], ["--rebuild"], ["--propose"], ["mend"], ["order"],
        ["--propose", "--plan", "rings", "--spread"], ["swap", "2.1", "3.3", "--look"],
        ["turn-row", "R2", "--look"], ["exchange", "R1", "R4", "--look"], ["out", "3.3"],
        ["--touch", "points"],
    ):  # fmt: skip
        said = laid.ok("wall", *words)
        assert [trouble for line in said.lines for trouble in packed(line)] == [], words
        assert laid.ok("wall", "--json").data
