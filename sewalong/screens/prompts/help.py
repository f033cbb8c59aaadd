"""All keys and what they do, and a word on safety."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Horizontal, VerticalScroll

from sewalong.screens.prompts.dialogs import Dialog
from sewalong.screens.widgets.keys import Key
from sewalong.screens.widgets.literal_text import Words

SAFETY = (
    "Cautions here are general advice only. The makers' instructions for your iron, cutter "
    "and machine come first, then local rules, then a person who can show you."
)

ANYWHERE = (
    "ctrl+z undoes too, ctrl+y puts back. ctrl+c leaves from anywhere and asks first, as ending the session does; "
    "pressed again it leaves at once, and what was not asked comes first next time."
)


class HelpDialog(Dialog[None]):
    """The keys of the sewing screen."""

    BINDINGS = [Binding("enter,question_mark", "leave", "leave", id="help.leave")]

    def __init__(self, keys: tuple[Key, ...]) -> None:
        super().__init__()
        self._keys = keys

    def compose(self) -> ComposeResult:
        with VerticalScroll(classes="dialog"):
            yield Words("Keys", classes="dialog-title")
            for key in self._keys:
                with Horizontal(classes="fact"):
                    yield Words(key.caps, classes="key-cap")
                    yield Words(key.help, classes="fact-text")
            yield Words("")
            yield Words(ANYWHERE, classes="dialog-line")
            yield Words(SAFETY, classes="dialog-line last")
            yield Words("esc: back", classes="dialog-hint")
