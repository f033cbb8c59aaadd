"""Asks which photograph, and reads it while the screen stays alive."""

from __future__ import annotations

import asyncio
from collections.abc import Mapping

from sewalong.fabrics.photo.refused import PhotoRefused
from sewalong.fabrics.photo.result import Reading
from sewalong.quilt.refusal import NumbersFault
from sewalong.screens.prompts.dialogs import Field, FormDialog
from sewalong.screens.widgets.literal_text import Words
from sewalong.service.photographs import PhotoAsked, photo_asked, read_photographed
from sewalong.store.faults import StoreFault

TITLE = "Fabrics from a photograph"
HINT = "One pack laid out on a plain cloth with gaps between, photographed from above."
READING = "Reading the photograph. It takes a few seconds; esc leaves it."
FIELDS = (
    ("file", "File (JPEG, PNG or WebP)", ""),
    ("grid", "Rows × squares in a row", "6 x 7"),
    ("packs", "Packs like it", "1"),
    ("corners", "Corners in pixels (empty: found by itself)", ""),
)
"""Each line to fill in: its id, what it asks, and what is offered."""


class PhotoDialog(FormDialog):
    """A form whose answers stay while the photograph is read, and where it is refused.

    `reading` is what was read, and `values` what was filled in, once it is left by True.
    """

    def __init__(self, before: Mapping[str, str], why: str = "") -> None:
        fields = [
            Field(id, label, before.get(id, start), prose=id in ("file", "corners"))
            for id, label, start in FIELDS
        ]
        super().__init__(TITLE, fields, lambda values: None, why or HINT, words_ahead=True)
        self.reading: Reading | None = None
        self.values: dict[str, str] = dict(before)
        self._is_reading = False

    def carry_out(self, values: dict[str, str]) -> str | None:
        """Begin to read; what is wrong with an answer is said at once."""
        if self._is_reading:
            return READING
        try:
            asked = photo_asked(**values)
        except NumbersFault as fault:
            return fault.sentence
        self.values, self._is_reading = values, True
        self.query_one(".dialog-refusal").add_class("calm")
        self.run_worker(self._read(asked))
        return READING

    async def _read(self, asked: PhotoAsked) -> None:
        said = ""
        try:
            # Away from the screen, which goes on meanwhile.
            self.reading = await asyncio.to_thread(read_photographed, asked)
        except (PhotoRefused, StoreFault) as refusal:
            said = str(refusal)
        self._is_reading = False
        if self.reading is not None:
            self.dismiss(True)
            return
        line = self.query_one(".dialog-refusal", Words)
        line.remove_class("calm")
        line.say(said)
        line.scroll_visible(animate=False)
