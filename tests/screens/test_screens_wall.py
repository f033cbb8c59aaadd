"""The wall by keys: a layout proposed and accepted, walked, units picked up, turned, locked, spares."""

from __future__ import annotations

from collections.abc import AsyncIterator, Iterator
from contextlib import asynccontextmanager
from pathlib import Path

import pytest
from msgspec.structs import replace

from sewalong.progress.record.wall import Lies
from sewalong.progress.wall.units import units_by_letter, units_to_lay
from sewalong.quilt.quilt import Border, Quilt, Target
from sewalong.screens.prompts.dialogs import ChoiceDialog, FormDialog
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.wall.place_panel import PlacePanel
from sewalong.screens.wall.proposing import ProposedWallScreen
from sewalong.screens.wall.sheet import WallSheet
from sewalong.screens.wall.wall import WallScreen
from sewalong.service.wall.looks import worst
from sewalong.wall.laying.search import Asked, Found, search
from tests.goldens import compare
from tests.progress import every_act as c
from tests.progress.building import play
from tests.progress.sets.fabrics import sets_of, with_fabrics
from tests.screens.choosing import choose
from tests.screens.fitting import faults_of
from tests.screens.sewing_room import LARGE, SIZES, SMALL, Room, a_quilt, at_sewing
from tests.screens.test_screens_every_size import look

GOLDENS = Path(__file__).parent / "goldens_of_the_wall"

QUILT = replace(with_fabrics(), name="Meadow", target=Target(4, 5), borders=())
SETS = c.AcceptSets(sets_of(8, 6), "by value")


def laid_as_made(quilt: Quilt = QUILT) -> c.LayWall:
    """24 units laid one after the other, four of them spare."""
    units = units_to_lay(play(quilt, SETS)[0])
    rows, columns = quilt.target.rows, quilt.target.columns
    lies = tuple(tuple((row * columns + n, 0) for n in range(columns)) for row in range(rows))
    return c.LayWall(units, lies)


@pytest.fixture(autouse=True)
def soon_good_enough(monkeypatch: pytest.MonkeyPatch) -> None:
    """No test waits for the best of all."""
    monkeypatch.setattr(ProposedWallScreen, "looks_in_vain", 1)


@asynccontextmanager
async def at_the_wall(
    tmp_path: Path, *acts: c.Act, quilt: Quilt = QUILT, size: tuple[int, int] = LARGE
) -> AsyncIterator[tuple[Room, WallScreen]]:
    """The wall as it was laid, after whatever else was done."""
    path = tmp_path / "quilts.db"
    async with at_sewing(path, SETS, laid_as_made(quilt), *acts, quilt=quilt, size=size) as room:
        await room.press("minus")
        await room.screen_is(WallScreen)
        await room.pilot.pause()
        screen = room.app.screen
        assert isinstance(screen, WallScreen)
        yield room, screen


@asynccontextmanager
async def at_a_layout(
    tmp_path: Path, *acts: c.Act, quilt: Quilt = QUILT, size: tuple[int, int] = LARGE
) -> AsyncIterator[tuple[Room, ProposedWallScreen]]:
    """A layout proposed, once it has stopped looking."""
    async with at_sewing(tmp_path / "quilts.db", SETS, *acts, quilt=quilt, size=size) as room:
        await room.press("minus")
        yield room, await proposed(room)


async def proposed(room: Room) -> ProposedWallScreen:
    """The screen of the proposal, once it has stopped looking."""
    await room.screen_is(ProposedWallScreen)
    await room.sees("y has it.")
    screen = room.app.screen
    assert isinstance(screen, ProposedWallScreen)
    return screen


def lies(room: Room, row: int, place: int) -> Lies | None:
    return room.state.wall.at((row, place))


async def test_a_layout_is_proposed_at_once_accepted_and_undone(tmp_path: Path) -> None:
    async with at_a_layout(tmp_path) as (room, screen):
        await room.sees("Possible, and here it is: nothing touches.", "row 1 place 1")
        await room.sees("By seams, stacks apart, seed 1; y has it.")
        assert not room.on_disk().wall.rows, "nothing is accepted yet"
        found = screen._found
        assert found is not None
        await room.press("y")
        await room.screen_is(WallScreen)
        await room.sees("Nothing touches.")
        stands = room.on_disk().wall
        assert [[one and one[1] for one in row] for row in stands.rows] == [
            [put and put.turns for put in row] for row in found.laying.places
        ]
        assert (stands.touch, stands.stacks) == ("edge", True)
        await room.press("u")
        await room.screen_is(SewingScreen)
        assert not room.state.wall.rows


@pytest.mark.long
async def test_leaving_changes_nothing(tmp_path: Path) -> None:
    async with at_a_layout(tmp_path) as (room, _):
        await room.press("escape")
        await room.screen_is(SewingScreen)
        assert not room.on_disk().wall.rows


async def test_while_it_looks_keys_are_answered_and_enter_stops(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(ProposedWallScreen, "looks_in_vain", 10**9)

    def never_done(asked: Asked) -> Iterator[Found]:
        for found in search(asked):
            last = found
        while True:
            yield last

    monkeypatch.setattr("sewalong.screens.wall.proposing.search", never_done)
    async with at_sewing(tmp_path / "quilts.db", SETS, quilt=QUILT) as room:
        await room.press("minus")
        await room.screen_is(ProposedWallScreen)
        await room.sees("looking for better: enter stops.", "row 1 place 1")
        await room.press("right")
        await room.sees("row 1 place 2")
        await room.press("enter")
        await room.sees("y has it.")
        await room.press("enter")
        await room.sees("looking for better")
        await room.press("escape")
        await room.screen_is(SewingScreen)


async def test_rules_are_picked_by_number(tmp_path: Path) -> None:
    bordered = replace(QUILT, borders=(Border(QUILT.seam * 12, "moss"),))
    async with at_a_layout(tmp_path, quilt=bordered) as (room, screen):
        for keys, said in (
            (("1",), "By seams and points, stacks apart, seed 1"),
            (("2",), "By seams and points, seed 1"),
            (("3",), "By seams and points, F moss off the rim, seed 1"),
            (("3", "4"), "By seams and points, spread evenly, seed 1"),
            (("r",), "By seams and points, spread evenly, seed 2"),
        ):
            await room.press(*keys)
            await room.sees(f"{said}; y has it.")
        await room.press("5")
        await choose(room, "rings")
        await room.sees("spread evenly, rings, seed 2")
        assert screen._asked is not None
        await room.press("space")
        await room.screen_is(WallScreen)
        assert (room.state.wall.touch, room.state.wall.stacks) == ("corner", False)


@pytest.mark.long
async def test_what_lies_around_is_asked_for_where_no_border_tells(tmp_path: Path) -> None:
    async with at_a_layout(tmp_path) as (room, screen):
        await room.press("3")
        await choose(room, "C shell")
        await room.sees("C shell off the rim")
        await proposed(room)
        assert screen._asked is not None
        assert screen._asked.rules.rim == "C"


async def test_a_fabric_too_many_is_named_before_anything_is_laid(tmp_path: Path) -> None:
    quilt = replace(QUILT, target=Target(1, 3))
    typed = c.LayWall(units_by_letter("AAA"), (((0, 0), (1, 0), (2, 0)),), stacks=False)
    async with at_sewing(tmp_path / "quilts.db", typed, quilt=quilt) as room:
        await room.press("minus")
        await room.screen_is(WallScreen)
        await room.press("p")
        await proposed(room)
        await room.sees(
            "Not possible: like fabrics meet along a seam 2 times at least.",
            "A chalk: 3 units, and 2 can lie apart: 1 too many.",
            "Here: 2 touches, and no layout has fewer.",
        )


async def test_a_rule_that_cannot_be_followed_is_refused_and_what_is_there_stays(
    tmp_path: Path,
) -> None:
    quilt = a_quilt(target=Target(1, 3))
    typed = c.LayWall(units_by_letter("ABA"), (((0, 0), (1, 0), (2, 0)),), stacks=False)
    async with at_sewing(tmp_path / "quilts.db", typed, quilt=quilt) as room:
        await room.press("minus", "p")
        await proposed(room)
        await room.press("5")
        await choose(room, "rings")
        await room.sees("Not done: How light the units are is not known")
        await room.press("z", "x", "v", "v", "c", "g", "b", "w", "n", "right", "pagedown")
        await room.press("2")
        await room.sees("By seams, stacks apart, seed 1; y has it.")
        await room.press("y")
        await room.screen_is(WallScreen)
        assert room.state.wall.stacks


async def test_a_move_says_what_it_does_before_it_is_made(tmp_path: Path) -> None:
    async with at_the_wall(tmp_path) as (room, screen):
        assert screen.wall is not None
        before = screen.wall.touches
        await room.sees(f"{before} touches.", "row 1 place 1", "Unit 1 of set 1")
        await room.press("enter", "right")
        await room.sees("Row 1 place 2. Put down here: ", f"{before} touches, ")
        await room.press("down", "enter")
        await room.sees("Swapped row 1 place 1 with row 2 place 2.")
        assert (lies(room, 1, 1), lies(room, 2, 2)) == ((6, 0), (0, 0))
        assert screen.held is None
        await room.press("u")
        await room.until(lambda: lies(room, 1, 1) == (0, 0), "undone")
        await room.press("q")
        await room.until(lambda: lies(room, 1, 1) == (6, 0), "put back")


async def test_a_turn_is_told_and_made_by_quarters(tmp_path: Path) -> None:
    async with at_the_wall(tmp_path) as (room, _):
        await room.sees("A quarter turn: ", "Half way round: ", "Three quarters: ")
        for quarters in (1, 2, 3, 0):
            await room.press("t")
            await room.until(lambda n=quarters: lies(room, 1, 1) == (0, n))  # type: ignore[misc]
        await room.sees("Turned row 1 place 1.")


async def test_lock_take_out_and_bring_a_spare_in(tmp_path: Path) -> None:
    async with at_the_wall(tmp_path) as (room, _):
        await room.press("l")
        await room.sees("Row 1 place 1 is locked.")
        await room.press("t")
        await room.sees("Not done: ")
        await room.press("l", "d")
        await room.sees("Nothing lies here.")
        assert lies(room, 1, 1) is None
        await room.press("s")
        await choose(room, "unit 2 of set 6")
        await room.until(lambda: (lies(room, 1, 1) or (0, 0))[0] == 21, "put in")
        await room.sees("Put a spare in at row 1 place 1.")


async def test_the_worst_spots_are_one_key_apart(tmp_path: Path) -> None:
    async with at_the_wall(tmp_path) as (room, screen):
        assert screen.wall is not None
        spots = worst(screen.wall)
        for n, spot in enumerate(spots[:3], start=1):
            await room.press("n")
            await room.sees(f"Place {n} of {len(spots)} where something touches.")
            assert screen.at == spot


async def test_what_mends_it_is_made_as_far_as_she_likes(tmp_path: Path) -> None:
    quilt = replace(QUILT, target=Target(2, 3))
    typed = c.LayWall(
        units_by_letter("AABBCC"),
        (((0, 0), (1, 0), (4, 0)), ((5, 0), (2, 0), (3, 0))),
        stacks=False,
    )
    async with at_sewing(tmp_path / "quilts.db", typed, quilt=quilt) as room:
        await room.press("minus")
        await room.screen_is(WallScreen)
        await room.press("m")
        await room.screen_is(ChoiceDialog)
        await room.sees(" mends all, and fewer do not. Make them down to which?")
        await room.press("enter")
        await room.sees("Nothing touches.")
        await room.press("m")
        await room.sees("Nothing touches, so nothing is to be moved.")


async def test_escape_puts_down_before_it_leaves(tmp_path: Path) -> None:
    async with at_the_wall(tmp_path) as (room, screen):
        await room.press("enter", "right", "escape")
        await room.sees("Put down where it lay.")
        assert screen.held is None
        await room.press("v", "escape", "escape")
        await room.screen_is(SewingScreen)
        assert lies(room, 1, 1) == (0, 0)


async def test_rows_that_are_sewn_stay(tmp_path: Path) -> None:
    sewn = (c.Find("unit", 20, "bought"), c.Count("sew-rows", 1))
    async with at_the_wall(tmp_path, *sewn) as (room, _):
        await room.sees("1=", "It is sewn, and stays where it is.")
        await room.press("enter", "down", "enter")
        await room.sees("Not done: ", "sewn")
        assert lies(room, 1, 1) == (0, 0)
        await room.press("p")
        await proposed(room)
        await room.press("y")
        await room.screen_is(WallScreen)
        units = room.state.wall.units
        first = [units[one[0]] for one in room.state.wall.rows[0] if one is not None]
        assert [(one.set, one.unit) for one in first] == [(1, 0), (1, 1), (1, 2), (1, 3), (2, 0)]


async def test_only_the_lines_of_what_changed_are_drawn_anew(tmp_path: Path) -> None:
    async with at_the_wall(tmp_path) as (room, screen):
        sheet = screen.query_one(WallSheet)
        kept = dict(sheet._strips)
        await room.press("t")
        await room.sees("Turned row 1 place 1.")
        picture = sheet._picture
        assert picture is not None
        assert screen.wall is not None
        touched = {screen.wall.board.slot(at) for at in ((1, 1), (1, 2), (2, 1))}
        lines = {
            picture.cells[n].y + 1 + down for n in touched for down in range(picture.cells[n].down)
        }
        same = [y for y in kept if y not in lines]
        assert len(same) > len(kept) // 3
        assert all(sheet._strips.get(y) is kept[y] for y in same)
        assert any(sheet._strips.get(y) is not kept[y] for y in lines if y in kept)


async def test_a_section_goes_along_with_the_walk_and_is_said(tmp_path: Path) -> None:
    quilt = replace(QUILT, target=Target(2, 12))
    async with at_the_wall(tmp_path, quilt=quilt, size=SMALL) as (room, screen):
        await room.sees("columns 1 to 8 of 12")
        await room.press(*["right"] * 8)
        await room.sees("columns 5 to 12 of 12")
        assert screen.at == (1, 9)
        await room.press("z", "z", "z")
        await room.sees("columns 8 to 9 of 12")
        await room.press("x", "x", "x")
        await room.sees("columns 5 to 12 of 12")
        await room.press("x")
        await room.sees("each unit as from afar")
        assert "columns" not in room.flowing
        await room.press("x", "z")
        await room.sees("columns 5 to 12 of 12")


@pytest.mark.long
async def test_it_is_looked_at_in_other_ways(tmp_path: Path) -> None:
    async with at_the_wall(tmp_path) as (room, _):
        await room.press("g")
        await room.sees("in grey: lightness alone")
        await room.press("b")
        await room.sees("as somebody without red cones sees it")
        await room.press("c")
        await room.sees("lobs of one colour family")
        await room.press("c")
        await room.sees("lobs of one value")
        await room.press("c")
        await room.sees("Nothing is marked.")


async def test_where_nothing_is_known_rows_are_typed_by_letters(tmp_path: Path) -> None:
    quilt = a_quilt(target=Target(2, 3))
    async with at_sewing(tmp_path / "quilts.db", quilt=quilt) as room:
        await room.press("minus")
        await room.screen_is(ChoiceDialog)
        await room.sees("Nothing is known of the units yet.", "counting goes on without")
        await room.press("enter")
        await room.screen_is(FormDialog)
        await room.write("A B A")
        await room.press("enter")
        await room.write("ACA")
        await room.press("enter")
        await room.screen_is(WallScreen)
        await room.sees("2 touches", "A along a seam.")
        await room.press("a")
        await room.screen_is(FormDialog)
        await room.write_over("AB")
        await room.press("enter", "enter")
        await room.sees("Row 1 has 2 units")
        await room.press("escape")
        await room.press("t")
        await room.sees("Not done: Whichever way it is turned, this unit shows the same.")


async def drawn(room: Room) -> str:
    await room.until(lambda: not faults_of(room.app.screen), "nothing cut off")
    return "\n".join(room.lines) + "\n"


@pytest.mark.parametrize(
    "size", [LARGE, pytest.param(SMALL, marks=pytest.mark.long)], ids=["80x24", "40x20"]
)
async def test_a_wall_as_it_is_drawn(
    tmp_path: Path, size: tuple[int, int], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Without colours, where each patch is drawn in its letter."""
    monkeypatch.setenv("NO_COLOR", "1")
    async with at_the_wall(tmp_path, c.LockPlaces(((2, 2),)), size=size) as (room, _):
        await room.press("down", "enter", "right", "right")
        compare(GOLDENS / f"a-wall-{size[0]}x{size[1]}.txt", await drawn(room))


async def test_every_size(tmp_path: Path) -> None:
    quilt = replace(QUILT, name="The quilt for the spare room with the window towards the harbour")
    found = []
    async with at_the_wall(tmp_path, quilt=quilt) as (room, screen):
        found += await look(room, "the wall")
        await room.press("v")
        found += await look(room, "the place", SIZES)
        assert screen.query_one(PlacePanel).display
        await room.press("v", "p")
        await proposed(room)
        found += await look(room, "a layout", SIZES)
    assert found == [], "\n".join(found)


@pytest.mark.long
async def test_every_size_of_what_is_asked_for_there(tmp_path: Path) -> None:
    found = []
    async with at_the_wall(tmp_path) as (room, _):
        for key in ("s", "a", "question_mark"):
            await room.press(key)
            await room.until(lambda: room.app.screen.is_modal, key)
            found += await look(room, key)
            await room.press("escape")
        await room.press("p")
        await proposed(room)
        for key in ("3", "5"):
            await room.press(key)
            await room.screen_is(ChoiceDialog)
            found += await look(room, key)
            await room.press("escape")
    assert found == [], "\n".join(found)
