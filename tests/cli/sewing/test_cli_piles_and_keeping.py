"""Piles that change other than by work, and what is written down."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from tests.cli.conftest import Desk


def test_a_spoiled_piece_and_its_reason_are_kept(begun: Desk) -> None:
    said = begun.ok("spoil", "squares", "2", "--reason", "cut off the grain")
    assert "Spoiled 2 squares: cut off the grain." in said.lines
    assert "62 squares lie there now." in said.lines
    (spoiled,) = begun.status()["spoiled"]
    assert (spoiled["pile"], spoiled["n"], spoiled["reason"]) == ("square", 2, "cut off the grain")


def test_a_shortfall_shows_as_soon_as_it_cannot_be_helped(begun: Desk) -> None:
    # 64 squares make 8 stacks, 32 units; 30 are wanted, so 7 stacks (28) are too few.
    begun.ok("spoil", "square", "8", "--reason", "left in the rain")
    said = begun.ok("count", "pair", "1")
    assert said.lines[-2] == "Short: 5 × 6 is 2 units short."
    assert said.lines[-1].startswith("Find or buy 8 ")
    short = begun.status()["shortfall"]
    assert short["units"] == 2
    assert short["pieces"] == [{"pile": "square", "count": 8}]
    assert {"rows": 4, "columns": 7, "units": 28} in short["layouts"]


def test_spoiling_needs_a_reason_and_enough_pieces(begun: Desk) -> None:
    begun.refused("spoil", "square", "2")
    begun.refused("spoil", "square", "2", "--reason", " ")
    begun.refused("spoil", "square", "65", "--reason", "x")
    begun.refused("spoil", "sqare", "1", "--reason", "x")


def test_found_and_bought_pieces_come_to_their_pile(begun: Desk) -> None:
    assert "Found 1 square." in begun.ok("find", "square", "1").lines
    assert "Bought 4 squares." in begun.ok("find", "square", "4", "--bought").lines
    assert begun.status()["piles"]["square"] == 69


def test_a_recount_stands_and_its_difference_is_said(begun: Desk) -> None:
    said = begun.ok("recount", "square", "61")
    assert "Recounted the squares: 61, 3 fewer than recorded." in said.lines
    assert begun.status()["piles"]["square"] == 61
    assert "as recorded" in begun.ok("recount", "square", "61").out
    begun.refused("recount", "square", "-1")


def test_a_pile_is_put_away_at_a_place_of_several_words(begun: Desk) -> None:
    begun.ok("put-away", "squares", "blue", "tin,", "top shelf")
    assert begun.status()["places"] == {"square": "blue tin, top shelf"}
    assert "blue tin, top shelf" in begun.ok("status").out


def test_a_note_is_kept_as_it_was_typed(begun: Desk) -> None:
    begun.ok("note", "blue frays,", "handle  by the middle")
    assert begun.status()["notes"][0]["text"] == "blue frays, handle  by the middle"
    begun.refused("note", " ")
    begun.refused("note")
    begun.refused("note", "x" * 2001)


def test_settings_named_are_changed_and_the_others_stay(begun: Desk) -> None:
    begun.ok("settings", "--foot", "patchwork", "--thread", "grey 50")
    begun.ok("settings", "--thread", "white 50")
    kept = begun.status()["settings"]
    assert (kept["foot"], kept["thread"], kept["machine"]) == ("patchwork", "white 50", "")


def test_a_test_that_proved_other_settings_is_not_carried_over(begun: Desk) -> None:
    begun.ok("settings", "--foot", "patchwork", "--proof", "3 strips, 3 1/2 in")
    said = begun.ok("settings", "--foot", "zip")
    assert "not carried over" in said.out
    assert begun.status()["settings"]["proof"] == ""
    begun.ok("settings", "--proof", "3 strips, 3 1/2 in again")
    assert begun.status()["settings"]["proof"] == "3 strips, 3 1/2 in again"


def test_settings_alone_are_told(begun: Desk) -> None:
    assert "No settings are recorded" in begun.ok("settings").out
    begun.ok("settings", "--foot", "patchwork")
    told = begun.ok("settings")
    assert told.lines[0] == "Machine: foot patchwork"
    assert begun.ok("settings", "--json").data["settings"]["foot"] == "patchwork"


def test_a_new_blade_makes_the_cutting_caution_due(begun: Desk) -> None:
    assert "A new blade went in." in begun.ok("changed", "blade").lines
    assert "A new needle went in." in begun.ok("changed", "needle").lines
    begun.refused("changed", "mind")


def test_choosing_a_stage_says_what_is_done_there(begun: Desk) -> None:
    # Its squares are 4 1/2 in: 8 1/2 in, corner to corner.
    assert "Ruler: 12 1/8 in or longer" in begun.ok("stage", "cut twice").lines
    said = begun.ok("stage", "sew")
    assert "Working at sew." in said.lines
    assert any(line.startswith("Do: ") for line in said.lines)
    assert any(line.startswith("Check: ") for line in said.lines)
    begun.refused("stage", "iron")


def test_the_target_can_be_changed(begun: Desk) -> None:
    said = begun.ok("target", "4", "6")
    assert "24 units to go of 24." in said.lines
    assert "8 units spare." in said.lines
    begun.refused("target", "4", "6")
    begun.refused("target", "0", "6")
    begun.refused("target", "4", "201")


def test_a_quilt_is_laid_aside_and_picked_up_again(begun: Desk) -> None:
    begun.ok("lay-aside", "--reason", "waiting for cloth")
    assert begun.status()["standing"] == "laid aside"
    assert begun.status()["suggested_stage"] is None
    begun.refused("count", "pair", "1")
    begun.ok("pick-up")
    begun.refused("pick-up")
    begun.ok("count", "pair", "1")


def test_done_says_what_was_not_counted(begun: Desk) -> None:
    said = begun.ok("done")
    assert "Marked done." in said.lines
    assert "Not counted: 32 pairs at pair." in said.lines
    begun.refused("done")
