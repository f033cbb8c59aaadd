"""`begun`: what is sewn of rows that are not whole yet."""

from __future__ import annotations

import argparse

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt
from sewalong.cli.sewing.caution_first import with_caution
from sewalong.cli.sewing.outcome import aftermath
from sewalong.progress.acts.begun import BeginRows
from sewalong.progress.joining.begun_text import read_begun
from sewalong.progress.record.state import State
from sewalong.progress.resuming.resume_facts import rows_begun_facts
from sewalong.service.open_quilt import OpenQuilt


def begun(args: argparse.Namespace, context: Context) -> Report:
    """`begun PIECES…`, `begun --next`, or `begun`"""
    with chosen_quilt(args, context) as quilt:
        if args.next:
            return _next(quilt, args, context)
        if not args.text:
            words = rows_begun_facts(quilt.state) or ("No row is begun.",)
            return Report(words, {"quilt": quilt.entry.name, **_data(quilt.state)})
        act = BeginRows(read_begun(" ".join(args.text)))
        outcome, aside = with_caution(quilt, act, args, context)
        return aftermath(quilt, outcome, aside=aside, more=_data(quilt.state))


def _next(quilt: OpenQuilt, args: argparse.Namespace, context: Context) -> Report:
    """One unit more is sewn to the row in hand, and which is the one after."""
    from sewalong.progress.acts.row_in_hand import sew_next
    from sewalong.progress.joining.row_in_hand import row_in_hand

    if args.text:
        raise CommandError("Say what is begun, or --next for one unit more, not both.")
    quilt.refresh()
    before = row_in_hand(quilt.state)
    outcome, aside = with_caution(quilt, sew_next(quilt.state), args, context)
    now = row_in_hand(quilt.state)
    whole = before is not None and (now is None or now.row != before.row)
    first = (
        (f"Row {before.row} is whole.",)
        if before and whole and not quilt.state.quilt.is_web
        else ()
    )
    more = {"row": now.row, "next_places": list(now.next)} if now else {"row": None}
    return aftermath(quilt, outcome, first=first, aside=aside, more={**more, **_data(quilt.state)})


def _data(state: State) -> dict[str, object]:
    return {"begun": [{"pieces": n, "units": units} for n, units in state.begun]}
