"""The dialogs: read a caution, answer a question, choose from a list, fill in a few lines."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import dropwhile, takewhile
from typing import Generic, TypeVar

from msgspec import Struct
from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import VerticalScroll
from textual.content import Content
from textual.events import Key
from textual.screen import ModalScreen
from textual.widgets import Input, OptionList
from textual.widgets.option_list import Option

from sewalong.progress.record.refused import Refused
from sewalong.progress.safety.cautions import GENERAL, Caution
from sewalong.progress.safety.closing_questions import Question
from sewalong.screens.left_once import LeftOnce
from sewalong.screens.widgets.breakpoints import mark_size
from sewalong.screens.widgets.field_box import FieldBox
from sewalong.screens.widgets.literal_text import Words

Result = TypeVar("Result")


def words_typed(keys: Sequence[Key], opened_by: str) -> Sequence[Key]:
    """What of `keys` is text typed behind `opened_by`; not that key itself, held down."""
    if all(key.key == opened_by for key in keys):
        return ()
    return list(takewhile(lambda key: key.is_printable, keys))


FEW = 3
"""Fields up to which a form is set with space between them."""


class Dialog(LeftOnce[Result], ModalScreen[Result], Generic[Result]):
    """A sheet over the screen. Escape leaves it and changes nothing."""

    CSS_PATH = ["../lists.tcss", "../facts.tcss", "dialog.tcss"]

    BINDINGS = [Binding("escape", "leave", "leave", id="dialog.leave")]

    def meant_early(self, keys: Sequence[Key], opened_by: str) -> Sequence[Key]:
        """Those `keys`, pressed behind the key `opened_by` while the dialog was on its way, that were
        meant for it: none, as nothing is read, chosen, confirmed or left by somebody who did not
        see it yet. Text typed ahead is another thing."""
        return ()

    def on_resize(self) -> None:
        mark_size(self)

    def action_leave(self) -> None:
        """Leave without an answer."""
        self.dismiss(None)


class CautionDialog(Dialog[bool]):
    """One caution, read before the first count at a stage. Enter says that it was read."""

    BINDINGS = [Binding("enter", "read", "read", id="dialog.read")]

    def __init__(self, caution: Caution, stage_label: str) -> None:
        super().__init__()
        self._caution = caution
        self._stage_label = stage_label

    def compose(self) -> ComposeResult:
        with VerticalScroll(classes="dialog caution"):
            yield Words(f"CAUTION  {self._caution.title}", classes="dialog-title")
            yield Words(
                f"{self._stage_label.capitalize()}: {self._caution.why.value}.",
                classes="dialog-line",
            )
            for line in self._caution.lines:
                yield Words(f"- {line}", classes="dialog-line")
            yield Words(GENERAL, classes="dialog-line last")
            yield Words("enter: I have read this  esc: not now", classes="dialog-hint")

    def action_read(self) -> None:
        """The caution was read."""
        self.dismiss(True)


class QuestionDialog(Dialog[str]):
    """A question the program cannot answer itself: yes, no, or did not look."""

    BINDINGS = [
        Binding("y,Y", "answer('yes')", "yes", id="dialog.yes"),
        Binding("n,N", "answer('no')", "no", id="dialog.no"),
        Binding("d,D", "answer('did not look')", "did not look", id="dialog.dont_know"),
    ]

    def __init__(self, question: Question, place: str = "", hint: str = "") -> None:
        super().__init__()
        self._question = question
        self._place = place
        self._hint = hint

    def compose(self) -> ComposeResult:
        with VerticalScroll(classes="dialog", can_focus=False):
            yield Words(self._place or "Before you turn away", classes="field-label")
            yield Words(self._question.ask, classes="dialog-title")
            yield Words("If not, see to it now; this can wait.", classes="dialog-line last")
            yield Words("", classes="dialog-kept")
            keys = ("y: yes   n: no   d: did not look", self._hint)
            yield Words("\n".join(filter(None, keys)), classes="dialog-hint")

    def action_answer(self, answer: str) -> None:
        """Give the answer."""
        self.dismiss(answer)


class OwnQuestionDialog(QuestionDialog):
    """A question the program puts by itself while somebody counts on: what is counted over it is
    kept, to be counted `at` that stage when it is answered, or left.

    Only the key that counts one is kept. A number is looked at while it is typed, so who types one
    sees the question first.
    """

    BINDINGS = [Binding("space", "keep_count", "count 1", show=False, id="dialog.count")]

    kept = 0
    """Counts so far."""

    def __init__(self, question: Question, at: str, count_keys: Sequence[str]) -> None:
        super().__init__(question)
        self._at = at
        self._count_keys = count_keys

    def meant_early(self, keys: Sequence[Key], opened_by: str) -> Sequence[Key]:
        """Counts, which go on; they answer nothing."""
        return list(takewhile(lambda key: key.key in self._count_keys, keys))

    def action_keep_count(self) -> None:
        """Keep one count more."""
        self.kept += 1
        more = "1 more is" if self.kept == 1 else f"{self.kept} more are"
        line = self.query_one(".dialog-kept", Words)
        line.say(f"{more} counted at {self._at} after this.")
        line.display = True


class Choice(Struct, frozen=True):
    """One line to choose: what is returned and what is read."""

    value: str
    label: str


class ChoiceDialog(Dialog[str]):
    """Choose one line with the arrows and enter."""

    is_left_by = "enter"
    """The key behind which whatever is pressed was meant for what follows."""

    def __init__(self, title: str, choices: Sequence[Choice], first: str | None = None) -> None:
        super().__init__()
        self._title = title
        self._choices = choices
        self._first = first

    def compose(self) -> ComposeResult:
        with VerticalScroll(classes="dialog", can_focus=False):
            yield Words(self._title, classes="dialog-title")
            yield OptionList(
                *(Option(Content(choice.label), id=choice.value) for choice in self._choices)
            )
            yield Words("arrows, enter: choose   esc: leave", classes="dialog-hint")

    def on_mount(self) -> None:
        options = self.query_one(OptionList)
        options.focus()
        values = [choice.value for choice in self._choices]
        options.highlighted = values.index(self._first) if self._first in values else 0

    def on_resize(self) -> None:
        self.query_one(OptionList).styles.max_height = None
        self.call_after_refresh(self._fit)

    def _fit(self) -> None:
        """Let the list be the one that scrolls, so that what is marked can always be seen."""
        for around in self.query(VerticalScroll):
            options = around.query_one(OptionList)
            if too_high := around.max_scroll_y:
                options.styles.max_height = max(3, options.size.height - too_high)

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        event.stop()
        self.dismiss(event.option.id)


class Field(Struct, frozen=True):
    """One line to fill in. `start` is offered: a number, a length, a layout, a tag or a date to be
    typed over, or `prose` to be written on."""

    id: str
    label: str
    start: str = ""
    prose: bool = False


IN_NUMBERS = "0123456789 /.,x×-"
"""What numbers, lengths, layouts and dates are written with."""


class FormDialog(Dialog[bool]):
    """A few lines to fill in. `submit` carries them out, or says or raises why it can't be.

    A number can be typed ahead while the form is on its way; words only with `words_ahead`, where
    the key that opened it is pressed to write them. For `passes_over` see FieldBox.
    """

    def __init__(
        self,
        title: str,
        fields: Sequence[Field],
        submit: Callable[[dict[str, str]], str | None],
        hint: str = "",
        *,
        words_ahead: bool = False,
        passes_over: str = "",
    ) -> None:
        super().__init__()
        self._title = title
        self._fields = fields
        self._submit = submit
        self._hint = hint
        self._words_ahead = words_ahead
        self._passes_over = passes_over

    def meant_early(self, keys: Sequence[Key], opened_by: str) -> Sequence[Key]:
        """What was typed ahead, for its first line."""
        typed = words_typed(keys, opened_by)
        if self._fields[0].prose:
            return typed if self._words_ahead else ()
        # No number begins with a space, which is what counts elsewhere.
        rest = dropwhile(lambda key: key.key == "space", typed)
        return list(takewhile(lambda key: (key.character or "no sign") in IN_NUMBERS, rest))

    def compose(self) -> ComposeResult:
        crowded = " crowded" if len(self._fields) > FEW else ""
        with VerticalScroll(classes="dialog" + crowded, can_focus=False):
            yield Words(self._title, classes="dialog-title")
            if self._hint:
                yield Words(self._hint, classes="dialog-line")
            for field in self._fields:
                yield Words(field.label, classes="field-label")
                first = field is self._fields[0]
                yield FieldBox(
                    field.start,
                    f"field-{field.id}",
                    prose=field.prose,
                    passes_over=self._passes_over if first else "",
                )
            yield Words("", classes="dialog-refusal")
            done = "enter: done" if len(self._fields) == 1 else "enter: next, then done"
            yield Words(f"{done}   esc: leave", classes="dialog-hint")

    def on_mount(self) -> None:
        self.query(FieldBox).first().focus()

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Go to the next line; on the last one, carry out."""
        event.stop()
        boxes = list(self.query(Input))
        place = boxes.index(event.input)
        if place + 1 < len(boxes):
            boxes[place + 1].focus()
            return
        if self.was_left:
            return
        values = {field.id: box.value for field, box in zip(self._fields, boxes, strict=True)}
        refusal = self.carry_out(values)
        if refusal is None:
            self.dismiss(True)
            return
        self.query_one(".dialog-refusal", Words).say(refusal)
        boxes[0].focus()

    def carry_out(self, values: dict[str, str]) -> str | None:
        """Carry out what was filled in, by the field's id; or why it can't be."""
        try:
            return self._submit(values)
        except Refused as refused:
            return str(refused)


class LinesDialog(Dialog[None]):
    """A few lines to read. Enter or escape leaves them."""

    BINDINGS = [Binding("enter", "leave", "leave", id="dialog.lines")]

    def __init__(self, title: str, lines: Sequence[str]) -> None:
        super().__init__()
        self._title = title
        self._lines = lines

    def compose(self) -> ComposeResult:
        with VerticalScroll(classes="dialog"):
            yield Words(self._title, classes="dialog-title")
            for line in self._lines:
                yield Words(line, classes="dialog-line")
            yield Words("enter: back", classes="dialog-hint")
