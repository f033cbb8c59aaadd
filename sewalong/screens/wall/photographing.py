"""The wall read from a photograph of the units laid out."""

from __future__ import annotations

from sewalong.fabrics.photo.read import what_is_missing
from sewalong.screens.prompts.desk import Desk
from sewalong.screens.prompts.dialogs import LinesDialog


async def photographed(desk: Desk) -> bool:
    """Read what lies there from a photograph; True where it lies so on the wall now."""
    if missing := what_is_missing():
        await desk.app.push_screen_wait(LinesDialog("A photograph", (missing,)))
        return False
    # What reads photographs takes long to load.
    from sewalong.screens.wall.floor_sheet import from_the_floor

    return await from_the_floor(desk)
