"""Sets: accepted, laid otherwise, put off, locked, taken in hand."""

from __future__ import annotations

from msgspec.structs import replace

from sewalong.quilt.choices import Fabric
from sewalong.quilt.quilt import Target
from sewalong.screens.proposing import ProposingScreen
from sewalong.screens.sets import SetsScreen
from tests.progress import every_act as c
from tests.progress.building import a_quilt
from tests.progress.sets.fabrics import sets_of, with_fabrics
from tests.screens.sewing_room import Room
from tests.story.twins.twin import Case, Key, fill, press

QUILT = replace(with_fabrics(), target=Target(6, 4))
"""96 squares of twelve fabrics; six sets are wanted."""

ACCEPTED = (c.AcceptSets(sets_of(8, 6), "by value"),)

OF_TWO = replace(
    a_quilt("paired-squares", 40, 5, 8),
    fabrics=(Fabric("A", "chalk", "#f4f0e6", 20), Fabric("B", "navy", "#22305c", 20)),
)
"""Forty squares in ten sets, of which light on dark there is but one choice."""


def at_sets(*keys: str) -> Key:
    """Press keys of the screen of sets."""

    async def pressing(room: Room) -> None:
        await room.screen_is(SetsScreen)
        await room.press(*keys)

    return pressing


def propose_and(*keys: str) -> Key:
    """Press keys once light on dark is chosen, and nothing better is looked for."""

    async def pressing(room: Room) -> None:
        await room.screen_is(ProposingScreen)
        await room.press("3")
        await room.sees("Chosen light on dark; y has them.")
        await room.press(*keys)

    return pressing


def _case(what: str, act: type[c.Act], keys: tuple[Key, ...], command: str, gives: str) -> Case:
    return Case(what, act, (press("full_stop"), *keys), (command,), (gives,), ACCEPTED, quilt=QUILT)


SETS = (
    Case(
        "sets are accepted",
        c.AcceptSets,
        (press("full_stop"), propose_and("y")),
        ("sets --rule 'light on dark' --accept",),
        ("sets accepted",),
        quilt=OF_TWO,
    ),
    _case("squares are swapped", c.SwapSquares, (at_sets("down", "w", "right", "w"),),
          "sets --swap '1:2 2:2'", "sets laid"),
    _case("a set of her own", c.LayOwn, (at_sets("o"), fill("A, A, A, rust dots, A, H, G, H")),
          "sets --own '1: A, A, A, rust dots, A, H, G, H'", "sets laid"),
    _case("a set is put off", c.MarkSet, (at_sets("k"),), "sets --skip 1", "set marked"),
    _case("a set is held back", c.MarkSet, (at_sets("b"),), "sets --hold-back 1", "set marked"),
    _case("a set is locked", c.MarkSet, (at_sets("l"),), "sets --lock 1", "set marked"),
    _case("a set is taken in hand", c.TakeUp, (at_sets("right", "right", "t"),),
          "sets --take-up 3", "set taken up"),
)  # fmt: skip

UNDOABLE_SETS = {
    "sets accepted": ACCEPTED,
    "sets laid": (*ACCEPTED, c.SwapSquares(1, 1, 2, 1)),
    "set marked": (*ACCEPTED, c.MarkSet(1, "skipped")),
    "set taken up": (*ACCEPTED, c.TakeUp("pair", 3)),
}
"""By kind of event: a history of QUILT that ends with one."""
