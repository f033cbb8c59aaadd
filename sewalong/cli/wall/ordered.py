"""`wall order`: rows whose order was lost, put in order again from what their edges show."""

from __future__ import annotations

import argparse

from msgspec.structs import replace

from sewalong.cli.frame.report import Report
from sewalong.cli.sewing.outcome import aftermath
from sewalong.cli.wall.laid import typed_text
from sewalong.progress.acts.act import Act
from sewalong.progress.acts.wall import OrderRows
from sewalong.progress.record.events.wall import must_be_laid
from sewalong.progress.record.refused import Refused
from sewalong.progress.wall.on_wall import on_wall, rows_of
from sewalong.service.acting import do
from sewalong.service.open_quilt import OpenQuilt
from sewalong.service.typed_walls import lay_as_typed
from sewalong.service.wall_changes import with_laid
from sewalong.wall.laying.laying import touches
from sewalong.wall.laying.rows import InOrder, order_of_rows, with_rows_ordered


def ordered(quilt: OpenQuilt, args: argparse.Namespace) -> Report:
    """The order in which neighbouring rows touch least, and with --accept they lie so: the rows on
    the wall, or with --typed rows as they came to hand."""
    quilt.refresh()
    state = quilt.state
    if state.quilt.setting is not None:
        raise Refused("Rows with sashes or on point do not show by their edges how they followed.")
    typed = None if args.typed is None else lay_as_typed(state, typed_text(args.typed))
    seen = state if typed is None else with_laid(state, typed)
    must_be_laid(seen)
    now = on_wall(seen)
    assert now is not None
    seed = 1 if args.seed is None else args.seed
    found = order_of_rows(
        now.laying.places, now.units, now.rules, turning=args.either_way, seed=seed
    )
    then = with_rows_ordered(now.laying, found)
    before, after = (len(touches(one, now.units, now.rules)) for one in (now.laying, then))
    data = {**_data(found), "touches_before": before, "touches_after": after}
    if before == after:
        lines = _as_it_lies(found, before)
        if typed is None:
            return Report(lines, {"quilt": quilt.entry.name, **data})
    else:
        lines = _otherwise(found, before, after)
    if not args.accept:
        last = "To have the rows lie so: the same with --accept"
        return Report((*lines, last), {"quilt": quilt.entry.name, **data})
    turned = tuple(n for n, turns in enumerate(found.turned, start=1) if turns)
    act: Act = OrderRows(tuple(row + 1 for row in found.order), turned)
    if typed is not None:
        act = typed if before == after else replace(typed, rows=rows_of(then))
    return aftermath(quilt, do(quilt, act), first=lines, more=data)


def _as_it_lies(found: InOrder, before: int) -> tuple[str, ...]:
    n = f"{before} touch{'' if before == 1 else 'es'}"
    fewer = (
        "no order of these rows has fewer" if found.is_least else "no order with fewer was found"
    )
    return (f"As the rows lie there are {n}, and {fewer}.", *_as_good(found))


def _otherwise(found: InOrder, before: int, after: int) -> tuple[str, ...]:
    claim = ", and no order has fewer" if found.is_least else ""
    return (
        f"{before} touch{'' if before == 1 else 'es'} now, {after} in this order{claim}.",
        *(
            f"As row {number}: row {row + 1}{', turned end for end' if turns else ''}."
            for number, (row, turns) in enumerate(
                zip(found.order, found.turned, strict=True), start=1
            )
        ),
        *_as_good(found),
    )


def _as_good(found: InOrder) -> tuple[str, ...]:
    others = (found.as_good or 1) - 1
    if not others:
        return ()
    return (f"{others} other order{' is' if others == 1 else 's are'} as good.",)


def _data(found: InOrder) -> dict[str, object]:
    return {
        "order": [row + 1 for row in found.order],
        "turned": list(found.turned),
        "touches": found.touches,
        "is_least": found.is_least,
        "as_good": found.as_good,
    }
