"""`places`: what lies where, and the next thing to do there."""

from __future__ import annotations

from tests.cli.conftest import Desk

QUILT = """\
name = "Two kitchens"
method = "stacked-four-patch"
notes = "Invented for a test."
[squares]
size = "5"
count = 672
[layout]
rows = 14
columns = 24
"""


def test_a_share_goes_to_a_sister_and_each_place_has_its_next_thing_n038(desk: Desk) -> None:
    """120blocks.blogspot.com, "Big problem": 84 stacks, 12 done and 40 unsewn are taken away."""
    desk.ok("start", desk.file("two-kitchens.toml", QUILT))
    for stage, n in (
        ("pair", 336),
        ("sew", 168),
        ("press", 168),
        ("stack", 84),
        ("sew-around", 12),
    ):
        desk.ok("count", stage, str(n), "--caution-read")
    desk.ok("put-away", "sewn-stack", "sister's")
    desk.ok("put-away", "stack", "sister's", "--part", "40")
    desk.ok("put-away", "stack", "blue tray", "--part", "32")
    assert desk.ok("places").lines == [
        "sister's: 12 sewn stacks",
        "sister's: 40 stacks",
        "sister's, next there: cut twice, 12 stacks",
        "blue tray: 32 stacks",
        "blue tray, next there: sew around, 32 sewn stacks",
    ]
    desk.ok("count", "cut-twice", "2", "--caution-read")
    assert desk.ok("places").lines[-2:] == [
        "not written down: 8 cut units",
        "not written down, next there: press open, 8 units",
    ]


def test_what_comes_back_is_a_number_with_a_proof_of_her_seam_n038_n031(desk: Desk) -> None:
    """N038: "counts made there come back as numbers, with a proof of her seam". N031: one sewn pair
    of each, measured, shows it."""
    desk.ok("start", desk.file("two-kitchens.toml", QUILT))
    for stage, n in (("pair", 336), ("sew", 168), ("press", 168), ("stack", 84)):
        desk.ok("count", stage, str(n), "--caution-read")
    desk.ok("put-away", "stack", "sister's", "--part", "40")
    said = desk.ok("count", "sew-around", "12", "--by", "Jo", "--place", "Sister's")
    assert said.lines[:3] == [
        "Made elsewhere – sister's –, by Jo: 12 sewn stacks at sew around.",
        "Sew around: 72 sewn stacks to go.",
        "The seam of Jo is not tested yet.",
    ]
    assert "Measure one of these, and say who sewed it." in said.lines
    desk.ok("measure", "four-patch", "9 1/4", "--by", "jo")
    again = desk.ok("count", "sew-around", "3", "--by", "Jo", "--place", "sister's")
    assert "The seam of Jo measured wrong the last time." in again.lines
    proof = desk.ok("proof").lines
    assert "Seam of Jo: Counted from Jo since: 15 sewn stacks at sew around." in proof
    desk.ok("measure", "four-patch", "9 1/2", "--by", "Jo")
    third = desk.ok("count", "sew-around", "1", "--by", "Jo")
    assert "seam of Jo" not in third.out
    assert desk.ok("places").lines == [
        "sister's: Jo sews there",
        "sister's: 25 stacks",
        "sister's: 15 sewn stacks",
        "sister's, next there: cut twice, 15 stacks",
        "not written down: 43 stacks",
        "not written down: 1 sewn stack",
        "not written down, next there: cut twice, 1 stack",
        "Seam of Jo: Four-patch measured 9 1/2 in (today), right.",
    ]
    assert desk.ok("places", "--json").data["places"][0]["by"] == "Jo"
    assert "At sister's: Jo sews there." in desk.ok("status").lines


def test_a_count_from_elsewhere_needs_a_name_or_a_place(begun: Desk) -> None:
    said = begun.refused("count", "pair", "3", "--by", " ")
    assert "Say who did it with --by, or where with --place." in said.err


def test_before_anything_was_put_away_all_lies_anywhere(begun: Desk) -> None:
    assert begun.ok("places").lines == [
        "not written down: 64 squares",
        "not written down, next there: pair, 32 pairs",
    ]
