"""After a count at most one thing is said: safety, pieces at risk, shortfall, wear, advice."""

from __future__ import annotations

from tests.cli.conftest import Desk
from tests.cli.sewing.conftest import Sewn


def also(desk: Desk, stage: str, n: int = 1) -> tuple[str | None, str]:
    """The kind of what is said after a count, and its line."""
    data = desk.ok("count", stage, str(n), "--caution-read", "--json").data
    said = data["also"]
    return (said["kind"], said["line"]) if said else (None, "")


def test_at_the_table_nothing_is_said_of_the_seam(begun: Desk) -> None:
    assert also(begun, "pair", 8) == (None, "")


def test_the_seam_is_spoken_of_once_at_the_machine(sewn: Sewn) -> None:
    desk = sewn(pair=20)
    kind, line = also(desk, "sew")
    assert kind == "seam"
    assert line.startswith("Test it on one first")
    assert also(desk, "sew") == (None, "")
    desk.ok("measure", "four-patch", "8 1/2")
    said = desk.ok("changed", "foot", "--json").data["also"]
    assert (said["kind"], "another foot went on" in said["line"]) == ("seam", True)
    assert also(desk, "sew") == (None, "")


def test_going_on_silences_it_until_the_next_change(sewn: Sewn) -> None:
    desk = sewn(pair=20)
    desk.ok("go-on", "sew")
    assert also(desk, "sew") == (None, "")
    said = desk.ok("changed", "needle", "--json").data["also"]
    assert said["line"].startswith("Test it on one first")


def test_pieces_at_risk_come_before_a_shortfall_and_before_advice(sewn: Sewn) -> None:
    desk = sewn(pair=20, sew=4)
    desk.ok("measure", "four-patch", "8 3/8")
    desk.ok("spoil", "square", "16", "--reason", "left in the rain")
    said = desk.ok("count", "sew", "--caution-read")
    assert said.lines[-2].startswith("These may be wrong: 5 four-patches from sew")
    assert any(line.startswith("Short: ") for line in said.lines), "it is never hidden behind it"
    assert desk.ok("count", "sew", "--json").data["short"]
    said = desk.ok("proof", "--seen-to")
    assert any(line.startswith("Short: ") for line in said.lines)


def test_the_question_about_the_iron_comes_before_all(sewn: Sewn) -> None:
    desk = sewn(pair=20, sew=6)
    desk.ok("measure", "four-patch", "8 3/8")
    said = desk.ok("count", "press", "6", "--caution-read")
    assert said.lines[-2].startswith("Leaving the board: is the iron off")
    assert not [line for line in said.lines if line.startswith("These may be wrong")]


def test_after_a_pause_one_line_asks_to_compare(sewn: Sewn) -> None:
    # Q115, thecolorfulfabriholic.blogspot.com: "After any interruption: compare top piece
    # with the reference before sewing."
    desk = sewn(pair=20, sew=2)
    desk.ok("go-on", "sew")
    desk.wait(minutes=1)
    assert also(desk, "sew") == (None, "")
    desk.wait(minutes=25)
    kind, line = also(desk, "sew")
    assert kind == "advice"
    assert "lay the top pair on the last one sewn" in line


MANY = """\
name = "Long Chain"
method = "four-patch"
notes = "Invented for a test."

[squares]
size = "2 1/2"
count = 2000

[layout]
rows = 20
columns = 25
"""


def test_a_needle_sewn_with_for_eight_hours_is_spoken_of_once_between_stages(desk: Desk) -> None:
    # Q175, stitchedbykiriaki.blogspot.com: "Needle should be changed after 6 to 8 hours but
    # nobody times their sewing": the sum of sewing time since the last change.
    desk.ok("start", desk.file("long-chain.toml", MANY))
    desk.ok("changed", "needle")
    desk.ok("go-on", "sew-pairs")
    desk.ok("count", "pair", "1000")
    said = []
    for _ in range(50):
        desk.wait(minutes=11)
        said.append(also(desk, "sew-pairs", 20))
    assert not [line for _, line in said[:-1] if "needle" in line]
    kind, line = said[-1]
    assert kind == "wear"
    assert line.startswith(
        "About 9 hours at the machine on this needle; a new one is usual after 8"
    )
    stops = [line for kind, line in said if "stand up" in line]
    assert len(stops) in range(8, 12)
    desk.wait(minutes=5)
    desk.ok("count", "press-pairs", "10", "--caution-read")
    assert "needle" not in also(desk, "press-pairs", 10)[1]
