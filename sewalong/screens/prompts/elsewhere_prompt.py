"""Asks where else the quilt is to be written, with what could not be saved."""

from __future__ import annotations

import os

from sewalong.screens.prompts.desk import Desk
from sewalong.screens.prompts.dialogs import Field, FormDialog
from sewalong.store.faults import StoreFault
from sewalong.store.own_folder import refuse_own_folder
from sewalong.store.writing import file_stem, write_whole


async def elsewhere(desk: Desk) -> None:
    """Write the whole quilt to a file, which import takes in; a file that is there stays."""

    def carry_out(values: dict[str, str]) -> str | None:
        path = os.path.expanduser(values["path"].strip())
        if os.path.lexists(path):
            return f"{path} is there already. Name another file."
        try:
            refuse_own_folder(path)
            write_whole(path, desk.unsaved.as_text())
        except StoreFault as fault:
            return str(fault)
        desk.tell(f"Written to {path}. Take it in on any computer with: sewalong import FILE")
        return None

    name = f"sewalong-{file_stem(desk.quilt.state.quilt.name)}.json"
    offered = os.path.join(os.path.expanduser("~"), name)
    lines = (Field("path", "To which file? A stick or another disk will do", offered, prose=True),)
    hint = "The whole quilt with its record, and what could not be saved."
    await desk.app.push_screen_wait(FormDialog("Write the quilt elsewhere", lines, carry_out, hint))
