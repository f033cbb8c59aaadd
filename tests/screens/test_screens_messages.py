"""No message outlives what it spoke of, and what still holds is still said."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from fractions import Fraction
from pathlib import Path

import pytest

from sewalong.screens.prompts.dialogs import FormDialog, LinesDialog, QuestionDialog
from sewalong.screens.sewing import SewingScreen
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.faults import StoreFault
from sewalong.store.library import Library
from tests.progress import every_act as c
from tests.screens.choosing import choose
from tests.screens.sewing_room import EVENING, Room, StandingClock, at_sewing


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "quilts.db"


@contextmanager
def another_window(path: Path) -> Iterator[OpenQuilt]:
    library = Library(path, EVENING)
    try:
        yield OpenQuilt(library, library.entries()[0], StandingClock())
    finally:
        library.close()


async def gone(room: Room, text: str) -> None:
    await room.until(lambda: text not in room.flowing, f"{text} gone")


async def test_what_was_counted_is_no_longer_said_once_it_is_taken_back_anywhere(
    path: Path,
) -> None:
    async with at_sewing(path) as room:
        await room.press("space")
        await room.sees("Counted 1 pair.")
        with another_window(path) as other:
            other.do(c.Undo())
        await room.sees("pairs to go 0 of 20 done")
        await gone(room, "Counted 1 pair.")
        # Nor what is said of that, once something was done here.
        await room.press("space")
        await gone(room, "Another window")


async def test_how_to_put_back_is_said_as_long_as_it_can_be(path: Path) -> None:
    async with at_sewing(path, c.Count("pair", 4)) as room:
        await room.press("u")
        await room.sees("Undone: counted 4 pairs. q puts it back.")
        with another_window(path) as other:
            other.do(c.Redo())
        await gone(room, "q puts it back")


async def test_a_count_is_not_said_below_another_stage_or_after_a_measurement(path: Path) -> None:
    async with at_sewing(path, c.Count("pair", 20)) as room:
        await room.press("o")
        await choose(room, "pair")
        await room.press("space")
        await room.sees("Counted 1 pair.")
        await room.press("o")
        await choose(room, "sew:")
        await room.sees("Working at sew.")
        await gone(room, "Counted 1 pair.")
        await room.press("i")
        await choose(room, "pair")
        await room.write("5 1/2")
        await room.press("enter")
        await room.screen_is(LinesDialog)
        await room.press("enter")
        await room.screen_is(SewingScreen)
        await gone(room, "Working at sew.")


async def test_a_refusal_in_a_dialog_is_past_when_the_dialog_is_left(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("t")
        await room.screen_is(FormDialog)
        await room.press("0", "enter", "enter")
        await room.sees("Rows and columns are numbers from 1 to 200")
        await room.press("escape")
        await room.screen_is(SewingScreen)
        assert "Rows and columns" not in room.text
        assert "Not done" not in room.text


async def test_that_nothing_can_be_read_is_said_as_long_as_it_is_so(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    async with at_sewing(path) as room:
        with monkeypatch.context() as broken:

            def refresh(self: OpenQuilt, *, force: bool = False) -> bool:
                raise StoreFault("The record cannot be read now.")

            broken.setattr(OpenQuilt, "refresh", refresh)
            room.sewing.take_in()
            await room.sees("Not done: The record cannot be read now.")
        room.sewing.take_in()
        await gone(room, "cannot be read")


async def test_what_was_counted_is_still_said_when_the_question_is_answered(path: Path) -> None:
    at_the_iron = (c.Count("pair", 20), c.Count("sew", 10), c.Count("press", 9))
    async with at_sewing(path, *at_the_iron) as room:
        await room.press("space")
        await room.screen_is(QuestionDialog)
        await room.press("y")
        await room.screen_is(SewingScreen)
        await room.sees("Counted 1 pressed four-patch at press.", "STACK")


async def test_advice_on_what_was_done_goes_with_it(path: Path) -> None:
    wrong = c.Measure("four-patch", (Fraction(9),))
    async with at_sewing(path, c.Count("pair", 20), c.Count("sew", 4), wrong) as room:
        await room.press("space")
        await room.sees("hese may be wrong")
        with another_window(path) as other:
            for _ in range(2):
                other.do(c.Undo())
        await gone(room, "hese may be wrong")
