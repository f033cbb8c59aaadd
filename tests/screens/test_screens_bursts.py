"""Keys that come all at once count for the screen that stood there, and for no other."""

from __future__ import annotations

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from datetime import timedelta
from pathlib import Path

import pytest
from textual.widgets import Input

from sewalong.screens.prompts.dialogs import (
    CautionDialog,
    ChoiceDialog,
    FormDialog,
    QuestionDialog,
)
from sewalong.screens.prompts.help import HelpDialog
from sewalong.screens.prompts.registry import ASKS
from sewalong.screens.quilts import QuiltsScreen
from sewalong.screens.returning import ReturnScreen
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.widgets.keys import SEWING_KEYS
from tests.progress import every_act as c
from tests.screens.sewing_room import (
    HOUR,
    Room,
    StandingClock,
    at_sewing,
    put_on_shelf,
    the_app,
    up_to,
)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "quilts.db"


OPENS = [key.key for key in SEWING_KEYS if key.action.startswith("ask(")] + ["question_mark", "g"]
BEHIND = ["space", "5", "enter", "space", "u", "2", "enter"]
"""What would count and undo on the sewing screen."""


@pytest.mark.parametrize("key", OPENS)
async def test_behind_a_key_that_opens_something_nothing_counts(path: Path, key: str) -> None:
    async with at_sewing(path, c.Count("pair", 4), c.Count("sew", 1)) as room:
        before = room.on_disk()
        await room.burst(key, *BEHIND)
        there = room.on_disk()
        assert (there.done, there.piles) == (before.done, before.piles)
        assert room.sewing.typed == ""


async def test_keys_in_order_count_as_they_come(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.burst("space", "1", "2", "enter", "space", "u", "3", "backspace", "2", "enter")
        await room.sees("pairs to go 15 of 20 done")


async def test_a_caution_on_its_way_is_not_read_by_keys_pressed_before(path: Path) -> None:
    async with at_sewing(path, *up_to("cut-twice"), c.ChooseStage("cut-twice")) as room:
        await room.burst("space", "enter", "space", "enter", "enter")
        await room.screen_is(CautionDialog)
        assert room.on_disk().done["cut-twice"] == 0
        await room.press("enter")
        await room.sees("stacks to go 1 of 5 done")


async def test_a_question_on_its_way_is_not_answered_by_keys_pressed_before(path: Path) -> None:
    async with at_sewing(path, c.Count("pair", 20), c.Count("sew", 2)) as room:
        await room.burst("x", "y", "y", "enter", "enter")
        await room.screen_is(QuestionDialog)
        assert room.on_disk().session is not None


async def test_what_is_typed_ahead_of_a_form_is_in_it_and_not_confirmed(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.burst("n", "a", "space", "5", "enter", "space", "space")
        await room.screen_is(FormDialog)
        assert room.app.screen.query_one(Input).value == "a 5"
        assert room.on_disk().notes == ()
        await room.press("enter")
        await room.sees("Noted: a 5")
        assert room.on_disk().done["pair"] == 0


async def test_between_two_dialogs_nothing_counts(path: Path) -> None:
    async with at_sewing(path, c.Count("pair", 4)) as room:
        await room.press("s")
        await room.screen_is(ChoiceDialog)
        await room.burst("enter", "space", "space", "3", "enter")
        await room.screen_is(FormDialog)
        assert room.on_disk().done["pair"] == 4
        assert room.on_disk().spoilage == ()


async def test_a_form_is_carried_out_once(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("n", "a")
        await room.burst("enter", "enter", "enter")
        await room.screen_is(SewingScreen)
        assert [note.text for note in room.on_disk().notes] == ["a"]


async def test_a_dialog_left_twice_takes_nothing_below_with_it(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("question_mark")
        await room.screen_is(HelpDialog)
        await room.burst("escape", "escape", "escape")
        await room.screen_is(SewingScreen)


@asynccontextmanager
async def at_the_list(path: Path, *, later: timedelta = timedelta()) -> AsyncIterator[Room]:
    """The list of quilts, with one in it of which 4 pairs are done, so much later."""
    clock = StandingClock()
    put_on_shelf(path, clock, c.OpenSession(), c.Count("pair", 4))
    clock.forward(later)
    async with the_app(path, clock) as room:
        await room.screen_is(QuiltsScreen)
        yield room


async def test_a_list_chosen_from_twice_is_chosen_from_once(path: Path) -> None:
    async with at_the_list(path) as room:
        await room.burst("enter", "enter", "enter", "enter")
        await room.screen_is(SewingScreen)
        await room.press("s")
        await room.screen_is(ChoiceDialog)
        await room.burst("enter", "enter", "enter")
        await room.screen_is(FormDialog)


async def test_opening_a_quilt_counts_nothing_in_it(path: Path) -> None:
    async with at_the_list(path) as room:
        await room.burst("enter", "space", "space")
        await room.screen_is(SewingScreen)
        assert room.state.done["pair"] == 4


async def test_the_return_sheet_is_not_passed_over_by_keys_pressed_before(path: Path) -> None:
    async with at_the_list(path, later=30 * HOUR) as room:
        await room.burst("enter", "enter", "space")
        await room.screen_is(ReturnScreen)


async def test_pasted_text_counts_nothing(path: Path) -> None:
    from textual.events import Paste

    async with at_sewing(path) as room:
        room.app.post_message(Paste("  12\r u x"))
        await room.pilot.pause()
        await room.screen_is(SewingScreen)
        assert room.on_disk().done["pair"] == 0


async def test_ctrl_z_undoes(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("7", "enter")
        await room.sees("pairs to go 7 of 20 done")
        await room.press("ctrl+z")
        await room.sees("Undone: counted 7 pairs.", "pairs to go 0 of 20 done")


def test_all_asks_are_among_the_keys_tried() -> None:
    assert len(OPENS) == len(ASKS) + 2
