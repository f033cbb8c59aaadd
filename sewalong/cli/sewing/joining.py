"""`join`: two rows by their tags, or which joins come next, in pairs."""

from __future__ import annotations

import argparse

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.facts import each, sentences
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt
from sewalong.cli.sewing.caution_first import with_caution
from sewalong.cli.sewing.outcome import aftermath
from sewalong.progress.acts.joining import JoinRows
from sewalong.progress.joining.exchanged_rows import exchanged
from sewalong.progress.joining.next_joins import Joining, joining
from sewalong.progress.joining.orientation_checks import which_way_up
from sewalong.progress.joining.press_directions import BEGINS, press_rule
from sewalong.progress.joining.row_tags import HOW_TO_TAG, read_label, row_label, trap_pairs
from sewalong.progress.record.route import JOIN_ROWS
from sewalong.progress.record.rows_sewn import rows_wanted
from sewalong.progress.record.state import State


def join(args: argparse.Namespace, context: Context) -> Report:
    """`join ROW ROW`, or `join`"""
    if len(args.rows) not in (0, 2):
        raise CommandError(
            "Name two rows by their tags, such as R1 R2; or none, for what comes next."
        )
    with chosen_quilt(args, context) as quilt:
        if not args.rows and not args.exchange:
            return _next(quilt.state, placed=not args.unsettled)
        if not args.rows:
            raise CommandError("Name the two rows that change places, such as R3 R6.")
        first, second = (read_label(tag) for tag in args.rows)
        if args.exchange:
            return _exchanged(quilt.state, first, second)
        outcome, aside = with_caution(quilt, JoinRows(first, second), args, context)
        now = joining(quilt.state)
        return aftermath(quilt, outcome, first=now.lines, aside=aside, more=_data(now))


def _next(state: State, *, placed: bool) -> Report:
    now = joining(state)
    lines = [fact for line in now.lines for fact in sentences(line)]
    if now.seams > now.done:
        if state.wall.is_laid:
            from sewalong.progress.joining.before_joining import before_the_join
            from sewalong.progress.joining.nesting import nesting_facts

            lines += [*nesting_facts(state), *each("The next seam", before_the_join(state))]
        looks = which_way_up(JOIN_ROWS, is_web=state.quilt.is_web)
        lines += each("Before each seam", looks)
        sashed = state.quilt.sashing is not None
        lines.append(f"Seams within the rows: {press_rule(placed=placed, sashed=sashed)}.")
        lines += [BEGINS, *each("Tags", sentences(HOW_TO_TAG))]
        traps = trap_pairs(rows_wanted(state))
        if traps:
            pairs = ", ".join(f"{one}/{other}" for one, other in traps)
            lines.append(f"Read upside down without the letter: {pairs}.")
    tags = [row_label(row) for row in range(1, rows_wanted(state) + 1)]
    return Report(tuple(lines), {**_data(now), "tags": tags})


def _exchanged(state: State, first: int, second: int) -> Report:
    found = exchanged(state.target, first, second, state.quilt.setting, state.wall.pressed)
    data: dict[str, object] = {
        "rows": list(found.rows),
        "joins": found.joins,
        "collide": [list(pair) for pair in found.collide],
        "crossings": found.crossings,
    }
    return Report(tuple(sentences(found.sentence)), data)


def _data(now: Joining) -> dict[str, object]:
    return {
        "seams": now.seams,
        "done": now.done,
        "possible_now": now.can,
        "without_numbers": now.unnumbered,
        "levels": now.levels,
        "pieces": [list(run) for run in now.pieces],
        "next": [
            {"rows": [join.first, join.second], "level": join.level, "makes": join.rows}
            for join in now.joins
        ],
    }
