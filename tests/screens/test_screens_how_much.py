"""How much: reasons and roundings are behind enter, and the page follows another window."""

from __future__ import annotations

from pathlib import Path

import pytest

from sewalong.quilt.worksheet.worksheet import worksheet
from sewalong.screens.prompts.dialogs import LinesDialog
from sewalong.screens.widgets.reasoned import ReasonedRow
from sewalong.screens.worksheet import WorksheetScreen
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.library import Library
from tests.progress import every_act as c
from tests.screens.sewing_room import StandingClock, at_sewing


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "quilts.db"


async def test_a_number_stands_alone_and_enter_says_how_it_came_about(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("h")
        await room.screen_is(WorksheetScreen)
        numbers = worksheet(room.sewing.quilt.state.quilt).sizes.lines
        await room.sees("unit unfinished")
        for place, line in enumerate(numbers):
            await room.press(*(["down"] if place else []))
            assert f"({line.rounded})" not in room.flowing
            await room.press("enter")
            if line.why:
                await room.screen_is(LinesDialog)
                dialog = room.app.screen
                assert isinstance(dialog, LinesDialog)
                assert tuple(dialog._lines) == line.why
                await room.press("enter")
            else:
                await room.sees("Nothing more stands behind this one.")
        assert any("Rounded" in why for line in numbers for why in line.why)


async def test_the_open_page_follows_what_another_window_records(path: Path) -> None:
    clock = StandingClock()
    async with at_sewing(path, clock=clock) as room:
        await room.press("h")
        await room.sees("row of 5")
        await room.press("down", "down")
        library = Library(path, clock())
        try:
            (entry,) = [one for one in library.entries() if one.key == room.key]
            OpenQuilt(library, entry, clock).do(c.ChangeTarget(5, 4))
        finally:
            library.close()
        await room.sees("row of 4")
        await room.press("enter")
        await room.sees("Four-patch: 9 1/2 in")


async def test_a_click_on_a_number_asks_for_its_reasons(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("h")
        await room.screen_is(WorksheetScreen)
        await room.sees("unit unfinished")
        (row,) = [one for one in room.app.screen.query(ReasonedRow) if "finishes" in one.of][:1]
        await room.pilot.click(row, offset=(2, 0))
        await room.screen_is(LinesDialog)
        dialog = room.app.screen
        assert isinstance(dialog, LinesDialog)
        assert dialog._title == row.of
