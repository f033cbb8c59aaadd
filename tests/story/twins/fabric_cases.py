"""Fabrics: said, changed, taken out; each is a change of the plan."""

from __future__ import annotations

from msgspec.structs import replace

from sewalong.quilt.fabrics_said import fabrics_said
from tests.progress import every_act as c
from tests.screens.sewing_room import Room, a_quilt
from tests.story.twins.histories import SAT_DOWN
from tests.story.twins.twin import Case, Key, fill, press

WITH_PILES = replace(a_quilt(), fabrics=fabrics_said("lights 24, darks 24"))


def there(*keys: str) -> Key:
    """Press keys of the fabrics screen."""

    async def pressing(room: Room) -> None:
        await room.sees("what meets what?")
        await room.press(*keys)

    return pressing


BACK = there("escape")

FABRICS = (
    Case(
        "say fabrics",
        c.ChangePlan,
        (press("comma"), there("a"), fill("lights 24, rust dots 4 sienna"), fill(None), BACK),
        ("fabrics --say 'lights 24, rust dots 4 sienna'",),
        ("plan changed",),
        SAT_DOWN,
    ),
    Case(
        "change a fabric",
        c.ChangePlan,
        (press("comma"), there("down", "enter"), fill("darks 20"), BACK),
        ("fabrics --say 'B darks 20'",),
        ("plan changed",),
        SAT_DOWN,
        WITH_PILES,
    ),
    Case(
        "take a fabric out",
        c.ChangePlan,
        (press("comma"), there("d"), BACK),
        ("fabrics --say 'A 0'",),
        ("plan changed",),
        SAT_DOWN,
        WITH_PILES,
    ),
)
