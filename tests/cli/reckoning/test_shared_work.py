"""Two people, and the days of the week: problems of people who piece, each with its page."""

from __future__ import annotations

from tests.cli.conftest import Desk


def test_two_who_share_a_batch_n032(desk: Desk) -> None:
    """sierrashea.com, "Sewing and dancing with Schyler": 60 units of 90 s and 45 s."""
    lines = desk.ok("reckon", "together", "--pieces", "60", "--machine", "90", "--iron", "45").lines
    assert lines[0] == "alone: 135 minutes"
    assert lines[1].startswith("one sews, one presses: 90.75 minutes (the machine sets the")
    assert lines[2].startswith("two who both do everything: 67.5 minutes")


def test_a_friends_seam_against_the_owners_n031(desk: Desk) -> None:
    """120blocks.blogspot.com, "Big problem": 11 squares of 6 1/2 in, 1/4 in against 5/16 in."""
    out = desk.ok("reckon", "row", "--pieces", "11", "--cut", "6", "1/2", "--own-seam", "5/16").out
    assert "sewn: 66 1/2 in" in out
    assert "65 1/4 in (1.250 in shorter)" in out
    pair = desk.ok("reckon", "row", "--pieces", "2", "--cut", "6", "1/2", "--own-seam", "5/16").out
    assert "(0.125 in shorter)" in pair


def weeks(desk: Desk, *rates: str) -> list[str]:
    return desk.ok("reckon", "weeks", "--pieces", "48", "--days", "56", *rates).lines


def test_48_blocks_in_56_days_n035(desk: Desk) -> None:
    """candicedewitt.com, "Don't panic": 1 on each weekday, 3 to 4 on each day of the weekend."""
    assert weeks(desk, "--weekday", "1", "--weekend-day", "3.5") == [
        "in a week: 12",
        "these take: 4 weeks (of the 8 there are)",
        "for what comes after them: 4 weeks",
    ]
    assert weeks(desk, "--weekend-day", "3.5") == [
        "in a week: 7",
        "these take: 7 weeks (of the 8 there are)",
        "for what comes after them: 1 week",
    ]
    assert weeks(desk, "--weekday", "0,5", "--off", "14")[-1] == "short by: 14 weeks"


def test_what_cannot_be_is_refused(desk: Desk) -> None:
    for words in (
        ("together", "--pieces", "60", "--machine", "90"),
        ("weeks", "--pieces", "48", "--days", "56"),
        ("weeks", "--pieces", "48", "--days", "56", "--weekday", "many"),
        ("weeks", "--pieces", "48", "--days", "5", "--weekday", "1", "--off", "9"),
    ):
        desk.refused("reckon", *words)
