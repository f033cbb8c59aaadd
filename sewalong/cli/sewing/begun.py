"""`begun`: what is sewn of rows that are not whole yet."""

from __future__ import annotations

import argparse

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt
from sewalong.cli.sewing.caution_first import with_caution
from sewalong.cli.sewing.outcome import aftermath
from sewalong.progress.acts.begun import BeginRows
from sewalong.progress.joining.begun_text import read_begun
from sewalong.progress.record.state import State
from sewalong.progress.resuming.resume_facts import rows_begun_facts


def begun(args: argparse.Namespace, context: Context) -> Report:
    """`begun PIECES…`, or `begun`"""
    with chosen_quilt(args, context) as quilt:
        if not args.text:
            words = rows_begun_facts(quilt.state) or ("No row is begun.",)
            return Report(words, {"quilt": quilt.entry.name, **_data(quilt.state)})
        act = BeginRows(read_begun(" ".join(args.text)))
        outcome, aside = with_caution(quilt, act, args, context)
        return aftermath(quilt, outcome, aside=aside, more=_data(quilt.state))


def _data(state: State) -> dict[str, object]:
    return {"begun": [{"pieces": n, "units": units} for n, units in state.begun]}
