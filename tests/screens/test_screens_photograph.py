"""A photograph read, looked over, mended and kept, by keys alone; and every way it is refused.

The photograph is drawn in the test, so what lies in it is known.
"""

from __future__ import annotations

import asyncio
import threading
from collections.abc import AsyncIterator, Callable
from contextlib import asynccontextmanager
from functools import cache
from pathlib import Path

import pytest
from msgspec.structs import replace
from textual.widgets import Input

from sewalong.fabrics.photo.result import Reading
from sewalong.quilt.fabrics_said import fabrics_said
from sewalong.quilt.quilt import Quilt
from sewalong.screens.cloth.fabrics import FabricsScreen
from sewalong.screens.cloth.photo_sheet import PhotoSheetScreen
from sewalong.screens.prompts import photo_dialog
from sewalong.screens.prompts.dialogs import ChoiceDialog, FormDialog
from sewalong.screens.prompts.photo_dialog import READING, PhotoDialog
from sewalong.service.photographs import PhotoAsked, read_photographed
from tests.fabrics.photo.made_photos import COLOURS, Scene, solid
from tests.screens.choosing import choose
from tests.screens.sewing_room import SMALL, Room, a_quilt, at_sewing

ROWS = [[solid(COLOURS[n]) for n in (0, 1, 2)], [solid(COLOURS[n]) for n in (3, 0, 4)]]
"""Two rows of three: the first square of row 1 is of the same fabric as the second of row 2."""


SCENE = Scene(squares=ROWS, size=(320, 230), noise=1)
PACK = "pack.png"


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "quilts.db"


@cache
def photographed() -> bytes:
    """The pack, as a file."""
    return SCENE.file()


@pytest.fixture(autouse=True)
def pack(tmp_path: Path) -> None:
    """The photograph lies where the app runs."""
    (tmp_path / PACK).write_bytes(photographed())


@asynccontextmanager
async def at_the_photo(
    path: Path, *, quilt: Quilt | None = None, size: tuple[int, int] = (80, 24)
) -> AsyncIterator[Room]:
    async with at_sewing(path, quilt=quilt or a_quilt(pieces=24), size=size) as room:
        await room.press("comma")
        await room.screen_is(FabricsScreen)
        await room.press("p")
        await room.screen_is(PhotoDialog)
        yield room


async def fill_in(room: Room, *answers: str) -> None:
    """Fill in the lines of the form from the first on, and have it read."""
    for place in range(4):
        if place < len(answers):
            await room.write_over(answers[place])
        await room.press("enter")


async def read(room: Room, packs: str = "4") -> None:
    await fill_in(room, PACK, "2 x 3", packs)
    await room.screen_is(PhotoSheetScreen)


def typed(room: Room) -> list[str]:
    return [box.value for box in room.app.screen.query(Input)]


def letters(room: Room) -> str:
    screen = room.app.screen
    assert isinstance(screen, PhotoSheetScreen)
    return "".join(place.letter for place in screen._photo.places)


async def test_read_looked_over_mended_and_kept(path: Path) -> None:
    async with at_the_photo(path) as room:
        await read(room)
        await room.sees(
            "6 squares, 5 fabrics; 4 packs, 24 squares in all.",
            "1 fabric lies at several places: that is likely, not sure.",
            ">A 1·1",
            "=A 2·2",
            "1·1: A red 1·1, solid, #a5532f, value 45 of 100. Likely the same at 2·2.",
        )
        # Split, and taken back.
        await room.press("right", "down", "s")
        await room.sees("2·2 is F red 2·2 now. u takes it back.")
        assert letters(room) == "ABCDFE"
        await room.press("u")
        await room.sees("Taken back.")
        assert letters(room) == "ABCDAE"
        # Two that she knows to be one: marked here, merged there.
        await room.press("up", "m")
        await room.sees("m: it is one fabric with B green 1·2.")
        await room.press("right", "m")
        await room.sees("C is one fabric with B yellow 1·2 now. u takes it back.")
        assert letters(room) == "ABBDAE"
        # Named, with what looks like markup.
        await room.press("n")
        await room.screen_is(FormDialog)
        await room.write("moss [dots]")
        await room.press("enter")
        await room.sees("1·3: B moss [dots], solid")
        await room.press("k")
        await room.screen_is(FabricsScreen)
        await room.sees("4 fabrics of 24 squares are kept. u takes them back.", "B moss [dots], 8")
        assert [(one.letter, one.squares) for one in room.on_disk().quilt.fabrics] == [
            ("A", 8),
            ("B", 8),
            ("D", 4),
            ("E", 4),
        ]
        await room.press("u")
        await room.until(lambda: room.state.quilt.fabrics == ())


async def test_what_cannot_be_mended_is_said_and_a_mark_is_taken_off(path: Path) -> None:
    async with at_the_photo(path) as room:
        await read(room)
        await room.press("u")
        await room.sees("Not done: Nothing is mended yet.")
        await room.press("right", "s")
        await room.sees("Not done: B has only this square")
        await room.press("m", "m")
        await room.sees("The mark is taken off.")
        await room.press("m", "escape")
        assert "*B" not in room.text
        assert isinstance(room.app.screen, PhotoSheetScreen)
        # What is mended is not lost by one key.
        await room.press("left", "s", "escape")
        await room.screen_is(ChoiceDialog)
        await room.press("enter")
        await room.screen_is(PhotoSheetScreen)
        assert letters(room) == "FBCDAE"
        await room.press("escape")
        await choose(room, "yes, leave it")
        await room.screen_is(FabricsScreen)
        assert room.state.quilt.fabrics == ()


async def test_a_refusal_says_why_and_keeps_the_answers(path: Path) -> None:
    async with at_the_photo(path) as room:
        await fill_in(room)
        await room.sees("Write the file of the photograph.")
        await fill_in(room, "none.png", "six")
        await room.sees("Write rows and how many lie in one, such as 6 x 7.")
        await fill_in(room, "none.png", "2 x 3")
        await room.sees("There is no file")
        assert typed(room) == ["none.png", "2 x 3", "1", ""]
        await fill_in(room, PACK, "3 x 2")
        await room.sees("3 rows")
        assert typed(room) == [PACK, "3 x 2", "1", ""]
        await fill_in(room, PACK, "2 x 3", "1", "12 12")
        await room.sees("Write the corners as four points")
        await fill_in(room, PACK, "2 x 3", "1", "")
        await room.screen_is(PhotoSheetScreen)


async def test_the_wrong_grid_is_asked_again_with_all_answers_there(path: Path) -> None:
    corners = ", ".join(f"{x:.0f} {y:.0f}" for x, y in SCENE.corners())
    async with at_the_photo(path) as room:
        # By corners any grid can be laid over it: here half of one.
        await fill_in(room, PACK, "1 x 3", "2", corners)
        await room.screen_is(PhotoSheetScreen)
        await room.sees("3 squares")
        await room.press("w")
        await room.screen_is(PhotoDialog)
        assert typed(room) == [PACK, "1 x 3", "2", corners]
        await fill_in(room, PACK, "2 x 3")
        await room.sees("6 squares, 5 fabrics; 2 packs, 12 squares in all.")
        await room.press("w", "escape")
        await room.screen_is(PhotoSheetScreen)
        await room.sees("6 squares")


async def test_where_there_are_fabrics_it_asks_beside_them_or_instead(path: Path) -> None:
    quilt = replace(a_quilt(pieces=24), fabrics=fabrics_said("lights 12, darks 12"))
    async with at_the_photo(path, quilt=quilt) as room:
        await read(room, "1")
        await room.press("k")
        await room.sees("The plan has 2 fabrics already.")
        await room.press("escape", "k")
        await choose(room, "in their place")
        await room.screen_is(FabricsScreen)
        assert "".join(one.letter for one in room.state.quilt.fabrics) == "ABCDE"
        await room.press("u")
        await room.until(lambda: len(room.state.quilt.fabrics) == 2)


async def test_a_plan_that_cannot_have_them_keeps_the_sheet(path: Path) -> None:
    async with at_the_photo(path) as room:
        await read(room, "9000")
        await room.press("k")
        await room.sees("Not done:", "Give fewer packs.")
        assert letters(room) == "ABCDAE"


class Slow:
    """Reads only when it is let, on a thread of its own."""

    def __init__(self, read: Callable[[PhotoAsked], Reading]) -> None:
        self._read = read
        self.let = threading.Event()
        self.times = 0

    def __call__(self, asked: PhotoAsked) -> Reading:
        assert threading.current_thread() is not threading.main_thread()
        self.times += 1
        assert self.let.wait(9)
        return self._read(asked)


async def test_while_it_is_read_the_screen_is_alive(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    slow = Slow(read_photographed)
    monkeypatch.setattr(photo_dialog, "read_photographed", slow)
    async with at_the_photo(path) as room:
        try:
            await fill_in(room, PACK, "2 x 3")
            await room.sees(READING)
            # Pressed again it is not read twice, and escape leaves it.
            await room.press("enter", "enter", "enter", "enter")
            await room.sees(READING)
            await room.press("escape")
            await room.screen_is(FabricsScreen)
            assert slow.times == 1
            await room.press("p")
            await fill_in(room, PACK, "2 x 3")
            await room.until(lambda: slow.times == 2)
        finally:
            slow.let.set()
        await room.screen_is(PhotoSheetScreen)
        await asyncio.sleep(0)
        assert [type(one) for one in room.app.screen_stack].count(PhotoSheetScreen) == 1


async def test_without_the_libraries_a_sentence_says_what_to_install(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("sewalong.fabrics.photo.read.find_spec", lambda name: None)
    async with at_sewing(path) as room:
        await room.press("comma")
        await room.screen_is(FabricsScreen)
        await room.press("p")
        await room.sees("Not done: Photographs are read with two more libraries", "sewalong[photo]")
        assert isinstance(room.app.screen, FabricsScreen)


async def test_a_wide_sheet_in_a_small_window_goes_with_the_cursor(
    path: Path, tmp_path: Path
) -> None:
    file = tmp_path / "row.png"
    row = [[solid(COLOURS[n % len(COLOURS)]) for n in range(9)]]
    file.write_bytes(Scene(squares=row, size=(900, 160)).file())
    async with at_the_photo(path, size=SMALL) as room:
        await fill_in(room, "row.png", "1 x 9")
        await room.screen_is(PhotoSheetScreen)
        await room.sees("9 squares, 9 fabrics. No two look alike.", ">A")
        assert "…" in room.text
        await room.press(*["right"] * 9)
        await room.sees(">I", "1·9: I")
