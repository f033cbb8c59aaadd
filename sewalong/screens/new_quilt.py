"""What shall it be? A new quilt by a few questions, complete from the first moment."""

from __future__ import annotations

import os
from collections.abc import Sequence

from msgspec.structs import replace

from sewalong.owner.preferences import AS_USUAL, Preferences
from sewalong.quilt.beginning.filled_in import FilledIn
from sewalong.quilt.worksheet.in_short import InShort
from sewalong.screens.answers import CHANGE, WALKING, AnswersScreen
from sewalong.screens.prompts.begun_prompt import BegunDialog
from sewalong.screens.prompts.dialogs import Choice, ChoiceDialog, Field, FormDialog
from sewalong.screens.widgets.keys import Key, help_at, keys_with
from sewalong.service.beginning import Beginning, beside
from sewalong.service.open_quilt import Clock
from sewalong.store.drafts import Draft, Drafts
from sewalong.store.faults import StoreFault
from sewalong.store.library import Library
from sewalong.store.quilt_files import write_quilt_file
from sewalong.store.writing import file_stem

START = Key("new.start", "s", "start", "start", "Begin the quilt.", True, words="done go begin")
FILE = Key(
    "new.file",
    "f",
    "as_a_file",
    "as a file",
    "Write what is filled in as a quilt file, to edit; nothing is begun by it.",
    True,
    words="write save quilt file toml edit",
)
THROW_AWAY = Key(
    "new.throw_away",
    "t",
    "throw_away",
    "throw away",
    "Throw this draft away, once that is confirmed.",
    words="delete remove discard",
)
LEAVE = Key(
    "new.leave",
    "escape",
    "leave",
    "keep as a draft",
    "Back to all quilts; what was answered is kept as a draft.",
    True,
    words="quit later",
)
KEYS = (CHANGE, START, FILE, *WALKING, THROW_AWAY, LEAVE, help_at("new"))


class NewQuiltScreen(AnswersScreen[str]):
    """The result is the key of the quilt that was begun, or None."""

    BINDINGS = [*(key.binding() for key in KEYS)]

    def __init__(
        self,
        library: Library,
        clock: Clock,
        preferences: Preferences = AS_USUAL,
        draft: Draft | None = None,
    ) -> None:
        self._library = library
        self._beginning = Beginning(
            Drafts(library.folder),
            clock,
            unit=preferences.unit,
            names=[entry.name for entry in library.entries()],
            draft=draft,
        )
        super().__init__(self._beginning, "A new quilt", "what shall it be?")
        self._all_keys = keys_with(preferences.keys, KEYS)
        self.keys = self._keys_now()

    def _keys_now(self) -> tuple[Key, ...]:
        """Where nothing is answered yet, there is nothing to keep or to throw away."""
        if self._beginning.is_kept:
            return self._all_keys
        keys = (key for key in self._all_keys if key.id != THROW_AWAY.id)
        return tuple(replace(key, short="back") if key.id == LEAVE.id else key for key in keys)

    def said_of(self, filled: FilledIn) -> tuple[InShort | None, Sequence[str]]:
        return (None, ()) if filled.quilt is None else beside(filled.quilt, filled.units)

    def fixed(self, id: str) -> str:
        return ""

    def taken(self) -> None:
        self.keys = self._keys_now()

    def trouble(self) -> str:
        return self._beginning.fault or super().trouble()

    def left(self) -> None:
        self.dismiss(None)

    def action_start(self) -> None:
        """Begin the quilt, and say where it is kept."""
        if self.is_changing:
            return
        try:
            entry = self._beginning.begin(self._library)
        except (ValueError, StoreFault) as refusal:
            self.tell(f"Not begun: {refusal}", refused=True)
            return
        self.ask_in_turn(self._begun(entry.key, entry.name))

    async def _begun(self, key: str, name: str) -> None:
        kept = BegunDialog(name, self._library.file, self._beginning.fault)
        if await self.app.push_screen_wait(kept):
            await self._write_file()
        self.dismiss(key)

    def action_as_a_file(self) -> None:
        """Write what is filled in as a quilt file; nothing is begun by it."""
        if self.is_changing:
            return
        try:
            self._beginning.quilt()
        except ValueError as refusal:
            self.tell(str(refusal), refused=True)
            return
        self.ask_in_turn(self._write_file())

    async def _write_file(self) -> None:
        text, name = self._beginning.file(), self._beginning.quilt().name
        written: list[str] = []

        def carry_out(values: dict[str, str]) -> str | None:
            path = os.path.abspath(os.path.expanduser(values["path"].strip()))
            try:
                write_quilt_file(path, text)
            except StoreFault as fault:
                return str(fault)
            written.append(path)
            return None

        start = os.path.join(os.path.expanduser("~"), f"{file_stem(name)}.toml")
        hint = "What is filled in, with a remark at each key. Nothing is begun by it."
        fields = (Field("path", "To which file?", start, prose=True),)
        await self.app.push_screen_wait(FormDialog("As a quilt file", fields, carry_out, hint))
        for path in written:
            self.tell(f"Written: {path}. Begin from it with: sewalong start FILE")

    def action_throw_away(self) -> None:
        """Throw the draft away, once that is confirmed."""
        if self._beginning.is_kept and not self.is_changing:
            self.ask_in_turn(self._throw_away())

    async def _throw_away(self) -> None:
        choices = (Choice("keep", "no, keep it"), Choice("throw", "yes, throw it away"))
        chosen = await self.app.push_screen_wait(ChoiceDialog("Throw this draft away?", choices))
        if chosen != "throw":
            return
        try:
            self._beginning.throw_away()
        except StoreFault as fault:
            self.tell(str(fault), refused=True)
            return
        self.dismiss(None)
