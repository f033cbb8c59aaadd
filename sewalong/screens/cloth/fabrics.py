"""What meets what? The fabrics by value and family, looked at, said, changed, photographed."""

from __future__ import annotations

from collections.abc import Callable

from textual.app import ComposeResult
from textual.containers import Horizontal, VerticalScroll
from textual.geometry import Region

from sewalong.fabrics.looked_at import AS_IT_IS, View, shown_in, taken_words
from sewalong.fabrics.photo.read import what_is_missing
from sewalong.fabrics.photo.result import ReadPhoto
from sewalong.fabrics.swatch import Swatch
from sewalong.fabrics.swatch_words import swatch_words
from sewalong.progress.acts.act import Act
from sewalong.quilt.fabrics_text import fabric_text
from sewalong.quilt.refusal import NumbersFault
from sewalong.screens.cloth.photo_sheet import Keeper, photograph
from sewalong.screens.cloth.walked import WalkedScreen, walking
from sewalong.screens.over_sewing import OverSewingScreen, undoing_keys
from sewalong.screens.prompts.desk import Desk
from sewalong.screens.prompts.dialogs import Field, FormDialog
from sewalong.screens.widgets.cloth.sheet import Shown
from sewalong.screens.widgets.cloth.swatch_sheet import ShownRow, SwatchSheet
from sewalong.screens.widgets.colour_block import Block
from sewalong.screens.widgets.keys import Key, help_at
from sewalong.screens.widgets.literal_text import Words
from sewalong.service.fabric_changes import keep_photographed, say_anew, say_fabrics, take_out
from sewalong.service.fabric_looks import fabrics_now
from sewalong.service.photographs import offered_for

KEYS = (
    Key(
        "fabrics.add",
        "a",
        "add",
        "add",
        "Say fabrics or colour piles, one after the other.",
        True,
        words="new more say type pile lights darks",
    ),
    Key(
        "fabrics.change",
        "enter",
        "change",
        "change",
        "Change the fabric in hand: its name, squares, colour, kind.",
        True,
        words="edit rename alter colour squares kind",
    ),
    Key(
        "fabrics.photograph",
        "p",
        "photograph",
        "photograph",
        "Read the fabrics of one pack from a photograph.",
        True,
        words="picture camera read file scan pack",
    ),
    Key(
        "fabrics.grey",
        "g",
        "grey",
        "grey",
        "The same in grey, by lightness alone; again as they are.",
        True,
        words="value light dark contrast black white",
    ),
    Key(
        "fabrics.sight",
        "b",
        "sight",
        "colour-blind",
        "As somebody colour-blind sees them: without red, green or blue cones in turn.",
        True,
        words="colour blind vision eyes cones deficiency",
    ),
    Key(
        "fabrics.take_out",
        "d",
        "take_out",
        "take out",
        "Take the fabric in hand out of the plan; undo puts it back.",
        True,
        words="delete remove drop",
    ),
    *undoing_keys("fabrics"),
    *walking("fabrics", "fabric"),
    Key(
        "fabrics.leave", "escape", "leave", "back", "Back to sewing.", True, ("comma",), "quit sew"
    ),
    help_at("fabrics"),
)

HOW_TO_BEGIN = (
    "a: say them, such as lights 60, mediums 70, darks 38.\n"
    "p: read them off one photograph of a pack laid out on a plain cloth."
)
ADD_HINT = "Such as: lights 60, mediums 70, darks 38. Or: rust dots 4 sienna small print."
CHANGE_HINT = "Name, squares, and if you like colour, kind or value. 0 squares takes it out."


class FabricsScreen(WalkedScreen[None], OverSewingScreen[None]):
    """Shows the fabrics of the plan; every change of them is a change of the plan."""

    BINDINGS = [*(key.binding() for key in KEYS)]
    offered = KEYS

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._view = AS_IT_IS
        self._now = fabrics_now(desk.quilt)
        self._at = 0

    # -- showing -------------------------------------------------------------------

    def compose(self) -> ComposeResult:
        with Horizontal(id="top"):
            yield Words(self.quilt.state.quilt.name, id="top-name")
            yield Words("what meets what?", id="top-clock")
        yield Words(id="verdict")
        with VerticalScroll(id="cloths", can_focus=False):
            yield Words(id="view")
            yield SwatchSheet(id="swatches")
            yield Words(id="facts")
        yield Words(id="message")
        yield Words(id="keys")

    def on_mount(self) -> None:
        self._show()
        self.tell_in_hand()
        self.follow()

    async def show_anew(self) -> None:
        """The fabrics as they are now; the one in hand stays so while it is there."""
        letter = self._in_hand.letter if self._in_hand else ""
        self._now = fabrics_now(self.quilt)
        letters = [swatch.letter for swatch in self._now.swatches]
        last = max(0, len(letters) - 1)
        self._at = letters.index(letter) if letter in letters else min(self._at, last)
        self.query_one("#top-name", Words).say(self.quilt.state.quilt.name)
        self._show()

    def _show(self) -> None:
        rows = [
            ShownRow(row.value, row.family or "", tuple(map(self._looks_so, row.swatches)))
            for row in self._now.rows
        ]
        self.query_one("#verdict", Words).say(self._now.verdict)
        self._show_view()
        sheet = self.query_one("#swatches", SwatchSheet)
        sheet.show(rows, self._at)
        sheet.display = bool(rows)
        self.set_class(not rows, "empty")
        self.call_after_refresh(self.scroll_to_hand)

    def _show_view(self) -> None:
        """How they are shown, which may be taken for each other so, and what else is to be said."""
        line, view = self.query_one("#view", Words), self._view
        in_short, *pairs = taken_words(self._now.swatches, view) or ("",)
        line.say(f"Shown {view.words}. {in_short}".strip())
        line.display = bool(view.words)
        said = "\n".join((*pairs, *self._now.facts)) if self._now.rows else HOW_TO_BEGIN
        self.query_one("#facts", Words).say(said)

    def _looks_so(self, swatch: Swatch) -> Shown:
        looks = Block(shown_in(self._view, swatch), swatch.value, swatch.colour is None)
        return Shown(swatch.called, f", {swatch.squares:,}", looks)

    @property
    def _in_hand(self) -> Swatch | None:
        found = self._now.swatches
        return found[self._at] if self._at < len(found) else None

    def tell_in_hand(self) -> None:
        self.tell(swatch_words(self._in_hand) if self._in_hand else "")

    # -- looking -------------------------------------------------------------------

    def moved(self, across: int, down: int) -> bool:
        sheet = self.query_one("#swatches", SwatchSheet)
        moved, self._at = sheet.move(across, down), sheet.at
        return moved

    def where_in_hand(self) -> Region | None:
        if self._in_hand is None:
            return None
        sheet = self.query_one("#swatches", SwatchSheet)
        return sheet.in_hand.translate((0, sheet.virtual_region.y))

    def action_grey(self) -> None:
        """In grey, or as they are again."""
        self._look(self._view.grey_or_not())

    def action_sight(self) -> None:
        """As somebody of another sight sees them."""
        self._look(self._view.next_sight())

    def _look(self, view: View) -> None:
        self._view = view
        self._show()
        self.tell_in_hand()

    # -- changing ------------------------------------------------------------------

    def action_add(self) -> None:
        """Say fabrics, one line after another, until an empty one."""
        self.ask_in_turn(self._add())

    async def _add(self) -> None:
        hint = ADD_HINT
        while await self._added_more(hint):
            await self.bring_up_to_date()
            hint = f"{self._now.verdict} Another? Enter alone: that is all."
        self.tell_in_hand()

    async def _added_more(self, hint: str) -> bool:
        """Ask for a line of fabrics; True where there was one, and it is in the plan."""
        said: list[str] = []

        def carry_out(values: dict[str, str]) -> str | None:
            text = values["text"]
            if not text.strip():
                return None
            refusal = self._carry(lambda: say_fabrics(self.quilt, text))
            if refusal is None:
                said.append(text)
            return refusal

        line = (Field("text", "Fabrics, with how many squares of each", prose=True),)
        title = "Which fabrics are there?"
        await self.app.push_screen_wait(FormDialog(title, line, carry_out, hint, words_ahead=True))
        return bool(said)

    def action_change(self) -> None:
        """Change the fabric in hand; where there is none, say some."""
        if self._in_hand is None:
            self.action_add()
        else:
            self.ask_in_turn(self._change(self._in_hand))

    async def _change(self, swatch: Swatch) -> None:
        fabrics = self.quilt.state.quilt.counted_fabrics
        text = next((fabric_text(one) for one in fabrics if one.letter == swatch.letter), "")

        def carry_out(values: dict[str, str]) -> str | None:
            if values["text"].strip() == text:
                return None
            return self._carry(lambda: say_anew(self.quilt, swatch.letter, values["text"]))

        line = (Field("text", "How it is said", text, prose=True),)
        dialog = FormDialog(f"Fabric {swatch.called}", line, carry_out, CHANGE_HINT)
        if await self.app.push_screen_wait(dialog):
            await self.bring_up_to_date()
            self.tell_in_hand()

    def action_take_out(self) -> None:
        """Take the fabric in hand out of the plan."""
        if self._in_hand is None:
            self.tell("There is no fabric to take out.", refused=True)
            return
        self.ask_in_turn(self._take_out(self._in_hand))

    async def _take_out(self, swatch: Swatch) -> None:
        if refusal := self._carry(lambda: take_out(self.quilt, swatch.letter)):
            self.tell(refusal, refused=True)
            return
        await self.bring_up_to_date()
        self.tell(f"{swatch.called} is taken out. u puts it back.")

    def _carry(self, change: Callable[[], Act]) -> str | None:
        """Carry out a change of the plan, or say why not."""
        try:
            return self._desk.attempt(change(), say=False)
        except NumbersFault as fault:
            return fault.sentence

    def action_photograph(self) -> None:
        """Read the fabrics of a photograph, and keep them once they are looked over."""
        if missing := what_is_missing():
            self.tell(missing, refused=True)
            return
        self.ask_in_turn(self._photograph())

    async def _photograph(self) -> None:
        def keep(photo: ReadPhoto, instead: bool) -> str | None:
            return self._carry(lambda: keep_photographed(self.quilt, photo, instead=instead))

        plan = self.quilt.state.quilt
        keeper = Keeper(keep, len(plan.counted_fabrics), offered_for(plan))
        photo = await photograph(self.app, keeper, self.quilt.preferences.keys)
        if photo is None:
            return
        await self.bring_up_to_date()
        count = sum(fabric.squares for fabric in photo.fabrics)
        self.tell(f"{len(photo.fabrics)} fabrics of {count:,} squares are kept. u takes them back.")

    def action_leave(self) -> None:
        """Back to sewing."""
        self.dismiss(None)


async def fabrics(desk: Desk) -> None:
    """What meets what? Loaded only when asked for: colours take long to load."""
    await desk.app.push_screen_wait(FabricsScreen(desk))
