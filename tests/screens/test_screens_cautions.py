"""Cautions at the stages: read once, then not again until due; not reading counts nothing."""

from __future__ import annotations

from pathlib import Path

import pytest

from sewalong.screens.prompts.dialogs import CautionDialog
from sewalong.screens.sewing import SewingScreen
from tests.progress import every_act as c
from tests.screens.choosing import choose
from tests.screens.sewing_room import (
    HOUR,
    MINUTE,
    SIZES,
    Room,
    StandingClock,
    at_sewing,
    up_to,
)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "quilts.db"


AT_THE_MAT = [*up_to("cut-twice"), c.ChooseStage("cut-twice")]


async def in_a_new_session(room: Room, clock: StandingClock) -> None:
    """Close the session, so that every caution is to be read anew."""
    room.sewing.attempt(c.CloseSession(dict.fromkeys(("iron", "blade", "machine", "pins"), "yes")))
    clock.forward(HOUR)


async def read(room: Room) -> None:
    """Say that the caution in front was read."""
    await room.screen_is(CautionDialog)
    await room.press("enter")
    await room.screen_is(SewingScreen)


@pytest.mark.parametrize("size", SIZES)
async def test_the_caution_comes_before_the_first_count_and_then_no_more(
    path: Path, size: tuple[int, int]
) -> None:
    async with at_sewing(path, c.Count("pair", 20), size=size) as room:
        await room.press("o")
        await choose(room, "sew: 10 to go")
        await room.sees("SEW at the machine")
        before = room.seq()
        await room.press("space")
        await room.screen_is(CautionDialog)
        await room.sees("CAUTION Needle", "Sew: first time in this", "out of the needle's path")
        await room.sees("enter: I have read this esc: not now")
        assert room.seq() == before
        assert room.on_disk().done["sew"] == 0
        await read(room)
        await room.sees("Counted 1 four-patch at sew.")
        await room.press("space", "3", "enter")
        await room.sees("Counted 3 four-patches at sew.")
        assert room.on_disk().done["sew"] == 5


@pytest.mark.parametrize("size", SIZES)
async def test_escape_on_the_caution_counts_nothing(path: Path, size: tuple[int, int]) -> None:
    async with at_sewing(path, *AT_THE_MAT, size=size) as room:
        before = room.seq()
        await room.press("2", "enter")
        await room.sees("CAUTION Rotary cutter · Two cuts across", "Close the blade after every")
        await room.press("escape")
        await room.sees("Nothing was counted.", "stacks to go 0 of 5 done")
        assert room.seq() == before
        await room.press("space")
        await room.screen_is(CautionDialog)


async def test_space_or_another_key_does_not_read_the_caution(path: Path) -> None:
    async with at_sewing(path, *AT_THE_MAT) as room:
        before = room.seq()
        await room.press("space")
        await room.screen_is(CautionDialog)
        await room.press("space", "u", "y", "x")
        await room.screen_is(CautionDialog)
        assert room.seq() == before


async def test_the_number_asked_for_is_counted_once_the_caution_is_read(path: Path) -> None:
    async with at_sewing(path, *AT_THE_MAT) as room:
        await room.press("2", "enter")
        await read(room)
        await room.sees("Counted 2 stacks at cut twice.", "stacks to go 2 of 5 done")


async def test_two_quick_presses_bring_one_caution(path: Path) -> None:
    async with at_sewing(path, *AT_THE_MAT) as room:
        for _ in range(3):
            room.app.simulate_key("space")
        await room.screen_is(CautionDialog)
        await room.press("enter")
        await room.screen_is(SewingScreen)
        await room.sees("stacks to go 1 of 5 done")
        assert room.on_disk().done["cut-twice"] == 1


async def test_the_caution_comes_again_after_an_hour(path: Path) -> None:
    clock = StandingClock()
    async with at_sewing(path, *AT_THE_MAT, clock=clock) as room:
        await room.press("space")
        await read(room)
        clock.forward(59 * MINUTE)
        await room.press("space")
        await room.sees("stacks to go 2 of 5 done")
        clock.forward(1 * MINUTE)
        await room.press("space")
        await room.screen_is(CautionDialog)
        await room.sees("an hour since you last")
        assert room.on_disk().done["cut-twice"] == 2
        await read(room)
        await room.sees("stacks to go 3 of 5 done")


async def test_a_new_blade_brings_the_caution_again(path: Path) -> None:
    clock = StandingClock()
    async with at_sewing(path, *AT_THE_MAT, clock=clock) as room:
        await room.press("space")
        await read(room)
        clock.forward(MINUTE)
        await room.press("b")
        await choose(room, "a new blade")
        await room.sees("A new blade went in.")
        clock.forward(MINUTE)
        await room.press("space")
        await room.screen_is(CautionDialog)
        await room.sees("a new blade went in", "Try it on a scrap first")
        await read(room)
        clock.forward(MINUTE)
        await room.press("space")
        await room.sees("stacks to go 3 of 5 done")


async def test_late_in_a_long_session_the_caution_speaks_of_tiredness(path: Path) -> None:
    clock = StandingClock()
    async with at_sewing(path, *AT_THE_MAT, clock=clock) as room:
        await room.press("space")
        await read(room)
        clock.forward(3 * HOUR)
        await room.press("space")
        await room.screen_is(CautionDialog)
        await room.sees("late in a long session", "leave the cutting for another day")


async def test_a_new_session_brings_every_caution_anew(path: Path) -> None:
    clock = StandingClock()
    async with at_sewing(path, *AT_THE_MAT, clock=clock) as room:
        await room.press("space")
        await read(room)
        await in_a_new_session(room, clock)
        await room.press("space")
        await room.screen_is(CautionDialog)
        await room.sees("first time in this")


async def test_a_stage_without_hazards_needs_no_caution(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("space")
        await room.sees("Counted 1 pair.")
        assert room.on_disk().cautions_read == {}


async def test_a_count_that_cannot_be_is_refused_before_any_caution(path: Path) -> None:
    async with at_sewing(path, *AT_THE_MAT) as room:
        before = room.seq()
        await room.press("9", "enter")
        await room.sees("Not done: 9 stacks at cut twice cannot be")
        await room.screen_is(SewingScreen)
        assert room.seq() == before
