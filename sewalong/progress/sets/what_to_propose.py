"""What is to be proposed now: the squares in no set that stands, and how many sets are wanted."""

from __future__ import annotations

from collections.abc import Collection

from msgspec.structs import replace

from sewalong.fabrics.sets.proposing import Asked
from sewalong.fabrics.sets.rules import Rule
from sewalong.fabrics.swatch import swatches
from sewalong.piecing.contacts import contacts
from sewalong.progress.record.events.sets import kept_sets
from sewalong.progress.record.sets_laid import SetsNow
from sewalong.progress.record.squares_left import shape_of_sets, squares_left
from sewalong.progress.record.state import State
from sewalong.quilt.derived import derived
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
    dealt = tuple(
        replace(one, squares=0 if one.letter in without else max(0, left[one.letter]))
        for one in swatches(state.quilt.counted_fabrics)
    )
    free = sum(one.squares for one in dealt)
    made = derived(state.quilt)
    return Asked(
        swatches=tuple(one for one in dealt if one.squares),
        meeting=contacts(made.units, float(made.seam)),
        places=shape.places,
        sets=min(sets_wanted(state, shape), free // len(shape.places)),
        rule=rule,
        background=background,
        locked=tuple(one.squares for one in standing.values() if one.locked),
        seed=seed,
    )


def sets_wanted(state: State, shape: SetShape) -> int:
    """Sets still to be proposed for the units of the target, beyond those that stand."""
    in_all = -(-state.units_wanted // shape.units)
    begun = state.sets.begun(shape.pile)
    first = state.quilt.method.stages[0].id
    # Counted before there were sets, or unlike any: begun all the same.
    counted = state.done[first] // len(shape.runs[first])
    locked = sum(one.locked and one.number not in begun for one in state.sets.sets.values())
    return max(0, in_all - max(counted, len(begun)) - locked)
