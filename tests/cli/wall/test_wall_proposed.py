"""A whole wall proposed or typed by plain command; nothing is kept before --accept."""

from __future__ import annotations

import io

import pytest

from tests.cli.conftest import Desk
from tests.cli.wall.conftest import squares
from tests.cli.wall.test_wall_moves import letters


def test_what_is_accepted_is_what_was_shown(chosen: Desk) -> None:
    before = chosen.record()
    shown = chosen.ok("wall", "--propose", "--json").data
    assert shown["accepted"] is False
    assert chosen.ok("wall", "--propose", "--json").data == shown, "the same seed, the same layout"
    assert chosen.ok("wall", "--propose").lines[-1].endswith("the same with --accept")
    assert chosen.record() == before
    other = chosen.ok("wall", "--propose", "--seed", "2", "--json").data
    assert other["rows"] != shown["rows"]
    said = chosen.ok("wall", "--propose", "--accept")
    assert said.lines[0] == "Laid on the wall, as proposed: 30 units, 2 spare."
    now = chosen.ok("wall", "--json").data
    assert now["rows"] == shown["rows"]
    assert len(now["touches"]) == len(shown["touches"]) >= now["least"]
    chosen.ok("undo")
    assert chosen.ok("wall", "--json").data["laid"] is False


def test_the_rules_are_kept_with_the_layout(chosen: Desk) -> None:
    words = ("--touch", "points", "--stacks", "together", "--rim", "chalk")
    rules = {"touch": "points", "stacks": "together", "rim": "A"}
    assert chosen.ok("wall", "--propose", *words, "--accept", "--json").data["rules"] == rules
    assert chosen.ok("wall", "--json").data["rules"] == rules
    again = chosen.ok("wall", "--propose", "--rim", "none", "--json").data
    assert again["rules"] == {**rules, "rim": None}
    assert not [one for one in again["touches"] if one["kind"] in ("rim", "stack")]


def test_a_plan_is_said_and_followed(chosen: Desk) -> None:
    said = chosen.ok("wall", "--propose", "--plan", "light-to-dark", "--seconds", "1")
    assert said.lines[0] == "The lightest units lie in row 1, the darkest in the last row."
    assert (
        chosen.ok("wall", "--propose", "--spread", "--json").data["laid" if 0 else "accepted"]
        is False
    )


def test_what_is_sewn_stays_where_it_is(laid: Desk) -> None:
    laid.ok("find", "unit", "6")
    laid.ok("count", "sew-rows", "1", "--caution-read")
    first = laid.ok("wall", "--json").data["rows"][0]
    laid.ok("wall", "--propose", "--seed", "7", "--accept")
    assert laid.ok("wall", "--json").data["rows"][0] == first
    assert "is sewn to its row already" in laid.refused("wall", "swap", "1.1", "2.2").err


def test_units_are_typed_by_set_turn_letter_and_nothing(chosen: Desk) -> None:
    rows = [[f"{set_}/{unit}/{(set_ + unit) % 4}" for unit in range(1, 5)] for set_ in range(1, 8)]
    every = [one for row in rows for one in row]
    lines = [every[n : n + 6] for n in range(0, 24, 6)]
    lines.append(["-", "8/1", "navy", ".", "8/2", "A+B+C+D"])
    file = chosen.file("wall.txt", "\n".join(" ".join(line) for line in lines) + "\n\n")
    looked = chosen.ok("wall", "--typed", file, "--json").data
    assert looked["accepted"] is False
    said = chosen.ok("wall", "--typed", file, "--accept")
    assert said.lines[0].startswith("Laid on the wall, as typed: 28 units")
    data = chosen.ok("wall", "--json").data
    found = [
        f"{place['unit']['set']}/{place['unit']['unit']}/{place['turns']}"
        for row in data["rows"][:4]
        for place in row
    ]
    assert found == every[:24]
    last = [place["unit"] for place in data["rows"][4]]
    assert last[0] is last[3] is None
    assert last[2] == {"set": None, "unit": None, "squares": ["F"]}
    assert {letter for letter in last[5]["squares"] if letter} == set("ABCD")
    assert "A chalk + B oat + C butter + D rust dots" in chosen.ok("wall", "--row", "5").lines[6]
    # Of the 32 units of the sets those that lie nowhere are spare.
    assert len(data["spares"]) == 6


def test_squares_of_counted_fabrics_leave_the_rest_spare(desk: Desk) -> None:
    squares(desk, "AB / BA")
    desk.ok("fabrics", "--say", "A red 3, B blue 4")
    desk.ok("wall", "--typed", desk.file("names.txt", "red, blue\nblue, red"), "--accept")
    spares = desk.ok("wall", "--json").data["spares"]
    assert sorted(one["squares"][0] for one in spares) == ["A", "B", "B"]
    desk.ok("wall", "out", "1.1")
    desk.ok("wall", "spare", "1.1", "blue")
    assert letters(desk) == "BB / BA"


def test_standard_input_is_typed(maze: Desk) -> None:
    typed = io.TextIOWrapper(io.BytesIO(b"BACDE\nCDEAB\nEABCD\nDCADE\n"))
    maze.monkeypatch.setattr("sys.stdin", typed)
    maze.ok("wall", "--typed", "-", "--accept")
    assert letters(maze) == "BACDE / CDEAB / EABCD / DCADE"
    assert "no file" in maze.refused("wall", "--typed", "none.txt").err


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "0 rows are typed, and the layout has 5"),
        ("1/1\n" * 5, "Row 1 has 1 unit, and 6 lie in it"),
        ("9/1 " * 6 + "\n" + ("- " * 6 + "\n") * 4, "There is no unit 9/1"),
        ("1/1 1/1 - - - -\n" + ("- " * 6 + "\n") * 4, "A unit is named twice"),
        ("A+B - - - - -\n" + ("- " * 6 + "\n") * 4, "has 2 patches, and a unit has 4"),
        ("purple - - - - -\n" + ("- " * 6 + "\n") * 4, "none of the fabrics"),
    ],
)
def test_what_cannot_be_laid_is_refused(chosen: Desk, text: str, says: str) -> None:
    file = chosen.file("wall.txt", text)
    assert says in chosen.refused("wall", "--typed", file, "--accept").err
