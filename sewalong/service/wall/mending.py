"""The fewest swaps and turns that mend what touches on the wall, one at a time, for somebody kneeling."""

from __future__ import annotations

from sewalong.progress.acts.wall import MoveMany
from sewalong.progress.record.events.wall import EMPTY, must_be_laid
from sewalong.progress.record.state import State
from sewalong.progress.sets.set_words import called
from sewalong.progress.wall.on_wall import OnWall, on_wall, rows_of
from sewalong.wall.laying.mending import Mended, mend
from sewalong.wall.laying.move_words import moves_words
from sewalong.wall.laying.touch_words import touch_words


def mended(state: State) -> Mended:
    """The fewest moves that are found; what is locked or sewn stays. Raises Refused where nothing is
    laid."""
    now = _laid(state)
    return mend(now.laying, now.units, now.rules, now.fixed)


def how_many(found: Mended) -> str:
    """How many moves mend how much, and whether fewer could."""
    n = len(found.moves)
    moves = f"{n} move{'' if n == 1 else 's'}"
    mend = "mends" if n == 1 else "mend"
    if not n:
        return "No move mends any." if found.left else "Nothing touches, so nothing is to be moved."
    if found.left:
        left = len(found.left)
        return f"{moves} {mend} all but {left} touch{'' if left == 1 else 'es'}."
    if found.fewest:
        return f"{moves} {mend} all, and fewer do not."
    return f"{moves} {mend} all, and fewer than {found.at_least} do not."


def move_lines(state: State, found: Mended) -> tuple[str, ...]:
    """Every move in a sentence, each said of what lies there by then."""
    now = _laid(state)
    return moves_words(found.moves, now.laying, now.units, called(state.quilt))


def left_lines(state: State, found: Mended) -> tuple[str, ...]:
    """What still touches once they are made."""
    names = called(state.quilt)
    return tuple(f"Still: {touch_words(touch, names)}" for touch in found.left)


def as_act(state: State, found: Mended) -> MoveMany:
    """All the moves as one act: what lies otherwise in the end."""
    return MoveMany(
        tuple(
            (row, place, *(lies if lies is not None else (EMPTY, 0)))
            for row, there in enumerate(rows_of(found.after), start=1)
            for place, lies in enumerate(there, start=1)
            if lies != state.wall.rows[row - 1][place - 1]
        )
    )


def _laid(state: State) -> OnWall:
    must_be_laid(state)
    now = on_wall(state)
    assert now is not None
    return now
