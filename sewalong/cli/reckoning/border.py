"""`reckon border`: any number of borders around a top."""

from __future__ import annotations

import argparse
from collections.abc import Iterator

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.length_arguments import read, read_join, read_size, unit_of
from sewalong.cli.frame.line_report import told
from sewalong.cli.frame.report import Report
from sewalong.cli.reckoning.strip_lines import strip_lines
from sewalong.lengths import Length, Unit, parse
from sewalong.quilt.cloth.borders import BorderPlan, Corners, borders
from sewalong.quilt.cloth.strips import QUARTER, USABLE
from sewalong.quilt.worksheet.line import Line, length_line, size_line


def border(args: argparse.Namespace, context: Context) -> Report:
    """`reckon border --top SIZE --cut LENGTH …`"""
    unit = unit_of(args)
    return told(_lines(args, unit), of="border", unit=unit.value)


def _lines(args: argparse.Namespace, unit: Unit) -> Iterator[Line]:
    """Any number of borders, the innermost first."""
    seam = read(args, "seam", QUARTER)
    if (args.top is None) == (args.centre_finishes is None):
        raise CommandError("Give one of --top (raw edge to raw edge) and --centre-finishes.")
    top = read_size(args, "top") if args.top else read_size(args, "centre-finishes").grown(seam)
    corners = {
        "sides-first": Corners.SIDES_FIRST,
        "ends-first": Corners.ENDS_FIRST,
        "mitred": Corners.MITRED,
    }[args.corners]
    plans = [BorderPlan(width, corners) for width in _widths(args.cut, unit)]
    plans += [
        BorderPlan.finishing_at(width, seam, corners) for width in _widths(args.finishes, unit)
    ]
    if not plans:
        raise CommandError(
            "Give the borders, the inner one first: --cut or --finishes, once for each."
        )
    found = borders(
        top, plans, seam=seam, usable=read(args, "usable", USABLE), join=read_join(args), unit=unit
    )
    for number, one in enumerate(found, start=1):
        label = f"border {number}"
        yield Line(label, f"cut at {one.strips.width_text}", one.reason, float(one.strips.width))
        if one.side_mitre is not None and one.end_mitre is not None:
            for where, mitre in (("sides", one.side_mitre), ("top and bottom", one.end_mitre)):
                yield length_line(f"{label}, {where}, at the least", mitre.least, unit)
                yield length_line(f"{label}, {where}, advised", mitre.advised, unit,
                                  "with some to cut off at the corners")  # fmt: skip
        yield from strip_lines(one.strips, unit)
        yield size_line(f"with {label}", one.outer, unit, "raw edge to raw edge")
        yield size_line(f"with {label} it finishes at", one.finishes_at, unit)


def _widths(typed: list[list[str]], unit: Unit) -> list[Length]:
    return [parse(" ".join(words), unit) for words in typed]
