"""`reckon shrunk`: squares that measure less than their label. `reckon scale`: a sheet printed too small."""

from __future__ import annotations

import argparse
from fractions import Fraction

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.length_arguments import method_named, read, read_or_none, size_of, unit_of
from sewalong.cli.frame.line_report import told
from sewalong.cli.frame.report import Report
from sewalong.lengths import Length
from sewalong.piecing.derive import SEAM, unit_size
from sewalong.quilt.as_fraction import exactly
from sewalong.quilt.cloth.undersized import common_size, printed_at, recut
from sewalong.quilt.cloth.undersized import shrunk as less
from sewalong.quilt.worksheet.line import Line, length_line


def shrunk(args: argparse.Namespace, context: Context) -> Report:
    """`reckon shrunk --label 5 --measured 4 7/8 --method M`; several measurements with commas."""
    unit = unit_of(args)
    seam = read(args, "seam", SEAM)
    method = method_named(args.method)
    sizes = [size_of(part, unit) for part in " ".join(args.measured).split(",")]
    common = common_size(sizes, unit)

    def unit_of_square(side: Length) -> float:
        return unit_size(method, side, seam).width

    found = less(read(args, "label"), common, unit_of_square, args.in_row, unit)
    lines = [
        length_line("common size", found.common, unit, "the largest on a ruler that all can be cut to"),
        Line("unit, unfinished", exactly(found.unit, unit), found.reason, found.unit),
        Line("unit at the label", exactly(found.unit_at_label, unit), "", found.unit_at_label),
        Line("each unit loses", exactly(found.unit_loses, unit), "", found.unit_loses),
        Line(f"a row of {found.in_row} loses", exactly(found.row_loses, unit), "",
             found.row_loses),
    ]  # fmt: skip
    if args.pieces is not None:
        work = recut(args.pieces)
        lines.append(
            Line("cutting them down", f"{work.cuts:,} cuts", f"{work.edges:,} edges, half may stay")
        )
    return told(lines, method=method.id, unit=unit.value)


def scale(args: argparse.Namespace, context: Context) -> Report:
    """`reckon scale --should-be 1 --measured 0.96 [--size 12 1/2]`"""
    unit = unit_of(args)
    at = printed_at(read(args, "should-be"), read(args, "measured"))
    lines = [Line("printed at", f"{float(at * 100):.1f} %", "of what it should be")]
    size = read_or_none(args, "size")
    if size is not None:
        lines.append(length_line("so that size comes out at", size * at, unit))
    if at != Fraction(1):
        lines.append(Line("what to do", "print it again at its full size, then measure the test "
                          "square before cutting"))  # fmt: skip
    return told(lines, unit=unit.value)
