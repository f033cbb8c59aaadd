"""`reckon squares`: cloth for pieces, or pieces from cloth. `reckon fit`: several cuts of one cloth."""

from __future__ import annotations

import argparse
from collections.abc import Iterator

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.length_arguments import read, read_or_none, read_size, size_of, unit_of
from sewalong.cli.frame.line_report import told
from sewalong.cli.frame.report import Report
from sewalong.cli.reckoning.strip_lines import buy_line
from sewalong.lengths import Unit, as_given
from sewalong.quilt.cloth.labels import Cut, to_label
from sewalong.quilt.cloth.narrower import width_text
from sewalong.quilt.cloth.squares import (
    FAT_QUARTER,
    SPARE_SHARE,
    cloth_for,
    cuts_fit,
    from_cloth,
    spares_to_cut,
)
from sewalong.quilt.cloth.strips import USABLE
from sewalong.quilt.cloth.to_cut import cut_size
from sewalong.quilt.size import Size
from sewalong.quilt.worksheet.line import Line, length_line, plural


def squares(args: argparse.Namespace, context: Context) -> Report:
    """`reckon squares --size SIZE`, with --count, --cloth or --fat-quarter"""
    unit = unit_of(args)
    return told(_squares(args, unit), of="squares", unit=unit.value)


def fit(args: argparse.Namespace, context: Context) -> Report:
    """`reckon fit --cut "52 of 4" … --cloth LENGTH`"""
    unit = unit_of(args)
    return told(_fit(args, unit), of="fit", unit=unit.value)


def _squares(args: argparse.Namespace, unit: Unit) -> Iterator[Line]:
    """Cloth for a count of pieces, or pieces from a length of cloth."""
    piece = read_size(args, "size")
    usable = read(args, "usable", USABLE)
    cloth = read_or_none(args, "cloth")
    if args.fat_quarter:
        found = from_cloth(FAT_QUARTER, piece, unit)
        yield Line("from a fat quarter", plural(found.count, "piece"), found.reason)
    if cloth is not None:
        found = from_cloth(Size(usable, cloth), piece, unit)
        yield Line("pieces", plural(found.count, "piece"), found.reason)
        if found.across:
            limit = width_text(found.across_down_to, unit)
            yield Line("narrower cloth", f"one across less below {limit} usable")
        yield length_line("left down", found.left_down, unit)
        yield length_line("left across", found.left_across, unit)
        next_row = cloth + found.short_of_next
        yield length_line(
            "short of one more row",
            found.short_of_next,
            unit,
            f"at {as_given(next_row, unit)} of cloth",
        )
    if args.count is not None:
        needed = cloth_for(args.count, piece, usable=usable, unit=unit)
        yield Line("strips", plural(needed.strips, "strip"), needed.reason, float(needed.cloth))
        yield buy_line(needed.purchase, unit)
        yield Line("narrower cloth", needed.narrower)
        spare = spares_to_cut(args.count)
        yield Line(
            "spares",
            f"cut {spare} more while there is cloth",
            f"{float(SPARE_SHARE * 100):g} in 100, at least one",
        )
    if args.count is None and cloth is None and not args.fat_quarter:
        raise CommandError("Give --count, --cloth or --fat-quarter besides --size.")


def _fit(args: argparse.Namespace, unit: Unit) -> Iterator[Line]:
    """Whether several cuts come out of one piece of cloth, at one width or between two."""
    cuts = [_cut(" ".join(words), unit) for words in args.cut]
    cloth = read(args, "cloth")
    kinds = [Cut.of("", plural(count, "piece"), cut_size(piece, unit)) for count, piece in cuts]
    for near in to_label(kinds):
        yield Line("label", near.words(unit), "so near they are taken for each other")
    widths = [read(args, "usable", USABLE)]
    widest = read_or_none(args, "widest")
    if widest is not None:
        widths.append(widest)
    for usable in widths:
        found = cuts_fit(cuts, cloth, usable=usable, unit=unit)
        verdict = "fits" if found.fits else "does not fit"
        yield Line(f"at {as_given(usable, unit)} usable", verdict, found.reason, float(found.need))
        for one in found.cuts:
            yield Line("", one.reason)


def _cut(text: str, unit: Unit) -> tuple[int, Size]:
    count, of, piece = text.partition(" of ")
    if not of or not count.strip().isdecimal():
        raise CommandError(f"“{text[:40]}” is not a count and a size. Write such as: --cut 52 of 4")
    return int(count), size_of(piece, unit)
