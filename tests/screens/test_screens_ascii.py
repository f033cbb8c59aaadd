"""The app in plain ASCII where she wants it so: every screen and dialog; and the bell."""

from __future__ import annotations

from pathlib import Path

import pytest
from msgspec.structs import replace

from sewalong.owner.preferences import Preferences
from sewalong.quilt.fabrics_said import fabrics_said
from sewalong.screens.app import SewalongApp
from sewalong.screens.sewing import SewingScreen
from sewalong.store.library import Library
from tests.progress import every_act as c
from tests.screens.sewing_room import Room, StandingClock, a_quilt, put_on_shelf


def drawn(app: SewalongApp) -> str:
    """What goes to the terminal, after every filter."""
    lines = []
    for strip in app.screen._compositor.render_strips():
        lines.append(
            "".join(
                segment.text
                for segment in strip.apply_filter(app._filters[-1], app.screen.background_colors[1])
            )
        )
    return "\n".join(lines)


@pytest.mark.parametrize("size", [(80, 24), (40, 20), (120, 36)], ids=["80x24", "40x20", "120x36"])
async def test_no_sign_but_ascii_is_drawn(tmp_path: Path, size: tuple[int, int]) -> None:
    path, clock = tmp_path / "quilts.db", StandingClock()
    key = put_on_shelf(
        path,
        clock,
        c.OpenSession(),
        c.Count("pair", 4),
        quilt=replace(
            a_quilt("Café “毛糸” → ½"), fabrics=fabrics_said("lights 60, über 4 #a5532f")
        ),
    )
    library = Library(path, clock())
    try:
        app = SewalongApp(library, quilt=key, clock=clock, preferences=Preferences(ascii=True))
        app.animation_level = "none"
        async with app.run_test(size=size) as pilot:
            room = Room(app, pilot, path, key)
            await room.screen_is(SewingScreen)
            assert drawn(app).isascii()
            for keys in (
                ("h",),
                ("h", "7"),
                ("g",),
                ("w",),
                ("i",),
                ("question_mark",),
                ("t",),
                ("comma",),
            ):
                await room.press(*keys)
                assert drawn(app).isascii(), keys
                await room.press("escape")
                await room.screen_is(SewingScreen)
    finally:
        library.close()


async def test_the_bell_rings_for_a_chain_and_a_stage_done_if_she_wants_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path, clock = tmp_path / "quilts.db", StandingClock()
    key = put_on_shelf(path, clock, c.OpenSession(), c.Count("pair", 4))
    rung: list[int] = []
    rooms: list[Room] = []
    library = Library(path, clock())
    try:
        app = SewalongApp(library, quilt=key, clock=clock, preferences=Preferences(bell=True))
        app.animation_level = "none"
        monkeypatch.setattr(app, "bell", lambda: rung.append(rooms[0].state.done["pair"]))
        async with app.run_test(size=(80, 24)) as pilot:
            room = Room(app, pilot, path, key)
            rooms.append(room)
            await room.screen_is(SewingScreen)
            await room.press("space")
            assert rung == []
            await room.press("3", "enter")
            assert rung == [8]
            await room.write("11")
            await room.press("enter")
            await room.press("space")
            await room.until(lambda: room.state.done["pair"] == 20)
            assert rung == [8, 19, 20]
    finally:
        library.close()
