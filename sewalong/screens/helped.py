"""A screen whose keys can be asked for, and done from there."""

from __future__ import annotations

from typing import Generic, TypeVar

from textual import on
from textual.events import Mount

from sewalong.screens.asking import AskingScreen
from sewalong.screens.widgets.keys import HELP, Key

Result = TypeVar("Result")


class HelpedScreen(AskingScreen[Result], Generic[Result]):
    """`keys` are what can be done here; the help does it as the key would."""

    keys: tuple[Key, ...] = ()

    @on(Mount)
    def follow_moved_keys(self) -> None:
        """Where the owner moved the key of the help, hers is that of this screen too."""
        moved = {key.id: key.keys for key in self.keys if key.id.endswith(".help")}
        if any(keys != HELP.keys for keys in moved.values()):
            self.app.update_keymap(moved)

    def action_help(self) -> None:
        """All keys and what they do; what is chosen is done when this screen is back."""
        self.ask_in_turn(self._help())

    async def _help(self) -> None:
        from sewalong.screens.prompts.help import HelpDialog

        action = await self.app.push_screen_wait(HelpDialog(self.keys))
        if action and self.is_attached:
            await self.run_action(action)
