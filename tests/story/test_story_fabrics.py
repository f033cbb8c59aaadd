"""From an empty home to the first stack on the table, by keys alone: by three colour piles said
while the quilt is begun, and by one photograph of a pack. Both quilts are invented.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from sewalong.progress.record.state import State
from sewalong.screens.cloth.fabrics import FabricsScreen
from sewalong.screens.cloth.photo_sheet import PhotoSheetScreen
from sewalong.screens.cloth.proposing import ProposingScreen
from sewalong.screens.cloth.sets import SetsScreen
from sewalong.screens.new_quilt import NewQuiltScreen
from sewalong.screens.prompts.begun_prompt import BegunDialog
from sewalong.screens.prompts.dialogs import CautionDialog, QuestionDialog
from sewalong.screens.prompts.photo_dialog import PhotoDialog
from sewalong.screens.quilts import QuiltsScreen
from sewalong.screens.sewing import SewingScreen
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.library import Library
from tests.fabrics.photo.made_photos import COLOURS, Scene, dots, solid
from tests.screens.choosing import choose
from tests.screens.sewing_room import EVENING, Room, StandingClock, the_app


async def to_the_form(room: Room) -> None:
    await room.screen_is(QuiltsScreen)
    await room.press("n")
    await room.screen_is(NewQuiltScreen)


async def started(room: Room) -> None:
    await room.press("s")
    await room.screen_is(BegunDialog)
    await room.press("enter")
    await room.screen_is(SewingScreen)


async def from_sets_to_the_first_stack(room: Room, sets: int) -> None:
    """Have sets proposed, see what they give, have them, and lay, sew, press and stack the first."""
    await room.press("full_stop")
    await room.screen_is(ProposingScreen)
    await room.sees(
        f"set 1 of {sets}", "Weakest: ", "No choice of sets passes", "the units it gives"
    )
    # The units are seen before anything is cut.
    assert re.search(r"([A-Z])\1{6}.*([A-Z])\2{6}", room.text)
    await room.press("y")
    await room.screen_is(SetsScreen)
    await room.sees(f"set 1 of {sets}, next")
    await room.press("escape")
    await room.screen_is(SewingScreen)
    for stage, counts in (("pair", 4), ("sew", 2), ("press", 2), ("stack", 1)):
        await room.press("o")
        await choose(room, stage)
        for count in range(counts):
            which = f"Set 1 of {sets}" + (f", {count + 1} of {counts}" if counts > 1 else "")
            await room.sees(f"{which}: ")
            await room.press("space")
            if isinstance(room.app.screen, CautionDialog):
                await room.press("enter")
        if stage == "press":
            # The iron is asked about on leaving it.
            await room.screen_is(QuestionDialog)
            await room.press("y")
    await room.sees("Counted 1 stack.")
    # The first stack lies on the table, and what is next is to sew around it.
    await room.sees("SEW AROUND at the machine", f"Set 1 of {sets}: ")


def on_disk(path: Path) -> State:
    library = Library(path, EVENING)
    try:
        (entry,) = library.entries()
        return OpenQuilt(library, entry).state
    finally:
        library.close()


@pytest.fixture
def path(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("SEWALONG_HOME", str(tmp_path))
    monkeypatch.chdir(tmp_path)
    return tmp_path / "quilts.db"


@pytest.mark.long
async def test_three_colour_piles_are_an_answer_of_the_form(path: Path) -> None:
    async with the_app(path, StandingClock()) as room:
        await to_the_form(room)
        # The question stands before the last.
        await room.press("up", "up", "enter")
        await room.sees("Piles or fabrics with their squares, such as lights 60")
        await room.write_over("lights 60, mediums 70 dark")
        await room.press("enter")
        await room.sees("says two values")
        await room.write_over("lights 60, mediums 70, darks 38")
        await room.press("enter")
        await room.sees("A lights 60, B mediums 70")
        await started(room)
        # Nothing of it stands between her and counting.
        await room.press("space")
        await room.sees("Counted 1 pair")
        await room.press("comma")
        await room.screen_is(FabricsScreen)
        await room.sees(
            "168 squares of 3 fabrics, as many as the plan begins with.",
            "A lights, 60",
            "B mediums, 70",
            "C darks, 38",
            "enough for 21 sets of 8 squares, 0 over.",
        )
        await room.press("comma")
        await room.screen_is(SewingScreen)
        await room.press("u")
        await room.sees("Undone: ")
        await from_sets_to_the_first_stack(room, 21)
    assert [(one.letter, one.squares) for one in on_disk(path).quilt.fabrics] == [
        ("A", 60),
        ("B", 70),
        ("C", 38),
    ]


async def test_one_photograph_of_a_pack_is_four_packs_of_fabrics(path: Path) -> None:
    pack = [
        dots("#2f4a7c", "#f4f0e6", 0.2, 0.3),
        *map(solid, [*COLOURS[:18], COLOURS[0], "#777777"]),
    ]
    rows = [pack[row * 7 : (row + 1) * 7] for row in range(3)]
    scene = Scene(squares=rows, size=(760, 380), turned=2, fall_off=0.2, noise=2)
    (path.parent / "pack.jpg").write_bytes(scene.file("JPEG", quality=80))
    async with the_app(path, StandingClock()) as room:
        await to_the_form(room)
        await room.press("down", "down", "enter")
        await room.write_over("4 packs of 21")
        await room.press("enter")
        await started(room)
        await room.press("comma")
        await room.screen_is(FabricsScreen)
        await room.press("p")
        await room.screen_is(PhotoDialog)
        await room.write("pack.jpg")
        # The grid of a pack of 21 and the four packs are offered.
        await room.press("enter", "enter", "enter", "enter")
        await room.screen_is(PhotoSheetScreen)
        await room.sees(
            "21 squares, 20 fabrics; 4 packs, 84 squares in all.",
            "1 fabric lies at several places: that is likely, not sure.",
            "1·1: A neutral 1·1, small print",
        )
        await room.press("n")
        await room.write("stars")
        await room.press("enter", "k")
        await room.screen_is(FabricsScreen)
        await room.sees("20 fabrics of 84 squares are kept", "A stars, 4")
        await room.sees("84 squares of 20 fabrics, as many as the plan begins with.")
        await room.press("escape")
        await room.screen_is(SewingScreen)
        await from_sets_to_the_first_stack(room, 9)
    fabrics = on_disk(path).quilt.counted_fabrics
    assert len(fabrics) == 20
    assert (fabrics[0].name, fabrics[0].squares, fabrics[0].second is None) == ("stars", 4, False)
    # The one that lay there twice.
    assert sorted(one.squares or 0 for one in fabrics) == [4] * 19 + [8]
