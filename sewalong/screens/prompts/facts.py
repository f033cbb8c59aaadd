"""The facts for coming back as a dialog over the sewing screen, and what a sheet of them is given."""

from __future__ import annotations

from typing import Any

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import VerticalScroll
from textual.screen import Screen

from sewalong.progress.resuming.coming_back import AT_MOST, ComingBack
from sewalong.screens.prompts.dialogs import Dialog
from sewalong.screens.widgets.literal_text import Words
from sewalong.screens.widgets.return_sheet import ReturnSheet
from sewalong.service.looks import coloured, places, return_pictured, time_left, where_was_i
from sewalong.service.open_quilt import OpenQuilt


def fill(screen: Screen[Any], quilt: OpenQuilt) -> None:
    """Give the sheet on `screen` what takes longer: the picture of the piece in hand, and the hours.

    Geometry and forecast are loaded only when the words stand.
    """
    if not screen.query(ReturnSheet):
        return
    show_picture(screen, quilt)
    screen.query_one(ReturnSheet).say_time_left(time_left(quilt))


def show_picture(screen: Screen[Any], quilt: OpenQuilt) -> None:
    """Draw the piece in hand, or the top, as large as there is room for."""
    for sheet in screen.query(ReturnSheet):
        view, room = sheet.picture_room()
        found = return_pictured(quilt, *room)
        view.show(found.picture if found else None, coloured(quilt))


def notes_and_the_rest(back: ComingBack) -> list[str]:
    """What a sheet has no room for: further concerns, what was done last time, the notes."""
    rest = [(one.label, one.text) for one in back.concerns[AT_MOST:]]
    rest += [("Last time", back.last_time.text), ("Still to do", " ".join(back.units)), *back.notes]
    return [f"{label}: {text}" for label, text in rest]


def machine_and_proof(back: ComingBack) -> list[str]:
    """The machine's settings and how they were tested."""
    if not back.machine:
        return ["Nothing is written down of the machine, or nothing is left to sew."]
    return [f"{label}: {text}" for label, text in back.machine]


class FactsDialog(Dialog[None]):
    """Where was I? All of it, over the sewing screen."""

    BINDINGS = [Binding("enter,w,W", "leave", "leave", id="facts.leave")]

    def __init__(self, quilt: OpenQuilt) -> None:
        super().__init__()
        self.quilt = quilt

    def compose(self) -> ComposeResult:
        back = where_was_i(self.quilt)
        with VerticalScroll(classes="dialog"):
            away = f", {back.away}" if back.away else ""
            yield Words(f"Where was I?{away}", classes="dialog-title")
            yield ReturnSheet(back, whole=True)
            for place in places(self.quilt):
                yield Words(place, classes="dialog-line")
            yield Words("", classes="dialog-line")
            yield Words("esc: back", classes="dialog-hint")

    def on_mount(self) -> None:
        self.call_after_refresh(fill, self, self.quilt)
