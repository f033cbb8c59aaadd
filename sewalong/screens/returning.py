"""Where was I? One sheet of facts on coming back, the most pressing first."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.containers import Horizontal, VerticalScroll

from sewalong.progress.acts.act import Act
from sewalong.progress.record.refused import Refused
from sewalong.screens.helped import HelpedScreen
from sewalong.screens.prompts.facts import sheet
from sewalong.screens.widgets.breakpoints import mark_size
from sewalong.screens.widgets.keys import Key, help_at, keys_with, line_of
from sewalong.screens.widgets.literal_text import Words
from sewalong.service.acting import do
from sewalong.service.looks import worth_counting
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.faults import StoreFault

KEYS = (
    Key(
        "return.sew",
        "enter",
        "sew",
        "sew",
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
    Key("return.leave", "escape", "leave", "all quilts", "Back to all quilts.", True, words="quit"),
    help_at("return"),
)


class ReturnScreen(HelpedScreen[bool]):
    """Shown when a quilt is opened after a day or more. Enter goes on to sewing."""

    CSS_PATH = ["facts.tcss", "sheet.tcss"]
    BINDINGS = [
        *(key.binding() for key in KEYS),
    ]

    def __init__(self, quilt: OpenQuilt) -> None:
        super().__init__()
        self.quilt = quilt
        self.keys = keys_with(quilt.preferences.keys, KEYS)

    def compose(self) -> ComposeResult:
        with Horizontal(id="top"):
            yield Words(self.quilt.state.quilt.name, id="top-name")
            yield Words("where was I?", id="top-clock")
        with VerticalScroll(classes="sheet"):
            yield from sheet(self.quilt)
        yield Words(id="keys")

    def on_mount(self) -> None:
        self.query_one(VerticalScroll).focus()

    def on_resize(self) -> None:
        mark_size(self)
        self.query_one("#keys", Words).say(line_of(self.app.size.width - 4, self.keys))

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

        for count in worth_counting(self.quilt):
            if not await count_by_hand(self, count):
                break
        page = self.query_one(VerticalScroll)
        await page.remove_children()
        await page.mount_all(sheet(self.quilt))

    def action_sew(self) -> None:
        """Go on to the sewing screen."""
        self.dismiss(True)

    def action_leave(self) -> None:
        """Back to all quilts."""
        self.dismiss(False)
