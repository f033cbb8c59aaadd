"""`fabrics`: what she has squares of, said in a few words or read off a photograph."""

from __future__ import annotations

import argparse

from sewalong.cli.cloth.fabric_report import fabric_data, fabric_lines, facts
from sewalong.cli.cloth.photographed import photographed
from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt
from sewalong.cli.sewing.outcome import aftermath
from sewalong.service.acting import do
from sewalong.service.fabric_changes import say_fabrics

_OF_A_PHOTO = ("grid", "corners", "packs", "sheet", "split", "merge", "rename", "keep")


def fabrics(args: argparse.Namespace, context: Context) -> Report:
    """`fabrics [--say FABRICS]`, `fabrics --photo FILE --grid 6x7 …`"""
    if args.photo is not None:
        if args.say:
            raise CommandError("Say fabrics, or read them off a photograph; one at a time.")
        return photographed(args, context)
    given = [name for name in _OF_A_PHOTO if getattr(args, name) not in (None, [], False)]
    if given:
        raise CommandError(f"--{given[0]} goes with --photo. Name the photograph.")
    with chosen_quilt(args, context) as quilt:
        if not args.say:
            return Report(fabric_lines(quilt), {"quilt": quilt.entry.name, **fabric_data(quilt)})
        quilt.refresh()
        outcome = do(quilt, say_fabrics(quilt, ", ".join(args.say)))
        return aftermath(quilt, outcome, first=facts(quilt), more=fabric_data(quilt))
