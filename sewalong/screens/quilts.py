"""Which quilt? Every quilt, when it was last sewn, and the next thing to pick up."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical
from textual.content import Content
from textual.widgets import OptionList
from textual.widgets.option_list import Option

from sewalong.owner.preferences import AS_USUAL, Preferences
from sewalong.progress.record.time_words import ago
from sewalong.screens.helped import HelpedScreen
from sewalong.screens.widgets.breakpoints import mark_size
from sewalong.screens.widgets.keys import Key, help_at, keys_with, line_of
from sewalong.screens.widgets.literal_text import Words
from sewalong.service.listing import drafts_in, summary
from sewalong.service.open_quilt import Clock
from sewalong.store.faults import StoreFault
from sewalong.store.library import Library, Shelved

if TYPE_CHECKING:
    from sewalong.store.drafts import Draft

NONE_YET = "No quilt yet.\n\nBegin one by a few questions:  n\nTo look around first:  sewalong demo"


KEYS = (
    Key("quilts.open", "enter", "open", "open", "Open the quilt that is marked.", True),
    Key(
        "quilts.new",
        "n",
        "new_quilt",
        "new quilt",
        "Begin a quilt by a few questions.",
        True,
        words="begin start add another first draft",
    ),
    Key(
        "quilts.look",
        "l",
        "app.toggle_look",
        "light or dark",
        "Change between lamplight and daylight colours.",
        True,
        words="colours theme",
    ),
    Key(
        "quilts.leave",
        "q",
        "leave",
        "leave",
        "Leave the program.",
        True,
        ("escape", "x"),
        words="quit exit close end stop",
    ),
    help_at("quilts"),
)

DRAFT = "draft:"
"""What the id of a draft in the list begins with; its key follows. A quilt's key has no colon."""


class QuiltsScreen(HelpedScreen[str]):
    """The list of quilts. Enter opens one; the result is its key, or None to leave."""

    CSS_PATH = ["lists.tcss", "sheet.tcss"]
    BINDINGS = [
        *(key.binding() for key in KEYS),
    ]

    def __init__(
        self,
        library: Library,
        clock: Clock,
        title: str,
        preferences: Preferences = AS_USUAL,
    ) -> None:
        super().__init__()
        self.keys = keys_with(preferences.keys, KEYS)
        self._preferences = preferences
        self._library = library
        self._clock = clock
        self._title = title
        self._entries: tuple[Shelved, ...] = ()
        self._drafts: tuple[Draft, ...] = ()
        self._unread = ""

    def compose(self) -> ComposeResult:
        with Horizontal(id="top"):
            yield Words(self._title, id="top-name")
            yield Words("which quilt?", id="top-clock")
        with Vertical(classes="sheet"):
            yield OptionList(id="quilts")
            yield Words(id="none-yet")
        yield Words(id="keys")

    def on_mount(self) -> None:
        self.fill()

    def on_screen_resume(self) -> None:
        if self.children:
            self.fill()

    def on_resize(self) -> None:
        mark_size(self)
        self.call_after_refresh(self.query_one(OptionList).scroll_to_highlight)
        self.query_one("#keys", Words).say(line_of(self.app.size.width - 4, self.keys))

    def fill(self) -> None:
        """Read the shelf again and show it, the last touched first."""
        options = self.query_one(OptionList)
        here = options.highlighted
        options.clear_options()
        fault = ""
        try:
            self._entries = self._library.entries()
            fault = self._library.missing()
            if not self._entries:
                self._library.refuse_damage()
        except StoreFault as cannot_read:
            self._entries, fault = (), str(cannot_read)
        self._drafts, unread = drafts_in(self._library.folder)
        # What was set aside is found once, and said as long as this screen stands.
        self._unread = unread or self._unread
        for entry in self._entries:
            options.add_option(Option(self._line(entry), id=entry.key))
        for draft in self._drafts:
            options.add_option(Option(self._draft_line(draft), id=f"{DRAFT}{draft.key}"))
        count = options.option_count
        said = " ".join(filter(None, (fault, self._unread)))
        self.query_one("#none-yet", Words).say(said or ("" if count else NONE_YET))
        options.display = bool(count)
        if count:
            options.highlighted = min(here or 0, count - 1)
            options.focus()

    def _line(self, entry: Shelved) -> Content:
        try:
            found = summary(self._library, entry)
        except StoreFault as fault:
            return Content.assemble((entry.name, "bold"), f"\n  {fault}\n")
        last = ago(entry.last_at, self._clock())
        return Content.assemble((entry.name, "bold"), f"   {last}\n  {found.pick_up}\n")

    def _draft_line(self, draft: Draft) -> Content:
        name = draft.answers.said.get("name", "A new quilt")
        last = ago(draft.at, self._clock())
        return Content.assemble((name, "bold"), f"   {last}\n  a draft: enter goes on with it\n")

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        event.stop()
        id = event.option.id or ""
        if not id.startswith(DRAFT):
            self.dismiss(id)
            return
        self._fill_in(next(one for one in self._drafts if f"{DRAFT}{one.key}" == id))

    def action_new_quilt(self) -> None:
        """Begin a quilt by a few questions."""
        self._fill_in(None)

    def _fill_in(self, draft: Draft | None) -> None:
        """Ask for a new quilt, or go on with a draft; once it is begun, open it."""
        # Loaded only for whoever begins one.
        from sewalong.screens.new_quilt import NewQuiltScreen

        try:
            screen = NewQuiltScreen(self._library, self._clock, self._preferences, draft)
        except StoreFault as fault:
            self.query_one("#none-yet", Words).say(str(fault))
            return
        self.app.push_screen(screen, self._begun)

    def _begun(self, key: str | None) -> None:
        if key is not None:
            self.dismiss(key)

    def action_open(self) -> None:
        """Open the quilt that is marked."""
        self.query_one(OptionList).action_select()

    def action_leave(self) -> None:
        """Leave the app."""
        self.dismiss(None)
