"""Counting, taking apart and taking back, and the caution that comes first."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from tests.cli.conftest import Desk


def test_a_count_says_what_was_counted_what_is_to_go_and_what_comes_next(begun: Desk) -> None:
    said = begun.ok("count", "pair", "20")
    assert said.lines == [
        "Session 1 opened.",
        "Counted 20 pairs.",
        "Pair: 12 pairs to go.",
        "Next: Pair (at the table): 24 squares wait.",
        "12 pairs to go.",
    ]


def test_without_a_number_one_is_counted(begun: Desk) -> None:
    begun.ok("count", "pair")
    assert begun.status()["piles"]["pair"] == 1


def test_a_stage_may_be_named_by_its_label(begun: Desk) -> None:
    begun.ok("count", "Pair", "16")
    begun.ok("count", "sew", "8", "--caution-read")
    begun.ok("count", "press", "8", "--caution-read")
    begun.ok("count", "stack", "4", "--caution-read")
    begun.ok("count", "sew around", "2", "--caution-read")
    assert begun.status()["piles"]["sewn-stack"] == 2


def test_a_caution_that_is_due_is_printed_and_nothing_is_counted(begun: Desk) -> None:
    begun.ok("count", "pair", "8")
    said = begun.refused("count", "sew", "2")
    assert said.out == ""
    assert said.err.startswith("Caution (first time in this session): Needle\n")
    assert "Foot off the pedal" in said.err
    assert said.err.endswith("count again with --caution-read\n")


def test_with_caution_read_the_caution_and_the_count_are_recorded(begun: Desk) -> None:
    begun.ok("count", "pair", "8")
    said = begun.ok("count", "sew", "2", "--caution-read", "--json")
    assert [one["kind"] for one in said.data["recorded"]] == ["caution read", "counted"]
    assert "Needle" in said.err
    assert said.data["to_go"] == 14
    assert begun.ok("count", "sew", "1").err == ""


def test_a_caution_read_once_is_due_again_after_a_long_stretch(begun: Desk) -> None:
    begun.ok("count", "pair", "8")
    begun.ok("count", "sew", "1", "--caution-read")
    begun.wait(minutes=59)
    begun.ok("count", "sew")
    begun.wait(minutes=1)
    begun.refused("count", "sew")


def test_on_a_terminal_enter_says_that_the_caution_was_read(begun: Desk) -> None:
    begun.ok("count", "pair", "8")
    said = begun.ok("count", "sew", "1", typed="\n")
    assert "Press Enter" in said.err
    assert begun.status()["piles"]["four-patch"] == 1


def test_on_a_terminal_anything_else_counts_nothing(begun: Desk) -> None:
    begun.ok("count", "pair", "8")
    begun.refused("count", "sew", "1", typed="n\n")
    begun.refused("count", "sew", "1", typed="")


def test_caution_read_does_not_count_what_is_not_there(begun: Desk) -> None:
    said = begun.refused("count", "sew", "1", "--caution-read")
    assert "not enough for one" in said.err


def test_leaving_an_iron_stage_asks_about_the_iron_until_it_is_answered(begun: Desk) -> None:
    begun.ok("count", "pair", "8")
    begun.ok("count", "sew", "2", "--caution-read")
    said = begun.ok("count", "press", "1", "--caution-read", "--json")
    assert said.data["ask"] is None, "there is more to press: nobody leaves the board yet"
    said = begun.ok("count", "press", "1")
    assert said.lines[-2].startswith("Leaving the board: is the iron off")
    assert "sewalong answer iron yes" in said.lines[-1]
    said = begun.ok("count", "pair", "1")
    assert said.lines[-2].startswith("Leaving the board: is the iron off")
    said = begun.ok("answer", "iron", "yes")
    assert "Asked about the iron: yes." in said.lines
    assert "Leaving" not in begun.ok("count", "pair", "1").out


def test_an_answer_nobody_asked_for_is_refused(begun: Desk) -> None:
    begun.refused("answer", "iron", "yes")
    begun.refused("answer", "iron", "perhaps")
    begun.refused("answer", "kettle", "yes")


def test_undo_takes_back_the_last_and_then_the_one_before(begun: Desk) -> None:
    begun.ok("count", "pair", "8")
    begun.ok("count", "pair", "3")
    assert begun.ok("undo").lines[:2] == [
        "Undid number 3: Counted 3 pairs.",
        "To put it back: sewalong redo",
    ]
    assert begun.ok("undo").lines[0] == "Undid number 2: Counted 8 pairs."
    assert begun.status()["piles"]["square"] == 64
    begun.refused("undo")


def test_redo_puts_back_what_was_undone_one_after_the_other(begun: Desk) -> None:
    begun.ok("count", "pair", "8")
    begun.ok("count", "pair", "3")
    begun.refused("redo")
    begun.ok("undo")
    begun.ok("undo")
    assert begun.ok("redo").lines[0] == "Put back number 2: Counted 8 pairs."
    assert begun.ok("redo").lines[0] == "Put back number 3: Counted 3 pairs."
    assert begun.status()["piles"]["square"] == 64 - 22
    begun.refused("redo")
    told = begun.ok("log").lines
    assert [line.partition("session 1: ")[2] for line in told] == [
        "Session 1 opened.",
        "Counted 8 pairs.",
        "Counted 3 pairs.",
        "Undid number 3: Counted 3 pairs.",
        "Undid number 2: Counted 8 pairs.",
        "Put back number 2: Counted 8 pairs.",
        "Put back number 3: Counted 3 pairs.",
    ]


def test_unpicked_pieces_go_back_to_their_pile(begun: Desk) -> None:
    begun.ok("count", "pair", "8")
    said = begun.ok("unpick", "pair", "3")
    assert "Unpicked 3 pairs from pair." in said.lines
    assert begun.status()["piles"]["square"] == 54
    begun.refused("unpick", "pair", "6")


def test_more_than_is_waiting_is_refused(begun: Desk) -> None:
    assert "64 squares wait" in begun.refused("count", "pair", "33").err


def test_a_stage_this_quilt_has_not_is_refused_and_the_nearest_named(begun: Desk) -> None:
    assert "Did you mean pair?" in begun.refused("count", "pairs", "1").err


def test_a_number_that_is_none_is_refused(begun: Desk) -> None:
    for wrong in ("x", "1.5", "1_000", "٣", "0x1", "", "9" * 5000):
        assert "is not a whole number" in begun.refused("count", "pair", wrong).err
    for wrong in ("0", "-3", "10000"):
        assert "from 1 to 9999" in begun.refused("count", "pair", wrong).err


def test_a_quilt_nobody_named_is_named_when_it_was_not_touched_just_now(begun: Desk) -> None:
    begun.ok("count", "pair", "2")
    assert begun.ok("count", "pair").lines[0] == "Counted 1 pair."
    begun.wait(hours=3, minutes=59)
    assert begun.ok("count", "pair").lines[0] == "Counted 1 pair."
    begun.wait(days=3)
    said = begun.ok("count", "pair")
    assert said.lines[0] == "This quilt: Gate Post, last touched 3 days ago."
    begun.wait(days=3)
    named = begun.ok("count", "pair", "--quilt", "Gate Post")
    assert "This quilt" not in named.out
