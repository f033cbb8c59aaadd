"""Counting at a stage, taking apart, an empty bobbin, taking back and putting back."""

from __future__ import annotations

import argparse

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.facts import sentences
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt, stage_id
from sewalong.cli.sewing.caution_first import with_caution
from sewalong.cli.sewing.outcome import aftermath
from sewalong.progress.acts.counting import BobbinEmpty, Count, Unpick
from sewalong.progress.acts.undoing import Redo, Undo
from sewalong.progress.joining.next_joins import joining
from sewalong.progress.plan.plan import StageLine
from sewalong.progress.record.limits import a_stage
from sewalong.progress.record.route import JOIN_ROWS
from sewalong.service.acting import Outcome, do
from sewalong.service.looks import bobbin_lasts, where_it_ran_out
from sewalong.service.open_quilt import OpenQuilt


def count(args: argparse.Namespace, context: Context) -> Report:
    """`count STAGE [N]`: a caution that is due comes first; `--by`, `--place`: done elsewhere."""
    with chosen_quilt(args, context) as quilt:
        stage = stage_id(quilt.state.route, args.stage)
        if args.by is not None or args.place is not None:
            return _elsewhere(quilt, stage, args)
        outcome, aside = with_caution(quilt, Count(stage, args.n), args, context)
        # Of a join it is told what not naming the rows leaves unknown.
        more = joining(quilt.state).lines if stage == JOIN_ROWS else ()
        return _report(quilt, outcome, stage, aside, more)


def _elsewhere(quilt: OpenQuilt, stage: str, args: argparse.Namespace) -> Report:
    from sewalong.progress.acts.elsewhere import CountElsewhere
    from sewalong.progress.measuring.by_others import person_meant, seam_to_test

    if not (args.by or "").strip() and not (args.place or "").strip():
        raise CommandError("Say who did it with --by, or where with --place.")
    outcome = do(quilt, CountElsewhere(stage, args.n, args.place or "", args.by or ""))
    by = person_meant(quilt.state, (args.by or "").strip())
    owed = seam_to_test(quilt.state, stage, by)
    return _report(quilt, outcome, stage, besides=tuple(sentences(owed)) if owed else ())


def unpick(args: argparse.Namespace, context: Context) -> Report:
    """`unpick STAGE [N]`"""
    with chosen_quilt(args, context) as quilt:
        stage = stage_id(quilt.state.route, args.stage)
        return _report(quilt, do(quilt, Unpick(stage, args.n)), stage)


def bobbin(args: argparse.Namespace, context: Context) -> Report:
    """`bobbin STAGE UNSEWN`: what was counted and never sewn goes back to its pile; `bobbin` and
    `bobbin STAGE`: how long one lasts."""
    with chosen_quilt(args, context) as quilt:
        if args.unsewn is None:
            return _lasts(quilt, args.stage)
        stage = stage_id(quilt.state.route, args.stage)
        outcome = do(quilt, BobbinEmpty(stage, args.unsewn))
        line = outcome.plan.line(stage)
        done = f"{line.stage.label.capitalize()}: {line.stage.counts.count(line.done)} done"
        return aftermath(
            quilt,
            outcome,
            first=(f"{done}, {line.to_do} to go.",),
            more={"stage": stage, "done": line.done, "to_go": line.to_do},
        )


def undo(args: argparse.Namespace, context: Context) -> Report:
    """`undo`"""
    with chosen_quilt(args, context) as quilt:
        return aftermath(quilt, do(quilt, Undo()), first=("To put it back: sewalong redo",))


def redo(args: argparse.Namespace, context: Context) -> Report:
    """`redo`"""
    with chosen_quilt(args, context) as quilt:
        return aftermath(quilt, do(quilt, Redo()))


def _lasts(quilt: OpenQuilt, named: str | None) -> Report:
    state = quilt.state
    stages = state.route.stages if named is None else [a_stage(state, stage_id(state.route, named))]
    said = {stage.label: words for stage in stages if (words := bobbin_lasts(quilt, stage))}
    if not said:
        raise CommandError("No seam is sewn there whose length is known. Name a machine stage.")
    lines = [f"{label.capitalize()}: {words}" for label, words in said.items()]
    # Where it may have run out is of the last lot, whichever stage that was.
    lines += [
        f"If it ran out: {where}" for one in stages if (where := where_it_ran_out(quilt, one))
    ]
    return Report(tuple(lines), {"quilt": quilt.entry.name, "bobbin": said})


def _report(
    quilt: OpenQuilt,
    outcome: Outcome,
    stage: str,
    aside: tuple[str, ...] = (),
    besides: tuple[str, ...] = (),
) -> Report:
    line = outcome.plan.line(stage)
    more: dict[str, object] = {"stage": stage, "done": line.done, "to_go": line.to_do}
    return aftermath(quilt, outcome, first=(_to_go(line), *besides), aside=aside, more=more)


def _to_go(line: StageLine) -> str:
    label = line.stage.label.capitalize()
    if line.to_do:
        return f"{label}: {line.stage.counts.count(line.to_do)} to go."
    return f"{label}: none to go, {line.done} done."
