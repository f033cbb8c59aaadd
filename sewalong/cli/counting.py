"""Counting at a stage, taking apart, taking back."""

from __future__ import annotations

import argparse

from sewalong.cli.aftermath import aftermath
from sewalong.cli.choosing import chosen_quilt, stage_id
from sewalong.cli.here import Here
from sewalong.cli.report import Report
from sewalong.cli.trouble import Trouble
from sewalong.progress.cautions import Caution
from sewalong.progress.commands import Count, ReadCaution, Undo, Unpick
from sewalong.progress.decide import CautionFirst
from sewalong.progress.events import Recorded
from sewalong.progress.plan import plan
from sewalong.progress.state import State
from sewalong.store.open_quilt import OpenQuilt


def count(args: argparse.Namespace, here: Here) -> Report:
    """`count STAGE [N]`: a caution that is due comes first."""
    with chosen_quilt(args, here) as quilt:
        stage = stage_id(quilt.state.road, args.stage)
        try:
            recorded = quilt.do(Count(stage, args.n))
            aside: tuple[str, ...] = ()
        except CautionFirst as due:
            aside = _caution_lines(due.caution)
            if not args.caution_read:
                _wait_until_read(aside, here)
                aside = ()
            recorded = _count_after_caution(quilt, stage, args.n)
        return _report(quilt, stage, recorded, aside)


def _count_after_caution(quilt: OpenQuilt, stage: str, n: int) -> tuple[Recorded, ...]:
    read = quilt.do(ReadCaution(stage))
    return (*read, *quilt.do(Count(stage, n)))


def _wait_until_read(lines: tuple[str, ...], here: Here) -> None:
    if not here.interactive:
        again = "Nothing was counted. When you have read this, count again with --caution-read"
        raise Trouble("\n".join((*lines, again)))
    said = here.ask(*lines, "Press Enter to say that you have read this, or n to stop:")
    if said:
        raise Trouble("Nothing was counted.")


def _caution_lines(caution: Caution) -> tuple[str, ...]:
    return (f"Caution ({caution.why.value}): {caution.title}", *caution.lines)


def unpick(args: argparse.Namespace, here: Here) -> Report:
    """`unpick STAGE [N]`"""
    with chosen_quilt(args, here) as quilt:
        stage = stage_id(quilt.state.road, args.stage)
        return _report(quilt, stage, quilt.do(Unpick(stage, args.n)))


def undo(args: argparse.Namespace, here: Here) -> Report:
    """`undo`"""
    with chosen_quilt(args, here) as quilt:
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
