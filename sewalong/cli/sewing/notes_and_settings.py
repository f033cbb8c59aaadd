"""What is written down: notes, the machine's settings, what was changed."""

from __future__ import annotations

import argparse

from msgspec.structs import asdict, replace

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt
from sewalong.cli.sewing.outcome import aftermath
from sewalong.progress.acts.notes import WriteNote
from sewalong.progress.acts.seam import ChangeTool, RecordSettings
from sewalong.progress.record.settings import Settings
from sewalong.progress.resuming.resume_facts import settings_in_words
from sewalong.service.open_quilt import OpenQuilt

NOT_CARRIED_OVER = (
    "The test noted before proved other settings, so it is not carried over. "
    "Sew a test piece, measure it, and record it with: sewalong settings --proof TEXT"
)


def note(args: argparse.Namespace, context: Context) -> Report:
    """`note TEXT…`"""
    with chosen_quilt(args, context) as quilt:
        return aftermath(quilt, quilt.do(WriteNote(" ".join(args.text))))


def changed(args: argparse.Namespace, context: Context) -> Report:
    """`changed blade|needle|foot|bobbin|power`"""
    with chosen_quilt(args, context) as quilt:
        return aftermath(quilt, quilt.do(ChangeTool(args.tool)))


def settings(args: argparse.Namespace, context: Context) -> Report:
    """`settings`: what is named is changed, what is not stays; alone, they are printed."""
    names = Settings.__struct_fields__
    given = {name: value for name in names if (value := getattr(args, name)) is not None}
    with chosen_quilt(args, context) as quilt:
        before = quilt.state.settings or Settings()
        if not given:
            return _told(quilt, before)
        after = replace(before, **given)
        if "proof" in given or replace(after, proof="") == replace(before, proof=""):
            return aftermath(quilt, quilt.do(RecordSettings(after)))
        report_proof_lost = (NOT_CARRIED_OVER,) if before.proof else ()
        return aftermath(
            quilt, quilt.do(RecordSettings(replace(after, proof=""))), first=report_proof_lost
        )


def _told(quilt: OpenQuilt, now: Settings) -> Report:
    data: dict[str, object] = {"quilt": quilt.entry.name, "settings": asdict(now)}
    if now == Settings():
        return Report(("No settings are recorded. See: sewalong settings --help",), data)
    proof = now.proof or "nothing yet. Sew a test piece and measure it."
    return Report((f"Machine: {settings_in_words(now)}", f"Proved by: {proof}"), data)
