"""User text and our own on the screen: always as typed, never as markup."""

from __future__ import annotations

from rich.cells import cell_len
from textual.content import Content
from textual.widgets import Static


class Words(Static):
    """A piece of text. What is set is shown letter for letter."""

    def __init__(
        self, text: str | Content = "", *, id: str | None = None, classes: str | None = None
    ) -> None:
        self._said = _content(text)
        super().__init__(self._said, id=id, classes=classes, markup=False)

    def say(self, text: str | Content) -> None:
        """Show `text` instead. What is there already costs nothing, and where the same lines
        hold it nothing else on the screen has to move."""
        said = _content(text)
        if said == self._said and said.spans == self._said.spans:
            return
        same_room = self._fits(said) and self._fits(self._said)
        same_room = same_room and said.plain.count("\n") == self._said.plain.count("\n")
        self._said = said
        self.update(said, layout=not same_room)

    def _fits(self, text: Content) -> bool:
        """Whether no line of it has to be broken, and the width does not go by the text."""
        width = self.size.width
        if not text.plain or self.styles.is_auto_width:
            return False
        return all(cell_len(line) <= width for line in text.plain.split("\n"))


def _content(text: str | Content) -> Content:
    return text if isinstance(text, Content) else Content(text)
