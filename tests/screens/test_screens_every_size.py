"""Every screen and dialog can be read at every size, and resizing loses nothing.

Each is opened once and resized while it stands there: nothing is cut off or under a scroll bar,
what has the focus keeps it, and what was typed stays.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from weakref import WeakKeyDictionary

import pytest
from msgspec.structs import replace
from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.events import Event
from textual.screen import Screen
from textual.widgets import Input, OptionList

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.photo.result import Kind, Place, ReadPhoto
from sewalong.piecing.catalogue import method_ids
from sewalong.progress.safety.cautions import Caution, caution_due
from sewalong.progress.safety.closing_questions import _ON_CLOSING, ON_LEAVING_THE_IRON
from sewalong.quilt.choices import Fabric
from sewalong.quilt.letters import letter
from sewalong.screens.app import SewalongApp
from sewalong.screens.cloth.photo_sheet import Keeper, PhotoSheetScreen
from sewalong.screens.helped import HelpedScreen
from sewalong.screens.new_quilt import NewQuiltScreen
from sewalong.screens.prompts.dialogs import CautionDialog, Dialog, QuestionDialog
from sewalong.screens.prompts.floor_dialog import FloorDialog
from sewalong.screens.prompts.help import HelpDialog
from sewalong.screens.prompts.leaving import HINT
from sewalong.screens.quilts import QuiltsScreen
from sewalong.screens.returning import ReturnScreen
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.wall.floor_sheet import FloorSheetScreen
from sewalong.screens.widgets.answer_row import AnswerRow
from sewalong.screens.widgets.keys import SEWING_KEYS
from sewalong.screens.widgets.literal_text import Words
from sewalong.screens.worksheet import WorksheetScreen
from tests.fabrics.floor.made_readings import not_sure
from tests.progress import every_act as c
from tests.progress.building import a_quilt as quilt_by
from tests.progress.building import opening
from tests.screens.fitting import faults_of
from tests.screens.sewing_room import (
    ALL_YES,
    DAY,
    EVENING,
    HOUR,
    MINUTE,
    Room,
    StandingClock,
    a_quilt,
    at_sewing,
    put_on_shelf,
    the_app,
    up_to,
)
from tests.screens.test_screens_unsaved import only_to_be_read

SIZES = ((80, 24), (40, 20), (120, 36), (200, 60))
"""In this order, and round again at the next: smaller, larger and back."""
SMALL = SIZES[:2]

LONG_NAME = "The quilt for the spare room with the window towards the harbour, spring"


async def settled_faults(room: Room) -> list[str]:
    """The faults that stay when all that is drawn a moment later has come."""
    for _ in range(5):
        if not faults_of(room.app.screen):
            break
        await room.pilot.pause()
    return faults_of(room.app.screen)


_SEEN: WeakKeyDictionary[SewalongApp, set[type]] = WeakKeyDictionary()
"""The kinds of dialogs that were looked at."""


def sizes_for(room: Room) -> Sequence[tuple[int, int]]:
    """All sizes; the large ones for the first of each kind of dialog, as all have one width there."""
    kind, seen = type(room.app.screen), _SEEN.setdefault(room.app, set())
    if issubclass(kind, Dialog) and kind in seen:
        return SMALL
    seen.add(kind)
    return SIZES


async def look(room: Room, what: str, sizes: Sequence[tuple[int, int]] | None = None) -> list[str]:
    """The faults of what stands in front, at every size."""
    order = room.app.key_order
    await room.until(lambda: order.are_for_the_screen_in_front(Event().time), what)
    screen, focused = room.app.screen, room.app.focused
    sizes = sizes or sizes_for(room)
    typed = [box.value for box in screen.query(Input)]
    # What lies below is not looked at, and need not be drawn.
    screen.styles.background = "black"
    found = []
    for width, height in sizes:
        await room.pilot.resize_terminal(width, height)
        at = f"{what} at {width}x{height}"
        assert room.app.screen is screen, at
        found += [f"{at}: {fault}" for fault in await settled_faults(room)]
        if room.app.focused is not focused:
            found.append(f"{at}: the focus went elsewhere")
        if [box.value for box in screen.query(Input)] != typed:
            found.append(f"{at}: what was typed is gone")
    return found


OPENS = [key.key for key in SEWING_KEYS if key.action.startswith(("ask(", "help", "pace", "close"))]


async def open_by(room: Room, key: str) -> None:
    """Press a key of the sewing screen, and wait for what it opens."""
    await room.press(key)
    await room.until(lambda: not isinstance(room.app.screen, SewingScreen), f"what {key} opens")
    await room.pilot.pause()


async def go_on(room: Room) -> None:
    """Take the first line of what stands there, or leave it; and wait for what comes of that."""
    screen = room.app.screen
    takes = isinstance(screen, Dialog) and isinstance(screen.focused, OptionList | Input)
    await room.press("enter" if takes else "escape")
    await room.until(
        lambda: not isinstance(room.app.screen, SewingScreen) or not room.app.screen.asks
    )
    await room.pilot.pause()


async def go_through(room: Room, key: str) -> list[str]:
    """Open what a key opens, and what comes behind it, and look at each."""
    found = []
    await open_by(room, key)
    for turn in range(6):
        screen = room.app.screen
        if isinstance(screen, SewingScreen):
            break
        if isinstance(screen.focused, Input) and not isinstance(screen, HelpDialog):
            await room.write("9")
        found += await look(room, f"{key}, {turn} ({type(screen).__name__})")
        if isinstance(screen, WorksheetScreen):
            for page in "2345678":
                await room.press(page)
                found += await look(room, f"{key}, page {page}", SMALL if page < "8" else None)
        await go_on(room)
    while not isinstance(room.app.screen, SewingScreen):
        await room.press("escape")
    return found


FEW = OPENS[::6]
"""What the short form opens; the long one opens the rest."""


@pytest.mark.parametrize(
    "keys",
    [
        pytest.param(FEW, id="a few"),
        pytest.param(
            [key for key in OPENS if key not in FEW], id="the rest", marks=pytest.mark.long
        ),
    ],
)
async def test_whatever_a_key_opens(tmp_path: Path, keys: list[str]) -> None:
    quilt = a_quilt(LONG_NAME)
    async with at_sewing(tmp_path / "quilts.db", *up_to("cut-twice"), quilt=quilt) as room:
        found = []
        for key in keys:
            found += await go_through(room, key)
    assert found == [], "\n".join(found)


def cautions() -> Iterator[Caution]:
    """Every caution of any stage of any method, for every reason there is."""
    together = {
        stage.hazards
        for method in method_ids()
        for stage in opening(quilt_by(method)).route.stages
        if stage.hazards
    }
    reasons = {
        "first": (EVENING, None),
        "again": (EVENING + HOUR, None),
        "late": (EVENING + 4 * HOUR, None),
        "new blade": (EVENING + MINUTE, EVENING + MINUTE),
    }
    for hazards in sorted(together):
        for now, blade in reasons.values():
            read = {str(hazard): EVENING for hazard in hazards}
            caution = caution_due(
                hazards, read=read, opened=EVENING, blade_changed=blade, now=now
            ) or caution_due(hazards, read={}, opened=EVENING, blade_changed=None, now=EVENING)
            assert caution is not None
            yield caution


def dialogs() -> Iterator[tuple[str, CautionDialog | QuestionDialog]]:
    """The dialogs that come unasked: every caution and every question."""
    for caution in dict.fromkeys(cautions()):
        yield caution.title, CautionDialog(caution, "sew all round")
    for question in (ON_LEAVING_THE_IRON, *(question for _, question in _ON_CLOSING)):
        yield question.id, QuestionDialog(question, "Before you go (2 of 4)", HINT)


@pytest.mark.long
async def test_what_is_said_and_asked_unasked(tmp_path: Path) -> None:
    found = []
    async with the_app(tmp_path / "quilts.db", StandingClock()) as room:
        for what, dialog in dialogs():
            await room.app.push_screen(dialog)
            found += await look(room, what)
            await room.app.pop_screen()
    assert found == [], "\n".join(found)


async def test_coming_back(tmp_path: Path) -> None:
    """The list, what was left unasked, where was I, and the sewing screen."""
    path, clock = tmp_path / "quilts.db", StandingClock()
    for n in range(9):
        put_on_shelf(path, clock, c.OpenSession(), quilt=a_quilt(f"{LONG_NAME} {n}"))
    key = put_on_shelf(
        path,
        clock,
        c.OpenSession(),
        *up_to("cut-twice"),
        *(c.PutPileAway(pile, "in the blue biscuit tin") for pile in ("square", "sewn-stack")),
        *(c.WriteNote("the grey ones are bias, go easy, and press before cutting " * 3),) * 3,
        c.CloseSession(ALL_YES, "cut the five stacks " * 4),
        quilt=a_quilt(LONG_NAME),
        every=9 * MINUTE,
    )
    clock.forward(24 * DAY)
    found = []
    async with the_app(path, clock) as room:
        await room.screen_is(QuiltsScreen)
        await room.press("end")
        found += await look(room, "the list")
        await room.press("home", "enter")
        await room.screen_is(ReturnScreen)
        found += await look(room, "where was I")
        await room.press("r")
        await room.until(lambda: isinstance(room.app.screen, Dialog), "what is counted first")
        found += await look(room, "count first")
    assert key
    assert found == [], "\n".join(found)


async def what_keys_open(room: Room) -> list[str]:
    """Look at each dialog that a key of the screen in front opens, and leave it."""
    there, found = room.app.screen, []
    assert isinstance(there, HelpedScreen)
    for key in there.keys:
        if key.key in ("escape", "q") or key.action.startswith(("page", "turn", "app.", "sew")):
            continue
        await room.press(key.key)
        await room.pilot.pause()
        if room.app.screen is not there:
            found += await look(room, f"{key.id} ({type(room.app.screen).__name__})")
        while room.app.screen is not there:
            await room.press("escape")
    return found


async def test_a_photograph_and_its_sheet(tmp_path: Path) -> None:
    """What is refused of one, and one of the largest grid there is."""
    places = tuple(
        Place(1 + at // 40, 1 + at % 40, Colour(165, 83, 47), 1.0, Kind.SOLID, letter(at % 60))
        for at in range(1600)
    )
    notes = ("No plain cloth is seen around the squares, so the light was not evened.",)
    found = []
    fabrics = (Fabric("A", LONG_NAME, "#a5532f", 9999, "one-way"), Fabric("B", "x", squares=1))
    plan = replace(a_quilt(LONG_NAME), fabrics=fabrics)
    async with at_sewing(tmp_path / "quilts.db", quilt=plan) as room:
        await open_by(room, "comma")
        found += await look(room, "fabrics of long names")
        await room.press("p")
        await room.press(*["enter"] * 4)
        await room.sees("Write the file of the photograph.")
        found += await look(room, "a photograph refused")
        await room.press("escape")
        keeper = Keeper(lambda *_: None, 0, {})
        room.app.push_screen(PhotoSheetScreen(ReadPhoto(40, 40, 4, places, notes), {}, keeper, {}))
        await room.screen_is(PhotoSheetScreen)
        found += await look(room, "the sheet")
    assert found == [], "\n".join(found)


async def test_units_laid_out_and_their_sheet(tmp_path: Path) -> None:
    """What is refused of a photograph of them, and one of the largest grid there is, none of it sure."""
    found = []
    fabrics = (Fabric("A", LONG_NAME, "#a5532f", 9999, "one-way"), Fabric("B", "x", squares=1))
    plan = replace(a_quilt(LONG_NAME), fabrics=fabrics)
    async with at_sewing(tmp_path / "quilts.db", quilt=plan) as room:
        await room.screen_is(SewingScreen)
        desk = room.app.screen
        assert isinstance(desk, SewingScreen)
        room.app.call_later(room.app.push_screen, FloorDialog(desk.quilt.state, {}))
        await room.screen_is(FloorDialog)
        await room.press("enter", "enter")
        await room.sees("Write the file of the photograph.")
        found += await look(room, "a photograph of the floor refused")
        await room.press("escape")
        floor = FloorSheetScreen(desk, not_sure(40, 40), {}, lambda _: None)
        room.app.call_later(room.app.push_screen, floor)
        await room.screen_is(FloorSheetScreen)
        found += await look(room, "the sheet of the floor")
    assert found == [], "\n".join(found)


@pytest.mark.long
async def test_what_the_other_screens_open(tmp_path: Path) -> None:
    """How much, how is it going, and where was I, with their reasons, forms and help."""
    path, clock = tmp_path / "quilts.db", StandingClock()
    key = put_on_shelf(path, clock, c.OpenSession(), *up_to("cut-twice"), every=9 * MINUTE)
    clock.forward(24 * DAY)
    found = []
    async with the_app(path, clock, key) as room:
        await room.screen_is(ReturnScreen)
        found += await what_keys_open(room)
        await room.press("enter")
        await room.screen_is(SewingScreen)
        for opened in ("h", "g", "comma"):
            await open_by(room, opened)
            found += await what_keys_open(room)
            await room.press("escape")
            await room.screen_is(SewingScreen)
    assert found == [], "\n".join(found)


@pytest.mark.long
async def test_what_shall_it_be(tmp_path: Path) -> None:
    """The questions for a new quilt, each while it is answered."""
    found = []
    async with the_app(tmp_path / "quilts.db", StandingClock()) as room:
        await room.screen_is(QuiltsScreen)
        await room.press("n")
        await room.screen_is(NewQuiltScreen)
        form = room.app.screen
        assert isinstance(form, NewQuiltScreen)
        found += await look(room, "the first in hand")
        for _ in range(len(form.query(AnswerRow))):
            await room.press("enter")
            if form.is_changing:
                found += await look(room, f"{form._row.question.id} being answered", SMALL)
                await room.press("escape")
            await room.press("down")
        await room.press("up")
        found += await look(room, "the last in hand")
    assert found == [], "\n".join(found)


async def test_where_there_is_no_quilt_yet(tmp_path: Path) -> None:
    async with the_app(tmp_path / "quilts.db", StandingClock()) as room:
        await room.screen_is(QuiltsScreen)
        assert await look(room, "no quilt yet") == []


async def test_the_sewing_screen_whatever_it_says(tmp_path: Path) -> None:
    """What it says in passing is there whole; below it a tip may have no room for that while."""
    quilt = a_quilt(LONG_NAME)
    async with at_sewing(tmp_path / "quilts.db", *up_to("cut-twice"), quilt=quilt) as room:
        found = await look(room, "at the mat")
        await room.press("9")
        found += await look(room, "half typed")
        assert "9" in room.sewing.typed
        await room.press("enter")
        await room.sees("Not done:")
        refused = await look(room, "refused")
        only_to_be_read(room)
        await room.press("space", "enter")
        await room.sees("NOT SAVED")
        not_saved = await look(room, "not saved")
    found += [fault for fault in refused if "Not done" in fault or "to go" in fault]
    found += [fault for fault in not_saved if "NOT SAVED" in fault or "CUT TWICE" in fault]
    assert found == [], "\n".join(found)


class Unreadable(Screen[None]):
    """Everything that the tests above look for."""

    CSS = """
    #low { height: 1; }
    #none { width: 0; }
    #wide { width: 90; }
    .sheet { height: 4; width: 100%; }
    #under { width: 120%; }
    #narrow { width: 9; }
    """

    def compose(self) -> ComposeResult:
        yield Words("words " * 60, id="low")
        yield Words("label", id="none")
        yield Words("wide", id="wide")
        with VerticalScroll(classes="sheet", can_focus=False):
            yield Words("under the bar", id="under")
            yield Words("line\n" * 9)
        yield Input("what is typed", id="narrow")


async def test_what_cannot_be_read_is_found(tmp_path: Path) -> None:
    async with the_app(tmp_path / "quilts.db", StandingClock()) as room:
        await room.app.push_screen(Unreadable())
        await room.pilot.pause()
        found = faults_of(room.app.screen)
        kinds = (
            "cut off below",
            "nothing is seen",
            "sticks out",
            "at the side",
            "no key",
            "type in",
            "larger",
        )
        assert [[kind for kind in kinds if kind in fault] for fault in found] == [
            ["cut off below"],
            ["nothing is seen"],
            ["sticks out"],
            ["no key"],
            ["at the side"],
            ["type in"],
            ["larger"],
        ]
