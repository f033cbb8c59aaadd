"""Everything that can be done on a screen: type a word of it, and enter does it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Vertical
from textual.content import Content
from textual.widgets import Input, OptionList
from textual.widgets.option_list import Option

from sewalong.screens.prompts.dialogs import Dialog, words_typed
from sewalong.screens.widgets.keys import Key
from sewalong.screens.widgets.literal_text import Words

SAFETY = (
    "Cautions here are general advice only. The makers' instructions for your iron, cutter "
    "and machine come first, then local rules, then a person who can show you."
)

LEAVES = (
    "Leaves from anywhere and asks first, as ending the session does; pressed again it leaves at "
    "once, and what was not asked comes first next time."
)

NOT_FOUND = "Nothing here goes by that. Try another word."
CAP_WIDTH = 8
"""Columns for what stands on the keys."""

WIDEST, NARROW_BELOW = 64, 70
BESIDE, BESIDE_NARROW = 9, 5
"""Columns of the dialog, and what its edges and the scrollbar take of them."""


ANYWHERE = (
    Key("any.leave", "ctrl+c", "app.leave", "leave", LEAVES, words="quit exit close stop"),
    Key("any.safety", "", "", "safety", SAFETY, words="caution iron cutter needle pins"),
)
"""What every screen's help ends with; one without an action is only to be read."""


def offers_for(keys: Sequence[Key], typed: str) -> list[Key]:
    """The keys that go by every word of `typed`: those called so first, then those known as so,
    then those that say it."""
    words = typed.casefold().split()

    def rank(key: Key) -> int:
        said = [key.short, key.words, key.help]
        for place in range(len(said)):
            there = " ".join(said[: place + 1]).casefold().replace("(", " ").split()
            if all(any(one.startswith(word) for one in there) for word in words):
                return place
        return len(said)

    ranked = sorted((rank(key), place) for place, key in enumerate(keys))
    return [keys[place] for found, place in ranked if found < 3]


class HelpDialog(Dialog[str]):
    """The keys of the screen below; the result is the action that was chosen."""

    BINDINGS: ClassVar = [
        Binding("up", "move('cursor_up')", show=False, id="help.up", priority=True),
        Binding("down", "move('cursor_down')", show=False, id="help.down", priority=True),
        Binding("home", "move('first')", show=False, id="help.first", priority=True),
        Binding("end", "move('last')", show=False, id="help.last", priority=True),
        Binding("pageup", "move('page_up')", show=False, id="help.page_up", priority=True),
        Binding("pagedown", "move('page_down')", show=False, id="help.page_down", priority=True),
    ]

    def meant_early(self, keys: Sequence[events.Key], opened_by: str) -> Sequence[events.Key]:
        """Words typed behind the ? are what is looked for."""
        return words_typed(keys, opened_by)

    def __init__(self, keys: Sequence[Key]) -> None:
        super().__init__()
        self._keys = (*keys, *ANYWHERE)
        self._found: list[Key] = []

    def compose(self) -> ComposeResult:
        with Vertical(classes="dialog help"):
            yield Words("What do you want to do?", classes="dialog-title")
            yield Input(placeholder="a word of it, such as needle")
            yield OptionList()
            yield Words(NOT_FOUND, classes="dialog-line", id="not-found")
            yield Words("arrows, enter: do it   esc: back", classes="dialog-hint")

    def on_mount(self) -> None:
        box = self.query_one(Input)
        box.cursor_blink = False
        box.focus()
        self.query_one(OptionList).can_focus = False
        self._show("")

    def on_resize(self) -> None:
        self._show(self.query_one(Input).value)

    def on_input_changed(self, event: Input.Changed) -> None:
        """Show what goes by the words so far."""
        event.stop()
        self._show(event.value)

    def _show(self, typed: str) -> None:
        self._found = offers_for(self._keys, typed)
        options = self.query_one(OptionList)
        options.clear_options()
        options.add_options([Option(_line(key, self._room)) for key in self._found])
        # Enter does nothing that was not looked for.
        options.highlighted = 0 if typed.strip() and self._found else None
        options.display = bool(self._found)
        self.query_one("#not-found", Words).display = not self._found

    @property
    def _room(self) -> int:
        width = self.app.size.width
        beside = BESIDE if width >= NARROW_BELOW else BESIDE_NARROW
        return min(width, WIDEST) - beside - CAP_WIDTH

    def action_move(self, how: str) -> None:
        """Go up or down among what is found."""
        getattr(self.query_one(OptionList), f"action_{how}")()

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Do what is marked; where nothing is, only leave."""
        event.stop()
        self._choose(self.query_one(OptionList).highlighted)

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        event.stop()
        self._choose(event.option_index)

    def _choose(self, place: int | None) -> None:
        if place is None and not self._found:
            return
        action = "" if place is None else self._found[place].action
        if place is None or action:
            self.dismiss(action or None)


def _line(key: Key, room: int) -> Content:
    """What stands on the keys, and beside it what they do."""
    said = Content(f"{key.short.capitalize()}: {key.help}" if not key.caps else key.help)
    first, *others = said.wrap(room)
    cap = f"{key.caps:<{CAP_WIDTH - 1}} "
    lines = [Content.assemble((cap, "bold $number"), first)]
    lines += [Content.assemble(" " * CAP_WIDTH, line) for line in others]
    return Content("\n").join(lines)
