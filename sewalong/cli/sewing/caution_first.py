"""Counts that a caution may come before: it is shown, and nothing is done until it was read."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from msgspec.structs import replace

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.progress.safety.cautions import GENERAL, Caution, CautionFirst
from sewalong.service.acting import Outcome, do

if TYPE_CHECKING:
    from sewalong.progress.acts.begun import BeginRows
    from sewalong.progress.acts.counting import Count
    from sewalong.progress.acts.joining import JoinRows
    from sewalong.service.open_quilt import OpenQuilt


def with_caution(
    quilt: OpenQuilt, act: Count | JoinRows | BeginRows, args: argparse.Namespace, context: Context
) -> tuple[Outcome, tuple[str, ...]]:
    """Carry `act` out, the caution due first; what came of it, and remarks for stderr.

    Raises CommandError when nobody read the caution.
    """
    try:
        return do(quilt, act), ()
    except CautionFirst as due:
        lines = _caution_lines(due.caution)
        if not args.caution_read:
            _wait_until_read(lines, context)
            lines = ()
        return do(quilt, replace(act, caution_read=True)), lines


def _wait_until_read(lines: tuple[str, ...], context: Context) -> None:
    if not context.interactive:
        again = "Nothing was counted. When you have read this, count again with --caution-read"
        raise CommandError("\n".join((*lines, again)))
    said = context.ask(*lines, "Press Enter to say that you have read this, or n to stop:")
    if said:
        raise CommandError("Nothing was counted.")


def _caution_lines(caution: Caution) -> tuple[str, ...]:
    return (f"Caution ({caution.why.value}): {caution.title}", *caution.lines, GENERAL)
