"""`reckon border-length`: the length to cut from the real top. `reckon pieced-border`: units along an edge."""

from __future__ import annotations

import argparse

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.length_arguments import read, unit_of
from sewalong.cli.frame.line_report import told
from sewalong.cli.frame.report import Report
from sewalong.lengths import as_given, parse_several
from sewalong.quilt.as_fraction import exactly
from sewalong.quilt.cloth.border_length import SPREAD_LIMIT, LengthRule
from sewalong.quilt.cloth.border_length import border_length as length_of
from sewalong.quilt.cloth.pieced_border import pieced_border as fitted
from sewalong.quilt.cloth.strips import QUARTER
from sewalong.quilt.worksheet.line import Line, length_line

RULES = {"mean": LengthRule.MEAN, "middle": LengthRule.MIDDLE}


def border_length(args: argparse.Namespace, context: Context) -> Report:
    """`reckon border-length 59 1/2, 60, 60 3/4 [--rule mean|middle]`"""
    unit = unit_of(args)
    measured = parse_several(" ".join(args.measured), unit)
    found = length_of(
        measured, RULES[args.rule], limit=read(args, "limit", SPREAD_LIMIT), unit=unit
    )
    lines = [
        length_line("cut two at", found.length, unit, found.reason),
        Line("exactly", exactly(found.exact, unit), found.rule.value, float(found.exact)),
        length_line("they differ by", found.spread, unit),
    ]
    for one, over in zip(measured, found.to_ease, strict=True):
        way = "to ease in" if over > 0 else "to stretch"
        text = f"{as_given(abs(over), unit)} {way}" if over else "as the border"
        lines.append(Line(f"where it measures {as_given(one, unit)}", text, "", float(over)))
    if found.warning:
        lines.append(Line("too far apart", found.warning))
    return told(lines, unit=unit.value)


def pieced_border(args: argparse.Namespace, context: Context) -> Report:
    """`reckon pieced-border --edge 46 --piece 5`"""
    unit = unit_of(args)
    found = fitted(read(args, "edge"), read(args, "piece"), read(args, "seam", QUARTER), unit)
    lines = [
        Line("pieces along the edge", str(found.units), found.reason),
        length_line("they come to", found.length, unit, "finished"),
    ]
    if found.spacer:
        lines.append(length_line("spacer each side, finished", found.spacer, unit))
        lines.append(length_line("cut the spacers at", found.cut, unit))
    return told(lines, unit=unit.value)
