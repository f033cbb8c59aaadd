"""`wall order`: rows whose order was lost, put in order again from what their edges show."""

from __future__ import annotations

import argparse

from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.report import Report
from sewalong.cli.sewing.outcome import aftermath
from sewalong.progress.acts.wall import OrderRows
from sewalong.progress.record.events.wall import must_be_laid
from sewalong.progress.record.refused import Refused
from sewalong.progress.wall.on_wall import on_wall
from sewalong.service.acting import do
from sewalong.service.open_quilt import OpenQuilt
from sewalong.wall.laying.rows import InOrder, order_of_rows


def ordered(quilt: OpenQuilt, args: argparse.Namespace) -> Report:
    """The order in which neighbouring rows touch least, and with --accept they lie so."""
    quilt.refresh()
    must_be_laid(quilt.state)
    if quilt.state.quilt.setting is not None:
        raise Refused("Rows with sashes or on point do not show by their edges how they followed.")
    now = on_wall(quilt.state)
    assert now is not None
    found = order_of_rows(
        now.laying.places, now.units, now.rules, turning=args.either_way, seed=args.seed or 1
    )
    lines, data = _lines(found), _data(found)
    turned = tuple(n for n, turns in enumerate(found.turned, start=1) if turns)
    order = tuple(row + 1 for row in found.order)
    if args.accept:
        return aftermath(quilt, do(quilt, OrderRows(order, turned)), first=lines, more=data)
    last = "To have the rows lie so: the same with --accept"
    return Report((*lines, last), {"quilt": quilt.entry.name, **data})
