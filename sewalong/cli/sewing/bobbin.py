"""An empty bobbin noticed late: what was counted and not sewn goes back to its pile."""

from __future__ import annotations

import argparse

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt, stage_id
from sewalong.cli.sewing.outcome import aftermath
from sewalong.progress.acts.counting import BobbinEmpty
from sewalong.progress.plan.plan import plan


def bobbin(args: argparse.Namespace, context: Context) -> Report:
    """`bobbin STAGE UNSEWN`: one event, so one undo takes it back."""
    with chosen_quilt(args, context) as quilt:
        stage = stage_id(quilt.state.road, args.stage)
        recorded = quilt.do(BobbinEmpty(stage, args.unsewn))
        line = plan(quilt.state).line(stage)
        label = line.stage.label.capitalize()
        return aftermath(
            quilt,
            recorded,
            first=(f"{label}: {line.stage.counts.count(line.done)} done, {line.to_do} to go.",),
            more={"stage": stage, "done": line.done, "to_go": line.to_do},
        )
