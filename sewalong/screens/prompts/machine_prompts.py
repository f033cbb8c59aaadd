"""Asks about the machine and its seam: settings, what was changed, measuring, pressing."""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec.structs import fields

from sewalong.lengths import LengthFault, parse
from sewalong.piecing.method import Station
from sewalong.progress.acts.counting import BobbinEmpty
from sewalong.progress.acts.notes import NotePress
from sewalong.progress.acts.said import Mention
from sewalong.progress.acts.seam import ChangeTool, Measure, RecordSettings
from sewalong.progress.measuring.at_risk import at_risk
from sewalong.progress.measuring.diagnosis import diagnose
from sewalong.progress.measuring.proof import proof
from sewalong.progress.record.measurable import measurable
from sewalong.progress.record.seam import Tool
from sewalong.progress.record.settings import Settings
from sewalong.screens.prompts.common import NOT_A_NUMBER, whole
from sewalong.screens.prompts.dialogs import Choice, ChoiceDialog, Field, FormDialog, LinesDialog

if TYPE_CHECKING:
    from fractions import Fraction

    from sewalong.screens.sewing import SewingScreen

_SETTING_LABELS = {
    "machine": "Machine",
    "foot": "Foot",
    "needle": "Needle (kind and size)",
    "needle_position": "Needle position",
    "stitch_length": "Stitch length",
    "thread": "Thread",
    "proof": "What proved it? (3 strips came to …)",
}


async def settings(screen: SewingScreen) -> None:
    """Write down the machine's settings and the test that proved them."""
    known = screen.quilt.state.settings or Settings()
    lines = [
        Field(field.name, _SETTING_LABELS[field.name], getattr(known, field.name))
        for field in fields(Settings)
    ]

    def carry_out(values: dict[str, str]) -> str | None:
        return screen.attempt(RecordSettings(Settings(**values)))

    await screen.app.push_screen_wait(FormDialog("Machine settings", lines, carry_out))


_CHANGES: dict[Tool, str] = {
    "blade": "a new blade in the cutter",
    "needle": "a new needle",
    "foot": "another foot on the machine",
    "bobbin": "a full bobbin",
    "power": "the machine was switched off and on",
}
RAN_OUT = "ran out"
SEEN_TO = "seen to"


async def changed(screen: SewingScreen) -> None:
    """A tool was changed, or the bobbin was found empty too late."""
    choices = [*(Choice(tool, words) for tool, words in _CHANGES.items())]
    choices.append(Choice(RAN_OUT, "the bobbin ran out and some were never sewn"))
    chosen = await screen.app.push_screen_wait(ChoiceDialog("What was changed?", choices))
    if chosen == RAN_OUT:
        await _bobbin_ran_out(screen)
        return
    for tool in _CHANGES:
        if tool == chosen:
            screen.attempt(ChangeTool(tool))


async def _bobbin_ran_out(screen: SewingScreen) -> None:
    sewn = [
        line.stage
        for line in screen.plan.lines
        if line.done and line.stage.station is Station.MACHINE
    ]
    if not sewn:
        screen.tell("Nothing was sewn yet.", refused=True)
        return
    choices = [Choice(stage.id, stage.label) for stage in sewn]
    dialog = ChoiceDialog("At which stage did it run out?", choices, screen.hand.line.stage.id)
    stage_id = await screen.app.push_screen_wait(dialog)
    if stage_id is None:
        return

    def carry_out(values: dict[str, str]) -> str | None:
        n = whole(values["n"])
        return NOT_A_NUMBER if n is None else screen.attempt(BobbinEmpty(stage_id, n))

    counts = next(stage.counts for stage in sewn if stage.id == stage_id)
    lines = (Field("n", f"How many {counts.many} were counted but never sewn?"),)
    await screen.app.push_screen_wait(FormDialog("The bobbin ran out", lines, carry_out))


async def press_direction(screen: SewingScreen) -> None:
    """Which way the seams of the stage in hand are pressed, in words."""
    stage = screen.hand.line.stage

    def carry_out(values: dict[str, str]) -> str | None:
        return screen.attempt(NotePress(stage.id, values["direction"]))

    known = screen.quilt.state.press.get(stage.id, "")
    lines = (Field("direction", "Which way, in words that will hold in a year?", known),)
    hint = "Such as: towards the darker cloth; or: rows 1, 3, 5 towards the tagged end."
    dialog = FormDialog(f"Pressing at {stage.label}", lines, carry_out, hint)
    await screen.app.push_screen_wait(dialog)


async def measure(screen: SewingScreen) -> None:
    """Take tape readings of a piece, record them, and say what they mean."""
    state = screen.quilt.state
    pieces = measurable(state.quilt, state.target)
    suggested = proof(state, screen.quilt.now()).piece
    choices = [Choice(piece.id, piece.words) for piece in pieces]
    risk = at_risk(state, screen.quilt.record)
    if risk is not None and not risk.none and not risk.seen_to:
        choices.insert(0, Choice(SEEN_TO, "nothing: the pieces at risk were all looked through"))
    piece = await screen.app.push_screen_wait(ChoiceDialog("Measure what?", choices, suggested))
    if piece is None:
        return
    if piece == SEEN_TO and risk is not None:
        screen.attempt(Mention(risk.mention), say=False)
        screen.tell("The pieces at risk were seen to.")
        return
    readings: list[Fraction] = []

    def take(values: dict[str, str]) -> str | None:
        try:
            texts = values["readings"].replace(";", ",").split(",")
            readings[:] = [parse(text, state.quilt.unit) for text in texts if text.strip()]
        except LengthFault as fault:
            return fault.sentence
        if not readings:
            return "Write at least one reading, such as 6 3/8."
        return screen.attempt(Measure(piece, tuple(readings)), say=False)

    words = next(p.words for p in pieces if p.id == piece)
    lines = (Field("readings", "What does the tape say? Several with commas between"),)
    hint = "Flat and pressed, raw edge to raw edge, without pulling."
    if await screen.app.push_screen_wait(FormDialog(f"Measure: {words}", lines, take, hint)):
        found = diagnose(state.quilt, state.target, piece, readings)
        risk = at_risk(screen.quilt.state, screen.quilt.record)
        doubtful = risk.lines if risk is not None and not risk.none and not risk.seen_to else ()
        await screen.app.push_screen_wait(LinesDialog("What it means", (*found.lines, *doubtful)))
        screen.show()
