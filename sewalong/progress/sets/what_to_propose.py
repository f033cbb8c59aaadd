"""What is to be proposed now: the squares in no set that stands, and how many sets are wanted."""

from __future__ import annotations

from collections.abc import Collection

from msgspec.structs import replace

from sewalong.fabrics.sets.proposing import Asked
from sewalong.fabrics.sets.rules import Rule
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.events.sets import kept_sets
from sewalong.progress.record.sets.laid import SetsNow
from sewalong.progress.record.squares_left import shape_of_sets, squares_left
from sewalong.progress.record.state import State
from sewalong.progress.sets.contrast import set_contrast
from sewalong.quilt.set_shape import SetShape


def what_to_propose(
    state: State,
    rule: Rule,
    *,
    background: str = "",
    seed: int = 1,
    without: Collection[str] = (),
) -> Asked:
    """What to ask of a proposal for the quilt as it stands.

    Sets that are begun, locked or held back stand, and their squares are not dealt again; nor are
    those of the fabrics `without`, by letter. Raises Refused for a method without sets, SizeRefused
    for sizes of which no unit comes.
    """
    shape = shape_of_sets(state.quilt)
    kept = kept_sets(state)
    standing = {number: state.sets.sets[number] for number in kept}
    left = squares_left(state.quilt, SetsNow(standing, {}, state.sets.gone))
    seams = set_contrast(state.quilt)
    dealt = tuple(
        replace(one, squares=0 if one.letter in without else max(0, left[one.letter]))
        for one in seams.fabrics.values()
    )
    free = sum(one.squares for one in dealt)
    return Asked(
        swatches=dealt,
        meeting=seams.meeting,
        places=shape.places,
        sets=min(sets_wanted(state, shape), free // len(shape.places)),
        rule=rule,
        background=background,
        locked=tuple(one.squares for one in standing.values() if one.locked),
        seed=seed,
    )


def sets_wanted(state: State, shape: SetShape) -> int:
    """Sets still to be proposed for the units of the target, beyond those that stand.

    Counted from the squares the plan still takes, so that what is sewn of squares of which nobody
    knows the set is not wanted twice, and what is spoiled on the way is wanted again.
    """
    standing = kept_sets(state)
    lying = state.sets.lying.get(shape.pile, ())
    spoken_for = sum(piece.set in standing for piece in lying)
    still = _squares_still_taken(state, shape.pile) - spoken_for
    return max(0, -(-still // len(shape.places)))


def _squares_still_taken(state: State, pile: str) -> int:
    now = plan(state)
    return sum(
        now.line(stage.id).to_do * taken.count
        for stage in state.route.of_pieces
        for taken in stage.takes
        if taken.pile == pile
    )
