"""The wall typed row by row, by letters where no more is known of the units."""

from __future__ import annotations

from sewalong.screens.prompts.desk import Desk
from sewalong.screens.prompts.dialogs import Field, FormDialog
from sewalong.service.wall.moves import rows_to_type
from sewalong.service.wall.typed import lay_as_typed

HINT = "A letter for each unit, such as A B A C, or ABAC; - for an empty place."


async def type_rows(desk: Desk) -> bool:
    """Ask for every row; True once they are laid so."""
    state = desk.quilt.state

    def lay(values: dict[str, str]) -> str | None:
        return desk.attempt(lay_as_typed(state, "\n".join(values.values())))

    fields = [
        Field(f"row{number}", row.words, row.typed, prose=True)
        for number, row in enumerate(rows_to_type(state), start=1)
    ]
    dialog = FormDialog("What lies there, row by row", fields, lay, HINT)
    done: bool | None = await desk.app.push_screen_wait(dialog)
    return bool(done)
