"""The row in hand by keys: each square named as it lies, one key a square, at every size."""

from __future__ import annotations

from pathlib import Path

import pytest
from msgspec.structs import replace

from sewalong.progress.record.events.wall import place_called
from sewalong.progress.record.state import State
from sewalong.progress.wall.wall_words import lies_words
from sewalong.quilt.web import WEB
from sewalong.screens.prompts.dialogs import CautionDialog, FormDialog
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.wall.row_in_hand import RowInHandScreen
from tests.progress import every_act as c
from tests.progress.wall.laid_rows import QUILT, laid
from tests.screens.sewing_room import ALL_YES, SIZES, Room, at_sewing
from tests.screens.test_screens_every_size import look


def unit_at(state: State, row: int, place: int) -> str:
    where = place_called((row, place)).capitalize()
    return f"{where}: {lies_words(state, state.wall.at((row, place)))}."


async def read_caution(room: Room) -> None:
    await room.screen_is(CautionDialog)
    await room.press("enter")
    await room.screen_is(RowInHandScreen)


async def test_a_row_is_sewn_one_key_a_square_and_resumed_inside(tmp_path: Path) -> None:
    acts = (*laid(QUILT), c.CloseSession(ALL_YES))
    async with at_sewing(tmp_path / "quilts.db", *acts, quilt=QUILT) as room:
        state = room.on_disk()
        await room.sees("SEW ROWS", "Next place 1:", "Then place 2:")
        await room.press("c")
        await room.screen_is(RowInHandScreen)
        await room.sees("Row 1 of 3: 0 of 4 sewn", unit_at(state, 1, 1), unit_at(state, 1, 2))
        await room.press("space")
        await read_caution(room)
        await room.sees("Row 1 of 3: 2 of 4 sewn", unit_at(state, 1, 3), "Next place 3:")
        assert room.on_disk().begun == ((1, 2),)
        await room.press("space")
        await room.sees(unit_at(state, 1, 4))
        await room.press("left", "left")
        await room.sees(unit_at(state, 1, 2), "It is sewn.")
        await room.press("u")
        await room.sees("Row 1 of 3: 2 of 4 sewn")
        await room.press("pagedown")
        await room.sees("Row 2 of 3: 0 of 4 sewn", unit_at(state, 2, 1))
        await room.press("pageup", "q", "escape")
        await room.screen_is(SewingScreen)
        await room.sees("Row 1: 3 of 4 sewn. Next place 4:")
        await room.press("c", "space")
        await room.screen_is(RowInHandScreen)
        await room.sees("Row 2 of 3: 0 of 4 sewn")
        assert room.on_disk().done["sew-rows"] == 1


async def test_the_last_square_of_all_leaves_the_screen(tmp_path: Path) -> None:
    acts = (*laid(QUILT), c.Count("sew-rows", 2), c.BeginRows(((1, 3),)))
    async with at_sewing(tmp_path / "quilts.db", *acts, quilt=QUILT) as room:
        await room.press("c")
        await room.screen_is(RowInHandScreen)
        await room.press("space")
        await room.until(lambda: not isinstance(room.app.screen, RowInHandScreen), "left")
        assert room.on_disk().done["sew-rows"] == 3


async def test_what_is_sewn_can_be_said_otherwise(tmp_path: Path) -> None:
    async with at_sewing(tmp_path / "quilts.db", *laid(QUILT), quilt=QUILT) as room:
        await room.press("c", "o")
        await room.screen_is(FormDialog)
        await room.write("2 pairs")
        await room.press("enter")
        await room.screen_is(RowInHandScreen)
        await room.press("space")
        await room.sees("nobody can say which place is next")
        assert room.on_disk().begun == ((2, 2),)


async def test_in_a_web_each_seam_is_the_next_unit(tmp_path: Path) -> None:
    quilt = replace(QUILT, joined=WEB)
    acts = (*laid(quilt), c.ReadCaution("start-web"), c.Count("start-web", 3))
    async with at_sewing(tmp_path / "quilts.db", *acts, quilt=quilt) as room:
        state = room.on_disk()
        await room.sees("Pass 2 of 3: next column 3, row 1.", "Next place 3:")
        await room.press("c")
        await room.sees(unit_at(state, 1, 3))
        await room.press("space")
        await room.sees(unit_at(state, 2, 3))


@pytest.mark.parametrize("size", [SIZES[0]])
async def test_it_can_be_read_at_every_size(tmp_path: Path, size: tuple[int, int]) -> None:
    acts = (*laid(QUILT), c.BeginRows(((1, 2),)))
    async with at_sewing(tmp_path / "quilts.db", *acts, quilt=QUILT, size=size) as room:
        await room.press("c")
        await room.screen_is(RowInHandScreen)
        assert await look(room, "the row in hand") == []
