"""`wall order`: rows whose order was lost, put in order again from what their edges show."""

from __future__ import annotations

import argparse

from msgspec.structs import replace

from sewalong.cli.frame.report import Report
from sewalong.cli.sewing.outcome import aftermath
from sewalong.cli.wall.laid import typed_text
from sewalong.progress.acts.act import Act
from sewalong.progress.wall.on_wall import rows_of
from sewalong.service.acting import do
from sewalong.service.open_quilt import OpenQuilt
from sewalong.service.wall.changes import with_laid
from sewalong.service.wall.rows import order_found
from sewalong.service.wall.typed import lay_as_typed
from sewalong.wall.laying.rows import InOrder


def ordered(quilt: OpenQuilt, args: argparse.Namespace) -> Report:
    """The order in which neighbouring rows touch least, and with --accept they lie so: the rows on
    the wall, or with --typed rows as they came to hand."""
    quilt.refresh()
    state = quilt.state
    typed = None if args.typed is None else lay_as_typed(state, typed_text(args.typed))
    seed = 1 if args.seed is None else args.seed
    order = order_found(
        state if typed is None else with_laid(state, typed), turning=args.either_way, seed=seed
    )
    lines, is_so = order.lines, order.before == order.after
    data = {**_data(order.found), "touches_before": order.before, "touches_after": order.after}
    if is_so and typed is None:
        return Report(lines, {"quilt": quilt.entry.name, **data})
    if not args.accept:
        last = "To have the rows lie so: the same with --accept"
        return Report((*lines, last), {"quilt": quilt.entry.name, **data})
    act: Act = order.act
    if typed is not None:
        act = typed if is_so else replace(typed, rows=rows_of(order.then))
    return aftermath(quilt, do(quilt, act), first=lines, more=data)


def _data(found: InOrder) -> dict[str, object]:
    return {
        "order": [row + 1 for row in found.order],
        "turned": list(found.turned),
        "touches": found.touches,
        "is_least": found.is_least,
        "as_good": found.as_good,
    }
