"""Asks about the machine and its seam: settings, what was changed, measuring."""

from __future__ import annotations

from sewalong.lengths import LengthFault, parse_across_and_down
from sewalong.progress.acts.counting import BobbinEmpty
from sewalong.progress.acts.seam import ChangeTool
from sewalong.progress.acts.sizing import DecideUnit
from sewalong.progress.measuring.at_risk import AtRisk
from sewalong.progress.measuring.proof import proof
from sewalong.progress.record.events.counting import may_not_be_sewn, still_whole
from sewalong.progress.record.events.seam import Tool
from sewalong.progress.record.measurable import measurable
from sewalong.progress.record.settings import Settings
from sewalong.progress.record.state import Standing
from sewalong.screens.prompts.common import whole
from sewalong.screens.prompts.desk import Desk
from sewalong.screens.prompts.dialogs import Choice, ChoiceDialog, Field, FormDialog, LinesDialog
from sewalong.service.acting import Outcome
from sewalong.service.looks import where_it_ran_out
from sewalong.service.machine import (
    NOTHING_CHANGED,
    PROOF_LOST,
    Measurement,
    SettingsWritten,
    in_doubt,
    saw_to_them,
    still_in_doubt,
    write_settings,
)
from sewalong.service.machine import measure as measure_piece

NOT_CARRIED_OVER = (
    f"Written down. {PROOF_LOST}Sew a test piece, measure it, and write that down too."
)

_SETTING_LABELS = {
    "machine": "Machine",
    "foot": "Foot",
    "needle": "Needle (kind and size)",
    "needle_position": "Needle position",
    "stitch_length": "Stitch length",
    "thread": "Thread",
    "proof": "How was it tested? (3 strips came to …)",
}

_NUMBERS = ("needle_position", "stitch_length")


async def settings(desk: Desk) -> None:
    """Write down the machine's settings and the test that proved them."""
    known = desk.quilt.state.settings or Settings()
    lines = [
        Field(name, _SETTING_LABELS[name], getattr(known, name), name not in _NUMBERS)
        for name in Settings.__struct_fields__
    ]

    def carry_out(values: dict[str, str]) -> str | None:
        # A test that proved other settings is not carried over, so only what is new is told.
        new = {name: value for name, value in values.items() if value != getattr(known, name)}
        if not new and desk.quilt.state.settings is not None:
            desk.tell(NOTHING_CHANGED)
            return None
        written: list[SettingsWritten] = []

        def write() -> Outcome:
            written[:] = [write_settings(desk.quilt, new)]
            return written[0].outcome

        refusal = desk.carry(write)
        if written and written[0].proof_lost:
            desk.tell(NOT_CARRIED_OVER)
        return refusal

    await desk.app.push_screen_wait(FormDialog("Machine settings", lines, carry_out))


_CHANGES: dict[Tool, str] = {
    "blade": "a new blade in the cutter",
    "needle": "a new needle",
    "foot": "another foot on the machine",
    "bobbin": "a full bobbin",
    "power": "the machine was switched off and on",
}
RAN_OUT = "ran out"
SEEN_TO = "seen to"
TRIM_ALL = "trim all"
ANOTHERS = "another's"


async def changed(desk: Desk) -> None:
    """A tool was changed, or the bobbin was found empty too late."""
    choices = [*(Choice(tool, words) for tool, words in _CHANGES.items())]
    if desk.quilt.state.standing is Standing.IN_PROGRESS:
        choices.append(Choice(RAN_OUT, "the bobbin ran out and some were never sewn"))
    chosen = await desk.app.push_screen_wait(ChoiceDialog("What was changed?", choices))
    if chosen == RAN_OUT:
        await _bobbin_ran_out(desk)
        return
    for tool in _CHANGES:
        if tool == chosen:
            desk.attempt(ChangeTool(tool))


async def _bobbin_ran_out(desk: Desk) -> None:
    state = desk.quilt.state
    sewn = may_not_be_sewn(state)
    if not sewn:
        desk.tell(
            "Nothing lies there that was just sewn. Choose a full bobbin instead.", refused=True
        )
        return
    choices = [Choice(stage.id, stage.label) for stage in sewn]
    dialog = ChoiceDialog(
        "At which stage did it run out?", choices, desk.outcome.hand.line.stage.id
    )
    stage_id = await desk.app.push_screen_wait(dialog)
    if stage_id is None:
        return

    def carry_out(values: dict[str, str]) -> str | None:
        return desk.attempt(BobbinEmpty(stage_id, whole(values["n"])))

    stage = next(stage for stage in sewn if stage.id == stage_id)
    most = stage.counts.count(still_whole(state, stage))
    lines = (Field("n", f"How many of the last {most} were counted but never sewn?", "1"),)
    hint = where_it_ran_out(desk.quilt, stage)
    await desk.app.push_screen_wait(FormDialog("The bobbin ran out", lines, carry_out, hint))


async def measure(desk: Desk) -> None:
    """Take tape readings of a piece, record them, and say what they mean."""
    state = desk.quilt.state
    pieces = measurable(state.quilt, state.target)
    suggested = proof(state, desk.quilt.now()).piece
    choices = [Choice(piece.id, piece.words) for piece in pieces]
    choices.append(Choice(ANOTHERS, "a piece that somebody else sewed, at another machine"))
    if state.standing is Standing.IN_PROGRESS:
        choices.append(Choice(TRIM_ALL, "nothing: say what all units are trimmed to"))
    if (risk := in_doubt(desk.quilt)) is not None and not risk.none:
        choices.insert(
            0, Choice(SEEN_TO, "nothing: the pieces that may be wrong were all looked through")
        )
    piece = await desk.app.push_screen_wait(ChoiceDialog("Measure what?", choices, suggested))
    if piece is None:
        return
    if piece == TRIM_ALL:
        await _trim_all(desk)
        return
    if piece == SEEN_TO:
        desk.carry(lambda: saw_to_them(desk.quilt))
        return
    by_another = piece == ANOTHERS
    if by_another:
        of = [Choice(piece.id, piece.words) for piece in pieces]
        dialog = ChoiceDialog("Measure what, of what somebody else sewed?", of, suggested)
        if (piece := await desk.app.push_screen_wait(dialog)) is None:
            return
    await _measure_piece(desk, piece, by_another=by_another)


async def _measure_piece(desk: Desk, piece: str, *, by_another: bool) -> None:
    """What the tape says of one piece, of the owner's own or, asked for by name, another's."""
    state = desk.quilt.state
    taken: list[Measurement] = []

    def take(values: dict[str, str]) -> str | None:
        if not values["readings"].strip():
            return "Write at least one reading, such as 6 3/8."
        if by_another and not values["by"].strip():
            return "Write who sewed it, so that it tells of that seam and not of yours."
        try:
            return desk.carry(lambda: measured(values), say=False)
        except LengthFault as fault:
            return fault.sentence

    def measured(values: dict[str, str]) -> Outcome:
        took = measure_piece(desk.quilt, piece, values["readings"], by=values.get("by", "").strip())
        taken[:] = [took]
        return took.outcome or desk.outcome

    chosen = next(one for one in measurable(state.quilt, state.target) if one.id == piece)
    lines = [Field("readings", "What does the tape say? Several with commas between")]
    if by_another:
        known = [name for name in state.elsewhere.values() if name]
        lines.append(Field("by", "Who sewed it?", known[-1] if known else "", prose=True))
    hint = f"Flat and pressed, {chosen.edges}, without pulling."
    if await desk.app.push_screen_wait(FormDialog(f"Measure: {chosen.words}", lines, take, hint)):
        (took,) = taken
        doubtful = took.risk.lines if took.risk is not None else ()
        what_to_do, *why = took.found.lines
        await desk.app.push_screen_wait(LinesDialog(what_to_do, (*why, *doubtful)))
        if took.may_clear is not None:
            await _all_right(desk, took.may_clear)


async def _all_right(desk: Desk, risk: AtRisk) -> None:
    """Ask whether the others in doubt are right as well; they are in doubt until that is said."""
    choices = (
        Choice("no", "not all of them were looked through yet"),
        Choice(SEEN_TO, "all are right, or put right: don't speak of them again"),
    )
    title = f"{still_in_doubt(risk)} Are they right, too?"
    if await desk.app.push_screen_wait(ChoiceDialog(title, choices)) == SEEN_TO:
        desk.carry(lambda: saw_to_them(desk.quilt))


async def _trim_all(desk: Desk) -> None:
    """Decide what all units are trimmed to; every size after them follows."""

    def carry_out(values: dict[str, str]) -> str | None:
        try:
            width, height = parse_across_and_down(values["size"], desk.quilt.state.quilt.unit)
        except LengthFault as fault:
            return fault.sentence
        return desk.attempt(DecideUnit(width, height))

    lines = (Field("size", "Trim all units to? Across x down, or one length for a square"),)
    hint = "Raw edge to raw edge. Rows, centre, borders and all cloth follow it."
    await desk.app.push_screen_wait(FormDialog("Trim all units", lines, carry_out, hint))
