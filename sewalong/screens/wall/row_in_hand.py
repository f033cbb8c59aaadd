"""The row in hand, read out place by place: which unit to take, how it lies, and one key a square."""

from __future__ import annotations

from msgspec.structs import replace
from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical, VerticalScroll

from sewalong.progress.acts.begun import BeginRows
from sewalong.progress.acts.counting import Count
from sewalong.progress.acts.row_in_hand import sew_next
from sewalong.progress.joining.row_in_hand import next_unit_words, row_in_hand
from sewalong.progress.record.limits import a_stage
from sewalong.progress.record.refused import Refused
from sewalong.progress.safety.cautions import CautionFirst
from sewalong.screens.over_sewing import OverSewingScreen, undoing_keys
from sewalong.screens.prompts.desk import Desk
from sewalong.screens.prompts.stage_prompts import begun as said_begun
from sewalong.screens.widgets.big_number import BigText
from sewalong.screens.widgets.block_letters import Dot, width_of
from sewalong.screens.widgets.breakpoints import is_narrow, is_roomy
from sewalong.screens.widgets.captioned import Captioned
from sewalong.screens.widgets.keys import Key, help_at
from sewalong.screens.widgets.literal_text import Words
from sewalong.service.set_pictures import cloth_coloured
from sewalong.service.wall.row_looks import RowPage, above, first_row, row_page, told, unit_pictured

HERE = "> "
NEAR, FAR_OFF = Dot(2, 1), Dot(4, 2)
"""Dots of the number of the place, by the room there is."""

KEYS = (
    Key("row.sewn", "space", "sewn", "sewn on", "The next unit is sewn to the row.", True,
        words="count next square done one more"),
    Key("row.next", "right", "walk(1)", "look on", "Look at the place after, nothing is counted.", True,
        ("down",), "read aloud take pick up"),
    Key("row.before", "left", "walk(-1)", "look back", "Look at the place before.", False, ("up",)),
    Key("row.after", "pagedown", "row(1)", "next row", "Read the next row.", False, (),
        "other row rebuild lay again"),
    Key("row.row_before", "pageup", "row(-1)", "row before", "Read the row before."),
    *undoing_keys("row"),
    Key("row.otherwise", "o", "otherwise", "otherwise",
        "Say in your own words what is sewn of rows begun.", True, words="pieces pairs several half"),
    Key("row.leave", "escape", "leave", "back", "Back to sewing.", True, ("c",), "quit"),
    help_at("row"),
)  # fmt: skip


class RowInHandScreen(OverSewingScreen[bool]):
    """Every square is recorded at once, and undone like any."""

    BINDINGS = [*(key.binding() for key in KEYS)]
    CSS_PATH = ["row_in_hand.tcss"]
    AUTO_FOCUS = ""
    offered = KEYS

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._page: RowPage | None = None
        self._place = 0
        """The place looked at, from 1."""

    def compose(self) -> ComposeResult:
        with Horizontal(id="top"):
            yield Words(self.quilt.state.quilt.name, id="top-name")
            yield Words(id="top-clock")
        with Horizontal(id="unit"):
            yield BigText("0", NEAR, id="unit-place")
            yield Words(id="unit-told")
        with Horizontal(id="row"):
            with Vertical(id="row-side"):
                yield VerticalScroll(id="row-list", can_focus=False)
                yield Words(id="row-press")
            with Vertical(id="row-unit"):
                yield Captioned(id="unit-picture")
        yield Words(id="message")
        yield Words(id="keys")

    def on_mount(self) -> None:
        self.follow()
        self._go_to_next()

    def on_resize(self) -> None:
        self.show()

    async def show_anew(self) -> None:
        """The row as it is now, the next place in hand."""
        self._go_to_next()

    def _go_to_next(self) -> None:
        """Look at the next place of the row in hand; of rows that are all sewn at the first."""
        self._look_at(first_row(self.quilt.state))

    def _look_at(self, row: int) -> None:
        page = row_page(self.quilt.state, row)
        if page is None:
            if self._page is None or not self.quilt.state.wall.is_laid:
                self.dismiss(True)
            return
        self._page = page
        self._place = page.row.next[0] if page.row.next else 1
        self.show()

    def show(self) -> None:
        """Draw the row, and the unit at the place looked at."""
        page, state = self._page, self.quilt.state
        if page is None:
            return
        row = page.row
        self.query_one("#top-clock", Words).say(page.title)
        dot = FAR_OFF if is_roomy(self) else NEAR
        room = width_of("8" * len(str(row.units)), dot)
        self.query_one("#unit-place", BigText).show(str(self._place), dot, room=room)
        told_of = row.next if self._place in row.next else (self._place,)
        self.query_one("#unit-told", Words).say(
            "\n".join(" ".join(told(state, (row.row, place))) for place in told_of)
        )
        self._list(page.short if is_narrow(self) else page.places)
        self.query_one("#row-press", Words).say(page.press)
        self.query_one(Captioned).show(
            lambda across, down: unit_pictured(
                self.quilt.state, (row.row, self._place), across, down
            ),
            cloth_coloured(state),
            "" if is_narrow(self) else above(state),
        )

    def _list(self, lines: tuple[str, ...]) -> None:
        """A line for each place, the one looked at marked and in sight."""
        listed = self.query_one("#row-list", VerticalScroll)
        there = list(listed.query(Words))
        if more := len(lines) - len(there):
            added = [Words(classes="place") for _ in range(more)]
            listed.mount(*added)
            there += added
        for place, words in enumerate(there, start=1):
            words.display = place <= len(lines)
            here = place == self._place
            words.set_class(here, "here")
            if words.display:
                words.say(f"{HERE if here else ' ' * len(HERE)}{lines[place - 1]}")
        self.call_after_refresh(self._scroll_to_place)

    def _scroll_to_place(self) -> None:
        for words in self.query(".here"):
            words.scroll_visible(animate=False)

    # -- keys ------------------------------------------------------------------

    def action_walk(self, step: int) -> None:
        """Look at another place of the row."""
        if self._page is not None:
            self._place = max(1, min(self._place + step, self._page.row.units))
            self.show()
            self.tell("")

    def action_row(self, step: int) -> None:
        """Read another row: as far as the wall goes."""
        if self._page is not None:
            self._look_at(self._page.row.row + step)
            self.tell("")

    def action_sewn(self) -> None:
        """The next unit is sewn on; a caution that is due comes first."""
        try:
            act = sew_next(self.quilt.state)
            self._done(self._desk.attempt(act))
        except CautionFirst as due:
            self.ask_in_turn(self._caution_then(due, act))
        except Refused as refused:
            self._done(str(refused))

    async def _caution_then(self, due: CautionFirst, act: BeginRows | Count) -> None:
        from sewalong.screens.prompts.dialogs import CautionDialog

        label = a_stage(self.quilt.state, due.stage).label
        if await self.app.push_screen_wait(CautionDialog(due.caution, label)):
            self._done(self._desk.attempt(replace(act, caution_read=True)))
        else:
            self.tell("Nothing was counted.")

    def _done(self, refusal: str | None) -> None:
        """Go on to the next place, and say what was done and what comes next."""
        if refusal:
            self.tell(refusal, refused=True)
            return
        self._shown = self.quilt.state
        self._go_to_next()
        if row_in_hand(self.quilt.state) is None:
            self.dismiss(True)
        else:
            self.tell(f"{self._desk.outcome.words} {next_unit_words(self.quilt.state)}")

    def action_otherwise(self) -> None:
        """Say what is begun in a form."""
        self.ask_in_turn(self._otherwise())

    async def _otherwise(self) -> None:
        await said_begun(self._desk)
        await self.bring_up_to_date()

    def action_leave(self) -> None:
        """Back to sewing."""
        self.dismiss(True)
