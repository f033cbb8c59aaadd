"""What could not be saved, above all else on the screen for as long as it waits."""

from __future__ import annotations

from sewalong.screens.widgets.literal_text import Words
from sewalong.service.unsaved import Unsaved


class UnsavedBanner(Words):
    """Nothing while nothing waits; then how many counts, why, and what can be done."""

    def __init__(self, unsaved: Unsaved, key: str) -> None:
        super().__init__(id="unsaved")
        self._unsaved = unsaved
        self._key = key

    def show(self) -> None:
        """As it stands now."""
        n = len(self._unsaved)
        self.display = n > 0
        if n:
            counts = "1 count is" if n == 1 else f"{n} counts are"
            self.say(
                f"NOT SAVED: {counts} kept in this window only.\n{self._unsaved.why}\n"
                f"Tried again all the time. {self._key}: write the quilt to another place."
            )
