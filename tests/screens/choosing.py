"""Taking a line from a list as a person does: down to it, then enter."""

from __future__ import annotations

from textual.widgets import OptionList

from sewalong.screens.prompts.dialogs import ChoiceDialog
from tests.screens.sewing_room import Room


async def choose(room: Room, text: str) -> None:
    """Wait for the list, go down it until `text` is in the marked line, and take it."""
    await room.until(lambda: text in " ".join(_labels(room)), f"a list with {text!r}")
    for _ in _labels(room):
        options = room.app.screen.query_one(OptionList)
        assert options.highlighted is not None
        if text in _labels(room)[options.highlighted]:
            await room.press("enter")
            return
        await room.press("down")
    raise AssertionError(f"could not reach {text!r}\n{room.text}")


def _labels(room: Room) -> list[str]:
    if not isinstance(room.app.screen, ChoiceDialog):
        return []
    return [str(option.prompt) for option in room.app.screen.query_one(OptionList).options]
