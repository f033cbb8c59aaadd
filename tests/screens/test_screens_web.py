"""A small web sewn by keys: the pass and the place in it, the picture, and the end."""

from __future__ import annotations

from pathlib import Path

from msgspec.structs import replace

from sewalong.quilt.quilt import StartPile, Target
from sewalong.quilt.web import WEB
from tests.progress import every_act as c
from tests.screens.fitting import faults_of
from tests.screens.sewing_room import a_quilt, at_sewing

SMALL_WEB = replace(
    a_quilt("Net loft", pieces=9, target=Target(3, 3), borders=()),
    method_id="plain-squares",
    starts=(StartPile("square", a_quilt().starts[0].size, 9),),
    finishing=(),
    joined=WEB,
)


async def test_a_web_is_counted_by_keys_to_the_end(tmp_path: Path) -> None:
    ready = (c.Count("square-up", 9), c.ReadCaution("start-web"), c.GoOn("start-web"))
    async with at_sewing(tmp_path / "quilts.db", *ready, quilt=SMALL_WEB) as room:
        await room.sees("START WEB", "seams to go 0 of 3 done", "Pass 1 of 2: next row 1")
        await room.press("space")
        await room.sees("Pass 1 of 2: next row 2, columns 1 and 2.")
        await room.press("2", "enter")
        await room.sees("SEW WEB", "Pass 2 of 2: next column 3, row 1.")
        await room.press("space", "space")
        await room.sees("next column 3, row 3.")
        for width, height in ((40, 20), (120, 36), (80, 24)):
            await room.pilot.resize_terminal(width, height)
            # The place in the pass stands there at every size, and nothing is cut off.
            await room.sees("Pass 2 of 2: next column 3, row 3.")
            await room.until(lambda: not faults_of(room.app.screen), "fits")
        await room.press("u")
        await room.sees("next column 3, row 2.")
        await room.press("2", "enter")
        await room.sees("JOIN ROWS", "Leaving the board")
        await room.press("y")
        await room.sees("seams to go 0 of 2 done", "3 rows wait", "Is no thread between rows cut?")
        await room.press("2", "enter")
        await room.until(lambda: room.on_disk().done["join-rows"] == 2, "joined")
        assert room.on_disk().piles == {"square": 0, "unit": 0, "web-row": 3, "web-unit": 3}
