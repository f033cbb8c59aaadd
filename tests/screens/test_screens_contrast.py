"""Every text can be read by tired eyes, in both looks, in many colours, few and none.

Contrast and relative luminance as in WCAG 2.2, "relative luminance" and "contrast ratio"
(https://www.w3.org/TR/WCAG22/#dfn-relative-luminance); 7:1 is success criterion 1.4.6,
"Contrast (Enhanced)".
"""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing
from pathlib import Path

import pytest
from msgspec.structs import replace
from rich.color import Color as RichColor
from rich.color import ColorSystem
from textual.geometry import Region
from textual.theme import Theme
from textual.widgets import Input

from sewalong.quilt.fabrics_said import fabrics_said
from sewalong.quilt.quilt import Target
from sewalong.screens.cloth.photo_sheet import Keeper, PhotoSheetScreen
from sewalong.screens.cloth.proposing import ProposingScreen
from sewalong.screens.cloth.sets import SetsScreen
from sewalong.screens.new_quilt import NewQuiltScreen
from sewalong.screens.prompts.dialogs import CautionDialog, Dialog
from sewalong.screens.quilts import QuiltsScreen
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.wall.floor_sheet import FloorSheetScreen
from sewalong.screens.wall.proposing import ProposedWallScreen
from sewalong.screens.wall.row_in_hand import RowInHandScreen
from sewalong.screens.wall.wall import WallScreen
from sewalong.screens.widgets.few_colours import FEW
from sewalong.screens.widgets.themes import DAYLIGHT, LAMPLIGHT, THEMES
from sewalong.screens.worksheet import WorksheetScreen
from tests.fabrics.floor.made_readings import not_sure
from tests.fabrics.photo.test_photo_mending import photo
from tests.progress import every_act as c
from tests.progress.sets.fabrics import sets_of, with_fabrics
from tests.progress.wall.laid_rows import QUILT as IN_ROWS
from tests.progress.wall.laid_rows import laid
from tests.screens.sewing_room import (
    Room,
    StandingClock,
    a_quilt,
    at_sewing,
    put_on_shelf,
    the_app,
    up_to,
)
from tests.screens.test_screens_every_size import OPENS, open_by

ENHANCED = 7.0
"""Success criterion 1.4.6."""

CARRIES_NO_TEXT = {"chalk"}
BACKGROUNDS = ("background", "surface", "panel")


def luminance(colour: str) -> float:
    """Relative luminance of "#rrggbb", from 0 for black to 1 for white."""
    parts = []
    for at in (1, 3, 5):
        part = int(colour[at : at + 2], 16) / 255
        parts.append(part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4)
    red, green, blue = parts
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """The contrast ratio of two colours, from 1 to 21."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


A_LOOK = (LAMPLIGHT.name, pytest.param(DAYLIGHT.name, marks=pytest.mark.long))
"""The look she has by default, and the other one."""


@pytest.mark.parametrize(
    ("colour", "published"),
    # Values of the WCAG 2.x formula, from public test suites and SC 1.4.3 reference pages.
    [("#000000", 21.0), ("#777777", 4.478), ("#999999", 2.85), ("#e50914", 4.79), ("#ffffff", 1.0)],
)
def test_the_contrast_of_published_colours_on_white(colour: str, published: float) -> None:
    assert contrast(colour, "#ffffff") == pytest.approx(published, abs=0.006)


def test_the_luminance_of_grey() -> None:
    # rel_luminance of #808080, WCAG.
    assert luminance("#808080") == pytest.approx(0.2158605, abs=1e-6)


def text_colours(theme: Theme) -> dict[str, str]:
    """Every colour of the theme that text is set in on the plain grounds, by name."""
    named = {
        name: str(getattr(theme, name))
        for name in ("foreground", "primary", "secondary", "accent", "warning", "error", "success")
    }
    own = {name: value for name, value in theme.variables.items() if value.startswith("#")}
    not_on_these = CARRIES_NO_TEXT | {"caution-back", "caution-text"}
    return {name: colour for name, colour in {**named, **own}.items() if name not in not_on_these}


@pytest.mark.parametrize("theme", THEMES.values(), ids=THEMES)
@pytest.mark.parametrize("ground", BACKGROUNDS)
def test_every_text_colour_of_a_look_on_every_ground(theme: Theme, ground: str) -> None:
    back = str(getattr(theme, ground))
    ratios = {name: contrast(text, back) for name, text in text_colours(theme).items()}
    assert len(ratios) >= 12
    assert {name: ratio for name, ratio in ratios.items() if ratio < ENHANCED} == {}


@pytest.mark.parametrize("theme", THEMES.values(), ids=THEMES)
def test_the_caution_on_its_own_ground(theme: Theme) -> None:
    colours = theme.variables
    assert contrast(colours["caution-text"], colours["caution-back"]) >= ENHANCED


NO_TEXT = set("█▀▄▌▐▖▗▘▙▚▛▜▝▞▟◢◣◤◥━╌▁▂▃▅▆▇╱╲╳┄┆╴╶╵╷▏▎▍▋▊▉")
"""Signs that draw: figures in blocks, the picture, the seam of work done, the scroll bar."""


def texts(room: Room, within: Region | None = None) -> Iterator[tuple[str, str, str]]:
    """Each drawn piece of text with its colour and its ground, inside a region."""
    for y, strip in enumerate(room.app.screen._compositor.render_strips()):
        x = 0
        for segment in strip:
            here = within is None or within.contains(x, y)
            x += segment.cell_length
            words = "".join(letter for letter in segment.text if letter not in NO_TEXT).strip()
            if not here or not words:
                continue
            style = segment.style
            assert style is not None
            assert not style.dim, words
            assert style.color is not None, words
            assert style.bgcolor is not None, words
            front, back = shown(style.color), shown(style.bgcolor)
            yield (words, back, front) if style.reverse else (words, front, back)


def shown(colour: RichColor) -> str:
    """A drawn colour as "#rrggbb"."""
    return colour.get_truecolor().hex


XTERM = [
    "#000000",
    "#cd0000",
    "#00cd00",
    "#cdcd00",
    "#0000ee",
    "#cd00cd",
    "#00cdcd",
    "#e5e5e5",
    "#7f7f7f",
    "#ff0000",
    "#00ff00",
    "#ffff00",
    "#5c5cff",
    "#ff00ff",
    "#00ffff",
    "#ffffff",
]
VGA = [
    "#000000",
    "#aa0000",
    "#00aa00",
    "#aa5500",
    "#0000aa",
    "#aa00aa",
    "#00aaaa",
    "#aaaaaa",
    "#555555",
    "#ff5555",
    "#55ff55",
    "#ffff55",
    "#5555ff",
    "#ff55ff",
    "#55ffff",
    "#ffffff",
]
"""What sixteen colours are by number: in xterm's own resources, and in the VGA's text mode; both
from memory. No standard says what they are, and people choose their own."""


def in_256(colour: str) -> str:
    """The colour that a terminal of 256 is told to show: of the cube and the greys, which xterm's
    256colres.pl fixes; rich chooses, as it does when the app draws."""
    return shown(RichColor.parse(colour).downgrade(ColorSystem.EIGHT_BIT))


def in_16(colour: str, palette: list[str]) -> str:
    """What a terminal of sixteen colours shows for it."""
    number = RichColor.parse(colour).downgrade(ColorSystem.STANDARD).number
    assert number is not None
    return palette[number]


Drawn = tuple[str, str, str, str]
"""Where, the words, their colour and their ground."""


def weak(found: list[Drawn], seen_as: Callable[[str], str] = str) -> dict[Drawn, float]:
    """Texts of too little contrast, each colour seen as a terminal shows it."""
    ratios = {text: contrast(seen_as(text[2]), seen_as(text[3])) for text in found}
    return {text: ratio for text, ratio in ratios.items() if ratio < ENHANCED}


async def everywhere(room: Room) -> list[Drawn]:
    """All texts of the sewing screen, of whatever a key opens there, and of the list."""
    found: list[Drawn] = []

    def gather(name: str) -> None:
        sheet = room.app.screen.query(".dialog").first() if is_dialog(room) else None
        found.extend((name, *text) for text in texts(room, sheet.region if sheet else None))

    await room.sees("CUT TWICE")
    gather("sewing")
    await room.press("9")
    gather("half typed")
    await room.press("space")
    await room.sees("Not done:")
    gather("refused")
    await room.press("escape", "space")
    await room.screen_is(CautionDialog)
    gather("caution")
    await room.press("escape")
    for key in OPENS:
        await open_by(room, key)
        gather(key)
        if isinstance(room.app.focused, Input):
            await room.write("9")
            gather(f"{key}, typed")
        while not isinstance(room.app.screen, SewingScreen):
            await room.press("escape")
    await room.press("n", "enter")
    await room.sees("Give some words.")
    gather("a refusal in a form")
    await room.press("escape", "escape")
    await room.screen_is(QuiltsScreen)
    gather("quilts")
    await room.press("n")
    await room.screen_is(NewQuiltScreen)
    for what in ("a new quilt", "its name", "its method"):
        gather(what)
        await room.press("down" if what == "its name" else "enter")
    gather("a method chosen")
    return found


def is_dialog(room: Room) -> bool:
    return isinstance(room.app.screen, Dialog)


AT_THE_MAT = (*up_to("cut-twice"), c.ChooseStage("cut-twice"))


@pytest.mark.parametrize("theme", A_LOOK)
async def test_every_text_that_is_drawn(tmp_path: Path, theme: str) -> None:
    async with at_sewing(tmp_path / "quilts.db", *AT_THE_MAT, theme=theme) as room:
        found = await everywhere(room)
    assert len(found) > 300
    assert weak(found) == {}
    assert weak(found, in_256) == {}


@pytest.mark.parametrize("theme", A_LOOK)
async def test_every_text_beside_fabrics(tmp_path: Path, theme: str) -> None:
    said = "rust dots 4 #a5532f, moss 4 #6a6f2c, lights 20, odd ones 8"
    quilt = replace(a_quilt(), fabrics=fabrics_said(said))
    found: list[Drawn] = []
    async with at_sewing(tmp_path / "quilts.db", quilt=quilt, theme=theme) as room:
        await room.press("comma")
        for key in ("g", "g", "b", "b", "p"):
            found += (("fabrics", *text) for text in texts(room))
            await room.press(key)
        await room.press("escape")
        sheet = PhotoSheetScreen(photo(), {}, Keeper(lambda *_: None, 0, {}), {})
        room.app.push_screen(sheet)
        await room.screen_is(PhotoSheetScreen)
        await room.press("m", "right")
        found += (("photograph", *text) for text in texts(room))
        await room.press("escape", "escape", "escape")
        await room.screen_is(SewingScreen)
        desk = room.app.screen
        assert isinstance(desk, SewingScreen)
        floor = FloorSheetScreen(desk, not_sure(2, 2), {}, lambda _: None)
        room.app.call_later(room.app.push_screen, floor)
        await room.screen_is(FloorSheetScreen)
        found += (("the floor", *text) for text in texts(room))
    assert {words for _, words, *_ in found} >= {"A rust dots, 4", "*A 1·1", ">B 1·2", ">? 1·1"}
    assert weak(found) == {}
    assert weak(found, in_256) == {}


@pytest.mark.parametrize("theme", A_LOOK)
async def test_every_text_beside_sets(tmp_path: Path, theme: str) -> None:
    quilt = replace(a_quilt(), fabrics=fabrics_said("rust dots 16 #a5532f, lights 32"))
    found: list[Drawn] = []
    async with at_sewing(tmp_path / "quilts.db", quilt=quilt, theme=theme) as room:
        await room.press("full_stop")
        await room.screen_is(ProposingScreen)
        await room.sees("set 1 of ")
        found += (("a proposal", *text) for text in texts(room))
        await room.press("y")
        await room.screen_is(SetsScreen)
        for key in ("w", "down", "left", "k"):
            await room.press(key)
            found += (("sets", *text) for text in texts(room))
    words = [words for _, words, *_ in found]
    assert any(one.startswith("Not done: These are in no set.") for one in words)
    assert {"front", "back"} <= set(words)
    assert weak(found) == {}
    assert weak(found, in_256) == {}


@pytest.mark.parametrize("theme", A_LOOK)
async def test_every_text_of_the_row_in_hand(tmp_path: Path, theme: str) -> None:
    found: list[Drawn] = []
    acts = (*laid(IN_ROWS), c.BeginRows(((2, 2),)))
    async with at_sewing(tmp_path / "quilts.db", *acts, quilt=IN_ROWS, theme=theme) as room:
        await room.press("c")
        await room.screen_is(RowInHandScreen)
        await room.press("space")
        found += (("the row in hand", *text) for text in texts(room))
    assert any(words.startswith("Not done: Row 1 is sewn in") for _, words, *_ in found)
    assert weak(found) == {}
    assert weak(found, in_256) == {}


@pytest.mark.parametrize("theme", A_LOOK)
async def test_every_text_on_the_wall(tmp_path: Path, theme: str) -> None:
    quilt = replace(with_fabrics(), target=Target(4, 5))
    found: list[Drawn] = []
    accepted = c.AcceptSets(sets_of(8, 5))
    path = tmp_path / "quilts.db"
    async with at_sewing(path, accepted, quilt=quilt, theme=theme) as room:
        await room.press("minus")
        await room.screen_is(ProposedWallScreen)
        await room.sees("Possible")
        found += (("a layout", *text) for text in texts(room))
        await room.press("y")
        await room.screen_is(WallScreen)
        for key in ("w", "l", "enter", "right", "c", "z", "s"):
            await room.press(key)
            found += (("the wall", *text) for text in texts(room))
    # Marks that stand side by side are one text.
    assert {"[", ")[", "#", "L"} <= {words.strip() for _, words, *_ in found}
    assert weak(found) == {}
    assert weak(found, in_256) == {}


@pytest.mark.long
@pytest.mark.parametrize("theme", FEW)
async def test_every_text_in_sixteen_colours(
    tmp_path: Path, theme: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delenv("COLORTERM")
    monkeypatch.setenv("TERM", "linux")
    async with at_sewing(tmp_path / "quilts.db", *AT_THE_MAT, theme=theme) as room:
        found = await everywhere(room)
    assert weak(found, lambda colour: in_16(colour, XTERM)) == {}
    assert weak(found, lambda colour: in_16(colour, VGA)) == {}


@pytest.mark.parametrize("theme", THEMES.values(), ids=THEMES)
@pytest.mark.parametrize("ground", BACKGROUNDS)
def test_every_text_colour_in_256(theme: Theme, ground: str) -> None:
    back = in_256(str(getattr(theme, ground)))
    # Both are for bars and seams that are drawn.
    colours = {n: c for n, c in text_colours(theme).items() if n not in ("good", "success")}
    assert {n for n, c in colours.items() if contrast(in_256(c), back) < ENHANCED} == set()


@pytest.mark.long
@pytest.mark.parametrize("theme", THEMES)
async def test_without_colour_every_text_is_drawn_in_grey_and_can_be_read(
    tmp_path: Path, theme: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("NO_COLOR", "1")
    async with at_sewing(tmp_path / "quilts.db", *AT_THE_MAT, theme=theme) as room:
        assert room.app.no_color
        found = await everywhere(room)
    for _, _, front, back in found:
        assert len({front[1:3], front[3:5], front[5:7]}) == 1
        assert len({back[1:3], back[3:5], back[5:7]}) == 1
    assert weak(found) == {}


async def test_without_colour_words_and_signs_say_what_colour_did(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("NO_COLOR", "1")
    async with at_sewing(tmp_path / "quilts.db", *AT_THE_MAT) as room:
        await room.sees("> cut twice", "stack 5/5 done")
        assert any(set(line) & set("━╌") for line in room.lines)
        await room.press("9", "enter")
        await room.sees("Not done: 9 stacks")
        await room.press("space")
        await room.sees("CAUTION Rotary cutter")
        await room.press("escape", "o")
        await room.sees("(suggested)")


async def test_without_colour_the_marked_line_of_a_list_stands_out(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("NO_COLOR", "1")
    async with at_sewing(tmp_path / "quilts.db", *AT_THE_MAT) as room:
        await room.press("o")
        await room.sees("Work at which stage?")
        for suggested, other in (("cut twice: 5", "press open: 20"), ("cut twice: 5", "sew: done")):
            assert underlined(room, suggested)
            assert not underlined(room, other)
        await room.press("down")
        assert underlined(room, "press open: 20")
        assert not underlined(room, "cut twice: 5")


async def test_without_colour_the_page_and_the_line_in_hand_stand_out(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("NO_COLOR", "1")
    async with at_sewing(tmp_path / "quilts.db", *AT_THE_MAT) as room:
        await room.press("h")
        await room.screen_is(WorksheetScreen)
        await room.press("3")
        assert underlined(room, "3\N{NO-BREAK SPACE}cloth")
        assert not underlined(room, "1\N{NO-BREAK SPACE}sizes")
        await room.press("escape")
        await room.screen_is(SewingScreen)
        await room.press("t")
        await room.sees("Rows (down)")
        for field in ("field-rows", "field-columns"):
            # Where the next letter goes is shown the other way round, and nowhere else.
            assert [box.id for box in room.app.screen.query(Input) if reversed_in(room, box)] == [
                field
            ]
            await room.press("tab")


async def test_without_colour_words_say_what_became_of_a_quilt(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("NO_COLOR", "1")
    path, clock = tmp_path / "quilts.db", StandingClock()
    put_on_shelf(path, clock, c.LayAside("out of grey"), quilt=a_quilt("Attic stairs"))
    put_on_shelf(path, clock, c.MarkDone(), quilt=a_quilt("Bench"))
    put_on_shelf(path, clock, quilt=a_quilt("Window seat"))
    with closing(sqlite3.connect(path)) as record:
        record.execute("UPDATE plan_mark SET mark = mark + 1 WHERE quilt = 3")
        record.commit()
    async with the_app(path, clock) as room:
        await room.sees("laid aside", "out of grey", "done", "is damaged")


def reversed_in(room: Room, box: Input) -> bool:
    """Whether anything in a line to fill in is shown the other way round."""
    strip = room.app.screen._compositor.render_strips()[box.region.y]
    inside = strip.crop(box.region.x, box.region.right)
    return any(segment.style is not None and segment.style.reverse for segment in inside)


def underlined(room: Room, words: str) -> bool:
    """whether the piece of text with `words` is underlined."""
    for strip in room.app.screen._compositor.render_strips():
        for segment in strip:
            if words in segment.text:
                return bool(segment.style and segment.style.underline)
    raise AssertionError(f"no {words!r}\n{room.text}")
