"""Is that what lay there? A photograph as it was read: looked over, mended, and kept."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from msgspec import Struct
from textual.app import App, ComposeResult
from textual.containers import Horizontal, VerticalScroll
from textual.geometry import Region

from sewalong.fabrics.photo.looked_over import place_in_hand, sheet_in_short
from sewalong.fabrics.photo.mending import merge, rename, split
from sewalong.fabrics.photo.refused import PhotoRefused
from sewalong.fabrics.photo.result import Place, ReadPhoto
from sewalong.fabrics.photo.taken_in import name_of
from sewalong.fabrics.sight import value
from sewalong.screens.cloth.walked import WalkedScreen, walking
from sewalong.screens.prompts.dialogs import Choice, ChoiceDialog, Field, FormDialog
from sewalong.screens.prompts.photo_dialog import PhotoDialog
from sewalong.screens.widgets.cloth.place_sheet import PlaceSheet, PlaceShown
from sewalong.screens.widgets.colour_block import Block
from sewalong.screens.widgets.keys import Key, help_at, keys_with
from sewalong.screens.widgets.literal_text import Words

KEYS = (
    Key(
        "photo.keep",
        "k",
        "keep",
        "keep",
        "Take these fabrics into the plan.",
        True,
        words="done yes accept take save",
    ),
    Key(
        "photo.merge",
        "m",
        "merge",
        "merge two",
        "Mark this fabric; again at another place: that one is the same fabric.",
        True,
        words="same one fabric double join together",
    ),
    Key(
        "photo.split",
        "s",
        "split",
        "split",
        "The square in hand is a fabric of its own.",
        True,
        words="apart different other not the same",
    ),
    Key("photo.name", "n", "name", "name", "Name the fabric in hand.", True, words="rename call"),
    Key(
        "photo.again",
        "w",
        "again",
        "wrong grid",
        "Read it again with another grid, corners or file.",
        True,
        words="grid rows corners file other photograph again",
    ),
    Key("photo.undo", "u", "undo", "undo", "Take back what was mended last.", words="back wrong"),
    *walking("photo", "place"),
    Key("photo.leave", "escape", "leave", "leave it", "Leave it; nothing is kept.", True),
    help_at("photo"),
)


class Keeper(Struct, frozen=True):
    """How fabrics get into the plan: `keep` takes them there, with True in place of those there are
    already, or says why not; `there` says how many these are. `offered` is what the form begins with.
    """

    keep: Callable[[ReadPhoto, bool], str | None]
    there: int
    offered: Mapping[str, str]


class PhotoSheetScreen(WalkedScreen[ReadPhoto]):
    """The result is what was kept, None where nothing was. `asked` is what was filled in to read it."""

    BINDINGS = [*(key.binding() for key in KEYS)]

    def __init__(
        self,
        photo: ReadPhoto,
        asked: Mapping[str, str],
        keeper: Keeper,
        moved: Mapping[str, tuple[str, ...]],
    ) -> None:
        super().__init__()
        self._photo = photo
        self._asked = dict(asked)
        self._keeper = keeper
        self._before: list[ReadPhoto] = []
        self.keys = keys_with(moved, KEYS)

    # -- showing -------------------------------------------------------------------

    def compose(self) -> ComposeResult:
        with Horizontal(id="top"):
            yield Words("The photograph as it was read", id="top-name")
            yield Words("is that so?", id="top-clock")
        yield Words(id="verdict")
        with VerticalScroll(id="cloths", can_focus=False):
            yield PlaceSheet(id="places")
            yield Words(id="facts")
        yield Words(id="message")
        yield Words(id="keys")

    def on_mount(self) -> None:
        self._show()

    @property
    def _sheet(self) -> PlaceSheet:
        return self.query_one("#places", PlaceSheet)

    @property
    def _here(self) -> Place:
        return self._photo.places[self._sheet.at]

    def _show(self) -> None:
        self.query_one("#verdict", Words).say(sheet_in_short(self._photo))
        self._sheet.show([*map(_shown, self._photo.places)], self._photo.columns)
        self.query_one("#facts", Words).say("\n".join(self._photo.notes))
        self.tell_in_hand()
        self.call_after_refresh(self.scroll_to_hand)

    def tell_in_hand(self) -> None:
        said = place_in_hand(self._photo, self._here)
        if chosen := self._sheet.chosen:
            said = f"{said} m: it is one fabric with {self._called(chosen)}."
        self.tell(said)

    def _called(self, letter: str) -> str:
        fabric = next(one for one in self._photo.fabrics if one.letter == letter)
        return f"{letter} {name_of(fabric)}"

    def moved(self, across: int, down: int) -> bool:
        return self._sheet.move(across, down)

    def where_in_hand(self) -> Region:
        return self._sheet.in_hand.translate((0, self._sheet.virtual_region.y))

    # -- mending -------------------------------------------------------------------

    def _mended(self, mend: Callable[[ReadPhoto], ReadPhoto]) -> bool:
        try:
            mended = mend(self._photo)
        except PhotoRefused as refusal:
            self.tell(str(refusal), refused=True)
            return False
        self._before.append(self._photo)
        self._photo = mended
        self._show()
        return True

    def action_merge(self) -> None:
        """Mark the fabric in hand, or merge the one in hand with the marked one."""
        chosen, here = self._sheet.chosen, self._here.letter
        self._sheet.chosen = "" if chosen else here
        if not chosen:
            self._show()
        elif chosen == here:
            self._show()
            self.tell("The mark is taken off.")
        elif self._mended(lambda photo: merge(photo, chosen, here)):
            self.tell(f"{here} is one fabric with {self._called(chosen)} now. u takes it back.")

    def action_split(self) -> None:
        """The square in hand is a fabric of its own."""
        here = self._here
        if self._mended(lambda photo: split(photo, here.row, here.column)):
            self.tell(f"{here.address} is {self._called(self._here.letter)} now. u takes it back.")

    def action_name(self) -> None:
        """Name the fabric in hand."""
        self.ask_in_turn(self._ask_name(self._here.letter))

    async def _ask_name(self, letter: str) -> None:
        named = dict(self._photo.names).get(letter, "")
        typed: list[str] = []
        fields = (Field("name", "Its name (empty: by its colour and place)", named, prose=True),)
        dialog = FormDialog(
            f"Fabric {self._called(letter)}",
            fields,
            lambda values: typed.append(values["name"]),
            words_ahead=True,
        )
        if await self.app.push_screen_wait(dialog):
            self._mended(lambda photo: rename(photo, letter, typed[-1]))

    def action_undo(self) -> None:
        """Take back what was mended last."""
        if not self._before:
            self.tell("Nothing is mended yet.", refused=True)
            return
        self._photo = self._before.pop()
        self._sheet.chosen = ""
        self._show()
        self.tell("Taken back.")

    def action_again(self) -> None:
        """Read it again as it lies otherwise."""
        self.ask_in_turn(self._again())

    async def _again(self) -> None:
        dialog = PhotoDialog(self._asked, "What was mended here is read anew, too.")
        if await self.app.push_screen_wait(dialog) and dialog.reading is not None:
            self._photo, self._asked = dialog.reading.photo, dialog.values
            self._before.clear()
            self._sheet.at, self._sheet.chosen = 0, ""
            self._show()

    # -- leaving -------------------------------------------------------------------

    def action_keep(self) -> None:
        """Take the fabrics into the plan; a refusal is said and keeps the sheet."""
        self.ask_in_turn(self._keep())

    async def _keep(self) -> None:
        instead = "beside"
        if there := self._keeper.there:
            choices = (
                Choice("beside", "keep them too"),
                Choice("instead", "have these in their place"),
            )
            title = f"The plan has {there} {'fabric' if there == 1 else 'fabrics'} already."
            instead = await self.app.push_screen_wait(ChoiceDialog(title, choices)) or ""
        if not instead:
            return
        if refusal := self._keeper.keep(self._photo, instead == "instead"):
            self.tell(refusal, refused=True)
        else:
            self.dismiss(self._photo)

    def action_leave(self) -> None:
        """Take off a mark, or leave; what was mended is not lost unasked."""
        if self._sheet.chosen:
            self._sheet.chosen = ""
            self._show()
        elif self._before:
            self.ask_in_turn(self._ask_to_leave())
        else:
            self.dismiss(None)

    async def _ask_to_leave(self) -> None:
        choices = (Choice("stay", "no, go on looking it over"), Choice("leave", "yes, leave it"))
        title = "Leave it? What was mended is lost, and nothing is kept."
        if await self.app.push_screen_wait(ChoiceDialog(title, choices)) == "leave":
            self.dismiss(None)


def _shown(place: Place) -> PlaceShown:
    return PlaceShown(place.letter, place.address, Block(place.colour, value(place.colour)))


async def photograph(
    app: App[Any], keeper: Keeper, moved: Mapping[str, tuple[str, ...]]
) -> ReadPhoto | None:
    """Ask for a photograph, show what was read, and keep it; None where nothing was kept."""
    dialog = PhotoDialog(keeper.offered)
    if not await app.push_screen_wait(dialog) or dialog.reading is None:
        return None
    screen = PhotoSheetScreen(dialog.reading.photo, dialog.values, keeper, moved)
    kept: ReadPhoto | None = await app.push_screen_wait(screen)
    return kept
