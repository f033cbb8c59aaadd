"""Where to go: another stage, another target, aside, up again, done."""

from __future__ import annotations

import argparse

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt, stage_id
from sewalong.cli.sewing.outcome import aftermath
from sewalong.progress.acts.standing import LayAside, MarkDone, PickUp
from sewalong.progress.acts.steering import ChangeTarget, ChooseStage
from sewalong.progress.plan.plan import plan
from sewalong.progress.resuming.resume_facts import next_thing
from sewalong.service.acting import do
from sewalong.service.looks import about_stage


def stage(args: argparse.Namespace, context: Context) -> Report:
    """`stage STAGE`: turn to it, and say what is done there."""
    with chosen_quilt(args, context) as quilt:
        id = stage_id(quilt.state.route, args.stage)
        outcome = do(quilt, ChooseStage(id))
        now = outcome.plan
        line = now.line(id)
        about = about_stage(quilt, line.stage)
        here_now = [f"{label}: {text}" for label, text in about]
        if now.suggestion is None or now.suggestion.stage != id:
            # Otherwise the same is said as what comes next.
            here_now.insert(0, next_thing(line))
        more: dict[str, object] = {
            "stage": id,
            "to_go": line.to_do,
            "about": [{"label": label, "text": text} for label, text in about],
        }
        return aftermath(quilt, outcome, first=here_now, more=more)


def target(args: argparse.Namespace, context: Context) -> Report:
    """`target ROWS COLUMNS`"""
    with chosen_quilt(args, context) as quilt:
        outcome = do(quilt, ChangeTarget(args.rows, args.columns))
        units = outcome.plan.units
        noun = quilt.state.route.piles[quilt.state.quilt.method.unit].noun
        lines = [f"{noun.count(units.to_go).capitalize()} to go of {quilt.state.units_wanted}."]
        if units.spare:
            lines.append(f"{noun.count(units.spare).capitalize()} spare.")
        return aftermath(quilt, outcome, first=lines)


def lay_aside(args: argparse.Namespace, context: Context) -> Report:
    """`lay-aside [--reason TEXT]`"""
    with chosen_quilt(args, context) as quilt:
        outcome = do(quilt, LayAside(args.reason))
        return aftermath(quilt, outcome, first=("Pick it up again with: sewalong pick-up",))


def pick_up(args: argparse.Namespace, context: Context) -> Report:
    """`pick-up`"""
    with chosen_quilt(args, context) as quilt:
        return aftermath(quilt, do(quilt, PickUp()))


def done(args: argparse.Namespace, context: Context) -> Report:
    """`done`: what is still to do is said, and does not stand in the way."""
    with chosen_quilt(args, context) as quilt:
        left = [line for line in plan(quilt.state).lines if line.to_do]
        outcome = do(quilt, MarkDone())
        still = [
            f"Not counted: {line.stage.counts.count(line.to_do)} at {line.stage.label}."
            for line in left
        ]
        return aftermath(quilt, outcome, first=still)
