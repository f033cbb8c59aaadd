"""`reckon binding`: straight or bias, from new cloth or from a piece in hand."""

from __future__ import annotations

import argparse
from collections.abc import Iterator

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.length_arguments import read, read_join, read_size, unit_of
from sewalong.cli.frame.line_report import told
from sewalong.cli.frame.report import Report
from sewalong.cli.reckoning.strip_lines import strip_lines
from sewalong.lengths import Unit
from sewalong.quilt.cloth.bias_binding import bias_binding
from sewalong.quilt.cloth.bias_remnant import bias_from_remnant
from sewalong.quilt.cloth.binding import ALLOWANCE, STRIP, binding_from_remnant
from sewalong.quilt.cloth.binding import binding as binding_for
from sewalong.quilt.cloth.strips import QUARTER, USABLE
from sewalong.quilt.worksheet.line import Line, length_line


def binding(args: argparse.Namespace, context: Context) -> Report:
    """`reckon binding --top SIZE [--bias] [--remnant SIZE]`"""
    unit = unit_of(args)
    return told(_lines(args, unit), of="binding", unit=unit.value)


def _lines(args: argparse.Namespace, unit: Unit) -> Iterator[Line]:
    """Straight or bias binding, from new cloth or from a left-over piece."""
    top = read_size(args, "top")
    strip = read(args, "strip", STRIP)
    seam = read(args, "seam", QUARTER)
    found = binding_for(
        top,
        strip=strip,
        allowance=read(args, "allowance", ALLOWANCE),
        usable=read(args, "usable", USABLE),
        join=read_join(args),
        seam=seam,
        unit=unit,
    )
    piece = read_size(args, "remnant") if args.remnant is not None else None
    if args.bias:
        yield length_line("binding", found.length, unit, found.around_reason)
        if piece is not None:
            left = bias_from_remnant(piece, found.length, strip, seam=seam, unit=unit)
            yield Line("from that piece", "enough" if left.enough else "not enough", left.reason)
            return
        cut = bias_binding(found.length, strip, seam=seam, unit=unit)
        yield length_line("cut on the bias from a square of", cut.side, unit, cut.reason)
        return
    yield length_line("binding", found.length, unit, found.reason)
    if piece is not None:
        remnant = binding_from_remnant(
            piece, found.length, strip=strip, join=read_join(args), seam=seam, unit=unit
        )
        yield Line("from that piece", "enough" if remnant.enough else "not enough", remnant.reason)
        return
    yield from strip_lines(found.strips, unit)
