"""Edges cut on the bias: which piles have them, and the cut that makes them.

Such edges stretch when they are handled and while they wait.
"""

from __future__ import annotations

from functools import lru_cache

from msgspec import Struct

from sewalong.piecing.method import Hazard, Stage
from sewalong.progress.plan.plan import Plan
from sewalong.progress.record.state import State
from sewalong.quilt.quilt import Quilt

STAY = (
    "Lay them flat, don't hang or stack them high; starch them, or stay-stitch 1/8 in inside the "
    "cut edge."
)
"""What keeps such edges: working practice reported by makers
(truebluecanadian.blogspot.com, Taming bias edges)."""


class Bias(Struct, frozen=True):
    """`cut` is the stage that cuts on the bias, `piles` those whose outer edges lie on it until
    they are joined; both empty when the method leaves none."""

    cut: str
    piles: tuple[str, ...]


@lru_cache(maxsize=64)
def bias(quilt: Quilt) -> Bias:
    """The bias of a quilt's method, from the cloth of its pieces."""
    # The geometry is loaded only where something was cut.
    from sewalong.progress.joining.bias_cuts import bias_cuts

    cuts = bias_cuts(quilt)
    stages = quilt.method.stages
    first = next((place for place, stage in enumerate(stages) if stage.id in cuts), None)
    if first is None:
        return Bias("", ())
    return Bias(stages[first].id, tuple(stage.makes.pile for stage in stages[first:]))


def may_be_cut(state: State) -> bool:
    """Whether anything was cut at all, so that there can be edges on the bias."""
    return any(state.done[s.id] for s in state.route.stages if Hazard.CUTTER in s.hazards)


def pieces_wanted(now_plan: Plan) -> bool:
    """Whether any piece is still to be made or joined; what is over then waits for nothing."""
    return any(line.to_do and isinstance(line.stage, Stage) for line in now_plan.lines)
