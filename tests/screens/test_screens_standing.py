"""Measuring, what is said while sewing, joining, tonight, how it is going, and the numbers."""

from __future__ import annotations

from fractions import Fraction as F
from pathlib import Path

import pytest

from sewalong.progress.record.settings import Settings
from sewalong.screens.pace import PaceScreen
from sewalong.screens.prompts.dialogs import ChoiceDialog, LinesDialog
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.worksheet import WorksheetScreen
from tests.progress import every_act as c
from tests.screens.choosing import choose
from tests.screens.sewing_room import LARGE, MINUTE, SMALL, StandingClock, at_sewing, up_to

FOUR_PATCH = F(19, 2)
"""Two five-inch squares and one seam: 2 * 5 - 2 * 1/4."""


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "quilts.db"


async def test_a_good_reading_is_recorded_as_passed(path: Path) -> None:
    async with at_sewing(path, *up_to("press")) as room:
        await room.press("i")
        await choose(room, "four-patch")
        await room.sees("What does the tape say?")
        await room.write("9 1/2")
        await room.press("enter")
        await room.screen_is(LinesDialog)
        (check,) = room.on_disk().checks
        assert check.passed
        assert check.expected == FOUR_PATCH


async def test_a_bad_reading_says_what_it_means_and_names_the_pieces_at_risk(path: Path) -> None:
    sewn: list[c.Act] = [
        c.Count("pair", 20),
        c.Count("sew", 4),
        c.Measure("four-patch", (FOUR_PATCH,)),
        c.ChangeTool("foot"),
        c.Count("sew", 3),
    ]
    async with at_sewing(path, *sewn) as room:
        await room.press("i")
        await choose(room, "four-patch")
        await room.write("9 1/8")
        await room.press("enter")
        await room.screen_is(LinesDialog)
        await room.sees("Stop and make it again.", "Four-patch should be 9 1/2 in, reads 9 1/8 in")
        await room.sees("Likeliest: ")
        await room.press("enter")
        await room.screen_is(SewingScreen)
        await room.sees("These may be wrong: 3 four-patches from sew", "since the check of")
        assert not room.on_disk().checks[-1].passed


async def test_pieces_at_risk_are_said_until_they_were_seen_to(path: Path) -> None:
    sewn: list[c.Act] = [
        c.Count("pair", 20),
        c.Count("sew", 3),
        c.Measure("four-patch", (F(9),)),
    ]
    async with at_sewing(path, *sewn) as room:
        await room.sees("These may be wrong")
        await room.press("space")
        await room.sees("These may be wrong")
        await room.press("i")
        await choose(room, "the pieces that may be wrong were all looked through")
        await room.sees("The pieces that may have been wrong are seen to.")
        await room.press("n")
        await room.write("all three unpicked")
        await room.press("enter")
        await room.sees("Noted: all three unpicked")
        assert "may be wrong" not in room.flowing
        await room.press("u", "u")
        await room.sees("These may be wrong", "i: measure, or say that they are right.")


async def test_one_of_them_measured_right_asks_whether_they_all_are(path: Path) -> None:
    sewn: list[c.Act] = [c.Count("pair", 20), c.Count("sew", 3), c.Measure("four-patch", (F(9),))]
    async with at_sewing(path, *sewn) as room:
        for answer, risk in (("not all of them", True), ("all are right", False)):
            await room.press("i")
            await choose(room, "four-patch")
            await room.write("9 1/2")
            await room.press("enter")
            await room.screen_is(LinesDialog)
            await room.press("enter")
            await room.screen_is(ChoiceDialog)
            await room.sees("These were sewn like the wrong one", "Are they right, too?")
            await choose(room, answer)
            await room.screen_is(SewingScreen)
            assert bool(room.on_disk().seen_to) is not risk
        # A test sewn since says nothing of them, nor does one more when they are seen to.
        await room.press("i")
        await choose(room, "four-patch")
        await room.write("9 1/2")
        await room.press("enter")
        await room.screen_is(LinesDialog)
        await room.press("enter")
        await room.screen_is(SewingScreen)


async def test_a_reading_that_is_no_length_is_refused_in_the_dialog(path: Path) -> None:
    async with at_sewing(path, *up_to("press")) as room:
        before = room.seq()
        await room.press("i")
        await choose(room, "four-patch")
        await room.write("nine")
        await room.press("enter")
        await room.sees("nine")
        await room.press("escape")
        await room.screen_is(SewingScreen)
        assert room.seq() == before


async def test_a_changed_foot_is_said_once_and_going_on_is_recorded(path: Path) -> None:
    proved: list[c.Act] = [
        c.Count("pair", 20),
        c.RecordSettings(Settings(foot="patchwork foot")),
        c.Count("sew", 4),
        c.Measure("four-patch", (FOUR_PATCH,)),
    ]
    async with at_sewing(path, *proved) as room:
        await room.press("b")
        await choose(room, "another foot on the machine")
        await room.sees("another foot went on")
        await room.press("space")
        await room.sees("5 of 10 done")
        await room.press("space")
        await room.sees("6 of 10 done")
        assert "another foot went on" not in room.flowing
        kinds = [recorded.event.kind for recorded in room.sewing.quilt.record]
        assert kinds.count("went on") == 1


async def test_after_an_interruption_one_line_says_what_to_compare(path: Path) -> None:
    clock = StandingClock()
    async with at_sewing(path, c.Count("pair", 20), c.Count("sew", 1), clock=clock) as room:
        clock.forward(25 * MINUTE)
        await room.sees("Before you sew on: lay the top pair on the last one sewn.")
        await room.press("space")
        await room.sees("2 of 10 done")
        assert "Before you sew on" not in room.flowing


async def test_a_bobbin_that_ran_out_is_one_event_that_can_be_undone(path: Path) -> None:
    async with at_sewing(path, c.Count("pair", 20), c.Count("sew", 8)) as room:
        await room.press("b")
        await choose(room, "the bobbin ran out")
        await choose(room, "sew")
        await room.write("3")
        await room.press("enter")
        await room.until(lambda: room.on_disk().done["sew"] == 5)
        await room.press("u")
        await room.until(lambda: room.on_disk().done["sew"] == 8)


ROWS: list[c.Act] = [
    *up_to("cut-twice"),
    c.Count("cut-twice", 5),
    c.Count("press-open", 20),
    c.Count("sew-rows", 4),
]


async def test_a_join_counted_by_space_asks_for_its_rows_until_one_is_counted_without(
    path: Path,
) -> None:
    async with at_sewing(path, *ROWS, c.Answer("iron", "yes")) as room:
        # The counts behind it are no tags.
        await room.burst("space", "space", "space")
        await room.sees("Join two rows", "Clear both tags")
        await room.press("enter", "enter")
        await room.sees("Joined rows 1 and 2.")
        await room.press("space")
        await room.sees("Join two rows")
        await room.press("escape")
        assert room.on_disk().done["join-rows"] == 1
        await room.press("space")
        await room.write_over("")
        await room.press("enter")
        await room.write_over("")
        await room.press("enter")
        await room.sees("seam to go 2 of 3 done")
        await room.press("space")
        await room.sees("ADD BORDERS")
        assert room.on_disk().joints == ((1, 2),)


async def test_several_joins_at_once_have_no_rows_and_it_is_said_what_that_leaves_unknown(
    path: Path,
) -> None:
    async with at_sewing(path, *ROWS, c.Answer("iron", "yes")) as room:
        await room.press("1", "enter")
        await room.sees("Join two rows")
        await room.press("escape", "2", "enter")
        await room.sees("Counted 2 seams at join rows. 1 seam to go.", "look at the tags.")


async def test_it_is_said_how_many_can_be_unpicked_where_others_went_further(path: Path) -> None:
    async with at_sewing(path, c.Count("pair", 20), c.Count("sew", 8), c.Count("press", 8)) as room:
        await room.press("k")
        await room.sees("pair: 20 done, 4 can be unpicked")
        await room.sees("press: 8 done")
        assert "press: 8 done," not in room.flowing


async def test_only_neighbouring_rows_are_joined(path: Path) -> None:
    async with at_sewing(path, *ROWS) as room:
        await room.press("j")
        await room.sees("One row's tag", "R1", "R2")
        await room.press("enter")
        await room.write_over("R3")
        await room.press("enter")
        await room.sees("not neighbours")
        assert room.on_disk().done["join-rows"] == 0
        await room.press("enter")
        await room.write_over("R2")
        await room.press("enter")
        await room.until(lambda: room.on_disk().joints == ((1, 2),))


async def test_a_tag_read_upside_down_is_refused(path: Path) -> None:
    async with at_sewing(path, *ROWS) as room:
        await room.press("j")
        await room.write_over("6R")
        await room.press("enter", "enter")
        await room.sees("the tag is upside down")


async def test_the_next_row_says_which_way_its_seams_are_pressed(path: Path) -> None:
    async with at_sewing(path, *ROWS[:-1], c.Count("sew-rows", 1)) as room:
        await room.sees("Row 2: press its seams away from where", "the row begins.")


@pytest.mark.parametrize("size", [LARGE, SMALL])
async def test_how_it_is_going_tells_sessions_and_what_is_left(
    path: Path, size: tuple[int, int]
) -> None:
    async with at_sewing(path, *up_to("cut-twice"), size=size) as room:
        await room.press("g")
        await room.screen_is(PaceScreen)
        await room.sees("hours left, most likely", "sessions")
        await room.press("escape")
        await room.screen_is(SewingScreen)


async def test_a_date_is_answered_in_hours_a_week(path: Path) -> None:
    async with at_sewing(path, *up_to("cut-twice")) as room:
        await room.press("g")
        await room.screen_is(PaceScreen)
        await room.press("d")
        await room.write("soon")
        await room.press("enter", "enter", "enter")
        await room.sees("Write year-month-day")
        await room.write_over("2099-01-01")
        await room.press("enter", "enter", "enter")
        await room.screen_is(LinesDialog)
        await room.sees("a week")


async def test_tonight_fits_the_minutes_and_leaves_out_what_hurts(path: Path) -> None:
    async with at_sewing(path, *up_to("cut-twice")) as room:
        await room.press("e")
        await room.write_over("45")
        await room.press("enter")
        await room.write("cutting")
        await room.press("enter")
        await room.screen_is(LinesDialog)
        assert "Cut twice, at the cutting mat" not in room.flowing


async def test_tonight_refuses_what_it_does_not_know(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("e")
        await room.press("enter")
        await room.write("dancing")
        await room.press("enter")
        await room.sees("dancing")


async def test_the_numbers_are_paged_and_show_the_sizes(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("h")
        await room.screen_is(WorksheetScreen)
        await room.sees("Sizes", "unit finishes at", "5 7/8 in")
        await room.press("3")
        await room.sees("border 1, cream linen")
        await room.press("right")
        await room.sees("Cut list")
        await room.press("8")
        await room.sees("The top, 4 × 5")
        await room.press("escape")
        await room.screen_is(SewingScreen)


@pytest.mark.parametrize("size", [LARGE, SMALL])
async def test_another_layout_is_one_key_away(path: Path, size: tuple[int, int]) -> None:
    async with at_sewing(path, size=size) as room:
        await room.press("h")
        await room.press("7")
        await room.sees("> now 4 × 5")
        await room.press("down", "enter")
        await room.sees("The target is now")
        assert str(room.on_disk().target) != "4 × 5"
        assert room.on_disk().units_wanted <= 24
        await room.press("escape")
        await room.screen_is(SewingScreen)
        await room.press("u")
        await room.until(lambda: str(room.on_disk().target) == "4 × 5")


async def test_a_layout_that_cannot_be_any_more_is_not_offered(path: Path) -> None:
    async with at_sewing(path, *ROWS) as room:
        await room.press("h")
        await room.press("7")
        await room.sees("> now 4 × 5", "more would contradict what is sewn.")
        await room.press("down", "enter")
        await room.sees("4 × 5 is the target.")
        assert str(room.on_disk().target) == "4 × 5"


async def test_the_way_seams_are_pressed_is_kept_in_words(path: Path) -> None:
    async with at_sewing(path, *up_to("press")) as room:
        await room.press("d")
        await room.write("towards the darker cloth")
        await room.press("enter")
        await room.until(lambda: room.on_disk().press.get("press") == "towards the darker cloth")


UNITS = (*up_to("cut-twice"), c.Count("cut-twice", 5), c.Count("press-open", 20))


async def test_a_row_begun_is_written_down_by_one_key_and_shown(path: Path) -> None:
    async with at_sewing(path, *UNITS, c.ChooseStage("sew-rows"), size=LARGE) as room:
        await room.press("c")
        await room.write("2 of 3, 1 pair")
        await room.press("enter")
        await room.sees("Begun: 2 pieces of 3 units and 1 pair")
        assert room.on_disk().begun == ((2, 3), (1, 2))
        await room.press("c")
        await room.write("half")
        await room.press("enter")
        await room.sees("does not say what is sewn")


async def test_all_there_is_to_know_at_a_stage_is_one_key_away(path: Path) -> None:
    async with at_sewing(path, *up_to("sew-around"), size=LARGE) as room:
        await room.press("y")
        await room.screen_is(LinesDialog)
        await room.sees("Pivot at the corners or sew off the edge: both are right", "One bobbin")


async def test_before_rows_are_joined_it_is_asked_which_end_is_up(path: Path) -> None:
    async with at_sewing(path, *UNITS, c.Count("sew-rows", 4), size=LARGE) as room:
        await room.press("j")
        await room.sees("which end is", "up (R first)?")


async def test_how_the_rows_are_pressed_is_said_where_the_direction_is_written(path: Path) -> None:
    async with at_sewing(path, *UNITS, c.ChooseStage("sew-rows"), size=LARGE) as room:
        await room.press("d")
        await room.sees("Odd rows towards where the row begins", "differ by an even number")
