"""Which sets are still to be chosen, and from which squares."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from sewalong.progress.plan.plan import Plan
from sewalong.progress.record.events.sets import kept_sets
from sewalong.progress.record.sets_laid import SetsNow
from sewalong.progress.record.squares_left import shape_of_sets, squares_left
from sewalong.progress.record.state import State


class ToChoose(Struct, frozen=True):
    """`sets` are those the target still takes, beside the ones that stand: `kept`, her letters by
    place. `free` counts by fabric the squares that are in none of these, nor gone."""

    sets: int
    free: Mapping[str, int]
    kept: tuple[tuple[str, ...], ...]


def to_choose(state: State, now: Plan) -> ToChoose:
    """What is to be chosen where all but the sets begun, locked or held back are chosen anew.

    Squares the target takes are counted in the plan, so what is made already of squares of which
    nobody knows the set is not wanted twice. Raises Refused where the method has no sets.
    """
    shape = shape_of_sets(state.quilt)
    stands = {number: state.sets.sets[number] for number in kept_sets(state)}
    free = squares_left(state.quilt, SetsNow(stands, {}, state.sets.gone))
    lying = state.sets.lying.get(shape.pile, ())
    spoken_for = sum(piece.set in stands for piece in lying)
    wanted = max(0, _still_taken(state, now, shape.pile) - spoken_for)
    there = max(0, state.piles[shape.pile] - spoken_for)
    places = len(shape.places)
    return ToChoose(
        # The last set may give more units than the target takes; it is a whole one all the same.
        min(-(-wanted // places), there // places),
        {letter: max(0, count) for letter, count in free.items()},
        tuple(one.squares for _, one in sorted(stands.items())),
    )


def _still_taken(state: State, now: Plan, pile: str) -> int:
    """Squares of the start pile that the target still takes."""
    return sum(
        now.line(stage.id).to_do * taken.count
        for stage in state.route.stages
        for taken in stage.takes
        if taken.pile == pile
    )
