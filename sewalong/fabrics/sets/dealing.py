"""Deals squares into sets so that the weakest contact is as strong as can be found.

A search: swaps of two squares, more and more only those that better it (annealing), in rounds
that begin by chance and where the best stands, by turns. The same seed gives the same deals in
the same order; how long to go on is for whoever asks.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import cycle
from math import exp, inf
from random import Random

from sewalong.fabrics.sets.wanted import FORBIDDEN, Dealt, Wanted

SWAPS_A_LOOK = 2_000
"""Swaps between two looks at what was found (own choice)."""

LOOKS_A_ROUND = 60
"""Looks from warm to cold. With the next three measured on 168 squares of 42 prints in stacks of
eight: fewer end early, more find little more in a second."""

WARM, COLD = 0.1, 0.00003
"""How much worse a swap may make it at the start and at the end of a round, as a share of what a
contact of no strength costs."""

DOUBLE = 2.0
"""What a print twice in a set costs, in contacts of no strength: no contact is worth one."""

NOT_SO = 1000.0
"""What it costs where two prints may not lie so: no swap that leads there is ever kept
(own choice)."""

LIKE_FAMILY = 0.002
"""What two squares of one colour family in a set cost, likewise: spread where nothing else says
(own choice)."""

MISSED = 0.002
"""What it costs to leave out all of a print of one square. Of others it is the squares left out,
times the share of them: what is over is least missed where most of it is in the sets, so a lone
square comes in before the fourth of four, and no print is left out while others are there whole
(own choice)."""


def deal(
    wanted: Wanted, aim: float, seed: int, begun: Sequence[Sequence[int]] = ()
) -> Iterator[Dealt]:
    """The best deal so far, again and again without end; each is as good as the one before or
    better.

    `aim` is the strength that is striven for, such as a bound; `begun` are sets to go on from, by
    chance if none are given. It ends where all contacts reach the aim, no print is twice in a
    set, every family is spread as far as was asked for, and nothing is over.
    """
    table = _Table(wanted, aim, Random(seed))
    table.begin(begun)
    best = table.dealt()
    for anew in cycle((True, False)):
        if anew:
            # From elsewhere, for all that is striven for: what was found may lead no further.
            table.begin(begun)
            table.strive(aim)
        else:
            # From the best, for half of what is missing: an aim far beyond what can be had weighs
            # every contact alike and misses the weakest.
            table.lay(best.sets)
            table.strive(min(aim, (max(best.weakest, 0.0) + aim) / 2))
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
        taken = wanted.sets * wanted.places
        self.set_of = [min(i // wanted.places, wanted.sets) for i in range(len(self.at))]
        self.beside: list[list[int]] = [[] for _ in self.at]
        for first in range(0, taken, wanted.places):
            for a, b in wanted.meeting:
                self.beside[first + a].append(first + b)
                self.beside[first + b].append(first + a)
        self.shortfall = _costs(wanted, aim)
        self.strive(aim)
        self.most = wanted.most or (1,) * len(wanted.counts)
        # Without families each print is one of its own, so that none is ever crowded.
        self.families = wanted.families or tuple(range(len(wanted.counts)))
        self.missed = [
            [MISSED * over * over / n if n else 0.0 for over in range(n + 2)] for n in wanted.counts
        ]

    def _count(self) -> None:
        """Count prints and families in each set; what is over counts as one set more."""
        every = range(self.wanted.sets + 1)
        self.in_set = [[0] * len(self.wanted.counts) for _ in every]
        self.in_family = [[0] * (max(self.families) + 1) for _ in every]
        for place, print in enumerate(self.at):
            self.in_set[self.set_of[place]][print] += 1
            self.in_family[self.set_of[place]][self.families[print]] += 1

    def begin(self, begun: Sequence[Sequence[int]]) -> None:
        """Lay these sets, or all squares by chance where there are none."""
        if begun:
            self.lay(begun)
        else:
            self.chance.shuffle(self.at)
            self._count()

    def strive(self, aim: float) -> None:
        """From now on swap for this strength."""
        cost = _costs(self.wanted, aim)
        from_second = [list(column) for column in zip(*cost, strict=True)]
        # At each place, by the print there and by the print beside it.
        self.costs = [cost] * len(self.at)
        for first in range(0, self.wanted.sets * self.wanted.places, self.wanted.places):
            for _, second in self.wanted.meeting:
                self.costs[first + second] = from_second

    def lay(self, sets: Sequence[Sequence[int]]) -> None:
        """Lay these sets; the other squares are over."""
        laid = [print for one in sets for print in one]
        over = Counter(dict(enumerate(self.wanted.counts)))
        over.subtract(laid)
        self.at = [*laid, *over.elements()]
        self._count()

    def swap_some(self, warmth: float) -> None:
        """Swap squares two at a time; a swap that makes it worse stays the seldomer the colder."""
        at, beside, costs, set_of = self.at, self.beside, self.costs, self.set_of
        in_set, in_family, families = self.in_set, self.in_family, self.families
        most, missed = self.most, self.missed
        chance, size = self.chance.random, len(self.at)
        over = self.wanted.sets
        # Half of the swaps begin where something is to be bettered.
        weak = self._weak() or range(size)
        some_weak = len(weak)
        for _ in range(SWAPS_A_LOOK):
            i = weak[int(chance() * some_weak)] if chance() < 0.5 else int(chance() * size)
            j = int(chance() * size)
            one, other = at[i], at[j]
            if one == other:
                continue
            cost_i, cost_j = costs[i], costs[j]
            change = 0.0
            for place in beside[i]:
                change -= cost_i[one][at[place]]
            for place in beside[j]:
                change -= cost_j[other][at[place]]
            at[i], at[j] = other, one
            for place in beside[i]:
                change += cost_i[other][at[place]]
            for place in beside[j]:
                change += cost_j[one][at[place]]
            here, there = set_of[i], set_of[j]
            if here != there:
                for at_set, goes, comes in ((here, one, other), (there, other, one)):
                    lying = in_set[at_set]
                    if at_set == over:
                        left, left_then = missed[goes], missed[comes]
                        change += left[lying[goes] - 1] - left[lying[goes]]
                        change += left_then[lying[comes] + 1] - left_then[lying[comes]]
                    else:
                        change += DOUBLE * (
                            (lying[comes] >= most[comes]) - (lying[goes] > most[goes])
                        )
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

    def _weak(self) -> list[int]:
        """The places that meet one beside which they fall short of the aim."""
        at = self.at
        return [
            place
            for place, beside in enumerate(self.beside)
            if any(self.costs[place][at[place]][at[other]] for other in beside)
        ]

    def dealt(self) -> Dealt:
        """The squares as they lie now."""
        size = self.wanted.places
        taken = self.wanted.sets * size
        meeting = [
            (self.at[first + a], self.at[first + b])
            for first in range(0, taken, size)
            for a, b in self.wanted.meeting
        ]
        return Dealt(
            tuple(tuple(self.at[first : first + size]) for first in range(0, taken, size)),
            tuple(self.at[taken:]),
            sum(
                max(0, n - most)
                for one in self.in_set[:-1]
                for n, most in zip(one, self.most, strict=True)
            ),
            min((self.wanted.strength[a][b] for a, b in meeting), default=inf),
            sum(self.shortfall[a][b] for a, b in meeting) + self._crowded() + self._missing(),
        )

    def _crowded(self) -> float:
        """What families cost in all sets: each two squares of one family."""
        if not self.wanted.families:
            return 0.0
        return LIKE_FAMILY * sum(n * (n - 1) // 2 for one in self.in_family[:-1] for n in one)

    def _missing(self) -> float:
        """What it costs that these are over."""
        return sum(costs[n] for costs, n in zip(self.missed, self.in_set[-1], strict=True))


def _costs(wanted: Wanted, aim: float) -> list[list[float]]:
    return [[_cost(strength, aim) for strength in row] for row in wanted.strength]


def _cost(strength: float, aim: float) -> float:
    """Cubed, so that one weak contact costs more than several that are nearly strong enough."""
    if strength == FORBIDDEN:
        return NOT_SO
    return max(0.0, 1 - strength / aim) ** 3 if aim > 0 else 0.0
