"""`wall mend`: the fewest swaps and turns that mend the touches, one at a time, for somebody kneeling."""

from __future__ import annotations

import argparse

from sewalong.cli.frame.report import Report
from sewalong.cli.sewing.outcome import aftermath
from sewalong.progress.acts.wall import MoveMany
from sewalong.progress.record.events.wall import EMPTY, must_be_laid
from sewalong.progress.record.state import State
from sewalong.progress.sets.set_words import called
from sewalong.progress.wall.on_wall import on_wall, rows_of
from sewalong.service.acting import do
from sewalong.service.open_quilt import OpenQuilt
from sewalong.wall.laying.mending import Mended, mend
from sewalong.wall.laying.move_words import moves_words
from sewalong.wall.laying.touch_words import touch_words


def mended_report(quilt: OpenQuilt, args: argparse.Namespace) -> Report:
    """The moves in order, and with --accept what lies where once they are made."""
    quilt.refresh()
    must_be_laid(quilt.state)
    found = mended(quilt.state)
    lines, data = mended_lines(quilt.state, found), mended_data(quilt.state, found)
    if args.accept and found.moves:
        return aftermath(quilt, do(quilt, as_act(quilt.state, found)), first=lines, more=data)
    last = ("Once they are made: the same with --accept",) if found.moves else ()
    return Report((*lines, *last), {"quilt": quilt.entry.name, **data})


def mended(state: State) -> Mended:
    """The fewest moves that are found; what is locked or sewn stays."""
    now = on_wall(state)
    assert now is not None
    return mend(now.laying, now.units, now.rules, now.fixed)


def mended_lines(state: State, found: Mended) -> tuple[str, ...]:
    """Every move in words, then what is left, and whether fewer could do."""
    now = on_wall(state)
    assert now is not None
    names = called(state.quilt)
    moves = moves_words(found.moves, now.laying, now.units, names)
    left = tuple(f"Still: {touch_words(touch, names)}" for touch in found.left)
    return (_how_many(found), *_numbered(moves), *left)


def _how_many(found: Mended) -> str:
    n = len(found.moves)
    moves = f"{n} move{'' if n == 1 else 's'}"
    if not n:
        return (
            "Nothing touches, so nothing is to be moved."
            if not found.left
            else "No move mends any."
        )
    if found.left:
        left = len(found.left)
        return f"{moves} leave {left} touch{'' if left == 1 else 'es'}."
    if found.fewest:
        return f"{moves} {'mends' if n == 1 else 'mend'} all, and fewer do not."
    return f"{moves} mend all, and fewer than {found.at_least} do not."


def _numbered(moves: tuple[str, ...]) -> tuple[str, ...]:
    """A line for each move; its turns stand on lines of their own under its number."""
    return tuple(
        f"{number}. {part[:1].upper()}{part[1:].rstrip('.')}."
        for number, move in enumerate(moves, start=1)
        for part in move.split("; ")
    )


def mended_data(state: State, found: Mended) -> dict[str, object]:
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


def as_act(state: State, found: Mended) -> MoveMany:
    """All the moves as one act: what lies otherwise in the end."""
    after = rows_of(found.after)
    return MoveMany(
        tuple(
            (row, place, *(lies if lies is not None else (EMPTY, 0)))
            for row, there in enumerate(after, start=1)
            for place, lies in enumerate(there, start=1)
            if lies != state.wall.rows[row - 1][place - 1]
        )
    )
