"""`reckon row`: pieces side by side, and what they say of the seam. `reckon ease`: two edges."""

from __future__ import annotations

import argparse
from collections.abc import Iterator

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.length_arguments import read, read_or_none, unit_of
from sewalong.cli.frame.line_report import told
from sewalong.cli.frame.report import Report
from sewalong.lengths import Length, Unit, parse_several, show
from sewalong.quilt.as_fraction import exactly
from sewalong.quilt.cloth.ease import EASE_LIMIT, REMAKE_LIMIT, most_off
from sewalong.quilt.cloth.ease import ease as eased
from sewalong.quilt.cloth.row import carried_across, read_row, row_of
from sewalong.quilt.cloth.strips import QUARTER
from sewalong.quilt.worksheet.line import Line, length_line, plural


def row(args: argparse.Namespace, context: Context) -> Report:
    """`reckon row --pieces N --cut LENGTH`, or `--cuts 3, 2 1/2, 3`; with --measured, the seam."""
    unit = unit_of(args)
    return told(_row(args, unit), unit=unit.value)


def _row(args: argparse.Namespace, unit: Unit) -> Iterator[Line]:
    seam = read(args, "seam", QUARTER)
    if args.cuts is not None:
        if args.pieces is not None or args.cut is not None:
            raise CommandError("Give --cuts, or --pieces and --cut; not both.")
        cuts = parse_several(" ".join(args.cuts), unit)
    else:
        if args.pieces is None:
            raise CommandError("Give --pieces and --cut, or --cuts with commas between them.")
        if not 1 <= args.pieces <= 9999:
            raise CommandError("--pieces takes a whole number from 1 to 9,999.")
        cuts = (read(args, "cut"),) * args.pieces
    expected = row_of(cuts, seam)
    yield length_line("laid edge to edge", sum(cuts, Length(0)), unit)
    seams = plural(len(cuts) - 1, "seam")
    yield length_line(
        "sewn", expected, unit, f"raw edge to raw edge, {seams} of {_fine(seam, unit)}"
    )
    yield length_line("finishes at", expected - 2 * seam, unit)
    own = read_or_none(args, "own-seam")
    if own is not None:
        yield from _own(cuts, expected, own, unit)
    measured = read_or_none(args, "measured")
    if measured is not None:
        yield from _measured(cuts, seam, measured, expected, unit)
    loss = read_or_none(args, "loss")
    if loss is not None:
        lost = loss * (len(cuts) - 1)
        yield length_line("each such row loses", lost, unit, f"{seams} of {_fine(loss, unit)}")
        if args.across is not None:
            yield length_line(f"{args.across} of them side by side lose",
                              carried_across(lost, args.across), unit)  # fmt: skip


def _own(cuts: tuple[Length, ...], expected: Length, own: Length, unit: Unit) -> Iterator[Line]:
    sewn = row_of(cuts, own)
    off = expected - sewn
    way = "shorter" if off > 0 else "longer"
    said = f"{exactly(abs(off), unit)} {way}" if off else "the same"
    yield length_line(f"with your own seam of {_fine(own, unit)}", sewn, unit, said)


def _measured(
    cuts: tuple[Length, ...], seam: Length, measured: Length, expected: Length, unit: Unit
) -> Iterator[Line]:
    if len(set(cuts)) > 1:
        raise CommandError("--measured needs pieces of one size: give --pieces and --cut.")
    found = read_row(len(cuts), cuts[0], seam, measured, unit)
    yield Line("measured", f"{float(measured / expected):.0%} of that", found.reason,
               float(measured))  # fmt: skip
    yield Line("so the seam really is", _fine(found.seam, unit), "if the pieces were cut right",
               float(found.seam))  # fmt: skip


def _fine(length: Length, unit: Unit) -> str:
    return show(length, unit, fineness=unit.finest)


def ease(args: argparse.Namespace, context: Context) -> Report:
    """`reckon ease --edge LENGTH --to LENGTH`, or `--size LENGTH` for when to remake a unit."""
    unit = unit_of(args)
    lines = []
    size = read_or_none(args, "size")
    if size is not None:
        off = most_off(size)
        lines.append(
            Line(
                "remake when it is off by more than",
                exactly(off, unit),
                f"{float(REMAKE_LIMIT * 100):g} in 100 of its size, one workshop's rule",
                float(off),
            )
        )
    if args.edge is not None or size is None:
        found = eased(read(args, "edge"), read(args, "to"), unit=unit)
        lines.append(
            Line(
                "edge against what it joins",
                found.reason,
                f"exactly {exactly(found.difference, unit)}; up to "
                f"{float(EASE_LIMIT * 100):g} in 100 is taken to ease",
                float(found.difference),
            )
        )
    return told(lines, unit=unit.value)
