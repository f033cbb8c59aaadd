"""When a count cannot be saved: it is said in large, kept, tried again, and can be written elsewhere."""

from __future__ import annotations

import json
import sqlite3
from pathlib import Path

import pytest

from sewalong.store.archive import from_text
from tests.screens.sewing_room import LARGE, SMALL, Room, at_sewing
from tests.service.failing_disk import FailingDisk


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "quilts.db"


def only_to_be_read(room: Room) -> sqlite3.Connection:
    """SQLite refuses every write, as it does on a disk that became read-only."""
    connection: sqlite3.Connection = room.sewing.quilt._library._db._connection
    connection.execute("PRAGMA query_only = 1")
    return connection


@pytest.mark.parametrize("size", [LARGE, SMALL], ids=["80x24", "40x20"])
async def test_it_is_said_at_once_kept_and_saved_when_there_is_room(
    path: Path, size: tuple[int, int]
) -> None:
    async with at_sewing(path, size=size) as room:
        await room.press("space")
        connection = only_to_be_read(room)
        await room.press("space")
        await room.sees("NOT SAVED: 1 count is kept in this window only.", "cannot be written to")
        await room.press("space", "space")
        await room.sees("NOT SAVED: 3 counts are kept")
        assert room.on_disk().done["pair"] == 1
        connection.execute("PRAGMA query_only = 0")
        await room.sees("Saved: all that waited is in the record now.")
        assert room.on_disk().done["pair"] == 4
        assert "NOT SAVED" not in room.text


async def test_what_the_disk_took_although_it_failed_is_not_counted_twice(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("space")
        disk = FailingDisk(room.sewing.quilt._library, takes=True, unreadable=True)
        await room.press("space")
        await room.sees("NOT SAVED: 1 count is kept in this window only.", "it is not known")
        await room.press("space")
        await room.sees("NOT SAVED: 2 counts are kept")
        disk.fails = False
        await room.sees("Saved: all that waited is in the record now.")
        assert room.on_disk().done["pair"] == 3


async def test_the_quilt_is_written_elsewhere_with_what_was_not_saved(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("space")
        only_to_be_read(room)
        await room.press("space")
        await room.press("2", "enter")
        await room.press("z")
        await room.sees("Write the quilt elsewhere")
        other = path.parent / "stick.json"
        await room.write_over(str(other))
        await room.press("enter")
        await room.until(other.exists)
        archive = from_text(other.read_text(encoding="utf-8"))
        counted = sum(getattr(one.event, "n", 0) for one in archive.record)
        assert counted == 4
        assert json.loads(other.read_text(encoding="utf-8"))["format"] == "sewalong quilt"


async def test_more_than_waits_cannot_be_counted(path: Path) -> None:
    async with at_sewing(path) as room:
        only_to_be_read(room)
        await room.press("space")
        await room.write("24")
        await room.press("enter")
        await room.sees("Not done:")
        assert len(room.sewing.unsaved) == 1


async def test_leaving_takes_a_second_press(path: Path) -> None:
    async with at_sewing(path) as room:
        only_to_be_read(room)
        await room.press("space")
        await room.press("escape")
        await room.sees("What is not saved would be lost.")
        await room.press("escape")
        await room.sees("which quilt?")


async def test_a_record_that_was_replaced_keeps_nothing_from_being_written(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("space")
        path.replace(path.parent / "elsewhere.db")
        path.write_bytes(b"")
        await room.press("space")
        await room.sees("NOT SAVED: 1 count is kept", "moved or replaced")
        await room.press("z")
        await room.sees("Write the quilt elsewhere")
