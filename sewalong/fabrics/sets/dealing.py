"""Deals squares into sets so that the weakest contact is as strong as can be found.

A search: swaps of two squares, more and more only those that better it (annealing), again and
again from where the best stands. The same seed gives the same deals in the same order; how long
to go on is for whoever asks.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import exp, inf
from random import Random

from sewalong.fabrics.sets.wanted import Dealt, Wanted

SWAPS_A_LOOK = 2_000
"""Swaps between two looks at what was found."""

LOOKS_A_ROUND = 60
"""Looks from warm to cold. With the next three measured on 168 squares of 42 prints in stacks of
eight: fewer end early, more find little more in a second."""

WARM, COLD = 0.1, 0.00003
"""How much worse a swap may make it at the start and at the end of a round, as a share of what a
contact of no strength costs."""

DOUBLE = 2.0
"""What a print twice in a set costs, in contacts of no strength: no contact is worth one."""

LIKE_FAMILY = 0.002
"""What two squares of one colour family in a set cost, likewise: spread where nothing else says."""


def deal(wanted: Wanted, aim: float, seed: int) -> Iterator[Dealt]:
    """The best deal so far, again and again without end; each is as good as the one before or
    better.

    `aim` is the strength that is striven for, such as a bound. It ends where all contacts reach
    it, no print is twice in a set, and every family is spread as far as was asked for.
    """
    table = _Table(wanted, aim, Random(seed))
    best = table.dealt()
    while True:
        table.lay(best)
        for look in range(LOOKS_A_ROUND):
            table.swap_some(WARM * (COLD / WARM) ** (look / (LOOKS_A_ROUND - 1)))
            found = table.dealt()
            if found.rank > best.rank:
                best = found
            yield best
        if not best.doubles and not best.shortfall:
            return


class _Table:
    """Squares as they lie: set by set, place by place, and behind them what is over."""

    def __init__(self, wanted: Wanted, aim: float, chance: Random) -> None:
        self.wanted = wanted
        self.chance = chance
        self.at = [print for print, n in enumerate(wanted.counts) for _ in range(n)]
        chance.shuffle(self.at)
        taken = wanted.sets * wanted.places
        self.set_of = [min(i // wanted.places, wanted.sets) for i in range(len(self.at))]
        self.beside: list[list[int]] = [[] for _ in self.at]
        for first in range(0, taken, wanted.places):
            for a, b in wanted.meeting:
                self.beside[first + a].append(first + b)
                self.beside[first + b].append(first + a)
        # Cubed, so that one weak contact costs more than several that are nearly strong enough.
        self.cost = [
            [max(0.0, 1 - strength / aim) ** 3 if aim > 0 else 0.0 for strength in row]
            for row in wanted.strength
        ]
        # Without families each print is one of its own, so that none is ever crowded.
        self.families = wanted.families or tuple(range(len(wanted.counts)))
        self._count()

    def _count(self) -> None:
        """Count prints and families in each set; what is over counts as one set more."""
        every = range(self.wanted.sets + 1)
        self.in_set = [[0] * len(self.wanted.counts) for _ in every]
        self.in_family = [[0] * (max(self.families) + 1) for _ in every]
        for place, print in enumerate(self.at):
            self.in_set[self.set_of[place]][print] += 1
            self.in_family[self.set_of[place]][self.families[print]] += 1

    def lay(self, dealt: Dealt) -> None:
        """Lay the squares as they were dealt."""
        self.at = [*(print for one in dealt.sets for print in one), *dealt.over]
        self._count()

    def swap_some(self, warmth: float) -> None:
        """Swap squares two at a time; a swap that makes it worse stays the seldomer the colder."""
        at, beside, cost, set_of = self.at, self.beside, self.cost, self.set_of
        in_set, in_family, families = self.in_set, self.in_family, self.families
        chance, size = self.chance.random, len(self.at)
        over = self.wanted.sets
        for _ in range(SWAPS_A_LOOK):
            i, j = int(chance() * size), int(chance() * size)
            one, other = at[i], at[j]
            if one == other:
                continue
            cost_one, cost_other = cost[one], cost[other]
            change = 0.0
            for place in beside[i]:
                change -= cost_one[at[place]]
            for place in beside[j]:
                change -= cost_other[at[place]]
            at[i], at[j] = other, one
            for place in beside[i]:
                change += cost_other[at[place]]
            for place in beside[j]:
                change += cost_one[at[place]]
            here, there = set_of[i], set_of[j]
            if here != there:
                if here != over:
                    change += DOUBLE * ((in_set[here][other] > 0) - (in_set[here][one] > 1))
                if there != over:
                    change += DOUBLE * ((in_set[there][one] > 0) - (in_set[there][other] > 1))
                family, family_other = families[one], families[other]
                if family != family_other:
                    # Each two of a family in one set cost; a family that goes no longer meets its own.
                    if here != over:
                        near = in_family[here]
                        change += LIKE_FAMILY * (near[family_other] - near[family] + 1)
                    if there != over:
                        near = in_family[there]
                        change += LIKE_FAMILY * (near[family] - near[family_other] + 1)
            if change > 0 and chance() >= exp(-change / warmth):
                at[i], at[j] = one, other
            elif here != there:
                in_set[here][one] -= 1
                in_set[here][other] += 1
                in_set[there][other] -= 1
                in_set[there][one] += 1
                in_family[here][families[one]] -= 1
                in_family[here][families[other]] += 1
                in_family[there][families[other]] -= 1
                in_family[there][families[one]] += 1

    def dealt(self) -> Dealt:
        """The squares as they lie now."""
        size = self.wanted.places
        taken = self.wanted.sets * size
        meeting = [
            (self.at[place], self.at[other])
            for place in range(taken)
            for other in self.beside[place]
            if place < other
        ]
        return Dealt(
            tuple(tuple(self.at[first : first + size]) for first in range(0, taken, size)),
            tuple(self.at[taken:]),
            sum(n - 1 for one in self.in_set[:-1] for n in one if n > 1),
            min((self.wanted.strength[a][b] for a, b in meeting), default=inf),
            sum(self.cost[a][b] for a, b in meeting) + self._crowded(),
        )

    def _crowded(self) -> float:
        """What families cost in all sets: each two squares of one family."""
        if not self.wanted.families:
            return 0.0
        return LIKE_FAMILY * sum(n * (n - 1) // 2 for one in self.in_family[:-1] for n in one)
