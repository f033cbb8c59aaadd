"""`trim`: the size all units are trimmed to, and what the top comes to with it."""

from __future__ import annotations

import argparse
from collections.abc import Iterator

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.length_arguments import size_of
from sewalong.cli.frame.line_report import facts_of
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt
from sewalong.cli.sewing.outcome import aftermath
from sewalong.progress.acts.sizing import DecideUnit
from sewalong.progress.record.state import State
from sewalong.quilt.worksheet.basis import basis
from sewalong.quilt.worksheet.line import Line
from sewalong.quilt.worksheet.sizes import sizes
from sewalong.service.acting import do

_TOLD = ("unit unfinished", "trim units to", "unit finishes at", "centre", "top finishes at")


def trim(args: argparse.Namespace, context: Context) -> Report:
    """`trim SIZE|--usual`: all follows from it; alone, the size now decided is told."""
    with chosen_quilt(args, context) as quilt:
        if args.usual and args.size:
            raise CommandError("Give a size, or --usual; not both.")
        if not (args.size or args.usual):
            told = [*facts_of(_lines(quilt.state))]
            return Report(tuple(told), {"quilt": quilt.entry.name, **_data(quilt.state)})
        act = DecideUnit(None, None)
        if args.size:
            size = size_of(" ".join(args.size), quilt.state.quilt.unit)
            act = DecideUnit(size.width, size.length)
        outcome = do(quilt, act)
        told = [
            *facts_of(line for line in _lines(quilt.state) if not line.label.startswith("unit unf"))
        ]
        return aftermath(quilt, outcome, first=told, more=_data(quilt.state))


def _lines(state: State) -> Iterator[Line]:
    return (
        line
        for line in sizes(basis(state.quilt, state.target)).lines
        if line.label in _TOLD or line.label == "units can be trimmed to"
    )


def _data(state: State) -> dict[str, object]:
    """Sizes in inches, across and down."""
    rests_on = basis(state.quilt, state.target)
    each = {"unit": rests_on.unit, "centre": rests_on.centre, "finishes_at": rests_on.finishes_at}
    return {
        "trimmed": rests_on.is_trimmed,
        **{name: [float(one.width), float(one.length)] for name, one in each.items()},
    }
