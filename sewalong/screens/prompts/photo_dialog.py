"""Asks which photograph, and reads it while the screen stays alive."""

from __future__ import annotations

import asyncio
from abc import abstractmethod
from collections.abc import Mapping
from typing import Generic, TypeVar

from sewalong.fabrics.photo.refused import PhotoRefused
from sewalong.fabrics.photo.result import Reading
from sewalong.piecing.faults import SizeRefused
from sewalong.progress.record.refused import Refused
from sewalong.quilt.refusal import NumbersFault
from sewalong.screens.prompts.dialogs import Field, FormDialog
from sewalong.screens.widgets.literal_text import Words
from sewalong.service.photographs import PhotoAsked, photo_asked, read_photographed
from sewalong.store.faults import StoreFault

TITLE = "Fabrics from a photograph"
HINT = "One pack laid out on a plain cloth with gaps between, photographed from above."
READING = "Reading the photograph. It takes a few seconds; esc leaves it."
FILE = "File (JPEG, PNG or WebP)"
CORNERS = "Corners in pixels (empty: found by itself)"
FIELDS = (
    ("file", FILE, ""),
    ("grid", "Rows × squares in a row", "6 x 7"),
    ("packs", "Packs like it", "1"),
    ("corners", CORNERS, ""),
)
"""Each line to fill in: its id, what it asks, and what is offered."""

Read = TypeVar("Read")


class ReadingDialog(FormDialog, Generic[Read]):
    """A form whose answers stay while the photograph is read, and where it is refused.

    `reading` is what was read, and `values` what was filled in, once it is left by True.
    """

    def __init__(
        self,
        title: str,
        fields: tuple[tuple[str, str, str], ...],
        before: Mapping[str, str],
        hint: str,
    ) -> None:
        boxes = [
            Field(id, label, before.get(id, start), prose=id in ("file", "corners"))
            for id, label, start in fields
        ]
        super().__init__(title, boxes, lambda values: None, hint, words_ahead=True)
        self.reading: Read | None = None
        self.values: dict[str, str] = dict(before)
        self._is_reading = False

    @abstractmethod
    def asked_for(self, values: dict[str, str]) -> PhotoAsked:
        """Which photograph is meant. Raises NumbersFault or Refused."""

    @abstractmethod
    def read(self, asked: PhotoAsked) -> Read:
        """What it shows, away from the screen. Raises PhotoRefused or StoreFault."""

    def carry_out(self, values: dict[str, str]) -> str | None:
        """Begin to read; what is wrong with an answer is said at once."""
        if self._is_reading:
            return READING
        try:
            asked = self.asked_for(values)
        except NumbersFault as fault:
            return fault.sentence
        except Refused as refused:
            return str(refused)
        self.values, self._is_reading = values, True
        self.query_one(".dialog-refusal").add_class("calm")
        self.run_worker(self._read(asked))
        return READING

    async def _read(self, asked: PhotoAsked) -> None:
        said = ""
        try:
            # Away from the screen, which goes on meanwhile.
            self.reading = await asyncio.to_thread(self.read, asked)
        except (PhotoRefused, StoreFault, SizeRefused) as refusal:
            said = str(refusal)
        self._is_reading = False
        if self.reading is not None:
            self.dismiss(True)
            return
        line = self.query_one(".dialog-refusal", Words)
        line.remove_class("calm")
        line.say(said)
        line.scroll_visible(animate=False)


class PhotoDialog(ReadingDialog[Reading]):
    """Asks for a photograph of squares, how they lie, and how many packs there are."""

    def __init__(self, before: Mapping[str, str], why: str = "") -> None:
        super().__init__(TITLE, FIELDS, before, why or HINT)

    def asked_for(self, values: dict[str, str]) -> PhotoAsked:
        """The photograph as it was filled in."""
        return photo_asked(**values)

    def read(self, asked: PhotoAsked) -> Reading:
        """The squares in it."""
        return read_photographed(asked)
