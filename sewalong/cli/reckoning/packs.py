"""`reckon packs`: packs for a number of pieces. `reckon makes`: what pieces come to, stage by stage."""

from __future__ import annotations

import argparse
from collections.abc import Iterator

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.length_arguments import method_named, read
from sewalong.cli.frame.line_report import told
from sewalong.cli.frame.report import Report
from sewalong.cli.reckoning.strip_taken import strip_taken
from sewalong.piecing.catalogue import method as method_called
from sewalong.piecing.derive import SEAM
from sewalong.piecing.method import Method
from sewalong.quilt.cloth.precuts import packs_for
from sewalong.quilt.layouts.neighbouring_layouts import factor_layouts
from sewalong.quilt.layouts.yield_of_method import made_by_stage, pieces_for, units_from
from sewalong.quilt.worksheet.line import Line, plural


def packs(args: argparse.Namespace, context: Context) -> Report:
    """`reckon packs --need N --in-a-pack N …`: one line for each count a pack may hold."""
    lines = []
    for per_pack in args.in_a_pack:
        found = packs_for(args.need, per_pack)
        text = f"{plural(found.packs, 'pack')}, {found.spare:,} spare"
        lines.append(Line(f"{per_pack} in a pack", text, found.reason))
    return told(lines, need=args.need)


def makes(args: argparse.Namespace, context: Context) -> Report:
    """`reckon makes --method M --have N`, or --have PILE=N once for each pile; or --units N."""
    written = method_named(args.method)
    strip = strip_taken(written, args)
    method = method_called(
        written.id,
        start=strip.width,
        strip_length=strip.length,
        seam=read(args, "seam", SEAM),
    )
    if (args.units is None) == (not args.have):
        raise CommandError("Give --have and what there is, or --units and how many are wanted.")
    if args.units is not None:
        if args.units < 1:
            raise CommandError("--units takes a whole number from 1.")
        need = pieces_for(method, args.units)
        lines = [
            *strip.lines,
            *(
                Line(method.pile(pile).noun.many, f"{count:,}", f"for {args.units:,} units")
                for pile, count in need.items()
            ),
        ]
        return told(lines, method=method.id, need=need)
    have = _have(method, args.have)
    units = units_from(method, have)
    return told([*strip.lines, *_made(method, have, units)], method=method.id, units=units)


def _have(method: Method, typed: list[str]) -> dict[str, int]:
    found: dict[str, int] = {}
    for text in typed:
        pile, by, count = text.rpartition("=")
        pile = pile if by else method.starts[0]
        if pile not in method.starts:
            raise CommandError(f"{method.name} does not begin with “{pile[:40]}”, but with: "
                          f"{', '.join(method.starts)}.")  # fmt: skip
        if not count.isdecimal() or len(count) > 6:
            raise CommandError(f"“{text[:40]}” is not a count. Write such as: --have 42")
        found[pile] = int(count)
    missing = [pile for pile in method.starts if pile not in found]
    if missing:
        raise CommandError(f"Say how many there are of each: --have {missing[0]}=N")
    return found


def _made(method: Method, have: dict[str, int], units: int) -> Iterator[Line]:
    for batch in made_by_stage(method, have):
        stage = method.stage(batch.stage)
        made = method.pile(stage.makes.pile).noun.count(batch.made)
        over = ", ".join(
            f"{method.pile(pile).noun.count(count)} over" for pile, count in batch.over.items()
        )
        yield Line(stage.label, f"{made}{f', {over}' if over else ''}")
    yield Line("units", f"{units:,}")
    if units:
        exact = ", ".join(f"{rows} × {columns}" for rows, columns in factor_layouts(units))
        yield Line("layouts that take every unit", exact or "none", "rows × columns, either way")
