"""How many squares of each fabric are in no set, and what sets there can be."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from sewalong.progress.record.limits import are, quoted
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.sets.laid import LaidSet, SetsNow
from sewalong.progress.record.state import State
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.set_shape import SetShape, set_shape


def shape_of_sets(quilt: Quilt) -> SetShape:
    """The sets of the quilt's method; raises Refused where it has none."""
    shape = set_shape(quilt)
    if shape is None:
        raise Refused(
            "This method has no sets: its pieces are strips, or of several sizes, or one alone is a "
            "unit."
        )
    return shape


def squares_left(quilt: Quilt, sets: SetsNow) -> Mapping[str, int]:
    """By fabric, the squares in no set; below zero where the plan has fewer now than sets take."""
    used = sets.used()
    return {
        fabric.letter: (fabric.squares or 0) - used.get(fabric.letter, 0)
        for fabric in quilt.counted_fabrics
    }


def laid_set(state: State, number: int) -> LaidSet:
    """The set of this number; raises Refused."""
    found = state.sets.sets.get(number)
    if found is None:
        raise Refused(f"There is no set {number}.{_there_are(state)}")
    return found


def _there_are(state: State) -> str:
    numbers = state.sets.sets
    if not numbers:
        return " No sets are accepted yet: let some be proposed first."
    return f" There are sets {min(numbers)} to {max(numbers)}."


def refuse_what_there_is_not(state: State, sets: SetsNow, changed: Sequence[LaidSet]) -> None:
    """Raise Refused where sets are no sets of the method, or take squares that are not there."""
    places = len(shape_of_sets(state.quilt).places)
    fabrics = {fabric.letter: fabric for fabric in state.quilt.counted_fabrics}
    for one in changed:
        if len(one.squares) != places:
            raise Refused(
                f"A set of this method is {places} squares, and {len(one.squares)} were given for "
                f"set {one.number}. Name one fabric for each square."
            )
        for letter in one.squares:
            if letter not in fabrics:
                raise Refused(
                    f"There is no fabric {quoted(letter)} with squares. Add it to the fabrics first."
                )
    left = squares_left(state.quilt, sets)
    named = {letter for one in changed for letter in one.squares}
    for letter in sorted(named):
        if left[letter] < 0:
            short, name = -left[letter], fabrics[letter].called
            raise Refused(
                f"{short} more of {name} {are(short)} wanted than there {are(short)}: the sets take "
                f"{(fabrics[letter].squares or 0) + short}. Take another fabric, or correct how "
                "many squares there are."
            )
