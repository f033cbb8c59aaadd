"""User text and our own on the screen: always as typed, never as markup."""

from __future__ import annotations

from textual.content import Content
from textual.widgets import Static


class Words(Static):
    """A piece of text. What is set is shown letter for letter."""

    def __init__(
        self, text: str | Content = "", *, id: str | None = None, classes: str | None = None
    ) -> None:
        super().__init__(_content(text), id=id, classes=classes, markup=False)

    def say(self, text: str | Content) -> None:
        """Show `text` instead."""
        self.update(_content(text))


def _content(text: str | Content) -> Content:
    return text if isinstance(text, Content) else Content(text)
