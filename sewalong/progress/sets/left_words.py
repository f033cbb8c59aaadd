"""What is over once sets stand: the squares in none of them, in words."""

from __future__ import annotations

from collections.abc import Iterator

from sewalong.progress.record.squares_left import squares_left
from sewalong.progress.record.state import State
from sewalong.progress.sets.set_words import called

NAMED = 4
"""Fabrics that are named in a line before the rest are counted."""


def left_words(state: State) -> tuple[str, ...]:
    """How many sets there are and which squares are in none, a line each; empty before there are
    sets."""
    return tuple(_lines(state)) if state.sets.sets else ()


def _lines(state: State) -> Iterator[str]:
    sets = len(state.sets.sets)
    yield f"{sets} {'set is' if sets == 1 else 'sets are'} accepted."
    left = squares_left(state.quilt, state.sets)
    named = called(state.quilt)
    over = {letter: count for letter, count in left.items() if count > 0}
    if over:
        some = [f"{count} of {named[letter]}" for letter, count in over.items()]
        more = f" and {sum(over.values()) - sum([*over.values()][:NAMED])} of others"
        few = ", ".join(some[:NAMED]) + (more if len(some) > NAMED else "")
        yield f"Squares in no set: {sum(over.values())} in all, {few}."
    else:
        yield "No square is over: all are in sets."
    for letter, count in left.items():
        if count < 0:
            yield f"Sets take {-count} more of {named[letter]} than there are."
