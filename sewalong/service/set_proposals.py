"""Sets proposed for an open quilt, by a rule she picks, from the squares that are free.

Colours are reckoned with here, so it is loaded only where sets are chosen.
"""

from __future__ import annotations

from collections.abc import Collection
from time import monotonic

from msgspec.structs import replace

from sewalong.fabrics.sets.proposing import Asked, Proposal, propose, proposed
from sewalong.fabrics.sets.rules import Rule
from sewalong.fabrics.swatch import swatches
from sewalong.progress.acts.sets import AcceptSets
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.squares_left import shape_of_sets
from sewalong.progress.record.state import State
from sewalong.progress.sets.to_choose import to_choose
from sewalong.quilt.derived import derived
from sewalong.quilt.method_seams import method_seams

FIRST_SEED = 1
"""The choice that is shown first; any other is another draw."""


def asked_of(
    state: State,
    rule: Rule = Rule.BY_VALUE,
    background: str = "",
    without: Collection[str] = (),
    seed: int = FIRST_SEED,
) -> Asked:
    """What is asked for: all sets still to be chosen, without the fabrics of these letters. Raises
    Refused where no set is left to choose, or the method has none."""
    quilt = state.quilt
    found = to_choose(state, plan(state))
    if not quilt.counted_fabrics:
        raise Refused(
            "No fabrics are said yet, so there is nothing to choose sets from. Say them first, such "
            "as lights 60, mediums 70, darks 38."
        )
    if not found.sets:
        raise Refused(
            "No set is left to choose: those that stand take all the target needs, or fewer squares "
            "lie there than a set takes."
        )
    free = tuple(
        replace(one, squares=0 if one.letter in without else found.free[one.letter])
        for one in swatches(quilt.counted_fabrics)
    )
    return Asked(
        swatches=free,
        meeting=method_seams(derived(quilt)).contacts,
        places=shape_of_sets(quilt).places,
        sets=found.sets,
        rule=rule,
        background=background,
        locked=found.kept,
        seed=seed,
    )


def best_of(asked: Asked, seconds: float | None = None) -> Proposal:
    """The best proposal after so many seconds; without them after so many looks, the same on any
    machine. Raises SetsRefused."""
    if seconds is None:
        return proposed(asked)
    until = monotonic() + seconds
    better = propose(asked)
    best = next(better)
    while monotonic() < until and (found := next(better, None)) is not None:
        best = found
    return best


def accepting(proposal: Proposal, rule: Rule) -> AcceptSets:
    """The act by which she accepts a proposal."""
    return AcceptSets(proposal.sets, rule.value)
