"""What is written down: notes, the machine's settings, what was changed."""

from __future__ import annotations

import argparse
from dataclasses import asdict, replace

from sewalong.cli.aftermath import aftermath
from sewalong.cli.choosing import chosen_quilt
from sewalong.cli.here import Here
from sewalong.cli.registry import SETTINGS
from sewalong.cli.report import Report
from sewalong.progress.commands import ChangeTool, RecordSettings, WriteNote
from sewalong.progress.events import Settings
from sewalong.progress.returning import settings_in_words
from sewalong.store.open_quilt import OpenQuilt

NOT_CARRIED_OVER = (
    "The test noted before proved other settings, so it is not carried over. "
    "Sew a test piece, measure it, and record it with: sewalong settings --proof TEXT"
)


def note(args: argparse.Namespace, here: Here) -> Report:
    """`note TEXT…`"""
    with chosen_quilt(args, here) as quilt:
        return aftermath(quilt, quilt.do(WriteNote(" ".join(args.text))))


def changed(args: argparse.Namespace, here: Here) -> Report:
    """`changed blade|needle|foot|bobbin|power`"""
    with chosen_quilt(args, here) as quilt:
        return aftermath(quilt, quilt.do(ChangeTool(args.tool)))


def settings(args: argparse.Namespace, here: Here) -> Report:
    """`settings`: what is named is changed, what is not stays; alone, they are printed."""
    names = [name.replace("-", "_") for name in SETTINGS]
    given = {name: value for name in names if (value := getattr(args, name)) is not None}
    with chosen_quilt(args, here) as quilt:
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
