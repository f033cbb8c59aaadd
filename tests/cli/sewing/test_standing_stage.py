"""`stage`: all there is to know at a stage, with the sizes of this quilt."""

from __future__ import annotations

from tests.cli.conftest import Desk


def geese(desk: Desk, small: str) -> str:
    """A quilt file of flying geese with small squares of that size."""
    return desk.file(
        "geese.toml",
        f'''name = "Invented geese"
method = "flying-geese-four"
[squares]
size = "5 1/4 in"
count = 8
[[more]]
pile = "small-square"
size = "{small}"
count = 32
[layout]
rows = 4
columns = 8
''',
    )


SHORT = "3/16 in of the 1/4 in allowance is left beyond the point"


def test_a_point_that_is_lost_is_said_before_the_first_seam_and_at_the_trim(desk: Desk) -> None:
    """At check and start, in the plan, where the small squares come in, and at the trim."""
    file = geese(desk, "2 13/16 in")
    assert f"Point: {SHORT}" in desk.ok("check", file).out
    assert f"Point: {SHORT}" in desk.ok("start", file).out
    assert SHORT in desk.ok("plan").out
    assert f"Point: {SHORT}" in desk.ok("stage", "pair").out
    assert SHORT in desk.ok("stage", "trim").out
    assert SHORT not in desk.ok("stage", "press-open").out


def test_small_squares_as_asked_keep_it_and_nothing_is_said(desk: Desk) -> None:
    file = geese(desk, "2 7/8 in")
    for words in (("check", file), ("start", file), ("plan",), ("stage", "trim")):
        assert "beyond the point" not in desk.ok(*words).out


def test_the_trim_names_the_size_and_follows_what_is_decided(desk: Desk) -> None:
    desk.ok("start", geese(desk, "2 7/8 in"))
    assert "Do: Trim to 4 1/2 in across × 2 1/2 in down; leave" in desk.ok("stage", "trim").out
    desk.ok("trim", "4 1/4 x 2 3/8 in")
    assert "Do: Trim to 4 1/4 in across × 2 3/8 in down; leave" in desk.ok("stage", "trim").out


def test_at_sewing_all_round_two_ways_are_right_and_at_joining_too(desk: Desk) -> None:
    desk.ok("start", desk.file("my.toml"))
    assert "sew off the edge: both are right" in desk.ok("stage", "sew-around").out
    joining = desk.ok("stage", "join-rows").out
    assert "Seams may oppose or lie the same way: both are right." in joining
    assert "Crossings: 20: 5 at each of 4 seams." in joining
    assert "Look: Which end is up" in joining
    assert "Ease: Bias edges give" in joining
    rows = desk.ok("stage", "sew-rows").out
    assert "keep their nesting when their numbers differ by an even number" in rows
