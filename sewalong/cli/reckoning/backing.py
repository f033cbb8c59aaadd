"""`reckon backing`: the back of a quilt, with its seams either way."""

from __future__ import annotations

import argparse
from collections.abc import Iterator

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.length_arguments import read, read_or_none, read_size, unit_of
from sewalong.cli.frame.line_report import told
from sewalong.cli.frame.report import Report
from sewalong.lengths import Unit, as_given, cloth_length
from sewalong.quilt.cloth.backing import BACK_SEAM, MARGIN, backing_from
from sewalong.quilt.cloth.backing import backing as backing_for
from sewalong.quilt.cloth.strips import USABLE
from sewalong.quilt.worksheet.line import Line, plural, size_line


def backing(args: argparse.Namespace, context: Context) -> Report:
    """`reckon backing --top SIZE [--have LENGTH]`"""
    unit = unit_of(args)
    return told(_lines(args, unit), of="backing", unit=unit.value)


def _lines(args: argparse.Namespace, unit: Unit) -> Iterator[Line]:
    """Both ways of piecing the back, the cheaper first, and whether cloth in hand is enough."""
    top = read_size(args, "top")
    margin = read(args, "margin", MARGIN)
    usable = read(args, "usable", USABLE)
    seam = read(args, "seam", BACK_SEAM)
    found = backing_for(top, margin=margin, usable=usable, seam=seam, unit=unit)
    yield size_line("back", found.size, unit, f"{as_given(margin, unit)} each side")
    for way in (found.best, found.other):
        yield Line(
            f"seams {way.seams.value}",
            f"{plural(way.panels, 'panel')} of {as_given(way.panel, unit)}, "
            f"buy {cloth_length(way.cloth, unit)}",
            f"{way.reason}; {way.purchase.reason}",
            float(way.purchase.buy),
        )
    saves = (
        f"saves {as_given(found.saves, unit)}" if found.saves else "takes no more than the other"
    )
    yield Line("less cloth", f"seams {found.best.seams.value}", saves, float(found.saves))
    have = read_or_none(args, "have")
    if have is not None:
        check = backing_from(have, top, margin=margin, usable=usable, seam=seam, unit=unit)
        yield Line("cloth in hand", "enough" if check.enough else "not enough", check.reason)
