"""`reckon batting`: the smallest batting for a top, or the largest top for a batting."""

from __future__ import annotations

import argparse
from collections.abc import Iterator

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.length_arguments import read, read_size, unit_of
from sewalong.cli.frame.line_report import told
from sewalong.cli.frame.report import Report
from sewalong.lengths import Unit, as_given
from sewalong.quilt.cloth.backing import MARGIN
from sewalong.quilt.cloth.batting import largest_top, smallest_batting
from sewalong.quilt.worksheet.line import Line, size_line


def batting(args: argparse.Namespace, context: Context) -> Report:
    """`reckon batting --top SIZE`"""
    unit = unit_of(args)
    return told(_lines(args, unit), of="batting", unit=unit.value)


def _lines(args: argparse.Namespace, unit: Unit) -> Iterator[Line]:
    """The smallest batting for a top, or the largest top for a batting."""
    margin = read(args, "margin", MARGIN)
    if args.top is None and args.batting is None:
        raise CommandError("Give --top, or --batting for the largest top it allows.")
    if args.top is not None:
        choice = smallest_batting(read_size(args, "top"), margin=margin, unit=unit)
        size = choice.need if choice.batting is None else choice.batting.size
        name = "none on sale is large enough" if choice.batting is None else choice.batting.name
        yield Line("batting", f"{name}, {size.show(unit)}", choice.reason,
                   float(size.width), float(size.length))  # fmt: skip
    if args.batting is not None:
        top = largest_top(read_size(args, "batting"), margin, unit)
        yield size_line("largest top", top, unit, f"{as_given(margin, unit)} each side")
