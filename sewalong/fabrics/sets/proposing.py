"""Proposes the sets of a quilt, all at once, by a rule she picks, better while it is watched."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from itertools import islice
from math import inf

from msgspec import Struct

from sewalong.fabrics.sets.dealing import LOOKS_A_ROUND, deal
from sewalong.fabrics.sets.proposal_words import proposal_words
from sewalong.fabrics.sets.rules import Rule
from sewalong.fabrics.sets.tasks import Task, task_of
from sewalong.fabrics.sets.wanted import Dealt
from sewalong.fabrics.swatch import Swatch
from sewalong.piecing.contacts import Contact

ENOUGH = 4 * LOOKS_A_ROUND
"""Looks after which little more is found: about half a second for 168 squares of 42 fabrics."""


class Asked(Struct, frozen=True):
    """What is to be proposed.

    `swatches` are her fabrics, each with the squares that are free: in no set that is begun or
    stands. `meeting` are the contacts of the method's units, `places` its letters in the order a
    set is laid, `sets` how many are wanted. `background` names a fabric by letter or name, or a
    colour family, for Rule.ONE_BACKGROUND. `locked` are sets that stand, her letters by place:
    they come back in no proposal, and are said where they are weaker than what is proposed.
    """

    swatches: tuple[Swatch, ...]
    meeting: tuple[Contact, ...]
    places: tuple[str, ...]
    sets: int
    rule: Rule
    background: str = ""
    locked: tuple[tuple[str, ...], ...] = ()
    seed: int = 1


class Proposal(Struct, frozen=True):
    """Sets, each her letters by place, and what is said of them.

    `over` has the squares of each fabric that are in none, where there are any. `weakest` is how
    far the weakest contact is apart, in L* or by colour as CIEDE2000, and `bound` what no choice
    of sets passes: None where nothing is known or the rule does not ask. `doubles` are the
    squares whose print lies in their set already. `words` are plain sentences, one fact each, the
    weakest contact first.
    """

    sets: tuple[tuple[str, ...], ...]
    over: Mapping[str, int]
    weakest: float | None
    bound: float | None
    doubles: int
    words: tuple[str, ...]


def propose(asked: Asked) -> Iterator[Proposal]:
    """The best proposal so far, again and again, each as good as the one before or better.

    The same `asked` gives the same proposals in the same order; stop when it is good enough
    (`ENOUGH`), or when asked to. It ends by itself only where nothing can be bettered. Raises
    SetsRefused, at once, where no set can be proposed.
    """
    task = task_of(
        asked.swatches,
        asked.meeting,
        asked.places,
        asked.sets,
        asked.rule,
        asked.background,
    )
    return _proposals(asked, task)


def proposed(asked: Asked, looks: int = ENOUGH) -> Proposal:
    """The best after so many looks: the same on any machine. Raises SetsRefused."""
    *_, last = islice(propose(asked), looks)
    return last


def _proposals(asked: Asked, task: Task) -> Iterator[Proposal]:
    last: tuple[Dealt, Proposal] | None = None
    for dealt in deal(task.wanted, task.aim, asked.seed, task.begun):
        if last is None or dealt is not last[0]:
            last = dealt, _proposal(asked, task, dealt)
        yield last[1]


def _proposal(asked: Asked, task: Task, dealt: Dealt) -> Proposal:
    letters = [swatch.letter for swatch in asked.swatches]
    return Proposal(
        tuple(tuple(letters[print] for print in one) for one in dealt.sets),
        Counter(letters[print] for print in dealt.over),
        dealt.weakest if abs(dealt.weakest) < inf else None,
        task.bound,
        dealt.doubles,
        proposal_words(asked.swatches, task, dealt, asked.rule, asked.sets),
    )
