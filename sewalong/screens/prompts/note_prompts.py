"""Asks for the person's own words: a note, and which way seams are pressed."""

from __future__ import annotations

from sewalong.progress.acts.notes import NotePress, WriteNote
from sewalong.progress.resuming.about_stage import press_plan
from sewalong.screens.prompts.desk import Desk
from sewalong.screens.prompts.dialogs import Field, FormDialog


async def note(desk: Desk) -> None:
    """Write a note."""

    def carry_out(values: dict[str, str]) -> str | None:
        return desk.attempt(WriteNote(values["text"]))

    hint = "Say why as well as what: a bare number is not believed a year later."
    lines = (Field("text", "Note", prose=True),)
    await desk.app.push_screen_wait(
        FormDialog("A note for yourself", lines, carry_out, hint, words_ahead=True)
    )


async def press_direction(desk: Desk) -> None:
    """Which way the seams of the stage in hand are pressed, in words."""
    stage = desk.outcome.hand.line.stage

    def carry_out(values: dict[str, str]) -> str | None:
        return desk.attempt(NotePress(stage.id, values["direction"]))

    known = desk.quilt.state.press.get(stage.id, "")
    lines = (
        Field("direction", "Which way, in words that will hold in a year?", known, prose=True),
    )
    plan = " ".join(press_plan(desk.quilt.state, stage))
    hint = plan or "Such as: towards the darker cloth; or: rows 1, 3, 5 towards the tagged end."
    dialog = FormDialog(f"Pressing at {stage.label}", lines, carry_out, hint, words_ahead=True)
    await desk.app.push_screen_wait(dialog)
