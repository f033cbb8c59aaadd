"""`reckon blocks`: from the size a quilt is to have to its blocks, in every setting."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from fractions import Fraction

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.length_arguments import (
    method_named,
    read,
    read_or_none,
    read_size,
    unit_of,
)
from sewalong.cli.frame.line_report import all_facts, line_data
from sewalong.cli.frame.report import Report
from sewalong.cli.reckoning.wanted_size import wanted_size
from sewalong.lengths import Unit
from sewalong.piecing.catalogue import method as method_called
from sewalong.piecing.method import Method
from sewalong.quilt.cloth.strips import QUARTER
from sewalong.quilt.layouts.blocks_for_size import Blocks, Sash, blocks_for_size
from sewalong.quilt.layouts.yield_of_method import pieces_for
from sewalong.quilt.worksheet.line import Line, size_line, size_text


def blocks(args: argparse.Namespace, context: Context) -> Report:
    """`reckon blocks --near SIZE|--bed NAME --drop LENGTH --finishes SIZE`"""
    unit = unit_of(args)
    wanted = wanted_size(args)
    if wanted is None:
        raise CommandError("Give --near and a size, or --bed and perhaps --drop.")
    method = None if args.method is None else method_called(method_named(args.method).id)
    block = read_size(args, "finishes")
    width = read_or_none(args, "sash")
    sash = None if width is None else Sash(width, outer=not args.inner_only)
    ways: list[tuple[Sash | None, bool]] = [(None, False)]
    ways += [] if sash is None else [(sash, False)]
    ways += [(None, True)] if block.width == block.length else []
    lines = [size_line("wanted", wanted, unit)]
    found: list[Blocks] = []
    for given, pointed in ways:
        one = blocks_for_size(
            wanted,
            block,
            sash=given,
            on_the_point=pointed,
            border=read(args, "border", Fraction(0)),
            seam=read(args, "seam", QUARTER),
            unit=unit,
        )
        for label, laid in (("covers it", one.covering), ("lies within it", one.within)):
            if laid is not None:
                found.append(laid)
                lines += _lines(f"{laid.setting}, {label}", laid, method, unit)
    data = [line_data(line) for line in lines]
    counts = [
        {"setting": one.setting.value, "covers": one.fit.covers, "rows": one.rows,
         "columns": one.columns, "blocks": one.blocks}
        for one in found
    ]  # fmt: skip
    told = tuple(fact for line in lines for fact in all_facts(line))
    return Report(told, {"unit": unit.value, "lines": data, "layouts": counts})


def _lines(label: str, one: Blocks, method: Method | None, unit: Unit) -> Iterator[Line]:
    fills = f"; {one.fills}" if one.fills else ""
    yield Line(
        label,
        f"{one.rows} rows of {one.columns}; {one.blocks:,} blocks{fills}; "
        f"{size_text(one.size, unit)}",
        one.fit.reason,
        float(one.size.width),
        float(one.size.length),
    )
    if method is not None:
        need = pieces_for(method, one.blocks)
        pieces = ", ".join(method.pile(pile).noun.count(count) for pile, count in need.items())
        yield Line(f"{label}, takes", pieces, method.name)
