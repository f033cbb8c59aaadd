"""Units set straight, with sashes, or on point, and what fills in between."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from fractions import Fraction

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.length_arguments import read, read_size, unit_of
from sewalong.cli.frame.line_report import told
from sewalong.cli.frame.report import Report
from sewalong.lengths import Rounding, Unit, as_given, round_to
from sewalong.quilt.as_fraction import exactly
from sewalong.quilt.cloth.squares import cloth_for
from sewalong.quilt.cloth.strips import QUARTER, USABLE
from sewalong.quilt.cloth.to_cut import to_cut
from sewalong.quilt.layouts.setting_on_point import TriangleSquare, square_around
from sewalong.quilt.layouts.setting_on_point import on_point as set_on_point
from sewalong.quilt.layouts.setting_sashed import Meeting
from sewalong.quilt.layouts.setting_sashed import sashed as set_sashed
from sewalong.quilt.layouts.setting_straight import straight_top
from sewalong.quilt.size import Size
from sewalong.quilt.worksheet.line import Line, length_line, plural, size_line


def straight(args: argparse.Namespace, context: Context) -> Report:
    """`reckon straight --rows N --columns N --finishes SIZE`"""
    unit = unit_of(args)
    return told(_straight(args, unit), of="straight", unit=unit.value)


def sashing(args: argparse.Namespace, context: Context) -> Report:
    """`reckon sashing --rows N --columns N --finishes SIZE --sash LENGTH`"""
    unit = unit_of(args)
    return told(_sashed(args, unit), of="sashing", unit=unit.value)


def on_point(args: argparse.Namespace, context: Context) -> Report:
    """`reckon on-point --rows N --columns N --finishes SIZE`"""
    unit = unit_of(args)
    return told(_on_point(args, unit), of="on-point", unit=unit.value)


def framed(args: argparse.Namespace, context: Context) -> Report:
    """`reckon framed --size LENGTH`"""
    unit = unit_of(args)
    return told(_around(args, unit), of="framed", unit=unit.value)


def _straight(args: argparse.Namespace, unit: Unit) -> Iterator[Line]:
    """Edge to edge."""
    seam = read(args, "seam", QUARTER)
    size = read_size(args, "finishes")
    top = straight_top(args.rows, args.columns, size.grown(seam), seam)
    yield size_line("top", top, unit, "raw edge to raw edge")
    yield size_line("top finishes at", top.grown(-seam), unit)


def _sashed(args: argparse.Namespace, unit: Unit) -> Iterator[Line]:
    """With sashes, and cornerstones where they meet."""
    meeting = Meeting.LONG_SASHES if args.long_sashes else Meeting.CORNERSTONES
    found = set_sashed(
        args.rows,
        args.columns,
        read_size(args, "finishes"),
        read(args, "sash"),
        outer=not args.inner_only,
        meeting=meeting,
        seam=read(args, "seam", QUARTER),
        shown_in=unit,
    )
    usable = read(args, "usable", USABLE)
    yield size_line("top finishes at", found.size, unit, found.reason)
    yield Line("sashes", f"{found.sashes:,}")
    kinds = [
        ("standing between the columns", found.standing, found.cut_standing),
        ("lying between the rows", found.lying, found.cut_lying.turned),
    ]
    kinds = [one for one in kinds if one[1]]
    for label, count, cut in kinds:
        yield _sashes(label, count, cut, unit)
    if len({cut for _, _, cut in kinds}) == 1:
        yield from _strip_line("all sashes from", found.sashes, kinds[0][2], usable, unit)
    else:
        for label, count, cut in kinds:
            yield from _strip_line(f"{label}, from", count, cut, usable, unit)
    yield Line("cornerstones", f"{found.cornerstones:,}")
    if found.cut_cornerstone is not None and found.cornerstones:
        yield size_line("cut cornerstones at", found.cut_cornerstone, unit)
        yield from _strip_line(
            "cornerstones from", found.cornerstones, found.cut_cornerstone, usable, unit
        )
    for number, length in enumerate(found.down_to, start=1):
        yield length_line(f"after row {number}", length, unit, "finished, sash rows counted")


def _sashes(label: str, count: int, cut: Size, unit: Unit) -> Line:
    """`cut` is across the strip and along it."""
    of = f"{as_given(cut.width, unit)} × {as_given(cut.length, unit)}"
    text = f"{plural(count, 'sash', 'sashes')} of {of}"
    return Line(label, text, "cut", float(cut.width), float(cut.length))


def _strip_line(label: str, count: int, cut: Size, usable: Fraction, unit: Unit) -> Iterator[Line]:
    if cut.length > usable:
        yield Line(label, "longer than the cloth is wide: join strips, or cut along the cloth")
        return
    # A sash lies along the strip with its longer side: whole, never joined.
    found = cloth_for(count, cut.turned, usable=usable, unit=unit)
    why = f"{found.narrower}; {found.purchase.reason}"
    yield Line(label, found.reason, why, float(found.purchase.buy))


def _on_point(args: argparse.Namespace, unit: Unit) -> Iterator[Line]:
    """On point, with the triangles that fill the edges."""
    size = read_size(args, "finishes")
    if size.width != size.length:
        raise CommandError("Only square units are set on point here. Give one length.")
    found = set_on_point(
        args.rows,
        args.columns,
        size.width,
        seam=read(args, "seam", QUARTER),
        fineness=unit.trim_step,
        larger=read(args, "larger", Fraction(0)),
        shown_in=unit,
    )
    yield size_line("top finishes at", found.size, unit, found.reason)
    yield Line("units", f"{found.units:,}", "those between the rows counted")
    yield from _triangles("side triangles", found.side, unit)
    yield from _triangles("corner triangles", found.corner, unit)
    yield Line("units in each slanting row", ", ".join(map(str, found.slanting)))


def _triangles(label: str, one: TriangleSquare, unit: Unit) -> Iterator[Line]:
    yield Line(
        label,
        f"{one.triangles} from {plural(one.squares, 'square')} "
        f"cut at {to_cut(one.cut_at, unit).text}",
        f"{one.reason}; so the straight grain lies outside",
        float(one.cut_at),
    )


def _around(args: argparse.Namespace, unit: Unit) -> Iterator[Line]:
    """A unit framed on point: the square it lies in with its corners touching."""
    side = square_around(read(args, "size"))
    least = round_to(side, unit.step, Rounding.UP)
    yield Line("framed on point it takes", exactly(side, unit), "the square around it", side)
    yield length_line("at the least", least, unit, "rounded up; larger leaves room to trim")
