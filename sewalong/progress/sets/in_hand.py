"""The set in hand at a stage: which squares, as which pieces, lie next."""

from __future__ import annotations

from msgspec import Struct

from sewalong.piecing.method import Stage
from sewalong.progress.record.sets.flow import next_at
from sewalong.progress.record.sets.laid import LaidSet
from sewalong.progress.record.state import State
from sewalong.quilt.set_shape import set_shape


class InHand(Struct, frozen=True):
    """What the next count of a stage takes, of a set she accepted.

    `pieces` has for each piece taken the fabrics at its places, empty where one is not known any
    more; of a set that is to be stacked the first lies face up. `count` of `counts` is which count
    of this set it is. `sure` is false where a piece of the pile is gone and nobody said which.
    """

    laid: LaidSet
    stage: str
    pieces: tuple[tuple[str, ...], ...]
    count: int
    counts: int
    sure: bool

    @property
    def number(self) -> int:
        """The number of the set."""
        return self.laid.number


def set_in_hand(state: State, stage_id: str) -> InHand | None:
    """The set in hand at a stage; None where there are none, or nobody knows which."""
    stage = state.route.stage(stage_id)
    if not state.sets.sets or not isinstance(stage, Stage):
        return None
    shape = set_shape(state.quilt)
    if shape is None or stage.id not in shape.runs:
        return None
    found = next_at(shape, state.sets.sets, state.sets.lying, stage)
    laid = state.sets.sets.get(found.set) if found else None
    if found is None or laid is None:
        return None
    runs = shape.runs[stage.id]
    return InHand(
        laid=laid,
        stage=stage.id,
        pieces=tuple(laid.fabrics(shape.squares_of[piece]) for piece in found.run.takes),
        count=runs.index(found.run) + 1,
        counts=len(runs),
        sure=found.sure,
    )
