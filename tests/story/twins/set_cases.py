"""Sets of squares: accepted, swapped, laid as her own, marked, taken in hand."""

from __future__ import annotations

from msgspec.structs import replace

from sewalong.quilt.choices import ASSORTED, Fabric
from sewalong.screens.cloth.proposing import ProposingScreen
from sewalong.screens.cloth.sets import SetsScreen
from sewalong.screens.prompts.dialogs import FormDialog
from sewalong.screens.sewing import SewingScreen
from tests.progress import every_act as c
from tests.screens.sewing_room import Room, a_quilt
from tests.story.twins.twin import Case, Key, fill, pick, press

TWO_PILES = (
    Fabric("A", "lights", squares=24, kind=ASSORTED, value="light"),
    Fabric("B", "darks", squares=24, kind=ASSORTED, value="dark"),
)
"""Of these the first choice is one that no other betters, so that both accept the same."""

QUILT = replace(a_quilt(), fabrics=TWO_PILES)
ACCEPTED = (c.AcceptSets((tuple("ABABABAB"), tuple("BABABABA"), tuple("ABABABAB"))),)


def on_the_sets(*keys: str) -> Key:
    """Press keys of the screen of sets, and go back to sewing."""

    async def pressing(room: Room) -> None:
        await room.press("full_stop")
        await room.screen_is(SetsScreen)
        await room.press(*keys)
        await room.press("escape")
        await room.screen_is(SewingScreen)

    return pressing


async def accept_what_is_proposed(room: Room) -> None:
    """Let sets be proposed, and have them."""
    await room.press("full_stop")
    await room.screen_is(ProposingScreen)
    await room.sees("No choice of sets passes")
    await room.press("y")
    await room.screen_is(SetsScreen)


async def lay_her_own(room: Room) -> None:
    """Name the squares of the set in hand."""
    await room.press("full_stop")
    await room.screen_is(SetsScreen)
    await room.press("o")
    await room.screen_is(FormDialog)
    await room.write_over("A A A A B B B B")
    await room.press("enter")


SETS = (
    Case(
        "sets accepted",
        c.AcceptSets,
        (accept_what_is_proposed,),
        ("sets --accept",),
        ("sets accepted",),
        (c.OpenSession(),),
        QUILT,
    ),
    Case(
        "squares swapped",
        c.SwapSquares,
        (on_the_sets("w", "down", "w", "y"),),
        ("sets --swap '1:1 1:2'",),
        ("sets laid",),
        ACCEPTED,
        QUILT,
    ),
    Case(
        "a set of her own",
        c.LayOwn,
        (lay_her_own,),
        ("sets --own '1: A A A A B B B B'",),
        ("sets laid",),
        ACCEPTED,
        QUILT,
    ),
    *(
        Case(
            f"a set {what}",
            c.MarkSet,
            (on_the_sets(key),),
            (f"sets --{option} 1",),
            ("set marked",),
            (*ACCEPTED, *before),
            QUILT,
        )
        for what, key, option, before in (
            ("put behind", "k", "skip", ()),
            ("held back", "b", "hold-back", ()),
            ("locked", "l", "lock", ()),
            ("locked no longer", "l", "unlock", (c.MarkSet(1, "locked"),)),
        )
    ),
    Case(
        "a set taken in hand",
        c.TakeUp,
        (on_the_sets("right", "t"),),
        ("sets --take-up 2",),
        ("set taken up",),
        ACCEPTED,
        QUILT,
    ),
    Case(
        "a pair of a set spoiled, its fabric named",
        c.Spoil,
        (press("s"), pick("pairs: 4"), fill("1", "torn", "1", "darks")),
        ("spoil pair 1 --reason torn --set 1 --fabric darks",),
        ("spoiled",),
        (*ACCEPTED, c.Count("pair", 4)),
        QUILT,
    ),
)
