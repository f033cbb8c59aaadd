"""`reckon thread`: thread for so many seams of one length."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from fractions import Fraction

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.length_arguments import read, read_or_none, unit_of
from sewalong.cli.frame.line_report import told
from sewalong.cli.frame.report import Report
from sewalong.lengths import METRE, Unit
from sewalong.quilt.cloth.thread import LOCKSTITCH_RATIO, WASTE, lockstitch_ratio, seam_run, wound
from sewalong.quilt.cloth.thread import thread as thread_for
from sewalong.quilt.worksheet.line import Line, plural
from sewalong.quilt.worksheet.thread_lines import long_text


def thread(args: argparse.Namespace, context: Context) -> Report:
    """`reckon thread --each LENGTH --times N`"""
    unit = unit_of(args)
    return told(_lines(args, unit), of="thread", unit=unit.value)


def _lines(args: argparse.Namespace, unit: Unit) -> Iterator[Line]:
    """Thread for so many seams of one length."""
    ratio = LOCKSTITCH_RATIO
    thickness = read_or_none(args, "thickness")
    if (thickness is None) != (args.stitches is None):
        raise CommandError("Give --thickness and --stitches together.")
    if thickness is not None:
        ratio = lockstitch_ratio(thickness, Fraction(args.stitches))
    waste = WASTE if args.waste is None else Fraction(args.waste, 100)
    times = 1 if args.times is None else args.times
    found = thread_for([seam_run("seams", read(args, "each"), times)],
                   ratio=ratio, waste=waste, unit=unit)  # fmt: skip
    yield Line("seam", long_text(found.seam, unit), f"{times} of them", float(found.seam))
    yield Line("thread", long_text(found.total, unit), found.reason, float(found.total))
    for name, length in (("needle", found.needle), ("bobbin", found.bobbin)):
        yield Line(f"in the {name}", long_text(length, unit), "half", float(length))
    for name, each, length in (
        ("spool", args.spool, found.total),
        ("bobbin", args.bobbin, found.bobbin),
    ):
        if each is not None:
            count = wound(length, each * METRE, unit).count
            yield Line(f"{name}s", f"{plural(count, name)} of {each:,} m")
