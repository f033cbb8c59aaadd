"""Leaving from wherever it is asks as the end of the session does, once, or at the next return."""

from __future__ import annotations

from pathlib import Path

import pytest
from textual.events import Key
from textual.widgets import Input

from sewalong.screens.pace import PaceScreen
from sewalong.screens.prompts.dialogs import (
    CautionDialog,
    ChoiceDialog,
    FormDialog,
    QuestionDialog,
)
from sewalong.screens.prompts.facts import FactsDialog
from sewalong.screens.prompts.help import HelpDialog
from sewalong.screens.prompts.leaving import HINT
from sewalong.screens.quilts import QuiltsScreen
from sewalong.screens.returning import ReturnScreen
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.worksheet import WorksheetScreen
from tests.progress import every_act as c
from tests.screens.sewing_room import (
    HOUR,
    LARGE,
    MINUTE,
    SMALL,
    Room,
    StandingClock,
    at_sewing,
    put_on_shelf,
    the_app,
    up_to,
)

USED: list[c.Act] = [c.Count("pair", 20), c.Count("sew", 2)]
"""The machine was used, and nothing else that is asked about."""


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "quilts.db"


async def answer_and_go(room: Room) -> None:
    """The question about the machine, then the pause note left as it is offered."""
    await room.sees(
        "Before you go (1 of 1)", "Is the machine off", "d: did not look", " ".join(HINT.split())
    )
    await room.press("y")
    await room.screen_is(FormDialog)
    boxes = len(room.app.screen.query(Input))
    await room.press(*["enter"] * (boxes - 1))
    room.app.post_message(Key("enter", "\r"))
    await room.until(lambda: room.app.return_code == 0, "the end")


WAYS: dict[str, tuple[tuple[str, ...], type]] = {
    "sewing": ((), SewingScreen),
    "a half-typed number": (("5",), SewingScreen),
    "a note": (("n",), FormDialog),
    "a note half written": (("n", "a", "b"), FormDialog),
    "other stages": (("o",), ChoiceDialog),
    "a pile to spoil": (("s", "enter"), FormDialog),
    "all keys": (("question_mark",), HelpDialog),
    "where was I": (("w",), FactsDialog),
    "how much": (("h",), WorksheetScreen),
    "how is it going": (("g",), PaceScreen),
    "a date for it": (("g", "d"), FormDialog),
    "the end of the session": (("x",), QuestionDialog),
    "the pause note": (("x", "y"), FormDialog),
    "all quilts": (("escape",), QuiltsScreen),
}


@pytest.mark.parametrize("leave", ["ctrl+c", pytest.param("ctrl+q", marks=pytest.mark.long)])
@pytest.mark.parametrize(("keys", "there"), WAYS.values(), ids=WAYS.keys())
async def test_from_every_screen_and_dialog_it_asks_as_the_end_of_the_session_does(
    path: Path, keys: tuple[str, ...], there: type, leave: str
) -> None:
    async with at_sewing(path, *USED) as room:
        for key in keys:
            await room.press(key)
        await room.until(lambda: isinstance(room.app.screen, there), there.__name__)
        await room.press(leave)
        await answer_and_go(room)
        (session,) = room.on_disk().sessions
        assert session.answers == {"machine": "yes"}
        assert room.on_disk().notes == ()


async def test_from_a_caution_too(path: Path) -> None:
    async with at_sewing(path, *up_to("cut-twice"), c.ChooseStage("cut-twice")) as room:
        await room.press("space")
        await room.screen_is(CautionDialog)
        await room.press("ctrl+c")
        await room.sees("Before you go (1 of 3)")
        assert room.on_disk().done["cut-twice"] == 0


@pytest.mark.parametrize("key", ["q", "escape", "x"])
async def test_from_the_list_every_key_that_leaves_asks_too(path: Path, key: str) -> None:
    async with at_sewing(path, *USED) as room:
        await room.press("escape")
        await room.screen_is(QuiltsScreen)
        await room.press(key)
        await answer_and_go(room)
        assert room.on_disk().session is None


@pytest.mark.parametrize("leave", ["ctrl+c", "ctrl+q"])
async def test_from_the_list_and_the_return_sheet_it_just_leaves_where_nothing_was_sewn(
    path: Path, leave: str
) -> None:
    clock = StandingClock()
    key = put_on_shelf(path, clock, c.OpenSession(), *USED)
    clock.forward(30 * HOUR)
    for first, there in ((None, QuiltsScreen), (key, ReturnScreen)):
        async with the_app(path, clock, first) as room:
            await room.screen_is(there)
            await room.press(leave)
            await room.until(lambda: room.app.return_code == 0, "the end")


@pytest.mark.parametrize("size", [LARGE, SMALL])
async def test_escape_stays_where_it_was(path: Path, size: tuple[int, int]) -> None:
    async with at_sewing(path, *USED, size=size) as room:
        before = room.seq()
        await room.press("ctrl+c")
        await room.sees("Is the machine off", "esc: stay ctrl+c: leave without answering")
        await room.press("escape")
        await room.screen_is(SewingScreen)
        await room.press("escape")
        await room.screen_is(QuiltsScreen)
        await room.press("q")
        await room.screen_is(QuestionDialog)
        await room.press("escape")
        await room.screen_is(QuiltsScreen)
        assert room.seq() == before
        assert room.app.return_code is None


async def test_where_nothing_was_done_nothing_is_asked(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("ctrl+c")
        await room.until(lambda: room.app.return_code == 0, "the end")
    clock = StandingClock()
    async with the_app(path, clock) as room:
        await room.screen_is(QuiltsScreen)
        await room.press("escape")
        await room.until(lambda: room.app.return_code == 0, "the end")


async def test_a_session_closed_by_its_key_is_not_asked_about_again(path: Path) -> None:
    async with at_sewing(path, *USED) as room:
        await room.press("x")
        await room.sees("Before you go (1 of 1)", "Is the machine off")
        await room.press("y")
        await room.screen_is(FormDialog)
        await room.press(*["enter"] * len(room.app.screen.query(Input)))
        await room.screen_is(QuiltsScreen)
        await room.press("q")
        await room.until(lambda: room.app.return_code == 0, "the end")


async def left_unasked(path: Path) -> str:
    """Left at once, the questions unanswered; the quilt's key."""
    async with at_sewing(path, *USED) as room:
        await room.press("ctrl+c")
        await room.screen_is(QuestionDialog)
        await room.press("ctrl+c")
        await room.until(lambda: room.app.return_code == 0, "the end")
        session = room.on_disk().session
        assert session is not None
        assert session.counts == {"pair": 20, "sew": 2}
        return room.key or ""


async def test_what_was_left_unasked_is_the_first_thing_at_the_return(path: Path) -> None:
    key = await left_unasked(path)
    clock = StandingClock()
    clock.forward(HOUR)
    async with the_app(path, clock, key) as room:
        await room.sees("You left before this was asked (1 of 1)", "Is the machine off")
        await room.press("n")
        await room.screen_is(SewingScreen)
        first, second = room.on_disk().sessions
        assert first.answers == {"machine": "no"}
        assert second.is_open
    clock.forward(MINUTE)
    async with the_app(path, clock, key) as room:
        await room.screen_is(SewingScreen)


async def test_not_answered_at_the_return_either_the_session_goes_on(path: Path) -> None:
    key = await left_unasked(path)
    clock = StandingClock()
    clock.forward(HOUR)
    async with the_app(path, clock, key) as room:
        await room.screen_is(QuestionDialog)
        await room.press("escape")
        await room.screen_is(SewingScreen)
        await room.press("o")
        await room.press("escape")
        await room.press("ctrl+c")
        await room.sees("Before you go (1 of 1)")


async def test_leaving_again_before_it_is_answered_leaves_it_for_the_next_return(
    path: Path,
) -> None:
    key = await left_unasked(path)
    clock = StandingClock()
    clock.forward(HOUR)
    for _ in range(2):
        async with the_app(path, clock, key) as room:
            await room.sees("You left before this was asked (1 of 1)")
            await room.press("ctrl+c")
            await room.until(lambda: room.app.return_code == 0, "the end")


async def test_after_hours_the_return_sheet_begins_with_it(path: Path) -> None:
    key = await left_unasked(path)
    clock = StandingClock()
    clock.forward(9 * HOUR)
    async with the_app(path, clock, key) as room:
        await room.screen_is(ReturnScreen)
        await room.sees("that session was never closed, so nobody asked.")


async def test_a_quilt_left_open_in_another_window_of_time_is_not_asked_about(path: Path) -> None:
    """Only what was opened here is asked about on leaving here."""
    clock = StandingClock()
    put_on_shelf(path, clock, c.OpenSession(), *USED)
    async with the_app(path, clock) as room:
        await room.screen_is(QuiltsScreen)
        await room.press("q")
        await room.until(lambda: room.app.return_code == 0, "the end")
