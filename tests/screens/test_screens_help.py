"""The help of every screen: found by a word, done by enter, and not a moment before it is due."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest
from textual.containers import VerticalScroll

from sewalong.owner.preferences import Preferences
from sewalong.screens.app import SewalongApp
from sewalong.screens.change_plan import KEYS as CHANGE_KEYS
from sewalong.screens.change_plan import ChangePlanScreen
from sewalong.screens.cloth.fabrics import KEYS as FABRIC_KEYS
from sewalong.screens.cloth.fabrics import FabricsScreen
from sewalong.screens.cloth.photo_sheet import KEYS as PHOTO_KEYS
from sewalong.screens.cloth.photo_sheet import PhotoSheetScreen
from sewalong.screens.cloth.proposing import KEYS as PROPOSING_KEYS
from sewalong.screens.cloth.proposing import ProposingScreen
from sewalong.screens.cloth.sets import KEYS as SET_KEYS
from sewalong.screens.cloth.sets import SetsScreen
from sewalong.screens.helped import HelpedScreen
from sewalong.screens.left_once import MORE_BELOW
from sewalong.screens.new_quilt import KEYS as NEW_KEYS
from sewalong.screens.new_quilt import NewQuiltScreen
from sewalong.screens.pace import KEYS as PACE_KEYS
from sewalong.screens.pace import PaceScreen
from sewalong.screens.prompts.dialogs import CautionDialog, ChoiceDialog, FormDialog
from sewalong.screens.prompts.help import ANYWHERE, HelpDialog, offers_for
from sewalong.screens.quilts import KEYS as LIST_KEYS
from sewalong.screens.quilts import QuiltsScreen
from sewalong.screens.returning import KEYS as RETURN_KEYS
from sewalong.screens.returning import ReturnScreen
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.wall.floor_sheet import KEYS as FLOOR_KEYS
from sewalong.screens.wall.floor_sheet import FloorSheetScreen
from sewalong.screens.wall.proposing import KEYS as LAYOUT_KEYS
from sewalong.screens.wall.proposing import ProposedWallScreen
from sewalong.screens.wall.row_in_hand import KEYS as ROW_KEYS
from sewalong.screens.wall.row_in_hand import RowInHandScreen
from sewalong.screens.wall.wall import KEYS as WALL_KEYS
from sewalong.screens.wall.wall import WallScreen
from sewalong.screens.widgets.keys import SEWING_KEYS, Key, keys_with, line_of
from sewalong.screens.worksheet import KEYS as NUMBER_KEYS
from sewalong.screens.worksheet import PAGES, WorksheetScreen
from sewalong.store.library import Library
from tests.progress import every_act as c
from tests.screens.sewing_room import (
    LARGE,
    SMALL,
    Room,
    StandingClock,
    at_sewing,
    put_on_shelf,
    the_app,
    up_to,
)

ALL_KEYS: dict[Any, tuple[Key, ...]] = {
    SewingScreen: SEWING_KEYS,
    QuiltsScreen: LIST_KEYS,
    ReturnScreen: RETURN_KEYS,
    PaceScreen: PACE_KEYS,
    WorksheetScreen: NUMBER_KEYS,
    NewQuiltScreen: NEW_KEYS,
    ChangePlanScreen: CHANGE_KEYS,
    FabricsScreen: FABRIC_KEYS,
    PhotoSheetScreen: PHOTO_KEYS,
    SetsScreen: SET_KEYS,
    ProposingScreen: PROPOSING_KEYS,
    RowInHandScreen: ROW_KEYS,
    WallScreen: WALL_KEYS,
    ProposedWallScreen: LAYOUT_KEYS,
    FloorSheetScreen: FLOOR_KEYS,
}


def test_every_screen_that_has_help_is_looked_at_here() -> None:
    """Those named, and every screen that is one of theirs with more on it."""
    found: set[type[Any]] = set()
    more: list[type[Any]] = [HelpedScreen]
    while more:
        kind = more.pop()
        found.add(kind)
        more += kind.__subclasses__()
    shown = {kind for kind in found if "BINDINGS" in vars(kind) and kind.__module__[:4] == "sewa"}
    assert shown == set(ALL_KEYS)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "quilts.db"


def found(keys: tuple[Key, ...], typed: str) -> list[str]:
    return [key.id for key in offers_for((*keys, *ANYWHERE), typed)]


@pytest.mark.parametrize(
    ("typed", "first", "among"),
    [
        ("needle", "sew.machine", {"sew.changed", "any.safety"}),
        ("spoil", "sew.spoil", set()),
        ("undo", "sew.undo", {"sew.unpick"}),
        ("ruined", "sew.spoil", set()),
        ("bobbin ran out", "sew.changed", set()),
        ("YARDAGE", "sew.numbers", set()),
        ("how l", "sew.tonight", set()),
        ("finished", "sew.count", set()),
        ("dark", "sew.look", set()),
        ("backup", "sew.elsewhere", set()),
        ("tape", "sew.measure", set()),
        ("iron", "sew.press", {"any.safety"}),
    ],
)
def test_a_word_finds_it(typed: str, first: str, among: set[str]) -> None:
    ids = found(SEWING_KEYS, typed)
    assert ids[0] == first
    assert among <= set(ids)


def test_a_word_that_is_nowhere_finds_nothing_and_none_finds_all() -> None:
    assert found(SEWING_KEYS, "marmalade") == []
    assert found(SEWING_KEYS, "  ") == [key.id for key in (*SEWING_KEYS, *ANYWHERE)]


@pytest.mark.parametrize("screen", ALL_KEYS)
def test_every_key_is_found_by_what_it_is_called(screen: type) -> None:
    for key in ALL_KEYS[screen]:
        assert key.id in found(ALL_KEYS[screen], key.short)


@pytest.mark.parametrize("screen", ALL_KEYS)
def test_every_key_of_every_screen_does_something_that_is_there(screen: type) -> None:
    for key in ALL_KEYS[screen]:
        whose, _, name = key.action.partition("(")[0].rpartition(".")
        on = SewalongApp if whose == "app" else screen
        assert callable(getattr(on, f"action_{name}", None)), key.id


@pytest.mark.parametrize("screen", ALL_KEYS)
def test_every_screen_has_the_help(screen: type) -> None:
    assert [key.key for key in ALL_KEYS[screen] if key.action == "help"] == ["question_mark"]


@pytest.mark.parametrize("keys", [LIST_KEYS, RETURN_KEYS, PACE_KEYS, NUMBER_KEYS])
@pytest.mark.parametrize("width", [36, 50, 76, 120])
def test_every_key_line_fits_and_ends_with_the_way_out_and_the_help(
    keys: tuple[Key, ...], width: int
) -> None:
    line = line_of(width, keys)
    assert len(line) <= width
    assert line.endswith("? help")
    assert "  ".join(line.split("  ")[-2:-1]) in {f"{key.cap} {key.short}" for key in keys}


async def test_enter_does_what_was_found(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("question_mark")
        await room.screen_is(HelpDialog)
        await room.write("spoil")
        await room.press("enter")
        await room.screen_is(ChoiceDialog)
        await room.press("escape", "question_mark")
        await room.write("note")
        await room.press("enter")
        await room.screen_is(FormDialog)
        await room.sees("A note for yourself")


async def test_enter_does_nothing_that_was_not_looked_for(path: Path) -> None:
    async with at_sewing(path) as room:
        before = room.seq()
        await room.press("question_mark", "enter")
        await room.screen_is(SewingScreen)
        await room.press("question_mark")
        await room.write("marmalade")
        await room.sees("Nothing here goes by that.")
        await room.press("enter")
        await room.screen_is(HelpDialog)
        await room.press("escape")
        await room.screen_is(SewingScreen)
        assert room.seq() == before


async def test_arrows_choose_too_and_what_is_only_to_be_read_stays(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("question_mark", "down", "enter")
        await room.until(lambda: room.state.done["pair"] == 1, "one counted")
        await room.press("question_mark")
        await room.write("safety")
        await room.press("enter")
        await room.screen_is(HelpDialog)


async def test_a_caution_that_is_due_comes_first_there_too(path: Path) -> None:
    at_the_mat = [*up_to("cut-twice"), c.ChooseStage("cut-twice")]
    async with at_sewing(path, *at_the_mat) as room:
        await room.press("question_mark", "down", "enter")
        await room.screen_is(CautionDialog)
        await room.press("escape")
        await room.sees("Nothing was counted.")


async def test_a_burst_is_for_nothing_it_did_not_see(path: Path) -> None:
    """What is typed with the ? is the word looked for; enter and space behind it do nothing."""
    async with at_sewing(path) as room:
        before = room.seq()
        await room.burst("question_mark", "s", "p", "o", "enter", "space", "space")
        await room.screen_is(HelpDialog)
        await room.sees("spo")
        assert room.seq() == before
        await room.burst("enter", "space", "enter")
        await room.screen_is(ChoiceDialog)
        assert room.seq() == before


async def test_the_help_names_the_keys_that_were_moved_and_opens_by_its_own(path: Path) -> None:
    clock = StandingClock()
    key = put_on_shelf(path, clock, c.OpenSession())
    library = Library(path, clock())
    preferences = Preferences(keys={"help": ("f1",), "spoil": ("minus",)})
    try:
        app = SewalongApp(library, quilt=key, clock=clock, preferences=preferences)
        async with app.run_test(size=(80, 24)) as pilot:
            room = Room(app, pilot, path, key)
            await room.screen_is(SewingScreen)
            await room.press("f1")
            await room.screen_is(HelpDialog)
            await room.write("spoil")
            await room.sees("- Set spoiled pieces aside")
            await room.press("escape", "escape")
            await room.screen_is(QuiltsScreen)
            await room.sees("f1 help")
            await room.press("f1")
            await room.screen_is(HelpDialog)
    finally:
        library.close()


def test_a_key_that_is_taken_there_is_not_the_helps() -> None:
    keys = keys_with({"help": ("d",)}, PACE_KEYS)
    assert keys == PACE_KEYS


async def test_the_help_works_on_every_screen(path: Path) -> None:
    clock = StandingClock()
    key = put_on_shelf(path, clock, c.OpenSession(), c.Count("pair", 4), c.CloseSession())
    clock.forward(timedelta(days=24))
    async with the_app(path, clock, key) as room:
        await room.screen_is(ReturnScreen)
        await room.press("question_mark")
        await room.write("begin")
        await room.press("enter")
        await room.screen_is(SewingScreen)
        await room.press("g", "question_mark")
        await room.write("birthday")
        await room.press("enter")
        await room.sees("Wanted by a date")
        await room.press("escape", "escape", "h", "question_mark")
        await room.screen_is(HelpDialog)
        await room.write("thread")
        await room.press("enter")
        await room.screen_is(WorksheetScreen)
        await room.sees("Thread")
        await room.press("escape")
        await room.screen_is(SewingScreen)
        await room.press("escape")
        await room.screen_is(QuiltsScreen)
        await room.press("question_mark")
        await room.write("open")
        await room.press("enter")
        await room.screen_is(SewingScreen)


# -- clicked -----------------------------------------------------------------------------------


async def click(room: Room, text: str) -> None:
    """Click where `text` stands."""
    y, line = next((y, line) for y, line in enumerate(room.lines) if text in line)
    await room.pilot.click(offset=(line.index(text), y))
    await room.pilot.pause()


async def test_a_stage_of_the_route_can_be_clicked(path: Path) -> None:
    async with at_sewing(path, c.Count("pair", 4)) as room:
        await click(room, "cut twice")
        await room.until(lambda: room.state.chosen == "cut-twice", "chosen")
        await room.sees("> cut twice")
        before = room.seq()
        await click(room, "of the work")
        assert room.seq() == before


async def test_a_stage_far_down_a_low_screen_is_the_one_that_was_clicked(path: Path) -> None:
    async with at_sewing(path, *up_to("cut-twice"), size=(80, 16)) as room:
        await room.sees("more stages before")
        await click(room, "press open ")
        await room.until(lambda: room.state.chosen == "press-open", "chosen")


async def test_a_quilt_of_the_list_can_be_clicked(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("escape")
        await room.screen_is(QuiltsScreen)
        await click(room, "Window seat")
        await room.screen_is(SewingScreen)


async def test_a_page_of_numbers_can_be_clicked(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("h")
        await room.screen_is(WorksheetScreen)
        for n, name in enumerate(PAGES.values(), 1):
            # Names do not break where lines end.
            await click(room, f"{n}\N{NO-BREAK SPACE}{name.split()[0]}")
            title = room.app.screen._numbers.sections[n - 1].title  # type: ignore[attr-defined]
            await room.sees(" ".join(title.split()))


# -- what continues below ----------------------------------------------------------------------


@pytest.mark.parametrize("size", [LARGE, SMALL])
async def test_what_continues_below_says_so_until_its_end(
    path: Path, size: tuple[int, int]
) -> None:
    async with at_sewing(path, size=size) as room:
        await room.press("question_mark")
        await room.sees(MORE_BELOW)
        await room.press("end")
        await room.until(lambda: MORE_BELOW not in room.flowing, "the end")
        await room.press("escape", "h")
        await room.screen_is(WorksheetScreen)
        scrolled = room.app.screen.query_one(VerticalScroll)
        assert (MORE_BELOW in room.flowing) is bool(scrolled.max_scroll_y)


async def test_a_caution_and_a_list_of_choices_say_so_too(path: Path) -> None:
    at_the_mat = [*up_to("cut-twice"), c.ChooseStage("cut-twice")]
    async with at_sewing(path, *at_the_mat, size=(40, 14)) as room:
        await room.press("space")
        await room.screen_is(CautionDialog)
        await room.sees(MORE_BELOW)
        await room.press("end")
        await room.until(lambda: MORE_BELOW not in room.flowing, "the end")
        await room.press("escape", "o")
        await room.screen_is(ChoiceDialog)
        await room.press("home")
        await room.sees(MORE_BELOW)
        await room.press("end")
        await room.until(lambda: MORE_BELOW not in room.flowing, "the last choice")


async def test_where_nothing_is_below_nothing_is_said(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("n")
        await room.screen_is(FormDialog)
        assert MORE_BELOW not in room.flowing
