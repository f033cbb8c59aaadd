"""The screens as they are drawn, line by line, compared exactly with what was accepted.

A difference is no fault in itself: look at it. If the screen is meant to look so, run

    SEWALONG_ACCEPT_GOLDENS=1 python -m pytest tests/screens/test_screens_goldens.py

which writes the files anew and fails on purpose, so that it can't pass by itself. Then run
again without it, and read the changed files before they are committed.
"""

from __future__ import annotations

import os
from collections.abc import Awaitable, Callable
from difflib import unified_diff
from pathlib import Path

import pytest

from sewalong.progress.record.settings import Settings
from sewalong.screens.cloth.fabrics import FabricsScreen
from sewalong.screens.cloth.photo_sheet import PhotoSheetScreen
from sewalong.screens.new_quilt import NewQuiltScreen
from sewalong.screens.prompts.dialogs import CautionDialog, FormDialog
from sewalong.screens.prompts.help import HelpDialog
from sewalong.screens.prompts.photo_dialog import PhotoDialog
from sewalong.screens.quilts import QuiltsScreen
from sewalong.screens.returning import ReturnScreen
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.widgets.return_sheet import ReturnSheet
from tests.fabrics.photo.made_photos import COLOURS, Scene, solid
from tests.progress import every_act as c
from tests.screens.sewing_room import (
    ALL_YES,
    DAY,
    MINUTE,
    SIZES,
    Room,
    StandingClock,
    a_quilt,
    at_sewing,
    put_on_shelf,
    the_app,
    up_to,
)

Screens = tuple[Callable[[Room], Awaitable[None]], ...]

GOLDENS = Path(__file__).parent / "goldens"
ACCEPT = "SEWALONG_ACCEPT_GOLDENS"


async def where_was_i(room: Room) -> None:
    await room.screen_is(ReturnScreen)
    await room.until(lambda: room.app.screen.query_one(ReturnSheet).is_filled, "hours and picture")


async def which_quilt(room: Room) -> None:
    await room.press("escape")
    await room.screen_is(QuiltsScreen)


async def new_quilt(room: Room) -> None:
    await room.press("n")
    await room.screen_is(NewQuiltScreen)
    await room.sees("168 squares make 84 units.")


async def what_now(room: Room) -> None:
    await room.press("escape", "enter")
    await room.screen_is(ReturnScreen)
    await room.press("enter")
    await room.screen_is(SewingScreen)


async def help(room: Room) -> None:
    await room.press("question_mark")
    await room.screen_is(HelpDialog)


async def caution(room: Room) -> None:
    await room.press("escape", "space")
    await room.screen_is(CautionDialog)


async def counted(room: Room) -> None:
    await room.press("enter")
    await room.sees("Counted 1 stack at cut twice.")


async def no_fabrics(room: Room) -> None:
    await room.press("comma")
    await room.screen_is(FabricsScreen)


async def fabrics_said(room: Room) -> None:
    await room.press("a")
    await room.write(", ".join(SAID))
    await room.press("enter", "enter")
    await room.screen_is(FabricsScreen)
    await room.sees("E cream leaf: 12 squares")


async def fabrics_in_grey(room: Room) -> None:
    await room.press("g")


async def fabrics_as_others_see_them(room: Room) -> None:
    await room.press("b", "b")


async def fabric_to_change(room: Room) -> None:
    await room.press("b", "b", "enter")
    await room.screen_is(FormDialog)


async def which_photograph(room: Room) -> None:
    await room.press("escape", "p")
    await room.screen_is(PhotoDialog)


async def photograph_read(room: Room) -> None:
    await room.write_over("pack.png")
    await room.press("enter")
    await room.write_over("2 x 3")
    await room.press("enter", "enter", "enter")
    await room.screen_is(PhotoSheetScreen)


SAID = (
    "rust dots 6 #a5532f small print",
    "moss 6 #6a6f2c",
    "indigo 8 #2f4a7c one-way",
    "butter plaid 12 #e0b14a large print",
    "cream leaf 12 #f4f0e6",
    "odd ones 4",
)
FABRIC_SCREENS: Screens = (
    no_fabrics,
    fabrics_said,
    fabrics_in_grey,
    fabrics_as_others_see_them,
    fabric_to_change,
    which_photograph,
    photograph_read,
)
"""Each is reached from the one before, the first from sewing."""

SCREENS: Screens = (
    where_was_i,
    which_quilt,
    new_quilt,
    what_now,
    help,
    caution,
    counted,
)
"""Each is reached from the one before."""


def a_shelf(path: Path, clock: StandingClock) -> str:
    """Three invented quilts, one of them begun 24 days ago; its key."""
    put_on_shelf(path, clock, c.LayAside("out of grey"), quilt=a_quilt("Attic stairs"))
    put_on_shelf(path, clock, quilt=a_quilt("Hop garden", pieces=20))
    evening: list[c.Act] = [
        c.OpenSession(),
        *up_to("cut-twice"),
        c.Spoil("square", 2, "cut askew"),
        c.PutPileAway("sewn-stack", "blue biscuit tin"),
        c.RecordSettings(
            Settings(foot="quarter inch", needle_position="5.5", proof="3 strips gave 3 1/2 in")
        ),
        c.WriteNote("the grey ones are bias, go easy"),
        c.CloseSession({**ALL_YES, "iron": "did not look"}, "cut the five stacks"),
    ]
    key = put_on_shelf(path, clock, *evening, every=9 * MINUTE)
    clock.forward(24 * DAY)
    return key


@pytest.mark.parametrize("size", SIZES, ids=["80x24", "40x20"])
async def test_the_screens_look_as_accepted(tmp_path: Path, size: tuple[int, int]) -> None:
    clock = StandingClock()
    key = a_shelf(tmp_path / "quilts.db", clock)
    async with the_app(tmp_path / "quilts.db", clock, key, size=size) as room:
        drawn = await drawn_by(room, SCREENS, size)
    compare(drawn)


@pytest.mark.long
@pytest.mark.parametrize("size", SIZES, ids=["80x24", "40x20"])
async def test_fabrics_look_as_accepted(tmp_path: Path, size: tuple[int, int]) -> None:
    rows = [[solid(COLOURS[n]) for n in (0, 1, 2)], [solid(COLOURS[n]) for n in (3, 0, 4)]]
    (tmp_path / "pack.png").write_bytes(Scene(squares=rows, size=(320, 230)).file())
    async with at_sewing(tmp_path / "quilts.db", quilt=a_quilt("Hop garden"), size=size) as room:
        drawn = await drawn_by(room, FABRIC_SCREENS, size)
    compare(drawn)


async def drawn_by(room: Room, screens: Screens, size: tuple[int, int]) -> dict[str, str]:
    """Each screen as it is drawn, by the name of its file."""
    drawn = {}
    for screen in screens:
        await screen(room)
        await room.pilot.pause()
        drawn[file_name(screen, size)] = room.text + "\n"
    return drawn


def compare(drawn: dict[str, str]) -> None:
    """Fail with every difference; where that is asked for, write what was drawn and fail."""
    if os.environ.get(ACCEPT):
        GOLDENS.mkdir(exist_ok=True)
        for name, text in drawn.items():
            (GOLDENS / name).write_text(text, encoding="utf-8")
        pytest.fail(f"Written as drawn now: {', '.join(drawn)}. Read them, run again without.")
    differences = [
        difference for name, text in drawn.items() if (difference := differs(name, text))
    ]
    assert not differences, (
        "\n\n".join(differences)
        + f"\n\nIf they are meant to look so: {ACCEPT}=1 python -m pytest {Path(__file__).name}, "
        "then read the files."
    )


def file_name(screen: Callable[[Room], Awaitable[None]], size: tuple[int, int]) -> str:
    return f"{screen.__name__.replace('_', '-')}-{size[0]}x{size[1]}.txt"


def differs(name: str, drawn: str) -> str:
    """How a screen differs from the accepted one, line by line; empty when it does not."""
    golden = GOLDENS / name
    accepted = golden.read_text(encoding="utf-8") if golden.exists() else ""
    if accepted == drawn:
        return ""
    lines = unified_diff(
        accepted.splitlines(), drawn.splitlines(), f"{name} accepted", "drawn", lineterm=""
    )
    return "\n".join(lines) or f"{name} is missing or ends otherwise"


def test_every_accepted_screen_is_still_drawn() -> None:
    wanted = {file_name(screen, size) for screen in (*SCREENS, *FABRIC_SCREENS) for size in SIZES}
    assert {golden.name for golden in GOLDENS.glob("*")} == wanted
