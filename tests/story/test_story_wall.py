"""From a photograph of a pack to a top, by keys: sets, units sewn, laid anyhow and photographed,
mended by three swaps, rows sewn over two sessions, laid again after the cat, two rows exchanged for
their colour with the press warned of, and at last joined as a web. The quilt is invented.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from pathlib import Path
from random import Random

import pytest

from sewalong.fabrics.colours import Colour, parse_colour
from sewalong.progress.record.state import State
from sewalong.progress.wall.on_wall import asked_of, on_wall
from sewalong.progress.wall.units import units_to_lay
from sewalong.screens.cloth.fabrics import FabricsScreen
from sewalong.screens.cloth.photo_sheet import PhotoSheetScreen
from sewalong.screens.cloth.proposing import ProposingScreen
from sewalong.screens.cloth.sets import SetsScreen
from sewalong.screens.prompts.dialogs import (
    CautionDialog,
    ChoiceDialog,
    LinesDialog,
    QuestionDialog,
)
from sewalong.screens.prompts.floor_dialog import FloorDialog
from sewalong.screens.prompts.photo_dialog import PhotoDialog
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.wall.floor_sheet import FloorSheetScreen
from sewalong.screens.wall.proposing import ProposedWallScreen
from sewalong.screens.wall.wall import WallScreen
from sewalong.wall.laying.laying import Laying, Put, Rules
from sewalong.wall.laying.mending import mend
from sewalong.wall.laying.search import laid
from sewalong.wall.laying.units import WallUnit
from tests.fabrics.floor.made_floors import Floor, Lying, cloth
from tests.fabrics.photo.made_photos import Scene, solid
from tests.screens.sewing_room import MINUTE, Room, StandingClock, the_app
from tests.story.test_story_fabrics import on_disk, started, to_the_form

ROWS, COLUMNS = 4, 4


@pytest.fixture
def path(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("SEWALONG_HOME", str(tmp_path))
    monkeypatch.chdir(tmp_path)
    return tmp_path / "quilts.db"


async def read_on(room: Room) -> None:
    """Read the cautions and answer the questions that come up."""
    await room.pilot.pause()
    for _ in range(8):
        if isinstance(room.app.screen, CautionDialog):
            await room.press("enter")
        elif isinstance(room.app.screen, QuestionDialog):
            await room.press("y")
        else:
            return
        await room.pilot.pause()


async def sew_on(room: Room, clock: StandingClock, until: str) -> None:
    """Count whatever each stage has to do, as far as a stage."""
    for _ in range(40):
        line = room.sewing.outcome.hand.line
        if line.stage.id == until:
            return
        clock.forward(MINUTE)
        await room.press(*str(line.to_do), "enter")
        await read_on(room)
        await room.screen_is(SewingScreen)
    raise AssertionError(room.text)


def pack(folder: Path) -> None:
    """Sixteen solids of two packs, photographed."""
    colours = list(cloth(16, apart=12.0).values())
    rows = [[solid(str(colour)) for colour in colours[row * 4 : row * 4 + 4]] for row in range(4)]
    scene = Scene(squares=rows, size=(560, 560), turned=2, fall_off=0.2, noise=2)
    (folder / "pack.jpg").write_bytes(scene.file("JPEG", quality=85))


def three_swaps(units: Sequence[WallUnit], laying: Laying, rules: Rules) -> list[Put]:
    """What lies there once three pairs have changed places, so that no fewer moves mend it."""
    chance = Random(5)
    while True:
        places = [put for put in laying.in_order if put is not None]
        some = chance.sample(range(len(places)), 6)
        for one, other in zip(some[::2], some[1::2], strict=True):
            places[one], places[other] = places[other], places[one]
        found = mend(laying.with_places(places), units, rules)
        if len(found.moves) == 3 and found.fewest and not found.left:
            return places


def photographed(folder: Path, state: State) -> None:
    """All units on the floor in a layout without a touch, but for three pairs that changed places."""
    units, asked = asked_of(state, units_to_lay(state))
    found = laid(asked, 40)
    assert found.touches == 0
    places = three_swaps(asked.units, found.laying, asked.rules)
    number = {(unit.set, unit.unit): n for n, unit in enumerate(units_to_lay(state))}
    lying = [Lying(number[units[put.unit].set, units[put.unit].unit], put.turns) for put in places]
    colours: dict[str, Colour] = {}
    for fabric in state.quilt.counted_fabrics:
        assert fabric.colour is not None
        colours[fabric.letter] = parse_colour(fabric.colour)
    floor = Floor(
        method=state.quilt.method_id,
        sets={n: one.squares for n, one in state.sets.sets.items()},
        colours=colours,
        laid=[lying[row * COLUMNS : (row + 1) * COLUMNS] for row in range(ROWS)],
    )
    (folder / "floor.png").write_bytes(floor.scene(turned=2.0, noise=2.0).file())


async def chosen(room: Room, clock: StandingClock, folder: Path) -> None:
    """Begun by the form, fabrics read from one photograph of a pack, sets proposed and accepted."""
    pack(folder)
    await to_the_form(room)
    await room.press("down", "down", "enter")
    await room.write_over("2 packs of 16")
    await room.press("enter")
    await started(room)
    await room.press("comma")
    await room.screen_is(FabricsScreen)
    await room.press("p")
    await room.screen_is(PhotoDialog)
    await room.write("pack.jpg")
    await room.press("enter", "enter", "enter", "enter")
    await room.screen_is(PhotoSheetScreen)
    await room.sees("16 squares, 16 fabrics; 2 packs, 32 squares in all.")
    await room.press("k")
    await room.screen_is(FabricsScreen)
    await room.press("escape")
    await room.press("full_stop")
    await room.screen_is(ProposingScreen)
    await room.sees("set 1 of 4")
    await room.press("enter", "y")
    await room.screen_is(SetsScreen)
    await room.press("escape")
    await room.screen_is(SewingScreen)


async def test_from_a_pack_to_a_top(path: Path) -> None:
    clock = StandingClock()
    async with the_app(path, clock) as room:
        await chosen(room, clock, path.parent)
        await sew_on(room, clock, until="sew-rows")
        assert (on_disk(path).target.rows, on_disk(path).target.columns) == (ROWS, COLUMNS)
        # Laid anyhow, photographed, and mended one move after the other.
        photographed(path.parent, on_disk(path))
        await room.press("minus")
        await room.screen_is(ProposedWallScreen)
        await room.sees("Possible, and here it is: nothing touches.")
        await room.press("f")
        await room.screen_is(FloorDialog)
        await room.write_over("floor.png")
        await room.press("enter", "enter")
        await room.screen_is(FloorSheetScreen)
        await room.sees("16 of 16 places are sure.")
        await room.press("k")
        await room.screen_is(LinesDialog)
        named = len(re.findall(r"(?m)\d\. Row \d place", room.text))
        await room.press("escape")
        await room.screen_is(WallScreen)
        assert named == 3
        await mended(room, path, named)
        raise AssertionError(room.text)


async def mended(room: Room, path: Path, named: int) -> None:
    """The moves that are named made one after the other; nothing touches then."""
    wall = on_wall(on_disk(path))
    assert wall is not None
    touches = wall.board().touches()
    assert touches
    for move in range(named):
        await room.press("m")
        await room.screen_is(ChoiceDialog)
        await room.press("enter")
        await room.screen_is(WallScreen)
        wall = on_wall(on_disk(path))
        assert wall is not None
        fewer = wall.board().touches()
        assert fewer < touches, move
        touches = fewer
    assert touches == 0
