"""A quilt is begun: where it is kept, and whether to have it as a file too."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import VerticalScroll

from sewalong.screens.prompts.dialogs import Dialog
from sewalong.screens.widgets.literal_text import Words


class BegunDialog(Dialog[bool]):
    """The result is True where it is to be written as a quilt file too."""

    BINDINGS = [
        Binding("enter,space", "sew", "sew", id="begun.sew"),
        Binding("f,F", "as_a_file", "as a file", id="begun.file"),
    ]

    def __init__(self, name: str, path: str, fault: str) -> None:
        super().__init__()
        self._name = name
        self._path = path
        self._fault = fault

    def compose(self) -> ComposeResult:
        with VerticalScroll(classes="dialog", can_focus=False):
            yield Words(f"Begun: {self._name}", classes="dialog-title")
            yield Words(
                f"It is kept on this computer, in {self._path}. Nothing has to be saved.",
                classes="dialog-line",
            )
            if self._fault:
                yield Words(self._fault, classes="dialog-line")
            yield Words(
                "The same as a quilt file is there to edit, to print or to give away.",
                classes="dialog-line last",
            )
            yield Words("enter: sew   f: write it as a quilt file too", classes="dialog-hint")

    def action_sew(self) -> None:
        """Go on to sewing."""
        self.dismiss(False)

    def action_as_a_file(self) -> None:
        """Write a quilt file first."""
        self.dismiss(True)
