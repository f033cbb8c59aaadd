"""Proposes the sets of a quilt, all at once, by a rule she picks, better while it is watched."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from itertools import islice
from math import inf

from msgspec import Struct

from sewalong.fabrics.sets.asked import Asked as Asked
from sewalong.fabrics.sets.dealing import LOOKS_A_ROUND, deal
from sewalong.fabrics.sets.proposal_words import proposal_words
from sewalong.fabrics.sets.tasks import Task, task_of
from sewalong.fabrics.sets.wanted import Dealt

ENOUGH = 4 * LOOKS_A_ROUND
"""Looks after which little more is found: less than a second for 168 squares of 42 fabrics."""


class Proposal(Struct, frozen=True):
    """Sets, each her letters by place, and what is said of them.

    `over` has the squares of each fabric that are in none, where there are any. `weakest` is how
    far the weakest contact is apart: in L*, by colour as CIEDE2000; light on dark it is below
    nothing where the one meant as dark is the lighter. `bound` is what no choice of sets passes.
    Both are None where nothing is known or the rule does not ask. `doubles` are the squares whose
    print lies in their set already. `words` are plain sentences, one fact each, the weakest
    contact first.
    """

    sets: tuple[tuple[str, ...], ...]
    over: Mapping[str, int]
    weakest: float | None
    bound: float | None
    doubles: int
    words: tuple[str, ...]


def propose(asked: Asked) -> Iterator[Proposal]:
    """The best proposal so far, again and again, each as good as the one before or better.

    The same `asked` gives the same proposals in the same order; stop when it is good enough, or
    when asked to. It ends by itself only where nothing can be bettered. Raises SetsRefused, at
    once, where no set can be proposed.
    """
    return _proposals(asked, task_of(asked))


def proposed(asked: Asked, looks: int = ENOUGH) -> Proposal:
    """The best after so many looks: the same on any machine. Raises SetsRefused."""
    *_, last = islice(propose(asked), looks)
    return last


def _proposals(asked: Asked, task: Task) -> Iterator[Proposal]:
    said: tuple[Dealt, Proposal] | None = None
    for dealt in deal(task.wanted, task.aim, asked.seed, task.begun):
        if said is None or dealt is not said[0]:
            said = dealt, _proposal(asked, task, dealt)
        yield said[1]


def _proposal(asked: Asked, task: Task, dealt: Dealt) -> Proposal:
    letters = [swatch.letter for swatch in asked.swatches]
    return Proposal(
        tuple(tuple(letters[print] for print in one) for one in dealt.sets),
        Counter(letters[print] for print in dealt.over),
        dealt.weakest if dealt.weakest < inf else None,
        task.bound,
        dealt.doubles,
        tuple(proposal_words(asked, task, dealt)),
    )
