"""A screen that asks: one thing after another, and no key is for the screen meanwhile."""

from __future__ import annotations

from collections.abc import Coroutine
from typing import Any, Generic, TypeVar

from sewalong.screens.left_once import LeftOnce

Result = TypeVar("Result")


class AskingScreen(LeftOnce[Result], Generic[Result]):
    """`asks` counts what is being asked. From the key that began it to its end, between its
    dialogs too, the app keeps every key from this screen."""

    asks = 0

    def ask_in_turn(self, asking: Coroutine[Any, Any, None]) -> None:
        """Begin to ask; `asking` puts up one dialog after another and carries out what came of it."""
        self.asks += 1
        self.run_worker(self._to_its_end(asking))

    async def _to_its_end(self, asking: Coroutine[Any, Any, None]) -> None:
        try:
            await asking
        finally:
            self.asks -= 1
