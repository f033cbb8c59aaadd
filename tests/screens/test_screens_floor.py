"""Units laid out and photographed: read, asked about by keys, kept on the wall, and what mends it.

The photograph is drawn in the test, so what lies in it is known.
"""

from __future__ import annotations

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from functools import cache
from pathlib import Path

import pytest
from msgspec.structs import replace

from sewalong.quilt.choices import Fabric
from sewalong.quilt.quilt import Quilt, Target
from sewalong.screens.prompts.dialogs import ChoiceDialog, FormDialog, LinesDialog
from sewalong.screens.prompts.floor_dialog import FloorDialog
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.wall.floor_sheet import FloorSheetScreen, from_the_floor
from tests.fabrics.floor.made_floors import Floor, Lying, anyhow
from tests.progress import every_act as c
from tests.screens.sewing_room import LARGE, SMALL, Room, a_quilt, at_sewing

PHOTO = "floor.png"


@cache
def the_floor() -> Floor:
    """Twelve units of three sets, and a fourth set of which one unit lies there that is not known."""
    floor = anyhow("stacked-four-patch", 3, 4, fabrics=16)
    rows = [[*row] for row in floor.laid]
    rows[1][2] = Lying(12, 1)
    sets = {**floor.sets, 4: floor.sets[1][::-1]}
    return replace(floor, sets=sets, laid=rows)


@cache
def photographed() -> bytes:
    return the_floor().scene(noise=2.0, turned=2.0).file()


def quilt() -> Quilt:
    fabrics = tuple(
        Fabric(letter, f"cloth {letter.lower()}", str(colour), squares=8)
        for letter, colour in the_floor().colours.items()
    )
    return replace(a_quilt(pieces=128), fabrics=fabrics, target=Target(3, 4))


def accepted(sets: int) -> c.AcceptSets:
    """So many of its sets."""
    return c.AcceptSets(tuple(tuple(the_floor().sets[n]) for n in range(1, sets + 1)))


@pytest.fixture
def path(tmp_path: Path) -> Path:
    (tmp_path / PHOTO).write_bytes(photographed())
    return tmp_path / "quilts.db"


@asynccontextmanager
async def at_the_sheet(
    path: Path, *history: c.Act, size: tuple[int, int] = LARGE
) -> AsyncIterator[Room]:
    async with at_sewing(path, *history, quilt=quilt(), size=size) as room:
        await room.screen_is(SewingScreen)
        desk = room.app.screen
        assert isinstance(desk, SewingScreen)

        async def ask() -> None:
            await from_the_floor(desk)

        desk.ask_in_turn(ask())
        await room.screen_is(FloorDialog)
        await room.write_over(PHOTO)
        await room.press("enter", "enter")
        await room.screen_is(FloorSheetScreen)
        yield room


def lies(room: Room, row: int, place: int) -> tuple[int, int, int] | None:
    """Set, unit from 1 and turns at a place of the wall on disk."""
    wall = room.on_disk().wall
    found = wall.at((row, place))
    if found is None:
        return None
    unit = wall.units[found[0]]
    return unit.set, unit.unit + 1, found[1]


async def test_the_unsure_place_is_asked_about_and_the_rest_is_kept(path: Path) -> None:
    async with at_the_sheet(path, accepted(3)) as room:
        await room.sees(
            "11 of 12 places are sure.", "2·3: no unit that is known looks like it.", "??"
        )
        await room.press("n")
        await room.sees("2·3: no unit that is known")
        # Said to be nothing, taken back, and said to be one of those that are known.
        await room.press("o")
        await room.screen_is(FormDialog)
        await room.write("nothing")
        await room.press("enter")
        await room.screen_is(FloorSheetScreen)
        await room.sees("2·3: nothing, as you said.", "ok")
        await room.press("n")
        await room.sees("Every place is sure. k keeps it so.")
        await room.press("u")
        await room.sees("Taken back.")
        await room.press("o")
        await room.write("99/1")
        await room.press("enter")
        await room.sees("Not done: There is no unit 99/1")
        await room.press("o")
        await room.write("nothing")
        await room.press("enter")
        await room.press("k")
        await room.screen_is(LinesDialog)
        await room.sees("What mends it")
        assert lies(room, 2, 3) is None
        for row, there in enumerate(the_floor().laid, start=1):
            for place, one in enumerate(there, start=1):
                if one is not None and one.unit < 12 and not _alike(one):
                    assert lies(room, row, place) == (one.unit // 4 + 1, one.unit % 4 + 1, one.turn)
        await room.press("enter")
        await room.screen_is(SewingScreen)


def _alike(one: Lying) -> bool:
    """Whether another unit shows the same: which of them lies there does not matter."""
    shown = the_floor().shows(one)
    others = [Lying(n, turn) for n in range(12) if n != one.unit for turn in range(4)]
    return any(the_floor().shows(other) == shown for other in others)


async def test_a_place_that_is_sure_can_be_said_otherwise_by_its_number(path: Path) -> None:
    async with at_the_sheet(path, accepted(4)) as room:
        await room.sees("12 of 12 places are sure.")
        await room.press("4")
        await room.sees("Not done: There is no such number here.")
        await room.press("1")
        await room.sees("1·1: ", "as you said.")
        # What was said is not lost by one key.
        await room.press("escape")
        await room.screen_is(ChoiceDialog)
        await room.press("enter")
        await room.screen_is(FloorSheetScreen)
        await room.press("escape", "down", "enter")
        await room.screen_is(SewingScreen)
        assert not room.on_disk().wall.rows


async def test_without_sets_each_patch_is_asked_about(path: Path) -> None:
    async with at_the_sheet(path) as room:
        await room.sees("12 places", "patch 1 of 4: ")
        await room.press("o")
        await room.screen_is(FormDialog)
        await room.write_over("0")
        await room.press("enter")
        await room.write("cloth b")
        await room.press("enter")
        await room.sees("Not done: A unit has patches 1 to 4, not 0.")
        await room.press("o")
        await room.write_over("3")
        await room.press("enter")
        await room.write("cloth b")
        await room.press("enter")
        await room.screen_is(FloorSheetScreen)
        await room.press("k")
        await room.screen_is(LinesDialog)
        await room.press("enter")
        wall = room.on_disk().wall
        assert len(wall.units) == 12
        assert "B" in {letter for unit in wall.units for letter in unit.squares}


async def test_it_is_read_again_and_left(path: Path) -> None:
    async with at_the_sheet(path, accepted(4), size=SMALL) as room:
        await room.press("w")
        await room.screen_is(FloorDialog)
        await room.write_over("gone.png")
        await room.press("enter", "enter")
        await room.sees("no file")
        await room.press("escape")
        await room.screen_is(FloorSheetScreen)
        await room.press("w")
        await room.screen_is(FloorDialog)
        await room.press("enter", "enter")
        await room.screen_is(FloorSheetScreen)
        await room.press("right", "down", "escape")
        await room.screen_is(SewingScreen)
