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

from sewalong.progress import commands as c
from sewalong.progress.events import Settings
from sewalong.screens.dialogs import CautionDialog
from sewalong.screens.help import HelpDialog
from sewalong.screens.quilts import QuiltsScreen
from sewalong.screens.returning import ReturnScreen
from sewalong.screens.sewing import SewingScreen
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


async def which_quilt(room: Room) -> None:
    await room.screen_is(ReturnScreen)
    await room.press("escape")
    await room.screen_is(QuiltsScreen)


async def where_was_i(room: Room) -> None:
    await room.screen_is(ReturnScreen)


async def what_now(room: Room) -> None:
    await where_was_i(room)
    await room.press("enter")
    await room.screen_is(SewingScreen)


async def caution(room: Room) -> None:
    await what_now(room)
    await room.press("space")
    await room.screen_is(CautionDialog)


async def help(room: Room) -> None:
    await what_now(room)
    await room.press("question_mark")
    await room.screen_is(HelpDialog)


async def counted(room: Room) -> None:
    await caution(room)
    await room.press("enter")
    await room.sees("Counted 1 stack at cut twice.")


SCREENS: tuple[Callable[[Room], Awaitable[None]], ...] = (
    which_quilt,
    where_was_i,
    what_now,
    caution,
    help,
    counted,
)


def a_shelf(path: Path, clock: StandingClock) -> str:
    """Three invented quilts, one of them begun 24 days ago; its key."""
    put_on_shelf(path, clock, c.LayAside("out of grey"), quilt=a_quilt("Attic stairs"))
    put_on_shelf(path, clock, quilt=a_quilt("Hop garden", pieces=20))
    evening: list[c.Command] = [
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
@pytest.mark.parametrize("screen", SCREENS, ids=[screen.__name__ for screen in SCREENS])
async def test_the_screen_looks_as_accepted(
    tmp_path: Path, screen: Callable[[Room], Awaitable[None]], size: tuple[int, int]
) -> None:
    clock = StandingClock()
    key = a_shelf(tmp_path / "quilts.db", clock)
    async with the_app(tmp_path / "quilts.db", clock, key, size=size) as room:
        await screen(room)
        await room.pilot.pause()
        drawn = room.text + "\n"
    golden = GOLDENS / f"{screen.__name__.replace('_', '-')}-{size[0]}x{size[1]}.txt"
    if os.environ.get(ACCEPT):
        GOLDENS.mkdir(exist_ok=True)
        golden.write_text(drawn, encoding="utf-8")
        pytest.fail(f"{golden.name} was written as it is drawn now. Read it, run again without.")
    accepted = golden.read_text(encoding="utf-8") if golden.exists() else ""
    difference = "\n".join(
        unified_diff(accepted.splitlines(), drawn.splitlines(), "accepted", "drawn", lineterm="")
    )
    assert drawn == accepted, (
        f"{golden.name} differs:\n{difference}\n\n"
        f"If it is meant to look so: {ACCEPT}=1 python -m pytest {Path(__file__).name}, "
        "then read the file."
    )


def test_every_accepted_screen_is_still_drawn() -> None:
    wanted = {
        f"{screen.__name__.replace('_', '-')}-{width}x{height}.txt"
        for screen in SCREENS
        for width, height in SIZES
    }
    assert {golden.name for golden in GOLDENS.glob("*")} == wanted
