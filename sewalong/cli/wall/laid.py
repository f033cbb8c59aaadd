"""A whole wall at once, proposed or typed; kept with --accept."""

from __future__ import annotations

import argparse

from msgspec.structs import replace

from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.input_files import read_text
from sewalong.cli.frame.report import Report
from sewalong.cli.sewing.outcome import aftermath
from sewalong.cli.wall.wall_report import told
from sewalong.progress.acts.wall import LayWall
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State
from sewalong.progress.sets.read_squares import fabric_typed
from sewalong.service.acting import do
from sewalong.service.open_quilt import OpenQuilt
from sewalong.service.wall.changes import with_laid
from sewalong.service.wall.proposals import (
    WallRules,
    accepting,
    best_layout,
    rules_now,
    to_propose,
)
from sewalong.wall.laying.plans import Plan

MOST_SECONDS = 600
"""Seconds to look for a better layout at the most: own choice, far more than brings anything."""

LONGEST_TYPED = 200_000
"""Bytes of a wall that is typed: ten thousand units by set, number and turn."""


def rules_typed(state: State, args: argparse.Namespace) -> WallRules:
    """The rules as they are typed; what is not typed stays as the wall was laid."""
    rules = rules_now(state)
    if args.touch is not None:
        rules = replace(rules, touch="corner" if args.touch == "points" else "edge")
    if args.stacks is not None:
        rules = replace(rules, stacks=args.stacks == "apart")
    if args.rim is not None:
        rim = "" if args.rim.strip() == "none" else fabric_typed(state.quilt, args.rim)
        rules = replace(rules, rim=rim)
    return rules


def proposed(quilt: OpenQuilt, args: argparse.Namespace) -> Report:
    """A layout as good as was found in the time."""
    if args.seconds is not None and not 1 <= args.seconds <= MOST_SECONDS:
        raise CommandError(f"--seconds takes a whole number from 1 to {MOST_SECONDS}.")
    quilt.refresh()
    state = quilt.state
    asked = to_propose(
        state,
        rules_typed(state, args),
        spread=args.spread,
        plan=_plan(args.plan),
        seed=1 if args.seed is None else args.seed,
    )
    act = accepting(asked, best_layout(asked.asked, args.seconds))
    plan = (asked.asked.plan.words,) if asked.asked.plan else ()
    return laid_report(quilt, act, args, plan, {"seed": asked.asked.seed})


def _plan(typed: str | None) -> Plan | None:
    if typed is None:
        return None
    wanted = " ".join(typed.casefold().replace("-", " ").split())
    if wanted not in tuple(Plan):
        raise CommandError(f"--plan takes one of: {', '.join(Plan)}.")
    return Plan(wanted)


def typed(quilt: OpenQuilt, args: argparse.Namespace) -> Report:
    """A wall typed row by row in a file, or on standard input."""
    from sewalong.service.wall.typed import lay_as_typed

    quilt.refresh()
    act = lay_as_typed(quilt.state, typed_text(args.typed))
    return laid_report(quilt, by_typed_rules(quilt.state, act, args), args)


def typed_text(file: str) -> str:
    """What was typed in a file, or on standard input for "-"."""
    return read_text(file, LONGEST_TYPED)


def by_typed_rules(state: State, act: LayWall, args: argparse.Namespace) -> LayWall:
    """The act with the rules that are typed."""
    rules = rules_typed(state, args)
    return replace(act, touch=rules.touch, stacks=rules.stacks, rim=rules.rim)


def laid_report(
    quilt: OpenQuilt,
    act: LayWall,
    args: argparse.Namespace,
    first: tuple[str, ...] = (),
    more: dict[str, object] | None = None,
) -> Report:
    """What is laid, told; recorded where that was asked for."""
    state = quilt.state
    after = with_laid(state, act)
    rules = WallRules(act.touch, act.stacks, act.rim)
    lines, data = told(after, to_propose(after, rules))
    data = {"quilt": quilt.entry.name, "accepted": args.accept, **data, **(more or {})}
    if not args.accept:
        last = "To have this on the wall: the same with --accept"
        return Report((*first, *lines, last), data)
    try:
        outcome = do(quilt, act)
    except Refused as refused:
        raise CommandError("\n".join((*first, str(refused)))) from refused
    return aftermath(quilt, outcome, first=(*first, *lines), more=data)
