"""What goes around and behind a top: binding, back, borders, batting; and the thread for seams."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from fractions import Fraction

from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.length_arguments import read, read_or_none, read_size
from sewalong.cli.reckoning.yardage_lines import strip_lines
from sewalong.lengths import METRE, Length, Unit, cloth_length, show
from sewalong.quilt.cloth.strips import QUARTER, USABLE, Join
from sewalong.quilt.worksheet.line import Line, length_line, plural, size_line


def binding_lines(args: argparse.Namespace, unit: Unit) -> Iterator[Line]:
    """Straight or bias binding, from new cloth or from a left-over piece."""
    from sewalong.quilt.cloth.bias_binding import bias_binding, bias_from_remnant
    from sewalong.quilt.cloth.binding import ALLOWANCE, STRIP, binding, binding_from_remnant

    top = read_size(args, "top")
    strip = read(args, "strip", STRIP)
    seam = read(args, "seam", QUARTER)
    found = binding(
        top,
        strip=strip,
        allowance=read(args, "allowance", ALLOWANCE),
        usable=read(args, "usable", USABLE),
        join=_join(args),
        seam=seam,
        unit=unit,
    )
    yield length_line("binding", found.length, unit, found.reason)
    piece = read_size(args, "remnant") if args.remnant is not None else None
    if args.bias:
        if piece is not None:
            side = min(piece.width, piece.length)
            left = bias_from_remnant(side, found.length, strip, seam=seam, unit=unit)
            yield Line("from that piece", "enough" if left.enough else "not enough", left.reason)
            return
        cut = bias_binding(found.length, strip, seam=seam, unit=unit)
        yield length_line("cut on the bias from a square of", cut.side, unit, cut.reason)
        return
    if piece is not None:
        remnant = binding_from_remnant(
            piece, found.length, strip=strip, join=_join(args), seam=seam, unit=unit
        )
        yield Line("from that piece", "enough" if remnant.enough else "not enough", remnant.reason)
        return
    yield from strip_lines(found.strips, unit)


def _join(args: argparse.Namespace) -> Join:
    return Join.NONE if args.joins == "none" else Join(args.joins)


def backing_lines(args: argparse.Namespace, unit: Unit) -> Iterator[Line]:
    """Both ways of piecing the back, the cheaper first, and whether cloth in hand is enough."""
    from sewalong.quilt.cloth.backing import BACK_SEAM, MARGIN, backing, backing_from

    top = read_size(args, "top")
    margin = read(args, "margin", MARGIN)
    usable = read(args, "usable", USABLE)
    seam = read(args, "seam", BACK_SEAM)
    found = backing(top, margin=margin, usable=usable, seam=seam, unit=unit)
    yield size_line("back", found.size, unit, f"{show(margin, unit)} each side")
    for way in (found.best, found.other):
        yield Line(
            f"seams {way.seams.value}",
            f"{plural(way.panels, 'panel')} of {show(way.panel, unit)}, "
            f"buy {cloth_length(way.cloth, unit)}",
            f"{way.reason}; {way.purchase.reason}",
            float(way.purchase.buy),
        )
    saves = f"saves {show(found.saves, unit)}" if found.saves else "takes no more than the other"
    yield Line("less cloth", f"seams {found.best.seams.value}", saves, float(found.saves))
    have = read_or_none(args, "have")
    if have is not None:
        check = backing_from(have, top, margin=margin, usable=usable, seam=seam, unit=unit)
        yield Line("cloth in hand", "enough" if check.enough else "not enough", check.reason)


def border_lines(args: argparse.Namespace, unit: Unit) -> Iterator[Line]:
    """Any number of borders, the innermost first."""
    from sewalong.quilt.cloth.borders import BorderPlan, Corners, borders

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
        top, plans, seam=seam, usable=read(args, "usable", USABLE), join=_join(args), unit=unit
    )
    for number, one in enumerate(found, start=1):
        label = f"border {number}"
        yield Line(label, f"cut at {show(one.plan.cut, unit)}", one.reason, float(one.plan.cut))
        if one.side_mitre is not None and one.end_mitre is not None:
            for where, mitre in (("sides", one.side_mitre), ("top and bottom", one.end_mitre)):
                yield length_line(f"{label}, {where}, at the least", mitre.least, unit)
                yield length_line(f"{label}, {where}, advised", mitre.advised, unit,
                                  "with some to cut off at the corners")  # fmt: skip
        yield from strip_lines(one.strips, unit)
        yield size_line(f"with {label}", one.outer, unit, "raw edge to raw edge")
        yield size_line(f"with {label} it finishes at", one.finishes_at, unit)


def _widths(typed: list[list[str]] | None, unit: Unit) -> list[Length]:
    from sewalong.lengths import parse

    return [parse(" ".join(words), unit) for words in typed or []]


def batting_lines(args: argparse.Namespace, unit: Unit) -> Iterator[Line]:
    """The smallest batting for a top, or the largest top for a batting."""
    from sewalong.quilt.cloth.backing import MARGIN
    from sewalong.quilt.cloth.batting import largest_top, smallest_batting

    margin = read(args, "margin", MARGIN)
    if args.top is None and args.batting is None:
        raise CommandError("Give --top, or --batting for the largest top it allows.")
    if args.top is not None:
        choice = smallest_batting(read_size(args, "top"), margin=margin, unit=unit)
        size = choice.need if choice.batting is None else choice.batting.size
        name = "none on sale is large enough" if choice.batting is None else choice.batting.name
        yield Line("batting", f"{name}, {size.show(unit)}", choice.reason,
                   float(size.width), float(size.length))  # fmt: skip
    if args.batting is not None:
        top = largest_top(read_size(args, "batting"), margin, unit)
        yield size_line("largest top", top, unit, f"{show(margin, unit)} each side")


def thread_lines(args: argparse.Namespace, unit: Unit) -> Iterator[Line]:
    """Thread for so many seams of one length."""
    from sewalong.quilt.cloth.thread import (
        LOCKSTITCH_RATIO,
        WASTE,
        lockstitch_ratio,
        seam_run,
        thread,
        wound,
    )
    from sewalong.quilt.worksheet.thread_lines import long_text

    ratio = LOCKSTITCH_RATIO
    thickness = read_or_none(args, "thickness")
    if (thickness is None) != (args.stitches is None):
        raise CommandError("Give --thickness and --stitches together.")
    if thickness is not None:
        ratio = lockstitch_ratio(thickness, Fraction(args.stitches))
    waste = WASTE if args.waste is None else Fraction(args.waste, 100)
    times = 1 if args.times is None else args.times
    found = thread([seam_run("seams", read(args, "each"), times)],
                   ratio=ratio, waste=waste, unit=unit)  # fmt: skip
    yield Line("seam", long_text(found.seam, unit), f"{times} of them", float(found.seam))
    yield Line("thread", long_text(found.total, unit), found.reason, float(found.total))
    for name, length in (("needle", found.needle), ("bobbin", found.bobbin)):
        yield Line(f"in the {name}", long_text(length, unit), "half", float(length))
    for name, each, length in (
        ("spool", args.spool, found.total),
        ("bobbin", args.bobbin, found.bobbin),
    ):
        if each is not None:
            count = wound(length, each * METRE, unit).count
            yield Line(f"{name}s", f"{plural(count, name)} of {each:,} m")
