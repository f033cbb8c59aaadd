"""`tonight`: what to do in the minutes there are."""

from __future__ import annotations

import argparse

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.facts import sentences
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt
from sewalong.service.looks import tonight as evening

_DAY = 24 * 60


def tonight(args: argparse.Namespace, context: Context) -> Report:
    """`tonight MINUTES [--without WORD]…`"""
    if not 1 <= args.minutes <= _DAY:
        raise CommandError(f"Give the minutes you have, from 1 to {_DAY}.")
    words = [word for text in args.without for word in text.replace(",", " ").split()]
    with chosen_quilt(args, context) as quilt:
        found = evening(quilt, args.minutes, words)
        lines: list[str] = []
        for n, step in enumerate(found.steps, start=1):
            first, *others = step.facts
            lines += [f"{n}. {first}", *others]
        if found.steps:
            lines.append(f"In all {found.in_all}, of your {args.minutes}.")
        lines += sentences(found.ending)
        if found.left_out:
            lines.append(f"Left out, and it can wait: {found.left_out}.")
        data = {
            "quilt": quilt.entry.name,
            "minutes": args.minutes,
            "used": round(found.minutes, 1),
            "changes_of_station": found.changes,
            "steps": [
                {
                    "stage": step.stage,
                    "station": step.station.value,
                    "n": step.n,
                    "minutes": round(step.minutes, 1),
                    "measured": step.measured,
                    "why": step.why,
                }
                for step in found.steps
            ],
            "ending": found.ending,
            "left_out": found.left_out or None,
        }
        return Report(tuple(lines), data)
