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
from sewalong.screens.new_quilt import NewQuiltScreen
from sewalong.screens.prompts.dialogs import CautionDialog
from sewalong.screens.prompts.help import HelpDialog
from sewalong.screens.quilts import QuiltsScreen
from sewalong.screens.returning import ReturnScreen
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.widgets.return_sheet import ReturnSheet
from tests.progress import every_act as c
from tests.screens.sewing_room import (
    ALL_YES,
    DAY,
    MINUTE,
    SIZES,
    Room,
    StandingClock,
    a_quilt,
    put_on_shelf,
    the_app,
    up_to,
)

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


SCREENS: tuple[Callable[[Room], Awaitable[None]], ...] = (
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
    drawn: dict[str, str] = {}
    async with the_app(tmp_path / "quilts.db", clock, key, size=size) as room:
        for screen in SCREENS:
            await screen(room)
            await room.pilot.pause()
            drawn[file_name(screen, size)] = room.text + "\n"
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
    wanted = {file_name(screen, size) for screen in SCREENS for size in SIZES}
    assert {golden.name for golden in GOLDENS.glob("*")} == wanted
