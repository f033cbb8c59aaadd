"""What meets what: fabrics said, looked at, changed and taken back, by keys alone."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

import pytest
from msgspec.structs import replace
from rich.style import Style
from textual.widgets import Input

from sewalong.fabrics.colours import parse_colour
from sewalong.fabrics.sight import Sight, grey, seen, value
from sewalong.quilt.choices import Fabric
from sewalong.quilt.fabrics_said import fabrics_said
from sewalong.quilt.quilt import Quilt
from sewalong.screens.cloth.fabrics import FabricsScreen
from sewalong.screens.prompts.dialogs import FormDialog
from sewalong.screens.sewing import SewingScreen
from sewalong.service.fabric_looks import NONE_YET
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.library import Library
from tests.progress import every_act as c
from tests.screens.sewing_room import SMALL, Room, StandingClock, a_quilt, at_sewing, kinds

RUST, MOSS = "#a5532f", "#6a6f2c"
COLOURED = f"rust dots 4 {RUST} small print, moss 12 {MOSS}, cream [leaf] 32 #f4f0e6, odd ones 2"


def with_fabrics(said: str = COLOURED, pieces: int = 48) -> Quilt:
    return replace(a_quilt(pieces=pieces), fabrics=fabrics_said(said))


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "quilts.db"


@asynccontextmanager
async def at_the_fabrics(
    path: Path,
    *acts: c.Act,
    quilt: Quilt | None = None,
    clock: StandingClock | None = None,
    size: tuple[int, int] = (80, 24),
) -> AsyncIterator[Room]:
    async with at_sewing(path, *acts, quilt=quilt, size=size, clock=clock) as room:
        await room.press("comma")
        await room.screen_is(FabricsScreen)
        yield room


def fabrics(room: Room) -> list[tuple[str, str, int | None]]:
    """Letter, name and squares of each, as the open window has them."""
    return [(one.letter, one.name, one.squares) for one in room.state.quilt.fabrics]


def block_of(room: Room, name: str) -> Style:
    """How the swatch beside a name is drawn."""
    for strip in room.app.screen._compositor.render_strips():
        segments = list(strip)
        for place, segment in enumerate(segments):
            if name in segment.text:
                before = [one for one in segments[:place] if one.text == "    " and one.style]
                style = before[-1].style
                assert style
                return style
    raise AssertionError(f"no {name!r}\n{room.text}")


def ground(room: Room, name: str) -> str:
    """The colour of the swatch beside a name, as "#rrggbb"."""
    style = block_of(room, name)
    assert style.bgcolor
    return style.bgcolor.get_truecolor().hex


async def test_three_piles_are_said_in_a_line_and_stand_in_rows(path: Path) -> None:
    async with at_the_fabrics(path, quilt=a_quilt(pieces=168)) as room:
        await room.sees(NONE_YET, "a: say them, such as lights 60", "p: read them off one")
        await room.press("enter")
        await room.screen_is(FormDialog)
        await room.write("lights 60, mediums 70")
        await room.press("enter")
        await room.sees(
            "130 squares of 2 fabrics, 38 fewer than the 168", "Enter alone: that is all"
        )
        await room.write("darks 38")
        await room.press("enter")
        await room.sees("168 squares of 3 fabrics, as many as the plan begins with.")
        await room.press("enter")
        await room.screen_is(FabricsScreen)
        rows = [line.split() for line in room.lines if "╱╱╱╱" in line]
        assert [(row[0], row[-3:]) for row in rows] == [
            ("light", ["A", "lights,", "60"]),
            ("medium", ["B", "mediums,", "70"]),
            ("dark", ["C", "darks,", "38"]),
        ]
        await room.sees("sets of 8 squares", "A lights: 60 squares, assorted, light as you said")
        assert len(room.on_disk().quilt.counted_fabrics) == 3
        await room.press("escape")
        await room.screen_is(SewingScreen)
    assert room.key
    assert list(kinds(path, room.key))[-2:] == ["plan changed", "plan changed"]


async def test_a_refusal_says_why_and_keeps_what_was_typed(path: Path) -> None:
    async with at_the_fabrics(path, quilt=with_fabrics()) as room:
        seq = room.seq()
        await room.press("a")
        await room.write("lights")
        await room.press("enter")
        await room.sees("says no number of squares")
        assert room.app.screen.query_one(Input).value == "lights"
        await room.write(" 20, moss")
        await room.press("enter")
        await room.sees("'moss' says no number of squares")
        await room.press("escape", "enter")
        await room.screen_is(FormDialog)
        assert room.app.screen.query_one(Input).value == "cream [leaf] 32 #f4f0e6"
        await room.write_over("cream 32 furry")
        await room.press("enter")
        await room.sees("furry")
        assert room.seq() == seq
        await room.press("escape", "d", "u")
        await room.until(lambda: len(fabrics(room)) == 4)
        await room.press("q")
        await room.until(lambda: len(fabrics(room)) == 3)
        await room.press("q")
        await room.sees("Not done: There is nothing to put back: nothing was undone")


async def test_the_fabric_in_hand_is_changed_taken_out_and_put_back(path: Path) -> None:
    async with at_the_fabrics(path, quilt=with_fabrics()) as room:
        await room.sees("C cream [leaf]: 32 squares")
        await room.press("down")
        await room.sees("A rust dots: 4 squares, small print, #a5532f from afar")
        await room.press("enter")
        await room.screen_is(FormDialog)
        await room.sees("Fabric A rust dots")
        assert room.app.screen.query_one(Input).value == f"rust dots 4 {RUST} small print"
        await room.press("enter")
        await room.screen_is(FabricsScreen)
        await room.press("enter")
        await room.write_over("brick 6")
        await room.press("enter")
        await room.screen_is(FabricsScreen)
        await room.sees("A brick: 6 squares, small print, #a5532f")
        assert fabrics(room)[0] == ("A", "brick", 6)
        await room.press("right", "d")
        await room.sees("B moss is taken out. u puts it back.")
        assert [letter for letter, *_ in fabrics(room)] == ["A", "C", "D"]
        await room.press("u")
        await room.sees("B moss, 12")
        await room.press("u")
        await room.sees("A rust dots, 4")
        assert len(fabrics(room)) == 4


async def test_in_grey_and_as_others_see_them_with_names_all_the_while(path: Path) -> None:
    rust, moss = parse_colour(RUST), parse_colour(MOSS)
    async with at_the_fabrics(path, quilt=with_fabrics()) as room:
        assert ground(room, "A rust dots,") == RUST
        await room.press("g")
        await room.sees("Shown in grey: lightness alone (L*)", "A rust dots, 4", "B moss, 12")
        assert ground(room, "A rust dots,") == str(grey(value(rust)))
        await room.press("g")
        assert ground(room, "A rust dots,") == RUST
        for sight, cones in zip(Sight, ("red", "green", "blue"), strict=True):
            await room.press("b")
            await room.sees(f"Shown as somebody without {cones} cones sees it.")
            assert ground(room, "A rust dots,") == str(seen(rust, sight))
            assert ground(room, "B moss,") == str(seen(moss, sight))
            taken = "A rust dots and B moss may be taken for each other." in room.flowing
            assert taken is (cones == "green")
        await room.press("b")
        assert "Shown" not in room.text
        assert ground(room, "A rust dots,") == RUST
        await room.sees("cream [leaf]", "value not said", "D odd ones, 2")


async def test_a_quilt_laid_aside_is_looked_at_and_not_changed(path: Path) -> None:
    async with at_the_fabrics(path, c.LayAside("out of grey"), quilt=with_fabrics()) as room:
        await room.press("d")
        await room.sees("Not done:", "laid aside")
        await room.press("a")
        await room.write("lights 4")
        await room.press("enter")
        await room.sees("laid aside")
        assert room.app.screen.query_one(Input).value == "lights 4"


async def test_what_another_window_says_stands_there_too(path: Path) -> None:
    clock = StandingClock()
    async with at_the_fabrics(path, quilt=with_fabrics(), clock=clock) as room:
        await room.press("down", "right")
        await room.sees("B moss: 12 squares")
        library = Library(path, clock())
        try:
            (entry,) = library.entries()
            other = OpenQuilt(library, entry, clock)
            was = other.state.quilt
            cherry = Fabric("E", "cherry", "#b03a2e", 3)
            other.do(c.ChangePlan(was, replace(was, fabrics=(*was.fabrics, cherry))))
        finally:
            library.close()
        await room.sees("E cherry, 3", "53 squares of 5 fabrics")
        await room.press("u")
        await room.until(lambda: len(fabrics(room)) == 4)


async def test_in_a_small_window_the_arrows_lead_to_all_of_it(path: Path) -> None:
    many = ", ".join(f"cloth {letter} {n}" for n, letter in enumerate("abcdefghijkl", start=2))
    async with at_the_fabrics(path, quilt=with_fabrics(f"{COLOURED}, {many}"), size=SMALL) as room:
        assert "> ▐" in room.text
        for _ in range(30):
            await room.press("down")
        await room.sees("P cloth l", "Not known: the value of")
        await room.press("pageup", "pageup", "pageup")
        await room.sees("light, neutral")


async def test_without_colour_the_texture_and_the_mark_say_it(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("NO_COLOR", "1")
    async with at_the_fabrics(path, quilt=with_fabrics()) as room:
        await room.sees("▐╱╱╱╱▌ A rust dots, 4")
        assert "> ▐████▌ C cream" in room.text
        (here,) = [
            segment
            for strip in room.app.screen._compositor.render_strips()
            for segment in strip
            if "C cream [leaf], 32" in segment.text
        ]
        assert here.style
        assert here.style.underline


def test_nothing_of_colours_is_loaded_to_sew() -> None:
    code = (
        "import sys, sewalong.screens.app, sewalong.screens.new_quilt, sewalong.screens.worksheet\n"
        "heavy = {'coloraide', 'numpy', 'PIL', 'sewalong.screens.cloth.fabrics'}\n"
        "heavy |= {'sewalong.fabrics.sight', 'sewalong.quilt.fabrics_said'}\n"
        "sys.exit(str(heavy & set(sys.modules)) if heavy & set(sys.modules) else 0)"
    )
    subprocess.run([sys.executable, "-c", code], check=True)


async def test_of_sixteen_colours_none_stands_for_a_fabric(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delenv("COLORTERM")
    monkeypatch.setenv("TERM", "linux")
    async with at_the_fabrics(path, quilt=with_fabrics()) as room:
        await room.sees("▐████▌ C cream", "▐╱╱╱╱▌ A rust dots")
