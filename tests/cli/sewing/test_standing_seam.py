"""`measure`, `proof`, `go-on`, `changed`, `bobbin`, `press`: the seam by plain commands."""

from __future__ import annotations

import pytest

from tests.cli.conftest import Desk
from tests.cli.sewing.conftest import Sewn

# 4 1/2 in squares, 1/4 in seams: the four-patch is 8 1/2 in, the unit (8 1/2 - 1/2) / sqrt 2.


def test_a_right_measurement_proves_the_seam(begun: Desk) -> None:
    assert begun.ok("proof", "--json").data["standing"] == "not proved yet"
    said = begun.ok("measure", "four-patch", "8 1/2")
    assert said.lines == ["Go on.", "Four-patch should be 8 1/2 in: right."]
    told = begun.ok("proof", "--json").data
    assert (told["standing"], told["last_passed"]["readings"]) == ("proved", [8.5])
    assert begun.ok("proof").lines[0] == "The seam is tested."


def test_looking_only_records_nothing(begun: Desk) -> None:
    before = begun.record()
    said = begun.ok("measure", "four-patch", "8 3/8", "--look")
    assert said.lines[-1] == "Nothing was recorded."
    assert begun.record() == before


def test_a_wrong_one_says_what_was_sewn_and_what_it_comes_to(begun: Desk) -> None:
    # 1/8 in short over two allowances: 1/16 in each.
    said = begun.ok("measure", "four-patch", "8 3/8")
    assert said.lines[0] == "Trim all to 8 3/8 in."
    assert "Likeliest: seams of 5/16 in, each 1/16 in too wide." in said.lines
    data = begun.ok("measure", "four-patch", "8 3/8", "--look", "--json").data
    assert data["cause"] == "the seam is too wide"
    assert data["seam"] == 0.3125
    assert data["per_seam"] == 0.125
    assert data["row_if_every_seam"] < data["row"]
    assert data["choices"]


def test_several_readings_have_commas_between_them(begun: Desk) -> None:
    data = begun.ok("measure", "unit", "5 1/2,", "5 5/8,", "5", "9/16", "--look", "--json").data
    assert data["readings"] == [5.5, 5.625, 5.5625]
    assert (data["smallest"], data["largest"], data["trim_all_to"]) == (5.5, 5.625, 5.5)
    # As it is said: no unit is trimmed to more than it should be.
    large = begun.ok("measure", "unit", "5 7/8,", "6", "--look", "--json").data
    assert large["trim_all_to"] == 5.625
    assert any(choice.startswith("Trim all to 5 5/8 in;") for choice in large["choices"])


def test_a_strip_test_may_have_its_own_width_and_number(begun: Desk) -> None:
    # Q001, andiejohnsonsews.com: 5 strips cut 2 1/2 in, expected 10 1/2, measured 10; "each
    # seam allowance is 0.0625 in (1/16) too wide".
    said = begun.ok("measure", "strip-test", "10", "--of", "5", "--cut", "2 1/2", "--json")
    assert said.data["expected"] == 10.5
    assert said.data["seam"] == 0.3125
    # The middle one of three is measured seam to seam: 1 1/2 less two seams.
    assert begun.ok("measure", "middle-strip", "1", "--json").data["passed"]


def test_a_row_short_by_about_a_unit_is_no_drift(begun: Desk) -> None:
    row = begun.ok("measure", "row", "30", "--look", "--json").data
    each = (row["expected"] - 0.5) / 6
    short = str(round(row["expected"] - each, 2))
    said = begun.ok("measure", "row", short, "--look", "--json").data
    assert (said["cause"], said["pieces_missing"]) == ("a piece is missing", 1)


def test_one_further_measurement_is_asked_for_and_decides(begun: Desk) -> None:
    # 8 3/8 for 8 1/2 in: seams of 5/16, or a piece cut small. The allowance at the back tells.
    first = begun.ok("measure", "four-patch", "8 3/8", "--json").data
    assert first["further"] == "one seam allowance at the back"
    assert [cause["cause"] for cause in first["causes"]] == [
        "the seam is too wide",
        "a piece is mis-cut",
    ]
    begun.wait(minutes=1)
    said = begun.ok("measure", "allowance", "1/4")
    assert said.lines[0] == "Go on."
    then = begun.ok("measure", "four-patch", "8 3/8", "--look", "--json").data
    assert then["cause"] == "a piece is mis-cut"
    begun.wait(days=1)
    later = begun.ok("measure", "four-patch", "8 3/8", "--look", "--json").data
    assert later["cause"] == "the seam is too wide"


def test_an_allowance_at_the_back_proves_nothing(begun: Desk) -> None:
    # It says nothing of the thread and the fold that a sewn piece loses besides.
    begun.ok("measure", "allowance", "1/4")
    assert begun.ok("proof", "--json").data["standing"] == "not proved yet"
    wrong = begun.ok("measure", "allowance", "3/8")
    assert wrong.lines[0] == "Stop and set the seam."
    assert "--down is for" in begun.refused("measure", "allowance", "1/4", "--down").err


def test_centimetres_may_be_typed_in_an_inch_quilt(begun: Desk) -> None:
    said = begun.ok("measure", "four-patch", "21.59", "cm", "--look", "--json").data
    assert said["readings"] == [8.5]
    assert said["passed"]


def test_what_cannot_be_measured_is_refused_with_what_can(begun: Desk) -> None:
    assert "There are: square" in begun.refused("measure", "fourpatch", "8").err
    begun.refused("measure", "four-patch")
    begun.refused("measure", "four-patch", "wide")
    begun.refused("measure", "four-patch", "-1")
    assert "--of is for" in begun.refused("measure", "unit", "5", "--of", "3").err
    assert "--cut is how wide" in begun.refused("measure", "unit", "5", "--cut", "2").err
    assert "--down is for" in begun.refused("measure", "row", "5", "--down").err
    begun.refused("measure", "row", "5", "--of", "0")
    begun.refused("measure", "strip-test", "5", "--cut", "1/4")
    begun.refused("measure", "unit", "5", "--alike", "0")


def test_a_failed_check_names_what_was_sewn_since_and_where(sewn: Sewn) -> None:
    desk = sewn(pair=20, sew=4)
    desk.ok("measure", "four-patch", "8 1/2")
    desk.ok("put-away", "four-patch", "tray")
    desk = sewn(sew=3)
    desk.ok("put-away", "four-patch", "blue bag", "--part", "3")
    said = desk.ok("measure", "four-patch", "8 3/8")
    assert any("3 four-patches from sew" in line for line in said.lines)
    assert said.lines[-1] == "To say so: sewalong proof --seen-to"
    risk = desk.ok("proof", "--json").data["at_risk"]
    assert [(one["stage"], one["n"]) for one in risk["stages"]] == [("sew", 3)]
    assert risk["places"]["four-patch"] == "blue bag"
    assert desk.ok("measure", "four-patch", "8 1/2").lines[-1] == (
        "This one is right. These were sewn like the wrong one: 3 four-patches from sew. "
        "If they are all right, or put right: sewalong proof --seen-to"
    )
    assert "sewn like" not in desk.ok("measure", "square", "4 1/2").out
    assert "seen to" in desk.ok("proof", "--seen-to").lines[-1]
    assert desk.ok("proof", "--json").data["at_risk"]["seen_to"]
    assert "already" in desk.refused("proof", "--seen-to").err


def test_nothing_can_be_seen_to_when_nothing_is_at_risk(begun: Desk) -> None:
    assert "Nothing is in doubt" in begun.refused("proof", "--seen-to").err


@pytest.mark.parametrize(
    ("tool", "why"),
    [
        ("foot", "another foot went on"),
        ("needle", "another needle went in"),
        ("power", "the machine was switched off and on"),
    ],
)
def test_what_can_move_the_seam_makes_the_proof_stale(begun: Desk, tool: str, why: str) -> None:
    begun.ok("measure", "four-patch", "8 1/2")
    begun.ok("changed", tool)
    assert f"Why: {why}." in begun.ok("proof").lines
    begun.ok("go-on", "sew")
    assert "You chose to go on without measuring again." in begun.ok("proof").lines


@pytest.mark.parametrize("tool", ["blade", "bobbin"])
def test_a_blade_or_a_bobbin_moves_no_seam(begun: Desk, tool: str) -> None:
    begun.ok("measure", "four-patch", "8 1/2")
    begun.ok("changed", tool)
    assert begun.ok("proof", "--json").data["standing"] == "proved"


def test_going_on_wants_a_stage_there_is(begun: Desk) -> None:
    begun.refused("go-on", "sow")
    begun.refused("go-on")


def test_an_empty_bobbin_gives_the_unsewn_back_and_one_undo_takes_it_back(sewn: Sewn) -> None:
    desk = sewn(pair=20, sew=9)
    said = desk.ok("bobbin", "sew", "3")
    assert "Sew: 6 four-patches done, 10 to go." in said.lines
    assert desk.status()["piles"]["pair"] == 8
    desk.ok("undo")
    assert desk.status()["piles"]["pair"] == 2
    assert "No bobbin runs out" in desk.refused("bobbin", "pair", "3").err
    desk.refused("bobbin", "sew", "10")


def test_which_way_is_kept_and_shown_on_coming_back(sewn: Sewn) -> None:
    desk = sewn(pair=4)
    desk.ok("press", "sew", "towards the dark cloth,", "rows alternate")
    assert desk.status()["press"] == {"sew": "towards the dark cloth, rows alternate"}
    assert "Press: Sew: towards the dark cloth, rows alternate" in desk.ok("status").lines
    desk.refused("press", "sew", " ")


def test_how_long_a_bobbin_lasts_is_told_on_request_and_nothing_is_recorded(sewn: Sewn) -> None:
    desk = sewn(pair=32, sew=8)
    before = desk.record()
    said = desk.ok("bobbin", "sew").out
    assert said.startswith("Sew: One bobbin lasts about ")
    assert "common practice" in said
    alone = desk.ok("bobbin").out
    assert "Sew rows: One bobbin lasts" in alone
    assert "Press" not in alone
    assert "Name a machine stage" in desk.refused("bobbin", "press").err
    assert desk.record() == before


def test_a_piece_somebody_else_sewed_tells_of_her_seam_alone(sewn: Sewn) -> None:
    desk = sewn(pair=4)
    said = desk.ok("measure", "unit", "5 1/2", "--by", "Jo")
    assert "It tells of the seam of Jo." in said.lines
    assert "Yours is neither tested nor in doubt by it." in said.lines
    assert not any("may be wrong: " in line for line in said.lines)
    proof = desk.ok("proof").lines
    assert any(line.startswith("Seam of Jo: Unit measured 5 1/2 in (today)") for line in proof)
    assert (
        "Seam of Jo: The record does not know which pieces those are: measure some where they lie."
        in proof
    )
    data = desk.ok("proof", "--json").data
    assert data["standing"] == "not proved yet"
    assert (data["others"]["Jo"]["passed"], data["at_risk"]) == (False, None)
