"""Counting on the sewing screen: one, several, taken back, refused; at both sizes."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.progress import every_act as c
from tests.screens.sewing_room import LARGE, SIZES, SMALL, a_quilt, at_sewing, kinds


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "quilts.db"


@pytest.mark.parametrize("size", SIZES)
async def test_space_counts_one_and_says_so(path: Path, size: tuple[int, int]) -> None:
    async with at_sewing(path, size=size) as room:
        await room.sees("PAIR", "pairs to go 0 of 20 done", "48 squares wait")
        await room.press("space")
        await room.sees("pairs to go 1 of 20 done", "46 squares wait", "Counted 1 pair.")
        assert room.on_disk().done["pair"] == 1


@pytest.mark.parametrize("size", SIZES)
async def test_a_number_and_enter_count_several(path: Path, size: tuple[int, int]) -> None:
    async with at_sewing(path, size=size) as room:
        await room.press("1", "2")
        await room.sees("12_ enter: count them")
        assert room.on_disk().done["pair"] == 0
        await room.press("enter")
        await room.sees("pairs to go 12 of 20 done", "Counted 12 pairs.")
        assert room.on_disk().done["pair"] == 12


@pytest.mark.parametrize("size", SIZES)
async def test_space_on_a_half_typed_number_counts_nothing(
    path: Path, size: tuple[int, int]
) -> None:
    async with at_sewing(path, size=size) as room:
        before = room.seq()
        await room.press("3", "space")
        await room.sees("Not done: Press enter to count 3, or esc to clear it.")
        assert room.seq() == before
        await room.press("enter")
        await room.sees("Counted 3 pairs.")
        assert room.on_disk().done["pair"] == 3


async def test_a_typed_number_can_be_mended_and_cleared(path: Path) -> None:
    async with at_sewing(path) as room:
        before = room.seq()
        await room.press("1", "2", "backspace")
        await room.sees("1_ enter: count them")
        await room.press("backspace")
        assert "enter: count them" not in room.text
        await room.press("7", "escape")
        assert "enter: count them" not in room.text
        assert room.seq() == before
        await room.press("enter")
        await room.sees("Type how many, then enter. Space counts one.")
        assert room.seq() == before


async def test_a_nought_in_front_is_no_number(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("0", "0", "enter")
        await room.sees("Type how many, then enter.")
        await room.press("0", "4", "enter")
        await room.sees("Counted 4 pairs.")


async def test_more_than_waits_is_refused_with_the_reason(path: Path) -> None:
    async with at_sewing(path) as room:
        before = room.seq()
        await room.press("2", "5", "enter")
        await room.sees(
            "Not done: 25 pairs at pair cannot be: each takes 2 squares",
            "48 squares wait, enough for 24",
            "recount that pile first",
        )
        await room.sees("pairs to go 0 of 20 done")
        assert room.seq() == before
        await room.press("space")
        await room.sees("Counted 1 pair.")
        assert "Not done" not in room.text


@pytest.mark.parametrize("size", SIZES)
async def test_undo_takes_back_the_last_and_again_the_one_before(
    path: Path, size: tuple[int, int]
) -> None:
    async with at_sewing(path, size=size) as room:
        await room.press("space", "4", "enter")
        await room.sees("pairs to go 5 of 20 done")
        await room.press("u")
        await room.sees("Undone: counted 4 pairs.", "pairs to go 1 of 20 done")
        await room.press("u")
        await room.sees("Undone: counted 1 pair.", "pairs to go 0 of 20 done")
        assert room.on_disk().piles["square"] == 48
        before = room.seq()
        await room.press("u")
        await room.sees("Not done: There is nothing to undo.")
        assert room.seq() == before
    assert list(kinds(path, room.key or "")).count("undone") == 2


async def test_what_was_undone_is_put_back_by_a_letter_or_as_everywhere_else(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("space", "4", "enter", "u", "ctrl+z")
        await room.sees("Undone: counted 1 pair.", "pairs to go 0 of 20 done")
        await room.press("ctrl+y")
        await room.sees("Put back: counted 1 pair.", "pairs to go 1 of 20 done")
        await room.press("q")
        await room.sees("Put back: counted 4 pairs.", "pairs to go 5 of 20 done")
        await room.press("q")
        await room.sees("Not done: There is nothing to put back")


async def test_letters_work_with_caps_lock(path: Path) -> None:
    async with at_sewing(path, c.Count("pair", 2)) as room:
        await room.press("U")
        await room.sees("Undone: counted 2 pairs.")
        await room.press("N")
        await room.sees("A note for yourself")
        await room.press("escape")
        await room.press("O")
        await room.sees("Work at which stage?")


async def test_the_stage_changes_when_its_pieces_run_out(path: Path) -> None:
    async with at_sewing(path, quilt=a_quilt(pieces=40)) as room:
        await room.press("2", "0", "enter")
        await room.sees("SEW at the machine", "four-patches to go 0 of 10 done", "20 pairs wait")


async def test_the_large_screen_shows_the_whole_road(path: Path) -> None:
    async with at_sewing(path, c.Count("pair", 6), size=LARGE) as room:
        route = (
            "pair 6/20 36",
            "sew 0/10 6",
            "press 0/10",
            "stack 0/5",
            "sew around 0/5",
            "cut twice 0/5",
            "press open 0/20",
            "sew rows 0/4",
            "join rows 0/3",
            "add borders 0/4",
            "layer 0/1",
            "quilt 0/4",
            "bind 0/4",
        )
        await room.sees(
            *route, "4 units spare", "nothing left over", "of the work", "0 of 20 units"
        )
        await room.sees("? all keys")


async def test_the_small_screen_shows_what_counting_needs(path: Path) -> None:
    async with at_sewing(path, c.Count("pair", 6), size=SMALL) as room:
        await room.sees("Window seat", "session 0 h 00", "PAIR at the table", "pairs to go")
        await room.sees("Takes 2 squares, makes 1 pair.", "Check: all four edges level")
        await room.sees("space count 1", "u undo", "? all keys")
        assert "█" in room.text
