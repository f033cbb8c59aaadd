"""Status, list and log: in words that read well aloud, and as data of a steady shape."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from tests.cli.conftest import Desk

STATUS_KEYS = {
    "quilt",
    "method",
    "suggested_stage",
    "target",
    "units",
    "stages",
    "piles",
    "shortfall",
    "last_session",
    "work_done",
}
STAGE_KEYS = {"id", "label", "needed", "done", "to_do", "waiting"}


def some_work(desk: Desk) -> None:
    desk.ok("count", "pair", "30")
    desk.ok("count", "sew", "14", "--caution-read")
    desk.ok("count", "press", "14", "--caution-read")
    desk.ok("count", "stack", "6", "--caution-read")
    desk.ok("count", "sew-around", "2", "--caution-read")


def test_status_as_data_holds_what_a_script_needs(begun: Desk) -> None:
    some_work(begun)
    status = begun.status()
    assert status.keys() >= STATUS_KEYS
    assert status["quilt"] == "Gate Post"
    assert status["method"] == "stacked-four-patch"
    assert status["suggested_stage"] == "sew-around"
    assert status["target"] == {"rows": 5, "columns": 6, "units": 30}
    # 64 squares: 32 pairs, 16 four-patches, 8 stacks, 32 units; 30 wanted.
    assert status["units"] == {"made": 0, "to_go": 30, "spare": 2, "possible": 32}
    assert status["piles"]["square"] == 4
    assert status["piles"]["pressed-four-patch"] == 2
    assert status["shortfall"] is None
    assert status["last_session"]["counts"]["sew-around"] == 2
    assert 0 < status["work_done"] < 1


def test_every_stage_is_in_the_data_in_working_order(begun: Desk) -> None:
    some_work(begun)
    stages = begun.status()["stages"]
    assert all(stage.keys() >= STAGE_KEYS for stage in stages)
    assert [stage["id"] for stage in stages][:3] == ["pair", "sew", "press"]
    around = next(stage for stage in stages if stage["id"] == "sew-around")
    assert (around["needed"], around["done"], around["to_do"]) == (8, 2, 6)
    assert (around["waiting"], around["waiting_pieces"]) == (4, "stacks")


def test_status_reads_well_aloud(begun: Desk) -> None:
    some_work(begun)
    lines = begun.ok("status").lines
    assert lines[0] == "This quilt: Gate Post"
    assert "Method: Stacked four-patch" in lines
    assert "Target: 5 × 6" in lines
    assert "Wanted: 30 units in all." in lines
    assert "Sew around: 2 of 8 done." in lines
    assert "Sew around: 4 stacks wait." in lines
    assert "Press open: 0 of 30 done." in lines
    assert "Made: 0 units so far." in lines
    assert "About: Invented for a test." in lines


def test_after_24_days_the_last_time_and_the_next_thing_are_said(begun: Desk) -> None:
    some_work(begun)
    begun.ok("close", *(f"--answer={thing}=yes" for thing in ("iron", "machine", "pins")))
    begun.wait(days=24)
    lines = begun.ok("status").lines
    last_time = [line for line in lines if line.startswith("Last time: ")]
    assert last_time[0].startswith("Last time: 24 days ago, for ")
    assert "Last time: 2 at sew around." in last_time
    next_thing = next(line for line in lines if line.startswith("Next: "))
    assert next_thing == "Next: Sew around (at the machine): 4 stacks wait."


def test_the_stage_after_this_one_is_said_when_it_is_near(begun: Desk) -> None:
    some_work(begun)
    # Four stacks wait: one more than is near.
    assert "Then cut twice, at the cutting mat." not in begun.ok("status").lines
    begun.ok("count", "sew-around", "1")
    assert "Then cut twice, at the cutting mat." in begun.ok("status").lines


def test_a_quilt_that_is_done_says_what_it_came_to(begun: Desk) -> None:
    some_work(begun)
    begun.ok("note", "Began it by the window. Cut with the new blade.")
    assert not [line for line in begun.ok("status").lines if line.startswith("Sewn: ")]
    begun.ok("done")
    lines = begun.ok("status").lines
    assert "The top: 5 × 6, 30 units." in lines
    assert "Sewn: 1 session, 1 minute in all." in lines
    # Her own words are told as she wrote them, sentence and all.
    assert "Note: Began it by the window. Cut with the new blade." in lines


def test_the_quilt_last_touched_is_meant_unless_another_is_named(begun: Desk) -> None:
    begun.wait(minutes=1)
    begun.ok("start", begun.file("other.toml", OTHER_FILE))
    assert begun.status()["quilt"] == "Well Cover"
    begun.wait(minutes=1)
    begun.ok("note", "a note", "--quilt", "gate")
    assert begun.status()["quilt"] == "Gate Post"
    assert begun.ok("status", "Well Cover", "--json").data["quilt"] == "Well Cover"
    assert begun.ok("status", "--quilt", "2", "--json").data["quilt"] == "Well Cover"
    assert "There are: " in begun.refused("status", "Roof").err
    assert "Name one" in begun.refused("status", "Gate Post", "--quilt", "Well Cover").err


OTHER_FILE = """\
name = "Well Cover"
method = "paired-squares"
[squares]
size = "5"
count = 20
[layout]
rows = 5
columns = 8
"""


@pytest.mark.usefixtures("utc")
def test_the_list_says_how_far_each_quilt_is(begun: Desk) -> None:
    begun.wait(days=3)
    assert begun.ok("list").lines == [
        "1. Gate Post: in progress.",
        "Next: pair.",
        "Work done: 0%.",
        "Last touched: 3 days ago (2 Nov 2026, 20:15).",
    ]
    (told,) = begun.ok("list", "--json").data["quilts"]
    assert (told["number"], told["name"], told["suggested_stage"]) == (1, "Gate Post", "pair")


def test_looking_where_nothing_was_begun_makes_no_record(desk: Desk) -> None:
    assert desk.ok("list").lines == [
        "There is no quilt yet. Begin one by a few questions: sewalong new",
        "To look around first: sewalong demo",
    ]
    assert desk.ok("list", "--json").data == {"quilts": []}
    assert "sewalong new" in desk.refused("status").err
    desk.refused("count", "pair")
    desk.refused("export", "x.json")
    assert not (desk.folder / "home").exists()


@pytest.mark.usefixtures("utc")
def test_the_log_has_every_event_on_a_line(begun: Desk) -> None:
    assert begun.ok("log").lines == ["Nothing has happened to this quilt yet."]
    begun.ok("count", "pair", "8")
    begun.ok("undo")
    begun.ok("done")
    begun.ok("pick-up")
    assert begun.ok("log").lines == [
        "1, 2 Nov 2026, 20:15, session 1: Session 1 opened.",
        "2, 2 Nov 2026, 20:15, session 1: Counted 8 pairs. (undone)",
        "3, 2 Nov 2026, 20:15, session 1: Undid number 2: Counted 8 pairs.",
        "4, 2 Nov 2026, 20:15, session 1: Marked done.",
        "5, 2 Nov 2026, 20:15, session 1: Picked up again.",
    ]
    events = begun.ok("log", "--json").data["events"]
    assert [(one["seq"], one["kind"], one["undone"]) for one in events] == [
        (1, "session opened", False),
        (2, "counted", True),
        (3, "undone", False),
        (4, "marked done", False),
        (5, "picked up", False),
    ]
    assert len(begun.ok("log", "--last", "2").lines) == 2
    begun.refused("log", "--last", "0")
