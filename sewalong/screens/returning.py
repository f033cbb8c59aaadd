"""Where was I? What to pick up, the worst concerns, and what is left, at one glance."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.containers import Horizontal, VerticalScroll

from sewalong.progress.acts.act import Act
from sewalong.progress.record.refused import Refused
from sewalong.screens.following import FollowingScreen
from sewalong.screens.prompts.dialogs import LinesDialog
from sewalong.screens.prompts.facts import (
    fill,
    machine_and_proof,
    notes_and_the_rest,
    show_picture,
)
from sewalong.screens.widgets.breakpoints import is_narrow, mark_size
from sewalong.screens.widgets.keys import Key, help_at, keys_with, line_of
from sewalong.screens.widgets.literal_text import Words
from sewalong.screens.widgets.return_sheet import ReturnSheet
from sewalong.service.acting import do
from sewalong.service.looks import where_was_i, worth_counting
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.faults import StoreFault

KEYS = (
    Key(
        "return.sew",
        "enter",
        "sew",
        "go on",
        "Go on to the sewing screen.",
        True,
        ("space",),
        words="start begin count go on",
    ),
    Key(
        "return.count",
        "r",
        "count_first",
        "count first",
        "Count the few piles that matter next, one number at a time.",
        True,
        words="recount check by hand",
    ),
    Key(
        "return.machine",
        "m",
        "machine",
        "machine",
        "The machine's settings and how they were tested.",
        True,
        words="foot needle stitch seam tested settings",
    ),
    Key(
        "return.notes",
        "n",
        "notes",
        "notes",
        "What was done last time, your notes, and what else is to be minded.",
        True,
        words="last time remember spoiled press more rest",
    ),
    Key("return.leave", "escape", "leave", "all quilts", "Back to all quilts.", True, words="quit"),
    help_at("return"),
)


class ReturnScreen(FollowingScreen[bool]):
    """Shown when a quilt is opened after a day or more. Enter goes on to sewing."""

    reads_on = True
    CSS_PATH = ["facts.tcss", "sheet.tcss"]
    BINDINGS = [
        *(key.binding() for key in KEYS),
    ]

    def __init__(self, quilt: OpenQuilt) -> None:
        super().__init__(quilt)
        self.keys = keys_with(quilt.preferences.keys, KEYS)
        self._back = where_was_i(quilt)

    def compose(self) -> ComposeResult:
        with Horizontal(id="top"):
            yield Words(self.quilt.state.quilt.name, id="top-name")
            yield Words(self._away(), id="top-clock")
        with VerticalScroll(classes="sheet"):
            yield ReturnSheet(self._back)
        yield Words(id="keys")

    def _away(self) -> str:
        if self._back.away and is_narrow(self):
            return self._back.away
        return f"{self._back.away}   where was I?".strip()

    def on_mount(self) -> None:
        self.query_one(VerticalScroll).focus()
        self.call_after_refresh(fill, self, self.quilt)
        self.follow()

    def on_resize(self) -> None:
        mark_size(self)
        self.query_one("#top-clock", Words).say(self._away())
        self.query_one("#keys", Words).say(line_of(self.app.size.width - 4, self.keys))
        show_picture(self, self.quilt)
        for sheet in self.query(ReturnSheet):
            self.call_after_refresh(sheet.set_apart)

    async def show_anew(self) -> None:
        """What another window recorded meanwhile, or was counted here, stands here too."""
        self._back = where_was_i(self.quilt)
        self.query_one("#top-clock", Words).say(self._away())
        page = self.query_one(VerticalScroll)
        await page.remove_children()
        await page.mount(ReturnSheet(self._back))
        fill(self, self.quilt)

    def attempt(self, act: Act, *, say: bool = True) -> str | None:
        """Carry out an act; a refusal is said, returned, and changes nothing."""
        try:
            do(self.quilt, act, quietly=True)
        except (Refused, StoreFault) as refusal:
            self.notify(str(refusal), markup=False, severity="error", timeout=30)
            return str(refusal)
        return None

    def action_count_first(self) -> None:
        """Count the few piles that matter next, one number at a time."""
        self.ask_in_turn(self._count_first())

    async def _count_first(self) -> None:
        from sewalong.screens.prompts.pile_prompts import count_by_hand

        counts = worth_counting(self.quilt)
        if not counts:
            said = ["No pile has to be counted first. While sewing any of them can be: r."]
            await self.app.push_screen_wait(LinesDialog("Count first", said))
        for count in counts:
            if not await count_by_hand(self, count):
                break
        await self.bring_up_to_date()

    def action_machine(self) -> None:
        """The machine's settings and how they were tested."""
        self.app.push_screen(LinesDialog("Machine", machine_and_proof(self._back)))

    def action_notes(self) -> None:
        """What the sheet has no room for."""
        self.app.push_screen(LinesDialog("Notes and the rest", notes_and_the_rest(self._back)))

    def action_sew(self) -> None:
        """Go on to the sewing screen."""
        self.dismiss(True)

    def action_leave(self) -> None:
        """Back to all quilts."""
        self.dismiss(False)
