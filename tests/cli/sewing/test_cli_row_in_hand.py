"""The row in hand by plain command: one unit after the other, read aloud."""

from __future__ import annotations

import pytest

from tests.cli.conftest import Desk

DEMO = "Signal Garden"


@pytest.fixture
def garden(desk: Desk) -> Desk:
    """The demo quilt whose units lie on the floor, row 4 begun, as a quilt of her own."""
    file = str(desk.folder / "garden.json")
    desk.ok("export", file, "--demo", "--quilt", DEMO)
    desk.ok("import", file)
    return desk


def test_each_unit_is_named_as_it_lies_and_the_one_after_n042(garden: Desk) -> None:
    """N042: "a row spoken, one square for each press of a key, and say turn when a unit is turned"."""
    begun = garden.ok("begun").lines
    assert begun[0] == "Row 4: 5 of 8 sewn."
    assert begun[1].startswith("Next place 6: unit 1 of set 6, ")
    said = garden.ok("begun", "--next", "--caution-read")
    assert "Begun: 1 piece of 6 units, for 1 row." in said.lines
    assert "Row 4: 6 of 8 sewn." in said.lines
    assert any(line.startswith("Next place 7: ") for line in said.lines)
    garden.ok("begun", "--next")
    whole = garden.ok("begun", "--next", "--json")
    assert whole.data["row"] == 5
    assert whole.data["next_places"] == [1, 2]
    assert garden.ok("begun").lines[0] == "Row 5."
    garden.ok("undo")
    assert garden.ok("begun").lines[0] == "Row 4: 7 of 8 sewn."
    again = garden.ok("begun", "--next")
    assert "Row 4 is whole." in again.lines
    assert "Counted 1 row at sew rows." in again.lines


def test_status_says_it_too(garden: Desk) -> None:
    assert "Begun: Row 4: 5 of 8 sewn." in garden.ok("status").lines


def test_counting_a_row_and_turning_to_the_stage_say_the_next_unit(garden: Desk) -> None:
    said = garden.ok("stage", "sew-rows")
    assert "Row 4: 5 of 8 sewn." in said.lines
    counted = garden.ok("count", "sew-rows", "--caution-read")
    assert "Row 5." in counted.lines
    (line,) = [line for line in counted.lines if line.startswith("Next place 1: ")]
    assert "; then place 2: " in line


def test_what_a_turned_row_would_show_is_said_where_joins_are(garden: Desk) -> None:
    """ "A row turned end for end shows as new touches, said before joining." """
    said = garden.ok("join").lines
    assert any(
        line.startswith("The next seam: If row 2 lies end for end there is 1 new touch: row 1 ")
        for line in said
    )


def test_not_both(garden: Desk) -> None:
    assert "not both" in garden.refused("begun", "5", "--next").err


def test_without_a_wall_there_is_no_next(begun: Desk) -> None:
    assert "Nothing is laid on the wall yet." in begun.refused("begun", "--next").err
