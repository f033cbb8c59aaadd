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
from sewalong.progress.measuring.length_words import told_apart
from sewalong.progress.measuring.measured_row import measured_row
from sewalong.quilt.as_fraction import exactly
from sewalong.quilt.cloth.ease import EASE_LIMIT, REMAKE_LIMIT, most_off
from sewalong.quilt.cloth.ease import ease as eased
from sewalong.quilt.cloth.row import RowNumbers, carried_across
from sewalong.quilt.cloth.strips import QUARTER
from sewalong.quilt.rules import MOST_PIECES
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
        if not 1 <= args.pieces <= MOST_PIECES:
            raise CommandError(f"--pieces takes a whole number from 1 to {MOST_PIECES:,}.")
        cuts = (read(args, "cut"),) * args.pieces
    row = RowNumbers(cuts, seam)
    sewn = row.sewn
    yield length_line("laid edge to edge", row.edge_to_edge, unit)
    seams = plural(row.seams, "seam")
    yield length_line("sewn", sewn, unit, f"raw edge to raw edge, {seams} of {_fine(seam, unit)}")
    yield length_line("finishes at", row.finishes_at, unit)
    own = read_or_none(args, "own-seam")
    if own is not None:
        longer = row.longer_by(own)
        way = "longer" if longer > 0 else "shorter"
        said = f"{exactly(abs(longer), unit)} {way}" if longer else "the same"
        yield length_line(f"with your own seam of {_fine(own, unit)}", sewn + longer, unit, said)
    measured = read_or_none(args, "measured")
    if measured is not None:
        yield from _measured(row, measured, own, unit)
    loss = read_or_none(args, "loss")
    if loss is not None:
        lost = row.loses(loss)
        yield length_line("each such row loses", lost, unit, f"{seams} of {_fine(loss, unit)}")
        if args.across is not None:
            yield length_line(f"{args.across} of them side by side lose",
                              carried_across(lost, args.across), unit)  # fmt: skip


def _measured(row: RowNumbers, measured: Length, own: Length | None, unit: Unit) -> Iterator[Line]:
    found = measured_row(row, measured, seam_read=own, unit=unit)
    _, read, much = told_apart(row.sewn, measured, unit)
    off = "as it should be"
    if found.short:
        way = "short" if found.short > 0 else "over"
        off = f"{much} {way}, {float(measured / row.sewn):.0%} of that"
    yield Line("measured", read, off, float(measured))
    if not found.causes:
        yield Line("", "Right, as near as a tape is read.")
    for said in found.lines:
        yield Line("", said)


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
                "make it again when it is off by more than",
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
