"""Sets proposed for an open quilt, by a rule she picks, and accepted.

Colours are reckoned with here, so it is loaded only where sets are chosen.
"""

from __future__ import annotations

from time import monotonic

from sewalong.fabrics.sets.proposing import Asked, Proposal, propose, proposed
from sewalong.progress.acts.sets import AcceptSets


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


def accepting(asked: Asked, proposal: Proposal) -> AcceptSets:
    """The act by which she accepts a proposal."""
    return AcceptSets(proposal.sets, asked.rule.value)
