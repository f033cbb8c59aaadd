"""`reckon strips`: strips of one width joined to a length."""

from __future__ import annotations

import argparse
from collections.abc import Iterator

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.length_arguments import read, read_join, unit_of
from sewalong.cli.frame.line_report import told
from sewalong.cli.frame.report import Report
from sewalong.cli.reckoning.strip_lines import strip_lines
from sewalong.lengths import Unit
from sewalong.quilt.cloth.strips import QUARTER, USABLE, strips_for
from sewalong.quilt.worksheet.line import Line, length_line


def strips(args: argparse.Namespace, context: Context) -> Report:
    """`reckon strips --length LENGTH --width LENGTH`"""
    unit = unit_of(args)
    return told(_lines(args, unit), of="strips", unit=unit.value)


def _lines(args: argparse.Namespace, unit: Unit) -> Iterator[Line]:
    """The strips and their cloth, and how long they are when joined."""
    found = strips_for(
        read(args, "length"),
        read(args, "width"),
        usable=read(args, "usable", USABLE),
        join=read_join(args),
        seam=read(args, "seam", QUARTER),
        unit=unit,
    )
    yield from strip_lines(found, unit)
    yield length_line("joined they come to", found.joined, unit)
