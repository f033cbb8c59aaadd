"""Keys she moved: they act, the old ones do not, and key line and help say so."""

from __future__ import annotations

from pathlib import Path

import pytest

from sewalong.owner.preferences import USUAL_KEYS, Preferences
from sewalong.screens.app import SewalongApp
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.widgets.keys import SEWING_KEYS
from sewalong.store.library import Library
from tests.progress import every_act as c
from tests.screens.sewing_room import Room, StandingClock, put_on_shelf, up_to

PEDAL = Preferences(
    keys={"count": ("plus", "f13"), "undo": ("minus",), "note": ("u",), "stage": ("f2",)},
    cautions={"cutter": ("[left] thumb!",)},
)


def test_the_names_of_keys_are_those_of_the_screen() -> None:
    assert {key.id.removeprefix("sew."): key.key for key in SEWING_KEYS} == USUAL_KEYS


async def with_own_keys(
    path: Path, room_does: object, *acts: c.Act, preferences: Preferences = PEDAL
) -> None:
    clock = StandingClock()
    key = put_on_shelf(path, clock, c.OpenSession(), *acts)
    library = Library(path, clock())
    try:
        app = SewalongApp(library, quilt=key, clock=clock, preferences=preferences)
        app.animation_level = "none"
        async with app.run_test(size=(80, 24)) as pilot:
            room = Room(app, pilot, path, key)
            await room.screen_is(SewingScreen)
            await room_does(room)  # type: ignore[operator]
    finally:
        library.close()


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "quilts.db"


async def test_moved_keys_act_and_the_usual_ones_do_not(path: Path) -> None:
    async def room_does(room: Room) -> None:
        await room.press("plus", "f13", "plus")
        await room.until(lambda: room.state.done["pair"] == 3)
        await room.press("space")
        await room.press("minus")
        await room.until(lambda: room.state.done["pair"] == 2)
        await room.press("u")
        await room.sees("A note for yourself")
        await room.press("escape")
        await room.screen_is(SewingScreen)
        await room.sees("+ count 1", "- undo")

    await with_own_keys(path, room_does)


async def test_what_is_said_names_her_keys(path: Path) -> None:
    async def room_does(room: Room) -> None:
        await room.sees("None wait. Press f2 for another stage.")
        await room.press("enter")
        await room.sees("Type how many, then enter. + counts one.")

    await with_own_keys(path, room_does, c.ChooseStage("cut-twice"))


async def test_the_help_names_every_key_she_has(path: Path) -> None:
    async def room_does(room: Room) -> None:
        await room.press("question_mark")
        await room.sees("+ f13", "Count one at the stage in hand.")

    await with_own_keys(path, room_does)


async def test_her_own_words_of_caution_come_first_and_as_she_wrote_them(path: Path) -> None:
    async def room_does(room: Room) -> None:
        await room.press("plus")
        await room.sees("CAUTION", "- [left] thumb!")

    await with_own_keys(path, room_does, *up_to("cut-twice"))


async def test_a_key_that_came_later_gives_way_to_her_own(path: Path) -> None:
    async def room_does(room: Room) -> None:
        await room.press("v")
        await room.until(lambda: room.state.done["pair"] == 1)
        assert not room.sewing.has_class("far")

    await with_own_keys(path, room_does, preferences=Preferences(keys={"count": ("v",)}))


async def test_her_count_key_counts_on_behind_a_question_too(path: Path) -> None:
    async def room_does(room: Room) -> None:
        await room.press("plus")
        await room.sees("Leaving the board")
        await room.press("f13", "plus")
        await room.sees("2 more are counted at stack after this.")

    counts = (c.Count("pair", 20), c.Count("sew", 10), c.ChooseStage("press"), c.Count("press", 9))
    await with_own_keys(path, room_does, *counts)


async def test_where_hers_is_the_key_that_puts_back_that_is_another(path: Path) -> None:
    async def room_does(room: Room) -> None:
        await room.press("u")
        await room.sees("Undone: counted 4 pairs. ctrl+y puts it back.")
        await room.press("q")
        await room.sees("A note for yourself")
        await room.press("escape")
        await room.screen_is(SewingScreen)
        await room.press("ctrl+y")
        await room.sees("Put back: counted 4 pairs.")

    hers = Preferences(keys={"note": ("q",)})
    await with_own_keys(path, room_does, c.Count("pair", 4), preferences=hers)
