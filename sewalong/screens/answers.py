"""The form: questions with their answers on one side, what they come to on the other."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Sequence
from typing import Generic, Protocol, TypeVar

from msgspec.structs import replace
from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical, VerticalScroll
from textual.content import Content
from textual.widgets import Input, OptionList
from textual.widgets.option_list import Option

from sewalong.quilt.beginning.filled_in import FilledIn, Row
from sewalong.quilt.beginning.offered import FROM_A_LIST, Offered, offered
from sewalong.quilt.beginning.questions import LAYOUT
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.worksheet.in_short import InShort
from sewalong.screens.helped import HelpedScreen
from sewalong.screens.widgets.answer_row import AnswerRow
from sewalong.screens.widgets.breakpoints import mark_size
from sewalong.screens.widgets.captioned import Captioned
from sewalong.screens.widgets.keys import Key, first_that_fits, line_of
from sewalong.screens.widgets.literal_text import Words
from sewalong.wall.of_quilt import own_colours, picture_made, picture_of_top
from sewalong.wall.picture import Picture

Result = TypeVar("Result")

MORE_BELOW = "more below (page down)"
ANOTHER = "something else: type it"
BRIEFLY = {"change": "edit", "have it so": "do it", "keep as a draft": "keep", "leave it": "leave"}
"""What stands in the line of keys where there is little room."""

TYPING = (
    "enter take it   esc leave it as it was   empty: as usual",
    "enter take it  esc as it was",
)
CHOOSING = ("up/down look   enter take it   esc leave it as it was", "enter take it  esc as it was")

CHANGE = Key(
    "form.change",
    "enter",
    "change",
    "change",
    "Change the answer in hand.",
    True,
    ("space",),
    words="edit type answer choose",
)
WALKING = (
    Key("form.down", "down", "walk(1)", "next", "To the next question.", True),
    Key("form.up", "up", "walk(-1)", "before", "To the question before.", words="back"),
    Key("form.read_on", "pagedown", "read(1)", "read on", "Read on below the questions."),
    Key("form.read_back", "pageup", "read(-1)", "read back", "Back up below the questions."),
)
"""The keys to walk by, of every form; CHANGE comes first of all."""


class Form(Protocol):
    """The questions filled in, and what answers do to them."""

    filled: FilledIn

    def with_answer(self, id: str, text: str) -> FilledIn:
        """What the answers and this one would come to."""

    def answer(self, id: str, text: str) -> str:
        """Take an answer, or say why not."""


class AnswersScreen(HelpedScreen[Result], Generic[Result]):
    """Walk with the arrows, change with enter. Every answer is looked at before it is taken: what
    stands beside is that of the answer under the cursor or in the line."""

    CSS_PATH = ["lists.tcss", "answers.tcss"]
    # Nothing has the focus until an answer is changed, so that every key is the form's.
    AUTO_FOCUS = ""

    def __init__(self, form: Form, title: str, asks: str) -> None:
        super().__init__()
        self._form = form
        self._title = title
        self._asks = asks
        self._at = 0
        self._looked_at = form.filled
        self._offered: tuple[Offered, ...] = ()
        self._choosing = ""
        self._typing = ""

    # -- what a form of this kind says -------------------------------------------

    @abstractmethod
    def said_of(self, filled: FilledIn) -> tuple[InShort | None, Sequence[str]]:
        """What the answers come to in short, and a line for each fact."""

    @abstractmethod
    def fixed(self, id: str) -> str:
        """Why a question cannot be answered here; empty when it can."""

    def taken(self) -> None:
        """Called when an answer was taken."""

    def trouble(self) -> str:
        """What is to be said although every answer will do; empty for nothing."""
        layout = self._form.filled.layouts[0]
        if not layout.short or self._form.filled.row(LAYOUT).usual:
            return ""
        return (
            f"layout: {layout.target} is {layout.short:,} short now. Enter at it shows those "
            "that fit."
        )

    # -- showing -------------------------------------------------------------------

    def compose(self) -> ComposeResult:
        with Horizontal(id="top"):
            yield Words(self._title, id="top-name")
            yield Words(self._asks, id="top-clock")
        with Horizontal(id="form"):
            with Vertical(id="left"):
                with VerticalScroll(id="rows", can_focus=False):
                    yield from (AnswerRow(row) for row in self._form.filled.rows)
                with Vertical(id="choosing"):
                    yield Words(id="asked")
                    yield OptionList(id="offered")
                    yield Words(id="offered-about")
                with VerticalScroll(id="facts-below", can_focus=False):
                    yield Words(id="facts-text")
                yield Captioned(id="unit-left")
            with Vertical(id="beside"):
                yield Captioned(id="unit-right")
                yield Captioned(id="top-right")
        yield Words(id="message")
        yield Words(id="keys")

    def on_mount(self) -> None:
        self._show_rows()
        # The questions stand first; what they come to wants the geometry loaded.
        self.call_after_refresh(self._show_beside)

    def on_resize(self) -> None:
        mark_size(self)
        self._show_keys()
        self.call_after_refresh(self._show_beside)
        self.call_after_refresh(self.query_one("#offered", OptionList).scroll_to_highlight)

    def _show_rows(self) -> None:
        rows = self._form.filled.rows
        shown = list(self.query(AnswerRow))
        self._at = min(self._at, len(rows) - 1)
        for place, (row, one) in enumerate(zip(rows, shown, strict=True)):
            one.show(row, here=place == self._at)
        shown[self._at].scroll_visible(animate=False)
        if not self._typing:
            self._say_fault()
        self._show_keys()

    def _say_fault(self) -> None:
        """The fault of the question in hand, or of the first that has one."""
        faults = self._form.filled.faults
        here = [row for row in faults if row == self._row]
        for row in (here or faults)[:1]:
            self.tell(f"{row.question.label}: {row.fault}", refused=True)
        if not faults:
            self.tell(self.trouble(), refused=True)

    def _show_keys(self) -> None:
        width = self.app.size.width - 4
        if self.is_changing:
            said = first_that_fits(width, *(TYPING if self._typing else CHOOSING))
        else:
            narrow = self.has_class("narrow")
            keys = (replace(key, short=BRIEFLY.get(key.short, key.short)) for key in self.keys)
            # Narrow screens have less beside the line, too.
            said = line_of(width + 2, tuple(keys)) if narrow else line_of(width, self.keys)
        self.query_one("#keys", Words).say(said)

    def _show_beside(self) -> None:
        if not self.query(Captioned):
            return
        # The arrows walk the questions here.
        self.query_one("#facts-below").border_subtitle = MORE_BELOW
        filled = self._looked_at
        short, lines = self.said_of(filled)
        narrow = self.has_class("narrow")
        # Where the pictures stand, their words say the sizes.
        told = [line for line in lines if narrow or short is None or line != short.sizes]
        if filled.quilt is not None or lines:
            self.query_one("#facts-text", Words).say("\n".join(told))
        if filled.quilt is not None and short is not None:
            self._show_pictures(filled.quilt, short)

    def _show_pictures(self, quilt: Quilt, short: InShort) -> None:
        def unit(across: int, down: int) -> Picture | None:
            return picture_made(quilt, quilt.target, quilt.method.unit, across, down)

        def top(across: int, down: int) -> Picture | None:
            return picture_of_top(quilt, quilt.target, across, down)

        own = own_colours(quilt)
        for view in self.query(Captioned):
            if view.id == "top-right":
                view.show(top, own, f"top finishes at {short.top}")
            else:
                view.show(unit, own, f"unit finishes at {short.unit}")

    def tell(self, text: str, *, refused: bool = False) -> None:
        """Say one thing; a refusal is marked."""
        line = self.query_one("#message", Words)
        line.set_class(refused, "refusal")
        line.say(text)

    def look_at(self, filled: FilledIn) -> None:
        """Show what these answers come to, once what is drawn now stands."""
        if filled == self._looked_at:
            return
        self._looked_at = filled
        self.call_after_refresh(self._show_beside)

    # -- walking and changing ------------------------------------------------------

    @property
    def is_changing(self) -> bool:
        """Whether an answer is being typed or chosen: then no other key is for the form."""
        return bool(self._typing or self._choosing)

    @property
    def _row(self) -> Row:
        return self._form.filled.rows[self._at]

    def action_walk(self, step: int) -> None:
        """To the next question or the one before; what is being typed is taken first."""
        if self._typing and not self._take(self._typing, self._box.value):
            return
        self._at = (self._at + step) % len(self._form.filled.rows)
        self._show_rows()

    def action_read(self, step: int) -> None:
        """Scroll what stands below the questions."""
        below = self.query_one("#facts-below", VerticalScroll)
        below.scroll_relative(y=step * max(1, below.size.height - 1), animate=False)

    def on_answer_row_picked(self, event: AnswerRow.Picked) -> None:
        event.stop()
        if self.is_changing:
            return
        self._at = [row.question.id for row in self._form.filled.rows].index(event.id)
        self._show_rows()
        self.action_change()

    def action_change(self) -> None:
        """Change the answer in hand: from a list where there is one, else in its line."""
        if self.is_changing:
            return
        id = self._row.question.id
        if why := self.fixed(id):
            self.tell(why, refused=True)
            return
        self._offered = offered(self._form.filled, id) if id in FROM_A_LIST else ()
        if self._offered:
            self._choose(id)
        else:
            self._type(id)

    def _type(self, id: str) -> None:
        self._typing = id
        self.query(AnswerRow)[self._at].begin_typing()
        self.tell(self._row.question.how)
        self._show_keys()

    def _choose(self, id: str) -> None:
        self._choosing = id
        self.query_one("#asked", Words).say(self._row.question.ask)
        options = self.query_one("#offered", OptionList)
        options.clear_options()
        options.add_options(
            [*(Option(_line(one, id)) for one in self._offered), Option(Content(ANOTHER))]
        )
        texts = [one.text for one in self._offered]
        options.highlighted = texts.index(self._row.text) if self._row.text in texts else 0
        self._swap(choosing=True)
        options.focus()
        self._show_keys()

    def _swap(self, *, choosing: bool) -> None:
        self.query_one("#choosing").display = choosing
        self.query_one("#rows").display = not choosing

    def on_option_list_option_highlighted(self, event: OptionList.OptionHighlighted) -> None:
        """Look at what the answer under the cursor would come to."""
        event.stop()
        if not self._choosing:
            return
        place = event.option_index
        one = self._offered[place] if place < len(self._offered) else None
        about = one.about if one and self._choosing == "method" else ""
        self.query_one("#offered-about", Words).say(about or self._row.question.how)
        filled = self._form.filled
        if one is not None:
            filled = self._form.with_answer(self._choosing, one.text)
        self.look_at(filled)
        self._say_would_fail(filled)

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        event.stop()
        if not self._choosing:
            return
        id, place = self._choosing, event.option_index
        if place == len(self._offered):
            self._leave_change()
            self._type(id)
            return
        self._take(id, self._offered[place].text)

    def on_input_changed(self, event: Input.Changed) -> None:
        """Look at what is typed as soon as it makes a quilt."""
        event.stop()
        if not self._typing or event.value == self._row.text:
            return
        filled = self._form.with_answer(self._typing, event.value)
        if filled.quilt is not None:
            self.look_at(filled)

    def on_input_submitted(self, event: Input.Submitted) -> None:
        event.stop()
        if self._typing and self._take(self._typing, event.value):
            self.action_walk(1)

    def _say_would_fail(self, filled: FilledIn) -> None:
        said = filled.faults[0] if filled.faults else None
        self.tell(f"{said.question.label}: {said.fault}" if said else "", refused=bool(said))

    def _take(self, id: str, text: str) -> bool:
        """Take an answer. What cannot be taken is said, and can be put right where it stands."""
        if text.strip() == self._row.text or not (why := self._form.answer(id, text)):
            self._leave_change()
            self._redrawn()
            return True
        self.tell(why, refused=True)
        return False

    def _leave_change(self) -> None:
        if self._typing:
            self.query(AnswerRow)[self._at].end_typing()
        self._typing = self._choosing = ""
        self._swap(choosing=False)
        self.set_focus(None)

    def _redrawn(self) -> None:
        """Draw the form after an answer: another method asks a few other questions."""
        asked = [row.question for row in self._form.filled.rows]
        if asked != [one.row.question for one in self.query(AnswerRow)]:
            self.ask_in_turn(self._ask_anew())
            return
        self._drawn_again()

    async def _ask_anew(self) -> None:
        rows = self.query_one("#rows")
        await rows.remove_children()
        await rows.mount_all(AnswerRow(row) for row in self._form.filled.rows)
        self._drawn_again()

    def _drawn_again(self) -> None:
        self.taken()
        self._show_rows()
        self.look_at(self._form.filled)

    def action_leave(self) -> None:
        """Leave the answer in hand as it was; else leave the form."""
        if self.is_changing:
            self._leave_change()
            self._show_rows()
            self.look_at(self._form.filled)
            return
        self.left()

    @abstractmethod
    def left(self) -> None:
        """Leave the form."""

    @property
    def _box(self) -> Input:
        return self.query(AnswerRow)[self._at].query_one(Input)


def _line(one: Offered, id: str) -> Content:
    # What a method is needs more than a line, and stands below the list.
    about = "" if id == "method" or not one.about else f"   {one.about}"
    return Content.assemble(one.text, (about, "$quiet"))
