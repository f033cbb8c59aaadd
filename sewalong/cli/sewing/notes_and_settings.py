"""What is written down: notes, which way seams are pressed, the machine's settings, what was changed."""

from __future__ import annotations

import argparse

from msgspec.structs import asdict

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt, stage_id
from sewalong.cli.sewing.outcome import aftermath
from sewalong.progress.acts.notes import NotePress, WriteNote
from sewalong.progress.acts.seam import ChangeTool
from sewalong.progress.record.settings import Settings
from sewalong.progress.resuming.resume_facts import settings_in_words
from sewalong.service.acting import do
from sewalong.service.machine import PROOF_LOST, write_settings
from sewalong.service.open_quilt import OpenQuilt

NOT_CARRIED_OVER = (
    f"{PROOF_LOST}Sew a test piece, measure it, and record it with: sewalong settings --proof TEXT"
)


def note(args: argparse.Namespace, context: Context) -> Report:
    """`note TEXT…`"""
    with chosen_quilt(args, context) as quilt:
        return aftermath(quilt, do(quilt, WriteNote(" ".join(args.text))))


def press(args: argparse.Namespace, context: Context) -> Report:
    """`press STAGE WORDS…`: which way the seams of a stage are pressed."""
    with chosen_quilt(args, context) as quilt:
        stage = stage_id(quilt.state.route, args.stage)
        outcome = do(quilt, NotePress(stage, " ".join(args.text)))
        return aftermath(quilt, outcome, more={"press": dict(quilt.state.press)})


def changed(args: argparse.Namespace, context: Context) -> Report:
    """`changed blade|needle|foot|bobbin|power`"""
    with chosen_quilt(args, context) as quilt:
        return aftermath(quilt, do(quilt, ChangeTool(args.tool)))


def settings(args: argparse.Namespace, context: Context) -> Report:
    """`settings`: what is named is changed, what is not stays; alone, they are printed."""
    names = Settings.__struct_fields__
    given = {name: value for name in names if (value := getattr(args, name)) is not None}
    with chosen_quilt(args, context) as quilt:
        if not given:
            return _told(quilt, quilt.state.settings or Settings())
        written = write_settings(quilt, given)
        lost = (NOT_CARRIED_OVER,) if written.proof_lost else ()
        return aftermath(quilt, written.outcome, first=lost)


def _told(quilt: OpenQuilt, now: Settings) -> Report:
    data: dict[str, object] = {"quilt": quilt.entry.name, "settings": asdict(now)}
    if now == Settings():
        return Report(("No settings are recorded. See: sewalong settings --help",), data)
    proof = now.proof or "nothing yet. Sew a test piece and measure it."
    return Report((f"Machine: {settings_in_words(now)}", f"Tested by: {proof}"), data)
