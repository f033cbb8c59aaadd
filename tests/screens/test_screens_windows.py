"""Two windows on one record, and a disk that does not take what is written."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from msgspec.structs import replace

from sewalong.progress.record.events.every_kind import Recorded
from sewalong.progress.record.events.replanning import planned
from sewalong.quilt.quilt import Target
from sewalong.screens.prompts.dialogs import FormDialog
from sewalong.screens.sewing import SewingScreen
from sewalong.service.machine import saw_to_them
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.faults import StoreFault
from sewalong.store.library import Library, Shelved
from tests.progress import every_act as c
from tests.screens.sewing_room import EVENING, StandingClock, a_quilt, at_sewing, the_app

FULL = "The disk is full, so nothing was recorded. Make some room, then try again."


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "quilts.db"


async def test_the_count_of_another_window_appears(path: Path) -> None:
    async with at_sewing(path) as room:
        other = Library(path, EVENING)
        try:
            OpenQuilt(other, other.entries()[0], StandingClock()).do(c.Count("pair", 5))
            await room.sees("Another window recorded something", "pairs to go 5 of 20 done")
            await room.press("space")
            await room.sees("pairs to go 6 of 20 done")
            assert room.on_disk().done["pair"] == 6
        finally:
            other.close()


async def test_a_plan_changed_in_another_window_is_followed(path: Path) -> None:
    async with at_sewing(path) as room:
        other = Library(path, EVENING)
        try:
            quilt = OpenQuilt(other, other.entries()[0], StandingClock())
            was = planned(quilt.state)
            wanted = replace(was, name="Harbour lights", target=Target(1, 2), finishing=("bind",))
            quilt.do(c.ChangePlan(was, wanted))
            await room.sees("Harbour lights", "0 of 2 units", "bind")
            quilt.do(c.Undo())
            await room.sees(was.name)
        finally:
            other.close()


async def test_a_count_takes_in_what_another_window_wrote_first(path: Path) -> None:
    async with at_sewing(path) as room:
        other = Library(path, EVENING)
        try:
            OpenQuilt(other, other.entries()[0], StandingClock()).do(c.Count("pair", 23))
            await room.press("2", "enter")
            await room.sees("Not done: 2 pairs at pair cannot be")
            assert room.on_disk().done["pair"] == 23
        finally:
            other.close()


async def test_pieces_another_window_saw_to_first_are_not_said_to_be_seen_to_twice(
    path: Path,
) -> None:
    sewn = (c.Count("pair", 20), c.Count("sew", 4), c.Measure("unit", (Fraction(6),)))
    async with at_sewing(path, *sewn) as room:
        other = Library(path, EVENING)
        try:
            await room.press("i")
            await room.sees("the pieces that may be wrong were all looked")
            saw_to_them(OpenQuilt(other, other.entries()[0], StandingClock()))
            await room.press("home", "enter")
            await room.sees("Not done: You said already that they are seen to.")
        finally:
            other.close()


async def test_two_apps_on_one_quilt_lose_nothing(path: Path) -> None:
    clock = StandingClock()
    async with (
        at_sewing(path, clock=clock) as one,
        the_app(path, clock, one.key) as two,
    ):
        await two.screen_is(SewingScreen)
        await one.press("space")
        await two.press("3", "enter")
        await one.press("space")
        await one.sees("pairs to go 5 of 20 done")
        await two.sees("pairs to go 5 of 20 done")
        assert one.on_disk().done["pair"] == 5


class StubbornDisk:
    """In place of `Library.append`: refuses while `full` is true."""

    def __init__(self, library_append: object) -> None:
        self.full = False
        self.real = library_append

    def __call__(self, *what: Any, called: str | None) -> tuple[Recorded, ...]:
        if self.full:
            raise StoreFault(FULL)
        assert callable(self.real)
        written: tuple[Recorded, ...] = self.real(*what, called=called)
        return written


@pytest.fixture
def disk(monkeypatch: pytest.MonkeyPatch) -> StubbornDisk:
    stubborn = StubbornDisk(Library.append)
    monkeypatch.setattr(Library, "append", lambda *what, called: stubborn(*what, called=called))
    return stubborn


async def test_a_full_disk_is_said_and_counting_goes_on_when_there_is_room(
    path: Path, disk: StubbornDisk
) -> None:
    async with at_sewing(path, c.Count("pair", 2)) as room:
        disk.full = True
        await room.press("space")
        await room.sees("NOT SAVED: 1 count", FULL, "pairs to go 2 of 20 done")
        assert room.on_disk().done["pair"] == 2
        disk.full = False
        await room.press("space")
        await room.sees("Saved: all that waited", "pairs to go 4 of 20 done")
        assert room.on_disk().done["pair"] == 4


async def test_words_typed_in_a_dialog_are_not_lost_to_a_full_disk(
    path: Path, disk: StubbornDisk
) -> None:
    async with at_sewing(path) as room:
        await room.press("n")
        await room.screen_is(FormDialog)
        await room.write("long and hard to say again")
        disk.full = True
        await room.press("enter")
        await room.sees("The disk is full", "long and hard to say again")
        disk.full = False
        await room.press("enter")
        await room.sees("Noted: long and hard to say again")


async def test_a_disk_that_is_full_when_the_app_opens_is_said(
    path: Path, disk: StubbornDisk
) -> None:
    clock = StandingClock()
    library = Library(path, clock())
    entry = library.add(a_quilt(), clock())
    library.close()
    disk.full = True
    async with the_app(path, clock, entry.key) as room:
        await room.screen_is(SewingScreen)
        await room.sees("The disk is full", "48 squares wait.")


async def test_a_record_that_cannot_be_listed_is_said_and_does_not_end_the_app(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    async with at_sewing(path) as room:

        def damaged(self: Library) -> tuple[Shelved, ...]:
            raise StoreFault("The record is damaged. It was left untouched.")

        monkeypatch.setattr(Library, "entries", damaged)
        await room.press("escape")
        await room.sees("The record is damaged. It was left untouched.")
        monkeypatch.undo()
        await room.press("q")
        await room.until(lambda: room.app.return_code == 0, "the end")
