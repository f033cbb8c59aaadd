"""One question of the form: what it is called, what holds, and a line to type another answer in."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.containers import Horizontal
from textual.content import Content
from textual.events import Click
from textual.message import Message
from textual.widgets import Input

from sewalong.quilt.beginning.filled_in import Row
from sewalong.quilt.beginning.questions import NAME
from sewalong.screens.widgets.literal_text import Words

HERE = "> "
ELSEWHERE = "  "
FOLLOWS = "follows from the others"
"""Stands for an answer that is as usual where others have to be put right first."""


class AnswerRow(Horizontal):
    """Shows a row of the form; while it is `typing`, its answer is a line to fill in."""

    class Picked(Message):
        """The row was clicked."""

        def __init__(self, id: str) -> None:
            super().__init__()
            self.id = id

    def __init__(self, row: Row) -> None:
        super().__init__(classes="answer")
        self.row = row
        self._here = False

    def compose(self) -> ComposeResult:
        yield Words(classes="answer-label")
        yield Words(classes="answer-text")
        box = Input(classes="answer-box", select_on_focus=self.row.question.id != NAME)
        box.cursor_blink = False
        box.display = False
        yield box

    def on_mount(self) -> None:
        self._draw()

    @property
    def typing(self) -> bool:
        """Whether an answer is being typed."""
        return bool(self.query_one(Input).display)

    def show(self, row: Row, *, here: bool) -> None:
        """Show `row`, marked where the cursor is `here`."""
        self.row, self._here = row, here
        self.set_class(here, "here")
        if self.is_mounted:
            self._draw()

    def _draw(self) -> None:
        row, mark = self.row, HERE if self._here else ELSEWHERE
        self.query_one(".answer-label", Words).say(f"{mark}{row.question.label}")
        beside = f"! {row.text}" if row.fault else row.beside or ("" if row.text else FOLLOWS)
        text = Content.assemble(
            ("" if row.fault else row.text, "bold" if self._here else ""),
            ("  " if beside and not row.fault else "", ""),
            (beside, "$refusal bold" if row.fault else "$quiet"),
        )
        self.query_one(".answer-text", Words).say(text)

    def begin_typing(self) -> None:
        """Put the line to fill in where the answer stands."""
        box = self.query_one(Input)
        box.value = self.row.text
        self._swap(typing=True)
        box.focus()
        if not box.select_on_focus:
            box.action_end()

    def end_typing(self) -> None:
        """Put the answer back where it stands."""
        self._swap(typing=False)

    def _swap(self, *, typing: bool) -> None:
        self.query_one(Input).display = typing
        self.query_one(".answer-text").display = not typing

    def on_click(self, event: Click) -> None:
        event.stop()
        self.post_message(self.Picked(self.row.question.id))
