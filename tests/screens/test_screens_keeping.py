"""What is kept beside the counts: notes, settings, stages chosen, targets, standing."""

from __future__ import annotations

from pathlib import Path

import pytest

from sewalong.progress.record.settings import Settings
from sewalong.progress.record.state import Standing
from sewalong.screens.prompts.dialogs import FormDialog
from sewalong.screens.quilts import QuiltsScreen
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.widgets.themes import DAYLIGHT, LAMPLIGHT
from tests.progress import every_act as c
from tests.screens.choosing import choose
from tests.screens.sewing_room import (
    LARGE,
    SMALL,
    StandingClock,
    a_quilt,
    at_sewing,
    put_on_shelf,
    the_app,
)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "quilts.db"


@pytest.mark.parametrize("size", [LARGE])
async def test_a_note_is_kept(path: Path, size: tuple[int, int]) -> None:
    async with at_sewing(path, size=size) as room:
        await room.press("n")
        await room.sees("A note for yourself", "Say why as well as what")
        await room.write("dark squares left out")
        await room.press("enter")
        await room.sees("Noted: dark squares left out")
        assert [note.text for note in room.on_disk().notes] == ["dark squares left out"]


async def test_an_empty_note_is_refused(path: Path) -> None:
    async with at_sewing(path) as room:
        before = room.seq()
        await room.press("n")
        await room.screen_is(FormDialog)
        await room.press("enter")
        await room.sees("Give some words.")
        assert room.seq() == before


@pytest.mark.parametrize("size", [SMALL])
async def test_machine_settings_are_written_down_with_their_proof(
    path: Path, size: tuple[int, int]
) -> None:
    async with at_sewing(path, size=size) as room:
        await room.press("m")
        await room.screen_is(FormDialog)
        for words in ("old black one", "quarter inch", "80/12", "5.5", "2.0", "grey 50"):
            await room.write(words)
            await room.press("enter")
        await room.write("three strips 3 1/2 in")
        await room.press("enter")
        await room.sees("Wrote down the machine's settings.")
        settings = room.on_disk().settings
        assert settings is not None
        assert (settings.machine, settings.foot, settings.needle_position, settings.proof) == (
            "old black one",
            "quarter inch",
            "5.5",
            "three strips 3 1/2 in",
        )


async def test_settings_left_empty_are_refused(path: Path) -> None:
    async with at_sewing(path) as room:
        before = room.seq()
        await room.press("m")
        await room.screen_is(FormDialog)
        await room.press(*["enter"] * 7)
        await room.sees("No setting was given: fill in at least one.")
        assert room.seq() == before


async def test_settings_looked_at_and_left_as_they_are_are_not_written_down_again(
    path: Path,
) -> None:
    known = c.RecordSettings(Settings(foot="patchwork foot", proof="3 strips gave 3 1/2 in"))
    async with at_sewing(path, known, size=LARGE) as room:
        before = room.seq()
        await room.press("m")
        await room.screen_is(FormDialog)
        await room.press(*["enter"] * 7)
        await room.screen_is(SewingScreen)
        await room.sees("Nothing was changed, so nothing was recorded.")
        assert room.seq() == before


@pytest.mark.parametrize("size", [LARGE])
async def test_another_stage_can_be_chosen_and_the_next_count_is_there(
    path: Path, size: tuple[int, int]
) -> None:
    async with at_sewing(path, c.Count("pair", 6), size=size) as room:
        await room.press("o")
        await room.sees("Work at which stage?", "(suggested)")
        await choose(room, "sew: 10 to go, 3 ready")
        await room.sees("SEW at the machine", "Working at sew.")
        assert room.on_disk().chosen == "sew"


async def test_a_stage_without_pieces_says_so_and_counts_nothing(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("o")
        await choose(room, "stack: 5 to go")
        await room.sees("STACK at the table", "None wait. Press o for another stage.")
        before = room.seq()
        await room.press("space")
        await room.sees("Not done: 1 stack at stack cannot be", "not enough for one")
        assert room.seq() == before


@pytest.mark.parametrize("size", [LARGE])
async def test_the_target_changes_and_nothing_counted_is_lost(
    path: Path, size: tuple[int, int]
) -> None:
    async with at_sewing(path, c.Count("pair", 6), size=size) as room:
        await room.press("t")
        await room.sees("Rows (down)", "Columns (across)", "24 units in all")
        await room.write_over("4")
        await room.press("enter")
        await room.write_over("6")
        await room.press("enter")
        await room.sees("The target is now 4 × 6.", "pairs to go 6 of 24 done")
        there = room.on_disk()
        assert (there.target.rows, there.target.columns, there.done["pair"]) == (4, 6, 6)


async def test_a_target_out_of_reach_says_what_is_short(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("t")
        await room.screen_is(FormDialog)
        await room.write_over("5")
        await room.press("enter")
        await room.write_over("5")
        await room.press("enter")
        await room.sees("The target is now 5 × 5.")
        await room.press("1", "escape")
        await room.sees("5 × 5 is 1 unit short. Find or buy 8 squares more", "or take 4 × 6")


async def test_the_same_target_changes_nothing_and_none_is_refused(path: Path) -> None:
    async with at_sewing(path) as room:
        before = room.seq()
        await room.press("t")
        await room.screen_is(FormDialog)
        await room.press("enter", "enter")
        await room.sees("The target is still 4 × 5.")
        await room.press("t")
        await room.screen_is(FormDialog)
        await room.write_over("0")
        await room.press("enter", "enter")
        await room.sees("Rows and columns are numbers from 1 to 200.")
        assert room.seq() == before


async def test_a_new_needle_is_kept(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("b")
        await choose(room, "a new needle")
        await room.sees("A new needle went in.")
        assert "needle" in room.on_disk().changed


@pytest.mark.parametrize("size", [SMALL])
async def test_a_quilt_is_laid_aside_and_picked_up_again(path: Path, size: tuple[int, int]) -> None:
    async with at_sewing(path, size=size) as room:
        await room.press("a")
        await choose(room, "lay it aside for now")
        await room.sees("Why? What are you waiting for?")
        await room.write("more grey cloth")
        await room.press("enter")
        await room.sees("Laid aside: more grey cloth.")
        before = room.seq()
        await room.press("space")
        await room.sees("This quilt is laid aside. Pick it up again")
        assert room.seq() == before
        await room.press("a")
        await choose(room, "pick it up again")
        await room.sees("Picked up again.")
        assert room.on_disk().standing is Standing.IN_PROGRESS
        await room.press("space")
        await room.sees("Counted 1 pair.")


async def test_a_quilt_is_marked_done_and_that_can_be_undone(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("a")
        await choose(room, "mark it done")
        await room.sees("Marked done.")
        assert room.on_disk().standing is Standing.DONE
        await room.press("u")
        await room.sees("Undone: marked done.")
        assert room.on_disk().standing is Standing.IN_PROGRESS


async def test_where_was_i_shows_the_facts_and_goes_away_again(path: Path) -> None:
    async with at_sewing(path, c.Count("pair", 6), c.WriteNote("a mended seam")) as room:
        before = room.seq()
        await room.press("w")
        await room.sees("Where was I?", "a mended seam", "6 pairs")
        await room.press("w")
        await room.screen_is(SewingScreen)
        assert room.seq() == before


async def test_light_and_dark_change_by_a_key(path: Path) -> None:
    async with at_sewing(path) as room:
        assert room.app.theme == LAMPLIGHT.name
        await room.press("l")
        assert room.app.theme == DAYLIGHT.name
        await room.press("L")
        assert room.app.theme == LAMPLIGHT.name


async def test_escape_goes_to_all_quilts_with_the_session_open(path: Path) -> None:
    async with at_sewing(path, c.Count("pair", 6)) as room:
        await room.press("escape")
        await room.screen_is(QuiltsScreen)
        await room.sees("Window seat", "today", "Pair (at the table): 36 squares wait")
        assert room.on_disk().session is not None
        await room.press("enter")
        await room.screen_is(SewingScreen)


async def test_the_list_names_every_quilt_and_q_leaves(path: Path) -> None:
    clock = StandingClock()
    put_on_shelf(path, clock, c.LayAside("out of grey"), quilt=a_quilt("Attic stairs"))
    put_on_shelf(path, clock, quilt=a_quilt("Hop garden"))
    async with the_app(path, clock) as room:
        await room.sees("Attic stairs", "laid aside: out of grey", "Hop garden", "Pair (at the")
        await room.press("Q")
        await room.until(lambda: room.app.return_code == 0, "the end")


async def test_an_empty_shelf_says_how_to_begin(path: Path) -> None:
    async with the_app(path, StandingClock()) as room:
        await room.sees("No quilt yet.", "Begin one by a few questions: n", "sewalong demo")
