"""Counting at a stage, taking apart, taking back."""

from __future__ import annotations

import argparse

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt, stage_id
from sewalong.cli.sewing.caution_first import with_caution
from sewalong.cli.sewing.notice import with_one_thing
from sewalong.cli.sewing.outcome import aftermath
from sewalong.progress.acts.counting import Count, Unpick
from sewalong.progress.acts.undoing import Undo
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.events import Recorded
from sewalong.progress.record.state import State
from sewalong.progress.resuming.interruption import after_interruption
from sewalong.service.open_quilt import OpenQuilt


def count(args: argparse.Namespace, context: Context) -> Report:
    """`count STAGE [N]`: a caution that is due comes first; after it at most one thing is said."""
    with chosen_quilt(args, context) as quilt:
        stage = stage_id(quilt.state.road, args.stage)
        pause = after_interruption(quilt.state, quilt.now())
        recorded, aside = with_caution(quilt, Count(stage, args.n), args, context)
        report = _report(quilt, stage, recorded, aside)
        return with_one_thing(report, quilt, quilt.now(), pause)


def unpick(args: argparse.Namespace, context: Context) -> Report:
    """`unpick STAGE [N]`"""
    with chosen_quilt(args, context) as quilt:
        stage = stage_id(quilt.state.road, args.stage)
        return _report(quilt, stage, quilt.do(Unpick(stage, args.n)))


def undo(args: argparse.Namespace, context: Context) -> Report:
    """`undo`"""
    with chosen_quilt(args, context) as quilt:
        return aftermath(quilt, quilt.do(Undo()))


def _report(
    quilt: OpenQuilt, stage: str, recorded: tuple[Recorded, ...], aside: tuple[str, ...] = ()
) -> Report:
    line = plan(quilt.state).line(stage)
    more: dict[str, object] = {"stage": stage, "done": line.done, "to_go": line.to_do}
    return aftermath(quilt, recorded, first=(_to_go(quilt.state, stage),), aside=aside, more=more)


def _to_go(state: State, stage: str) -> str:
    line = plan(state).line(stage)
    label = line.stage.label.capitalize()
    if line.to_do:
        return f"{label}: {line.stage.counts.count(line.to_do)} to go."
    return f"{label}: none to go, {line.done} done."
