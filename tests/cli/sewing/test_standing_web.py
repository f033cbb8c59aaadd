"""A small web by plain commands to its end: passes, the place in them, threads, long seams."""

from __future__ import annotations

import pytest

from tests.cli.conftest import Desk

NET_LOFT = """\
name = "Net loft"
method = "plain-squares"
notes = "Invented for a test."

[squares]
size = "5"
count = 12

[layout]
rows = 3
columns = 4
joined = "web"
"""


ON_POINT = f'{NET_LOFT}[setting]\nkind = "on point"\ncloth = "oat"\n'


@pytest.fixture
def web(desk: Desk) -> Desk:
    """Three rows of four plain squares, all squared up."""
    said = desk.ok("start", desk.file("net-loft.toml", NET_LOFT))
    assert "To be put together as a web." in said.lines
    desk.wait(minutes=10)
    desk.ok("count", "square-up", "12", "--caution-read")
    return desk


def test_a_web_from_the_first_seam_to_the_top(web: Desk) -> None:
    next_seams = [
        "Pass 1 of 3: next row 2, columns 1 and 2.",
        "Pass 1 of 3: next row 3, columns 1 and 2.",
        *(f"Pass {n} of 3: next column {n + 1}, row {row}." for n in (2, 3) for row in (1, 2, 3)),
    ]
    for n, then in enumerate(next_seams):
        web.wait(minutes=2)
        stage = "start-web" if n < 3 else "sew-web"
        assert then in web.ok("count", stage, "--caution-read").lines
    web.wait(minutes=2)
    last = web.ok("count", "sew-web").lines
    assert "Sew web: none to go, 6 done." in last
    assert "Next: Join rows (at the machine): 3 rows wait." in last
    assert not any(line.startswith("Pass") for line in last)
    for rows in (("R1", "R2"), ("R2", "R3")):
        web.wait(minutes=5)
        last = web.ok("join", *rows, "--caution-read").lines
    assert "Every stage is done." in last
    status = web.status()
    assert status["complete"]
    assert status["web"] == {"passes": 3, "units_in_rows": [4, 4, 4], "next": None}
    assert status["piles"]["unit"] == 0


def test_left_inside_a_pass_and_taken_up_after_weeks(web: Desk) -> None:
    web.ok("count", "start-web", "3", "--caution-read")
    web.wait(minutes=6)
    web.ok("count", "sew-web", "2", "--caution-read")
    web.ok("put-away", "web-row", "blue box")
    web.wait(days=30)
    lines = web.ok("status").lines
    assert (
        "Pick up the web – blue box – and the 4 units and sew web: pass 2 of 3, next column 3, row 3."
    ) in lines
    assert "Begun: A web, 1 of 3 passes sewn." in lines
    assert "Rows 1 and 2 hold 3 units, row 3 holds 2." in lines
    assert web.status()["web"] == {
        "passes": 3,
        "units_in_rows": [3, 3, 2],
        "next": {"pass": 2, "row": 3, "column": 3},
    }
    assert web.ok("begun").lines[:2] == [
        "A web, 1 of 3 passes sewn.",
        "Pass 2 of 3: next column 3, row 3.",
    ]
    # What was sewn on to the web lies with it.
    places = web.ok("places").lines
    assert "blue box: 3 rows started" in places
    assert not any("added" in line for line in places)


def test_what_a_web_has_no_place_for_is_refused_and_nothing_lost(web: Desk) -> None:
    assert "not all of the 3 rows are started" in web.refused("count", "sew-web").err
    web.ok("count", "start-web", "2", "--caution-read")
    assert "Only 1 seam is left" in web.refused("count", "start-web", "2").err
    assert "In a web no row is begun by itself" in web.refused("begun", "2 pairs").err
    assert "A web has at least two rows" in web.refused("target", "1", "4").err
    assert "2 rows started already" not in web.ok("target", "3", "3").out


def test_the_looks_before_a_long_seam_are_those_of_a_web(web: Desk) -> None:
    web.ok("count", "start-web", "3", "--caution-read")
    web.ok("count", "sew-web", "6", "--caution-read")
    said = web.ok("join").lines
    assert "Before each seam: Which end is up: is row 1 the first?" in said
    assert any("Is no thread between rows cut?" in line for line in said)


def test_the_plan_of_a_web_is_told(web: Desk) -> None:
    said = web.ok("plan", "--told").lines
    assert "They are put together as a web, column by column: 3 passes of 3 seams." in said
    assert "Then 2 long seams join the rows." in said


def test_a_quilt_file_changes_rows_into_a_web_and_the_log_says_it(desk: Desk) -> None:
    file = desk.file("net-loft.toml", NET_LOFT.replace('joined = "web"\n', ""))
    desk.ok("start", file)
    web = desk.file("net-loft.toml", NET_LOFT)
    desk.ok("alter", web)
    assert "put together: row by row → as a web" in desk.ok("log").out
    assert "put together: as a web → row by row" in desk.ok("alter", "--joined", "rows").out
    assert "Write one of" in desk.refused("alter", "--joined", "net").err
    assert "A web is for units set" in desk.refused("alter", desk.file("no.toml", ON_POINT)).err
    desk.ok("undo")
    assert [one["id"] for one in desk.status()["stages"]][1:] == [
        "start-web",
        "sew-web",
        "join-rows",
    ]
