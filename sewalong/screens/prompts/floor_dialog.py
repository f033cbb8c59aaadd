"""Asks which photograph of the units laid out, and reads it while the screen stays alive."""

from __future__ import annotations

from collections.abc import Mapping

from sewalong.fabrics.floor.result import FloorReading
from sewalong.progress.record.state import State
from sewalong.screens.prompts.photo_dialog import CORNERS, FILE, ReadingDialog
from sewalong.service.photographs import PhotoAsked
from sewalong.service.wall.floor_photographs import floor_asked, read_on_the_floor

TITLE = "The wall from a photograph"
HINT = "All units laid out in their rows, photographed from above, row 1 uppermost."
FIELDS = (("file", FILE, ""), ("corners", CORNERS, ""))


class FloorDialog(ReadingDialog[FloorReading]):
    """Asks for a photograph of as many units as the layout wanted has."""

    def __init__(self, state: State, before: Mapping[str, str], why: str = "") -> None:
        super().__init__(TITLE, FIELDS, before, why or HINT)
        self._state = state

    def asked_for(self, values: dict[str, str]) -> PhotoAsked:
        """The photograph as it was filled in."""
        return floor_asked(self._state, **values)

    def read(self, asked: PhotoAsked) -> FloorReading:
        """Which unit lies where in it."""
        return read_on_the_floor(self._state, asked)
