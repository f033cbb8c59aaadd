"""Which way the seams of a stage are pressed, kept in the owner's words."""

from __future__ import annotations

import argparse

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt, stage_id
from sewalong.cli.sewing.outcome import aftermath
from sewalong.progress.acts.notes import NotePress


def press(args: argparse.Namespace, context: Context) -> Report:
    """`press STAGE WORDS…`"""
    with chosen_quilt(args, context) as quilt:
        stage = stage_id(quilt.state.road, args.stage)
        recorded = quilt.do(NotePress(stage, " ".join(args.text)))
        return aftermath(quilt, recorded, more={"press": dict(quilt.state.press)})
