"""What makers wrote of their troubles, met by plain commands. Each names the page it is from.

Those with a number to work out are tests of the layers below too; here it is what a person
gets to read.
"""

from __future__ import annotations

import re

import pytest

from sewalong.cli.registry.index import commands, reckoners
from tests.cli.conftest import Desk
from tests.cli.sewing.conftest import Sewn


def test_a_pile_in_three_places_is_counted_place_by_place(desk: Desk) -> None:
    # Q052, beckyquiltobsession.blogspot.com: "Counting stacks by eye gave three different
    # totals. … 71+9+11 = 91 … Count per place (wall, table, bag), not one grand total."
    text = QUILT.format(count=100, rows=8, columns=10, method="plain-squares")
    desk.ok("start", desk.file("wall.toml", text))
    desk.ok("recount", "square", "71", "--place", "wall")
    desk.ok("recount", "square", "9", "--place", "table")
    desk.ok("put-away", "square", "wall", "--part", "71")
    desk.ok("put-away", "square", "table", "--part", "9")
    desk.ok("recount", "square", "80", "--as", "lost")
    said = desk.ok("recount", "square", "11", "--place", "bag", "--as", "found", "--json").data
    assert said["there"] == 91 == 71 + 9 + 11
    assert said["places"] == {"wall": 71, "table": 9, "bag": 11}
    assert "91 squares: wall (71), table (9), bag (11)" in desk.ok("status").out


QUILT = """\
name = "Case"
method = "{method}"
notes = "Invented for a test."

[squares]
size = "5"
count = {count}

[layout]
rows = {rows}
columns = {columns}
"""


def test_units_put_in_a_basket_are_in_it_when_she_comes_back(sewn: Sewn) -> None:
    # Q054, katscottage.blogspot.com: a hundred finished units turned up in a basket after
    # the full set had been remade; Q109, mychellem.blogspot.com: "Where did you put them? is
    # asked at every stop."
    desk = sewn(pair=20, sew=10)
    said = desk.ok("close", typed="yes\n\nbasket by the stairs\n\n")
    assert said.err.count("Where did you put the") == 2
    desk.wait(days=200)
    assert "basket by the stairs" in desk.ok("status").out


def test_missing_units_are_told_from_units_not_made_yet(sewn: Sewn) -> None:
    # Q065, balancingmyway.blogspot.com: "8x8 = 64 planned, 7x8 = 56 made: row missing from
    # the plan, not lost."
    desk = sewn(pair=32, sew=16, press=16, stack=8, sew_around=8, cut_twice=8, press_open=30)
    assert desk.status()["missing"] == {}
    said = desk.ok("recount", "unit", "26", "--as", "missing")
    assert "Missing: 4 units made, but not found." in said.lines
    assert desk.status()["missing"] == {"unit": 4}
    assert any(line.startswith("Missing: 4 units made") for line in desk.ok("status").lines)
    desk.ok("find", "unit", "4")
    assert desk.status()["missing"] == {}
    assert desk.status()["piles"]["unit"] == 30


def test_a_recount_says_what_its_difference_may_be(sewn: Sewn) -> None:
    desk = sewn(pair=20)
    said = desk.ok("recount", "pair", "18", "--json").data
    assert (said["recorded_before"], said["difference"], said["how"]) == (20, -2, "stands")
    assert said["may_be"] == ["made", "lost", "spoiled", "missing"]
    assert "The difference may be:" in desk.ok("recount", "pair", "17").out
    assert desk.ok("recount", "pair", "19", "--json").data["may_be"][-1] == "found"
    assert "none were found" in desk.refused("recount", "pair", "3", "--as", "found").err


def test_a_pile_of_old_is_named_with_its_number_its_size_and_its_use(sewn: Sewn) -> None:
    # Q102, joanne-everyonedeservesaquilt.blogspot.com: "Label each pile: piece, size, count
    # needed, count cut"; Q103, knitnkwilt.wordpress.com: "Every note carries unit and scale".
    desk = sewn(pair=20)
    desk.ok("put-away", "pair", "clipped in tens")
    desk.wait(days=700)
    lines = desk.ok("status").lines
    assert "Put away: 20 pairs: clipped in tens" in lines
    assert {"Pair: 20 of 32 done.", "Pair: 24 squares wait."} <= set(lines)
    said = desk.ok("measure", "pair", "4 1/2", "--look").lines
    assert said[:2] == ["Go on.", "Pair should be 4 1/2 in: right."]


def test_a_row_that_missed_its_stage_is_still_to_do(sewn: Sewn) -> None:
    # Q106, sewingsheshed.com: "one whole row was found not to have had its stage done":
    # state is by piece, not by quilt.
    desk = sewn(
        pair=32, sew=16, press=16, stack=8, sew_around=8, cut_twice=8, press_open=32, sew_rows=4
    )
    lines = [line for line in desk.ok("status").lines if line.startswith("Sew rows: ")]
    assert lines == ["Sew rows: 4 of 5 done.", "Sew rows: 8 units wait."]


def test_settings_come_back_with_the_test_that_proves_them(begun: Desk) -> None:
    # Q107, 501quiltblocks.com: "Note must say why: 'needle here gives 3.5 in from three
    # 1.5 in strips'."
    begun.ok("count", "pair", "2")
    begun.ok("settings", "--needle-position", "5.5")
    begun.ok("measure", "strip-test", "3 1/2", "--cut", "1 1/2")
    begun.wait(days=365)
    out = begun.ok("status").out
    assert "needle position 5.5" in out
    assert "3 strips of 1 1/2 in side by side measured 3 1/2 in" in out


def test_switched_off_the_machine_may_have_forgotten_its_needle(begun: Desk) -> None:
    # Q108, mismatchedquilter.blogspot.com: "one forgets its setting when switched off".
    begun.ok("count", "pair", "2")
    begun.ok("measure", "strip-test", "3 1/2", "--cut", "1 1/2")
    begun.ok("changed", "power")
    begun.ok("close")
    begun.wait(days=2)
    assert "the machine was switched off and on" in begun.ok("status").out


def test_the_pressing_of_months_ago_is_there_in_words(sewn: Sewn) -> None:
    # Q112, grammilousgarden.blogspot.com: "Record the press direction per seam in words".
    desk = sewn(pair=8)
    desk.ok("press", "sew", "seams swirl about the middle")
    desk.wait(days=150)
    assert "Press: Sew: seams swirl about the middle" in desk.ok("status").out


def test_every_quilt_has_a_line_with_its_next_thing(begun: Desk) -> None:
    # Q113, pamela.avaraarts.com: "Next physical action per project."
    text = QUILT.format(count=40, rows=4, columns=5, method="plain-squares")
    begun.ok("start", begun.file("other.toml", text))
    lines = begun.ok("list").lines
    assert sum(line.startswith("Next: ") for line in lines) == 2


def test_where_it_stands_is_said_in_stages_and_counts(sewn: Sewn) -> None:
    # Q142, joscountryjunction.com: pinned meant loose blocks to one and a joined top to the
    # other: "Name the stage, not the feeling."
    desk = sewn(pair=20, sew=10)
    lines = desk.ok("status").lines
    assert "Sew: 10 of 16 done." in lines
    assert "Sew rows: 0 of 5 done." in lines


def test_at_the_stage_of_the_hazard_and_nowhere_else_there_is_a_caution(begun: Desk) -> None:
    # Q143, homesteadingtoday.com: "No cutting while watching; short reminder at the cut stage."
    assert "Caution" not in begun.ok("count", "pair", "32").err
    for stage, n in (("sew", "16"), ("press", "16"), ("stack", "8"), ("sew-around", "8")):
        begun.ok("count", stage, n, "--caution-read")
    said = begun.refused("count", "cut-twice")
    assert "no screen" in said.err
    # Q145, freemotionproject.com: "Turn the mat between the two diagonal cuts."
    assert "Turn the mat for the second cut" in said.err
    # Q146, quiltingboard.com: "Close after every cut; shoes on".
    assert "Close the blade after every cut" in said.err
    assert "shoes on" in said.err


def test_a_new_blade_is_spoken_of_before_the_next_cut(sewn: Sewn) -> None:
    # Q144, quiltingisstillmypassion.blogspot.com 2007/03: "New blade + company = highest risk;
    # say so when a blade change is logged."
    desk = sewn(pair=32, sew=16, press=16, stack=8, sew_around=8, cut_twice=1)
    desk.wait(minutes=1)
    desk.ok("changed", "blade")
    assert "New blade" in desk.refused("count", "cut-twice").err


def test_after_a_long_session_cutting_is_for_another_day(sewn: Sewn) -> None:
    # Q148, scribblerdesigns.com: "Suggest leaving the cut stage for tomorrow after a long
    # session."
    desk = sewn(pair=32, sew=16, press=16, stack=8, sew_around=8, cut_twice=1)
    for _ in range(4):
        desk.wait(minutes=50)
        desk.ok("note", "still here")
    assert "leave the cutting for another day" in desk.refused("count", "cut-twice").err


def test_leaving_the_board_the_iron_is_asked_about_and_never_said_to_be_off(sewn: Sewn) -> None:
    # Q150, gmariesews.blogspot.com: "On leaving the press stage ask: iron on its heel or
    # off?" Q152, b-quilts.com: "never claim the iron is off".
    desk = sewn(pair=20, sew=10)
    said = desk.ok("count", "press", "10", "--caution-read")
    assert said.lines[-2].startswith("Leaving the board: is the iron off, or safe on its heel?")
    desk.ok("answer", "iron", "yes")
    for command in ("status", "log", "pace"):
        assert not re.search(r"iron is off(?!,| and unplugged\?)", desk.ok(command).out)


def test_pins_are_counted_in(sewn: Sewn) -> None:
    # Q156, quiltingboard.com: "Count pins out, count pins in."
    desk = sewn(pair=20, sew=10, press=10, stack=4)
    assert "Are the pins counted in?" in desk.refused("close").err


def test_one_thing_to_fetch_and_one_count_at_a_time(sewn: Sewn) -> None:
    # Q162, truthfulkindness.com: "Show the one thing to fetch now."; Q163,
    # quilted-with-love.blogspot.com: "One counter at a time; the tool keeps the rest."
    desk = sewn(pair=20)
    desk.ok("go-on", "sew")
    said = desk.ok("count", "sew", "2", "--caution-read").lines
    assert sum(line.startswith("Next: ") for line in said) == 1
    assert sum("to go" in line for line in said) <= 2


@pytest.mark.parametrize("command", [one.name for one in (*commands(), *reckoners())])
def test_no_command_speaks_of_left_right_or_clockwise(command: str, desk: Desk) -> None:
    # Q165, alefthandedquilter.blogspot.com: "Avoid left/right for hands".
    text = desk.ok(*command.split(), "--help").out
    assert not re.search(r"\b(clockwise|left hand|right hand|to the left|to the right)\b", text)


def test_turning_to_a_stage_says_what_to_look_at(sewn: Sewn) -> None:
    # Q091, thefabricofherreality.blogspot.com: "which edge is inner, which end is top."
    # Q122, litandlaundry.blogspot.com: "Open the first, then every tenth: at most 10 to
    # unpick, not 60."
    desk = sewn(pair=32)
    said = desk.ok("stage", "sew")
    assert any(
        line.startswith("Open the first and look, then every tenth: at most 10")
        for line in said.lines
    )
    said = desk.ok("stage", "join-rows")
    assert "Look: Do both tags lie at the same edge, where the rows begin?" in said.lines


def test_a_place_is_told_whole_and_as_it_was_written(sewn: Sewn) -> None:
    desk = sewn(pair=20)
    place = "Tin. Top shelf; lid off"
    desk.ok("put-away", "pair", place)
    desk.ok("stage", "sew")
    lines = desk.ok("status").lines
    assert f"Pick up the 20 pairs – {place} – and sew." in lines
    assert f"Put away: 20 pairs: {place}" in lines
