"""From a photograph of a pack to a top, by keys: sets, units sewn, laid anyhow and photographed,
mended by three swaps, rows sewn over two sessions, laid again after the cat, two rows exchanged for
their colour with the press warned of, and at last joined as a web. The quilt is invented.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import timedelta
from pathlib import Path
from random import Random

import pytest

from sewalong.fabrics.colours import Colour, parse_colour
from sewalong.progress.record.state import State
from sewalong.progress.wall.on_wall import asked_of, on_wall
from sewalong.progress.wall.units import units_to_lay
from sewalong.screens.change_plan import ChangePlanScreen
from sewalong.screens.cloth.fabrics import FabricsScreen
from sewalong.screens.cloth.photo_sheet import PhotoSheetScreen
from sewalong.screens.cloth.proposing import ProposingScreen
from sewalong.screens.cloth.sets import SetsScreen
from sewalong.screens.prompts.dialogs import (
    CautionDialog,
    ChoiceDialog,
    FormDialog,
    LinesDialog,
    QuestionDialog,
)
from sewalong.screens.prompts.floor_dialog import FloorDialog
from sewalong.screens.prompts.photo_dialog import PhotoDialog
from sewalong.screens.quilts import QuiltsScreen
from sewalong.screens.returning import ReturnScreen
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.wall.floor_sheet import FloorSheetScreen
from sewalong.screens.wall.proposing import ProposedWallScreen
from sewalong.screens.wall.row_in_hand import RowInHandScreen
from sewalong.screens.wall.wall import WallScreen
from sewalong.screens.worksheet import WorksheetScreen
from sewalong.wall.laying.laying import Laying, Put, Rules
from sewalong.wall.laying.mending import mend
from sewalong.wall.laying.search import laid
from sewalong.wall.laying.units import WallUnit
from tests.fabrics.floor.made_floors import Floor, Lying, cloth
from tests.fabrics.photo.made_photos import Scene, solid
from tests.screens.choosing import choose
from tests.screens.sewing_room import MINUTE, Room, StandingClock, the_app
from tests.screens.test_screens_new_quilt import answer
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


@pytest.mark.long
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
        await room.press("escape")
        await rows_sewn(room, clock, path)
        await rows_exchanged(room, path)
        await sewn_as_a_web(room, clock, path)


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


async def rows_sewn(room: Room, clock: StandingClock, path: Path) -> None:
    """Rows sewn square by square, put away inside the second, and gone on with weeks later."""
    await room.screen_is(SewingScreen)
    await room.press("c")
    await room.screen_is(RowInHandScreen)
    await room.sees(
        "Row 1 of 4: 0 of 4 sewn", "Row 1 place 1: unit ", "towards row 1", "It is next."
    )
    for _ in range(3):
        await room.press("space")
        await read_on(room)
    await room.sees("Row 2 of 4: 0 of 4 sewn", "Counted 1 row")
    await room.press("space", "space")
    await room.sees("Row 2 of 4: 3 of 4 sewn", "Row 2 place 4: unit ")
    in_hand = lies_at(path, (2, 4))
    await room.press("escape")
    await room.screen_is(SewingScreen)
    await closed(room)
    clock.forward(timedelta(days=23))
    await room.press("enter")
    await room.screen_is(ReturnScreen)
    await room.sees("23 days", "Row 2: 3 of 4 sewn", in_hand)
    await room.press("enter")
    await room.screen_is(SewingScreen)
    await room.sees("Row 2: 3 of 4 sewn. Next place 4: unit")
    await room.press("c")
    await room.screen_is(RowInHandScreen)
    await room.sees("Row 2 place 4: ", in_hand)
    await room.press("space")
    await read_on(room)
    await room.sees("Row 3 of 4: 0 of 4 sewn")
    await laid_again(room, path)
    for _ in range(6):
        await room.press("space")
        await read_on(room)
    await room.screen_is(SewingScreen)
    assert on_disk(path).done["sew-rows"] == ROWS


async def laid_again(room: Room, path: Path) -> None:
    """After the cat: every row is read, place by place, and the row in hand found again."""
    for row in (3, 4):
        await room.sees(
            f"Row {row} of 4", *(lies_at(path, (row, place)) for place in range(1, COLUMNS + 1))
        )
        await room.press("pagedown")
    await room.press("pageup")
    await room.sees("Row 3 of 4")


async def rows_exchanged(room: Room, path: Path) -> None:
    """Rows 1 and 2 change places for their colour: that ridge will lie on ridge is said first."""
    before = on_disk(path).wall.rows
    await room.press("minus")
    await room.screen_is(WallScreen)
    await room.press("e")
    await room.screen_is(FormDialog)
    await room.write("2")
    await room.press("enter")
    await room.screen_is(ChoiceDialog)
    await room.sees("ridge on ridge", "Press rows 1, 2 the other way")
    await room.press("enter")
    await room.screen_is(WallScreen)
    assert on_disk(path).wall.rows == (before[1], before[0], *before[2:])
    await room.press("escape")
    await room.screen_is(SewingScreen)
    # Before they are joined it is said what a row turned end for end would show.
    await room.sees("JOIN ROWS", "Join R1 to R2", "lies end for end there is")


async def sewn_as_a_web(room: Room, clock: StandingClock, path: Path) -> None:
    """She takes the rows apart rather than press them anew, and sews the wall as it lies as a web."""
    laid_so = on_disk(path).wall.rows
    await room.press("k")
    await choose(room, "sew rows")
    await room.write_over("4")
    await room.press("enter")
    await room.screen_is(SewingScreen)
    await room.press("h", "c")
    await room.screen_is(ChangePlanScreen)
    await answer(room, "layout", "4 x 4 as a web")
    await room.sees("Would change: ")
    await room.press("s")
    await room.screen_is(WorksheetScreen)
    await room.press("escape")
    await room.screen_is(SewingScreen)
    assert on_disk(path).quilt.is_web
    assert on_disk(path).wall.rows == laid_so
    # The unit to take is named in the passes, too: column by column, as the wall lies.
    await room.press("o")
    await choose(room, "start web")
    for row in range(1, ROWS + 1):
        first, second = (lies_at(path, (row, place)) for place in (1, 2))
        await room.press("c")
        await room.screen_is(RowInHandScreen)
        await room.sees(f"Row {row} place 1: {first}", f"Row {row} place 2: {second}")
        await room.press("space")
        await read_on(room)
        await room.press("escape")
        await room.screen_is(SewingScreen)
    await room.press("c")
    for column in (3, 4):
        for row in range(1, ROWS + 1):
            await room.sees(f"Row {row} place {column}: {lies_at(path, (row, column))}")
            await room.press("space")
            await read_on(room)
    await room.screen_is(SewingScreen)
    await room.sees("JOIN ROWS")
    for seam in range(1, ROWS):
        await room.press("j")
        await room.until(lambda: not isinstance(room.app.screen, SewingScreen), "which rows")
        await room.press("enter", "enter")
        await read_on(room)
        await room.screen_is(SewingScreen)
        assert on_disk(path).done["join-rows"] == seam
    # The top is one piece, and its borders come next.
    await room.sees("ADD BORDERS")
    assert on_disk(path).wall.rows == laid_so


async def closed(room: Room) -> None:
    """End the session; what is asked is answered with yes, places stay as they are offered."""
    await room.press("x")
    for _ in range(12):
        await room.pilot.pause()
        if isinstance(room.app.screen, QuiltsScreen):
            return
        await room.press("y" if isinstance(room.app.screen, QuestionDialog) else "enter")
    raise AssertionError(room.text)


def lies_at(path: Path, at: tuple[int, int]) -> str:
    """What lies at a place, as it is called."""
    wall = on_disk(path).wall
    lies = wall.at(at)
    assert lies is not None
    unit = wall.units[lies[0]]
    return f"unit {unit.unit + 1} of set {unit.set}"
