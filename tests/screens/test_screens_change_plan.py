"""The plan of a quilt under way, changed by the form: what would change first, refusals beside it."""

from __future__ import annotations

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from fractions import Fraction
from pathlib import Path

import pytest

from sewalong.screens.change_plan import ChangePlanScreen
from sewalong.screens.worksheet import WorksheetScreen
from tests.progress import every_act as c
from tests.screens.sewing_room import Room, at_sewing, kinds, up_to

PLACE = {"size": 1, "count": 2, "layout": 6, "borders": 7, "fabrics": 9, "name": 10}


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "quilts.db"


@asynccontextmanager
async def at_the_plan(path: Path, *commands: c.Act) -> AsyncIterator[Room]:
    async with at_sewing(path, *commands) as room:
        await room.press("h")
        await room.screen_is(WorksheetScreen)
        await room.press("c")
        await room.screen_is(ChangePlanScreen)
        yield room


async def answer(room: Room, id: str, text: str) -> None:
    await room.press(*["down"] * PLACE[id], "enter")
    await room.write_over(text)
    await room.press("enter")


async def test_it_shows_the_plan_as_it_stands(path: Path) -> None:
    async with at_the_plan(path) as room:
        await room.sees("Window seat", "squares 5 in", "how many 48", "4 × 5", "2 1/2 in")
        await room.press("s")
        await room.sees("Not done: The plan is so already.")
        await room.press("escape")
        await room.screen_is(WorksheetScreen)


async def test_what_would_change_is_shown_before_it_is_done(path: Path) -> None:
    async with at_the_plan(path) as room:
        await answer(room, "borders", "3")
        await room.sees("Would change: border 1: 2 1/2 in → 3 in", "Top finishes at:")
        assert room.state.quilt.borders[0].cut == Fraction(5, 2)
        await room.press("s")
        await room.screen_is(WorksheetScreen)
        await room.sees("The plan is changed. Undo takes it back.")
        assert room.state.quilt.borders[0].cut == 3
        # The name of its cloth was not asked, and stays.
        assert room.state.quilt.borders[0].cloth == "cream linen"
        await room.press("escape", "u")
        assert room.state.quilt.borders[0].cut == Fraction(5, 2)
    assert room.key is not None
    assert list(kinds(path, room.key))[-2:] == ["plan changed", "undone"]


async def test_a_refusal_stands_beside_the_answer_and_nothing_changes(path: Path) -> None:
    async with at_the_plan(path, *up_to("press")) as room:
        seq = room.seq()
        await answer(room, "size", "6")
        await room.sees("It would be refused:")
        await room.press("s")
        await room.sees("Not done:")
        assert room.seq() == seq
        # Unless what is made was made so.
        await room.press("m")
        await room.sees("What is made already was made so.")
        await room.press("s")
        await room.screen_is(WorksheetScreen)
        assert room.state.quilt.starts[0].size == 6


async def test_the_method_stays(path: Path) -> None:
    async with at_the_plan(path) as room:
        await room.press("enter")
        await room.sees("The method of a quilt under way stays as it is")


async def test_it_is_not_asked_of_a_quilt_that_is_done(path: Path) -> None:
    async with at_sewing(path, c.LayAside("out of grey")) as room:
        await room.press("h")
        await room.screen_is(WorksheetScreen)
        await room.press("c")
        await room.sees("laid aside")
        await room.screen_is(WorksheetScreen)


async def test_another_name_is_the_quilt_s_everywhere(path: Path) -> None:
    async with at_the_plan(path) as room:
        await answer(room, "name", "Bay window")
        await room.press("s")
        await room.screen_is(WorksheetScreen)
        await room.sees("Bay window")


async def test_fabrics_are_said_changed_and_taken_back_by_the_form(path: Path) -> None:
    async with at_the_plan(path) as room:
        await answer(room, "fabrics", "lights 20, darks 20")
        await room.sees("Would change: fabric A added: lights, 20")
        await room.press("s")
        await room.screen_is(WorksheetScreen)
        assert [one.squares for one in room.state.quilt.counted_fabrics] == [20, 20]
        await room.press("escape", "u")
        assert room.state.quilt.fabrics == ()
