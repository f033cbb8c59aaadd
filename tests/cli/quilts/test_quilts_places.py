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


def test_before_anything_was_put_away_all_lies_anywhere(begun: Desk) -> None:
    assert begun.ok("places").lines == [
        "not written down: 64 squares",
        "not written down, next there: pair, 32 pairs",
    ]
