"""A screen over the one of the sewing, on which something is recorded, said, undone and put back."""

from __future__ import annotations

from collections.abc import Callable
from typing import Generic, TypeVar

from sewalong.progress.acts.act import Act
from sewalong.progress.acts.undoing import Redo, Undo
from sewalong.progress.record.refused import Refused
from sewalong.screens.following import FollowingScreen
from sewalong.screens.prompts.desk import Desk
from sewalong.screens.telling import TellingScreen
from sewalong.screens.widgets.keys import Key, keys_with

Result = TypeVar("Result")


class OverSewingScreen(TellingScreen[Result], FollowingScreen[Result], Generic[Result]):
    """The desk below it carries acts out; what came of each is said here."""

    offered: tuple[Key, ...] = ()
    """Its keys, where the owner has not moved them."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk.quilt)
        self._desk = desk
        self.keys = keys_with(desk.quilt.preferences.keys, self.offered)

    def carry_out(self, wanted: Callable[[], Act]) -> None:
        """Have the act be done that `wanted` gives, and say what came of it, or why not."""
        self.ask_in_turn(self._carry_out(wanted))

    async def _carry_out(self, wanted: Callable[[], Act]) -> None:
        try:
            refusal = self._desk.attempt(wanted())
        except Refused as refused:
            refusal = str(refused)
        if refusal:
            self.tell(refusal, refused=True)
        else:
            await self.done()

    async def done(self) -> None:
        """Draw it anew after something was done, and say what."""
        await self.bring_up_to_date()
        self.tell(self._desk.outcome.words)

    def action_undo(self) -> None:
        """Take back the last thing recorded."""
        last = self.quilt.state.last_act
        self.carry_out(lambda: Undo(last[-1] if last else None))

    def action_redo(self) -> None:
        """Put back what was undone last."""
        last = self.quilt.state.last_undone
        self.carry_out(lambda: Redo(last[-1] if last else None))


def undoing_keys(screen: str) -> tuple[Key, ...]:
    """The keys that take back and put back, at the screen whose ids begin with `screen`."""
    return (
        Key(f"{screen}.undo", "u", "undo", "undo",
            "Take back the last thing recorded, here or at sewing.",
            words="take back mistake wrong revert"),
        Key(f"{screen}.redo", "q", "redo", "put back", "Put back what was undone last.",
            words="redo"),
    )  # fmt: skip
