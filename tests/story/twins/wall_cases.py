"""The wall: a layout accepted, units swapped, turned, taken out, locked, mended; whole rows moved."""

from __future__ import annotations

from msgspec.structs import replace

from sewalong.progress.acts.act import Act
from sewalong.progress.record.wall import LaidUnit
from sewalong.progress.wall.units import units_by_letter
from sewalong.quilt.quilt import Target
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.wall.proposing import ProposedWallScreen
from sewalong.screens.wall.wall import WallScreen
from tests.progress import every_act as c
from tests.screens.sewing_room import Room, a_quilt
from tests.story.twins.set_cases import ACCEPTED
from tests.story.twins.set_cases import QUILT as OF_SETS
from tests.story.twins.twin import Case, Key, fill, pick

SETS = ACCEPTED[0].sets
QUILT = replace(OF_SETS, target=Target(3, 4))
LAID = c.LayWall(
    tuple(LaidUnit(n, unit, squares) for n, squares in enumerate(SETS, 1) for unit in range(4)),
    tuple(tuple((4 * row + n, 0) for n in range(4)) for row in range(3)),
)


def by_letters(*rows: str) -> c.LayWall:
    """Units known by a letter each."""
    numbers = iter(range(sum(map(len, rows))))
    lies = tuple(tuple((next(numbers), 0) for _ in row) for row in rows)
    return c.LayWall(units_by_letter("".join(rows)), lies, stacks=False, how="typed")


def on_the_wall(*steps: str | Key) -> Key:
    """Press keys of the wall, or answer what it asks, and go back to sewing."""

    async def doing(room: Room) -> None:
        await room.press("minus")
        await room.screen_is(WallScreen)
        for step in steps:
            if isinstance(step, str):
                await room.press(step)
            else:
                await step(room)
        await room.screen_is(WallScreen)
        await room.press("escape")
        await room.screen_is(SewingScreen)

    return doing


async def accept_what_is_proposed(room: Room) -> None:
    """Let a layout be proposed, and have it."""
    await room.screen_is(ProposedWallScreen)
    await room.sees("y has it.")
    await room.press("y")


async def clear(room: Room) -> None:
    """Have nothing be laid: there is no wall to look at then."""
    await room.press("minus")
    await room.screen_is(WallScreen)
    await room.press("k")
    await room.screen_is(SewingScreen)


def _of_sets(what: str, act: type[Act], key: Key, command: str, event: str) -> Case:
    return Case(what, act, (key,), (command,), (event,), (*ACCEPTED, LAID), QUILT)


def _by_letters(what: str, act: type[Act], key: Key, command: str, event: str, *rows: str) -> Case:
    quilt = replace(a_quilt(), target=Target(len(rows), len(rows[0])))
    return Case(what, act, (key,), (command,), (event,), (by_letters(*rows),), quilt)


WALL = (
    _of_sets(
        "two units swapped",
        c.SwapPlaces,
        on_the_wall("enter", "right", "down", "enter"),
        "wall swap 1.1 2.2",
        "units moved",
    ),
    _of_sets("a unit turned", c.TurnUnit, on_the_wall("down", "t"), "wall turn 2.1", "units moved"),
    _of_sets("a unit taken out", c.PutSpare, on_the_wall("d"), "wall out 1.1", "units moved"),
    _of_sets("a place locked", c.LockPlaces, on_the_wall("l"), "wall lock 1.1", "places locked"),
    _of_sets(
        "rows exchanged",
        c.ExchangeRows,
        on_the_wall("e", fill("3"), pick("exchange them")),
        "wall exchange R1 R3 --all-the-same",
        "rows reordered",
    ),
    _of_sets(
        "a row turned end for end",
        c.TurnRow,
        on_the_wall("down", "o", pick("turn row 2")),
        "wall turn-row R2 --all-the-same",
        "rows reordered",
    ),
    _of_sets("the wall cleared", c.ClearWall, clear, "wall clear", "wall laid"),
    _by_letters(
        "a layout accepted",
        c.LayWall,
        on_the_wall("p", accept_what_is_proposed),
        "wall --propose --accept",
        "wall laid",
        "AA",
        "BB",
    ),
    _by_letters(
        "what touches mended",
        c.MoveMany,
        on_the_wall("m", pick("1.")),
        "wall mend --accept",
        "units moved",
        "AAB",
        "BBA",
    ),
    _by_letters(
        "rows in order again",
        c.OrderRows,
        on_the_wall("h", pick("all lie as they do"), pick("have the rows lie so")),
        "wall order --accept",
        "rows reordered",
        "AB",
        "AB",
        "BA",
    ),
)

LONG_ONLY = ("a unit taken out", "a place locked", "the wall cleared", "a row turned end for end")
"""Like others of these: only the long form does them."""
