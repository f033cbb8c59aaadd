"""`reckon cut-up`: a piece cut up and sewn together again. `reckon enlarge`: a block at another size."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from fractions import Fraction

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.length_arguments import read, read_or_none, read_size, size_of, unit_of
from sewalong.cli.frame.line_report import told
from sewalong.cli.frame.report import Report
from sewalong.lengths import Unit, as_given
from sewalong.quilt.cloth.cut_up import cut_up as cut_and_sewn
from sewalong.quilt.cloth.cut_up import to_cut_up
from sewalong.quilt.cloth.scaled import Piece, scaled
from sewalong.quilt.cloth.strips import QUARTER
from sewalong.quilt.cloth.to_cut import cut_size, size_to_cut
from sewalong.quilt.worksheet.line import Line, length_line, size_line

MOST_TIMES = 100
"""Times as large: from memory nobody enlarges a block so far, so more is a slip of the hand."""

PIECES = {"straight": Piece.STRAIGHT, "half": Piece.HALF, "quarters": Piece.QUARTERS}


def cut_up(args: argparse.Namespace, context: Context) -> Report:
    """`reckon cut-up --piece SIZE --upright N --lying N`, or --wanted SIZE for what to begin with."""
    unit = unit_of(args)
    return told(_cut_up(args, unit), of="cut-up", unit=unit.value)


def enlarge(args: argparse.Namespace, context: Context) -> Report:
    """`reckon enlarge --cut SIZE … --times N`, or --from LENGTH --to LENGTH."""
    unit = unit_of(args)
    return told(_enlarge(args, unit), of="enlarge", unit=unit.value)


def _cut_up(args: argparse.Namespace, unit: Unit) -> Iterator[Line]:
    seam = read(args, "seam", QUARTER)
    upright, lying = args.upright or 0, args.lying or 0
    if (args.piece is None) == (args.wanted is None):
        raise CommandError("Give one of --piece, what is cut up, and --wanted, what it is to be.")
    if args.piece is None:
        asked = to_cut_up(read_size(args, "wanted"), upright, lying, seam=seam)
        before = cut_size(asked, unit)
        yield Line("begin with", size_to_cut(asked, unit), "raw edge to raw edge",
                   float(before.width), float(before.length))  # fmt: skip
    else:
        before = read_size(args, "piece")
    found = cut_and_sewn(before, upright, lying, seam=seam, unit=unit)
    yield size_line("sewn together again", found.after, unit, found.reason)
    yield size_line("it finishes at", found.after.grown(-seam), unit)
    yield Line("pieces", f"{found.pieces:,}", f"{upright} upright cuts, {lying} lying")
    yield length_line("seams to sew", found.sewn, unit, "the upright ones first")


def _enlarge(args: argparse.Namespace, unit: Unit) -> Iterator[Line]:
    seam = read(args, "seam", QUARTER)
    times = _times(args)
    piece = PIECES[args.piece]
    yield Line(
        "times as large",
        as_given(times, symbol=False),
        "finished sizes only, seams stay as they are",
    )
    for words in args.cut:
        size = size_of(" ".join(words), unit)
        sides = [size.width] if size.width == size.length else [size.width, size.length]
        found = [scaled(side, times, piece=piece, seam=seam, unit=unit) for side in sides]
        before = as_given(size.width, unit) if len(sides) == 1 else size.show(unit)
        yield Line(
            f"instead of {before} cut",
            " × ".join(one.cut.text for one in found),
            found[0].reason,
            float(found[0].cut.length),
            float(found[-1].cut.length) if len(found) > 1 else None,
        )
    yield Line("cloth", f"{float(times**2):.2f} times as much", "about, it grows with the area")


def _times(args: argparse.Namespace) -> Fraction:
    """How many times as large, from --times or from two finished sizes."""
    before, after = read_or_none(args, "from"), read_or_none(args, "to")
    if (args.times is None) == (before is None) or (before is None) != (after is None):
        raise CommandError("Give --times, or --from and --to with the sizes it finishes at.")
    if before is not None and after is not None:
        return after / before
    try:
        times = Fraction(args.times.replace(",", "."))
    except (ValueError, ZeroDivisionError):
        times = Fraction(0)
    if not 0 < times <= MOST_TIMES:
        raise CommandError(
            f"--times takes a number from above 0 to {MOST_TIMES}, such as 2, 1.5 or 3/4."
        )
    return times
