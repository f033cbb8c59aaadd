"""A damaged record in the app: what is whole is shown, what is wrong is said, nothing is written."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from sewalong.screens.quilts import QuiltsScreen
from tests.progress import every_act as c
from tests.screens.sewing_room import StandingClock, a_quilt, put_on_shelf, the_app


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "quilts.db"


def change(path: Path, statement: str) -> bytes:
    with closing(sqlite3.connect(path)) as connection:
        connection.execute(statement)
        connection.commit()
    return path.read_bytes()


async def test_the_quilt_is_shown_as_far_as_it_is_whole_and_not_written_to(path: Path) -> None:
    clock = StandingClock()
    key = put_on_shelf(path, clock, c.Count("pair", 5), c.Count("pair", 7))
    before = change(path, "UPDATE event_mark SET mark = mark + 1 WHERE seq = 3")
    async with the_app(path, clock, key) as room:
        await room.sees("pairs to go 5 of 20 done", "is damaged: at event 3")
        await room.press("space")
        await room.sees("NOT SAVED: 1 count", "is damaged: at event 3")
    assert path.read_bytes() == before


async def test_what_is_not_saved_is_not_written_over_the_record_either(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("SEWALONG_HOME", str(path.parent))
    clock = StandingClock()
    key = put_on_shelf(path, clock, c.Count("pair", 5))
    async with the_app(path, clock, key) as room:
        path.unlink()
        await room.press("space")
        await room.sees("NOT SAVED: 1 count")
        await room.press("z")
        await room.sees("Write the quilt elsewhere")
        await room.write_over(str(path))
        await room.press("enter")
        await room.sees("in the folder of your record")
    assert not path.exists()


async def test_the_list_says_which_quilt_is_damaged_and_that_one_is_missing(path: Path) -> None:
    clock = StandingClock()
    put_on_shelf(path, clock, c.Count("pair", 5))
    put_on_shelf(path, clock, quilt=a_quilt("Harbour"))
    change(path, "UPDATE plan_mark SET quilt = 9 WHERE quilt = 2")
    async with the_app(path, clock, None) as room:
        await room.screen_is(QuiltsScreen)
        await room.sees("Window seat", "quilt with the number 9 is missing")
