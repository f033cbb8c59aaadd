"""Is that what lies there? A photograph of the units laid out, as it was read: answered, and kept."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from msgspec.structs import replace
from textual.app import ComposeResult
from textual.containers import Horizontal, VerticalScroll
from textual.geometry import Region

from sewalong.fabrics.floor.asking import (
    Question,
    colour_from_afar,
    next_asked,
    question_at,
    with_option,
)
from sewalong.fabrics.floor.floor_words import floor_lines
from sewalong.fabrics.floor.result import FloorPlace, FloorReading, HowSure
from sewalong.fabrics.photo.refused import PhotoRefused
from sewalong.fabrics.sight import value
from sewalong.progress.record.refused import Refused
from sewalong.screens.cloth.walked import WalkedScreen, walking
from sewalong.screens.prompts.desk import Desk
from sewalong.screens.prompts.dialogs import (
    Choice,
    ChoiceDialog,
    Field,
    FormDialog,
    LinesDialog,
)
from sewalong.screens.prompts.floor_dialog import FloorDialog
from sewalong.screens.widgets.cloth.place_sheet import PlaceSheet, PlaceShown
from sewalong.screens.widgets.colour_block import Block
from sewalong.screens.widgets.keys import Key, help_at, keys_with
from sewalong.screens.widgets.literal_text import Words
from sewalong.service.wall.floor_photographs import lay_as_read, said_at
from sewalong.service.wall.mending import how_many, left_lines, mended, move_lines

MOST_OPTIONS = 4
"""Options that have a key: as many as are asked about at a place."""

SIGNS = {HowSure.SURE: "", HowSure.NOT_SURE: "?", HowSure.CANNOT_TELL: "??"}
"""Beside a place, how sure it is."""

KEYS = (
    Key("floor.keep", "k", "keep", "keep", "Have this be on the wall.", True,
        words="done yes accept take save"),
    *(
        Key(f"floor.option{n}", str(n), f"say({n})", "that", f"It is number {n} of what it may be.",
            n == 1, words="answer unit fabric which")
        for n in range(1, MOST_OPTIONS + 1)
    ),
    Key("floor.other", "o", "other", "another", "Say what lies here.", True,
        words="unit set fabric answer none of these nothing empty"),
    Key("floor.next", "n", "next", "next unsure", "To the next place that is not sure.", True,
        words="ask question doubt"),
    Key("floor.undo", "u", "undo", "undo", "Take back what was said last.", words="back wrong"),
    Key("floor.again", "w", "again", "another photo", "Read it again by its corners, or another file.",
        words="corners file other photograph again wrong"),
    *walking("floor", "place"),
    Key("floor.leave", "escape", "leave", "leave it", "Leave it; nothing is kept.", True),
    help_at("floor"),
)  # fmt: skip


class FloorSheetScreen(WalkedScreen[FloorReading]):
    """The result is what was kept, None where nothing was. `asked` is what was filled in to read it;
    `keep` has it lie on the wall, or says why not."""

    # Its folder is another than that of the screens it is like.
    CSS_PATH = ["../cloth/walked.tcss"]
    BINDINGS = [*(key.binding() for key in KEYS)]

    def __init__(
        self,
        desk: Desk,
        reading: FloorReading,
        asked: Mapping[str, str],
        keep: Callable[[FloorReading], str | None],
    ) -> None:
        super().__init__()
        self._desk = desk
        self._reading = reading
        self._asked = dict(asked)
        self._keep = keep
        self._before: list[FloorReading] = []
        self.keys = keys_with(desk.quilt.preferences.keys, KEYS)

    # -- showing -------------------------------------------------------------------

    def compose(self) -> ComposeResult:
        with Horizontal(id="top"):
            yield Words("The wall as it was read", id="top-name")
            yield Words("is that so?", id="top-clock")
        yield Words(id="verdict")
        with VerticalScroll(id="cloths", can_focus=False):
            yield PlaceSheet(id="places")
            yield Words(id="facts")
        yield Words(id="message")
        yield Words(id="keys")

    def on_mount(self) -> None:
        self._sheet.marks_alike = False
        self._to_the_next(-1)
        self._show()

    @property
    def _sheet(self) -> PlaceSheet:
        return self.query_one("#places", PlaceSheet)

    @property
    def _here(self) -> FloorPlace:
        return self._reading.places[self._sheet.at]

    @property
    def _question(self) -> Question:
        names = {one.letter: one.name for one in self._desk.quilt.state.quilt.fabrics}
        return question_at(self._reading, self._here, names)

    def _show(self) -> None:
        how_sure, *notes = floor_lines(self._reading)
        self.query_one("#verdict", Words).say(how_sure)
        shown = [*map(_shown, self._reading.places)]
        self._sheet.show(shown, self._reading.seen.columns)
        self._notes = notes
        self.tell_in_hand()
        self.call_after_refresh(self.scroll_to_hand)

    def tell_in_hand(self) -> None:
        question = self._question
        options = (f"{n}: {one}" for n, one in enumerate(question.options[:MOST_OPTIONS], 1))
        lines = (*options, *question.tells, *self._notes)
        self.query_one("#facts", Words).say("\n".join(lines))
        self.tell(question.words)

    def moved(self, across: int, down: int) -> bool:
        return self._sheet.move(across, down)

    def where_in_hand(self) -> Region:
        return self._sheet.in_hand.translate((0, self._sheet.virtual_region.y))

    # -- answering -----------------------------------------------------------------

    def action_say(self, option: int) -> None:
        """What lies here is the option of this number."""
        if option > len(self._question.options):
            self.tell("There is no such number here. o: say what lies here.", refused=True)
            return
        here = self._here
        self._answered(lambda reading: with_option(reading, here, option - 1))

    def action_other(self) -> None:
        """Say what lies here, by its set and unit, or a patch by its fabric."""
        self.ask_in_turn(self._ask_other())

    async def _ask_other(self) -> None:
        here, number = self._here, self._question.patch
        typed: list[dict[str, str]] = []
        what = Field(
            "what", "Set / unit / quarter turns, such as 7/2/1, or nothing", "", prose=True
        )
        fields: tuple[Field, ...] = (what,)
        if number is not None:
            what = replace(what, label="Its fabric, by letter or name")
            fields = (Field("patch", "Which patch, in reading order", str(number)), what)
        title = f"What lies at {here.address}?"
        dialog = FormDialog(title, fields, typed.append, words_ahead=True)
        if await self.app.push_screen_wait(dialog):
            state, values = self._desk.quilt.state, typed[-1]
            self._answered(
                lambda reading: said_at(state, reading, here, values["what"], values.get("patch"))
            )

    def _answered(self, answer: Callable[[FloorReading], FloorReading]) -> None:
        try:
            reading = answer(self._reading)
        except (PhotoRefused, Refused) as refusal:
            self.tell(str(refusal), refused=True)
            return
        self._before.append(self._reading)
        self._reading = reading
        if self._here.sure is HowSure.SURE:
            self._to_the_next(self._sheet.at)
        self._show()

    def action_next(self) -> None:
        """Go to the next place that is not sure."""
        if not self._to_the_next(self._sheet.at):
            self.tell("Every place is sure. k keeps it so.")
            return
        self.tell_in_hand()
        self.scroll_to_hand()

    def _to_the_next(self, at: int) -> bool:
        found = next_asked(self._reading, at)
        if found is not None:
            self._sheet.take_in_hand(found)
        return found is not None

    def action_undo(self) -> None:
        """Take back what was said last."""
        if not self._before:
            self.tell("Nothing is said yet.", refused=True)
            return
        self._reading = self._before.pop()
        self._show()
        self.tell("Taken back.")

    def action_again(self) -> None:
        """Read it again, or another photograph."""
        self.ask_in_turn(self._again())

    async def _again(self) -> None:
        dialog = FloorDialog(
            self._desk.quilt.state, self._asked, "What was said here is asked anew, too."
        )
        if await self.app.push_screen_wait(dialog) and dialog.reading is not None:
            self._reading, self._asked = dialog.reading, dialog.values
            self._before.clear()
            self._to_the_next(-1)
            self._show()

    # -- leaving -------------------------------------------------------------------

    def action_keep(self) -> None:
        """Have it lie so on the wall; a refusal is said and keeps the sheet."""
        if refusal := self._keep(self._reading):
            self.tell(refusal, refused=True)
        else:
            self.dismiss(self._reading)

    def action_leave(self) -> None:
        """Leave; what was answered is not lost unasked."""
        if self._before:
            self.ask_in_turn(self._ask_to_leave())
        else:
            self.dismiss(None)

    async def _ask_to_leave(self) -> None:
        choices = (Choice("stay", "no, go on answering"), Choice("leave", "yes, leave it"))
        title = "Leave it? What was said is lost, and nothing is kept."
        if await self.app.push_screen_wait(ChoiceDialog(title, choices)) == "leave":
            self.dismiss(None)


def _shown(place: FloorPlace) -> PlaceShown:
    """A place in the colour of its patches together."""
    sign = "ok" if place.said else SIGNS[place.sure]
    colour = colour_from_afar(place)
    looks = Block(colour, None if colour is None else value(colour))
    return PlaceShown(sign, place.address, looks)


async def from_the_floor(desk: Desk) -> bool:
    """Ask for a photograph of the units laid out, show what was read, and have it be on the wall; then
    say what mends it. True where it lies there now."""
    dialog = FloorDialog(desk.quilt.state, {})
    if not await desk.app.push_screen_wait(dialog) or dialog.reading is None:
        return False

    def keep(reading: FloorReading) -> str | None:
        try:
            return desk.attempt(lay_as_read(desk.quilt.state, reading))
        except Refused as refused:
            return str(refused)

    screen = FloorSheetScreen(desk, dialog.reading, dialog.values, keep)
    if await desk.app.push_screen_wait(screen) is None:
        return False
    await desk.app.push_screen_wait(LinesDialog("What mends it", mending_lines(desk)))
    return True


def mending_lines(desk: Desk) -> tuple[str, ...]:
    """The fewest moves that mend what touches, one at a time, and what is left."""
    state = desk.quilt.state
    found = mended(state)
    moves = (f"{n}. {one}" for n, one in enumerate(move_lines(state, found), start=1))
    return (how_many(found), *moves, *left_lines(state, found))
