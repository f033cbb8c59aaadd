"""The facts for coming back, as a sheet and as a dialog."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Horizontal, VerticalScroll
from textual.widget import Widget

from sewalong.screens.prompts.dialogs import Dialog
from sewalong.screens.widgets.literal_text import Words
from sewalong.service.looks import where_was_i
from sewalong.service.open_quilt import OpenQuilt

FIRST = ("Next", "Not asked", "Look first", "Short")
"""Labels of the facts that stand out."""


class Fact(Horizontal):
    """A label and a sentence."""

    def __init__(self, label: str, text: str) -> None:
        super().__init__(classes="fact first" if label in FIRST else "fact")
        self._label = label
        self._text = text

    def compose(self) -> ComposeResult:
        yield Words(self._label, classes="fact-label")
        yield Words(self._text, classes="fact-text")


def sheet(quilt: OpenQuilt) -> list[Widget]:
    """One line a fact."""
    return [Fact(fact.label, fact.text) for fact in where_was_i(quilt)]


class FactsDialog(Dialog[None]):
    """The same facts over the sewing screen."""

    BINDINGS = [Binding("enter,w,W", "leave", "leave", id="facts.leave")]

    def __init__(self, quilt: OpenQuilt) -> None:
        super().__init__()
        self.quilt = quilt

    def compose(self) -> ComposeResult:
        with VerticalScroll(classes="dialog"):
            yield Words("Where was I?", classes="dialog-title")
            yield from sheet(self.quilt)
            yield Words("", classes="dialog-line")
            yield Words("esc: back", classes="dialog-hint")
