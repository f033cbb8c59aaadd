"""What sets are to be proposed of: the squares that are free, and as many sets as the plan needs."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from math import ceil

from msgspec.structs import replace

from sewalong.fabrics.sets.proposing import Asked
from sewalong.fabrics.sets.rules import Rule
from sewalong.piecing.method import Stage
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.events.sets import kept_sets
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.sets_laid import SetsNow
from sewalong.progress.record.squares_left import shape_of_sets, squares_left
from sewalong.progress.record.state import State
from sewalong.progress.sets.contrast import set_contrast

ENOUGH_SETS = (
    "No more sets are wanted: what is sewn, locked or held back is enough for the target. Change "
    "the target, or unlock a set."
)


def to_propose(
    state: State,
    rule: Rule,
    *,
    background: str = "",
    seed: int = 1,
    locked: Sequence[tuple[str, ...]] = (),
) -> Asked:
    """What to ask for, so that sets begun, locked or held back stay; `locked` are others that are to
    stay, of those proposed before. `background` is as in `Asked`.

    Raises Refused where the method has no sets, she has no fabrics with squares, or no more sets
    are wanted.
    """
    shape = shape_of_sets(state.quilt)
    if not state.quilt.counted_fabrics:
        raise Refused("There are no fabrics yet to make sets of. Say which there are first.")
    wanted = sets_wanted(state) - len(locked)
    if wanted < 1:
        raise Refused(ENOUGH_SETS)
    stand = {number: state.sets.sets[number] for number in kept_sets(state)}
    free = Counter(squares_left(state.quilt, SetsNow(stand, {}, state.sets.gone)))
    for squares in locked:
        free.subtract(squares)
    seams = set_contrast(state.quilt)
    return Asked(
        swatches=tuple(
            replace(one, squares=free[one.letter])
            for one in seams.fabrics.values()
            if free[one.letter] > 0
        ),
        meeting=seams.meeting,
        places=shape.places,
        sets=wanted,
        rule=rule,
        background=background,
        locked=(*(one.squares for one in stand.values()), *locked),
        seed=seed,
    )


def sets_wanted(state: State) -> int:
    """How many sets the target still needs beside those that stand: begun, locked or held back."""
    shape = shape_of_sets(state.quilt)
    squares = sum(
        line.to_do * taken.count
        for line in plan(state).lines
        if isinstance(line.stage, Stage)
        for taken in line.stage.takes
        if taken.pile == shape.pile
    )
    stand = kept_sets(state)
    squares -= sum(piece.set in stand for piece in state.sets.lying.get(shape.pile, ()))
    return max(0, ceil(squares / len(shape.places)))
