"""A screen that is left once, however many keys for it came in one burst."""

from __future__ import annotations

from typing import Generic, TypeVar

from textual.await_complete import AwaitComplete
from textual.screen import Screen

Result = TypeVar("Result")


class LeftOnce(Screen[Result], Generic[Result]):
    """To leave a screen is to take away the one in front, so a second time would take another."""

    was_left = False

    def dismiss(self, result: Result | None = None) -> AwaitComplete:
        """Leave it with a result; a second time does nothing."""
        if self.was_left:
            return AwaitComplete()
        self.was_left = True
        left: AwaitComplete = super().dismiss(result)
        return left
