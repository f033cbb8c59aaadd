"""`wall mend`: the fewest swaps and turns that mend the touches, one at a time, for somebody kneeling."""

from __future__ import annotations

import argparse

from sewalong.cli.frame.report import Report
from sewalong.cli.sewing.outcome import aftermath
from sewalong.progress.record.state import State
from sewalong.service.acting import do
from sewalong.service.open_quilt import OpenQuilt
from sewalong.service.wall.mending import as_act, how_many, left_lines, mended, move_lines
from sewalong.wall.laying.mending import Mended


def mended_report(quilt: OpenQuilt, args: argparse.Namespace) -> Report:
    """The moves in order, and with --accept what lies where once they are made."""
    quilt.refresh()
    found = mended(quilt.state)
    lines, data = mended_lines(quilt.state, found), mended_data(found)
    if args.accept and found.moves:
        return aftermath(quilt, do(quilt, as_act(quilt.state, found)), first=lines, more=data)
    last = ("Once they are made: the same with --accept",) if found.moves else ()
    return Report((*lines, *last), {"quilt": quilt.entry.name, **data})


def mended_lines(state: State, found: Mended) -> tuple[str, ...]:
    """How many moves it takes, every move, and what is left. What is to be turned in a move stands on
    a line of its own under its number."""
    moves = tuple(
        f"{number}. {part[:1].upper()}{part[1:].rstrip('.')}."
        for number, move in enumerate(move_lines(state, found), start=1)
        for part in move.split("; ")
    )
    return (how_many(found), *moves, *left_lines(state, found))


def mended_data(found: Mended) -> dict[str, object]:
    """The moves as data: the place, the quarter turns it has then, and what it changes with."""
    return {
        "moves": [
            {
                "place": list(move.at),
                "turns": move.turns,
                "with": list(move.other) if move.other else None,
                "with_turns": move.other_turns if move.other else None,
                "spare": move.spare,
            }
            for move in found.moves
        ],
        "fewest": found.fewest,
        "at_least": found.at_least,
        "left": len(found.left),
    }
