"""Searches a laying: one at once, then better while it is watched.

Swaps of two units and turns of one, at first also such as make it worse, then more and more only
those that better it (annealing), again and again from where the best lies. The same seed gives
the same layings in the same order; how long to go on is for whoever asks.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import islice
from math import exp, inf
from random import Random

from msgspec import Struct

from sewalong.quilt.setting import Setting
from sewalong.wall.laying.board import Board
from sewalong.wall.laying.bounds import least_touches
from sewalong.wall.laying.grid import At
from sewalong.wall.laying.laying import USUAL, Laying, Put, Rules, empty_laying
from sewalong.wall.laying.plans import Plan, Tones
from sewalong.wall.laying.start import lay_one_by_one, patterns
from sewalong.wall.laying.units import WallUnit

MOVES_A_LOOK = 1_000
"""Moves between two looks at what was found (own choice)."""

LOOKS_A_ROUND, LONGEST = 40, 400
"""Looks from warm to cold: a round takes longer than the one before, for what is easily found is
found by then (own choice)."""

LOOKS_BEFORE_PATTERNS = 15
"""Looks of the first round. Where it does not come to the least, regular patterns are tried: a
laying by chance is liked better, but where the fabrics only just suffice chance finds none
(own choice)."""

WARM, COLD = 0.5, 0.08
"""How many touches worse a move may make it at the start and at the end of a round (own choice,
of a few that were tried on plain squares and stacked units)."""

COLD_TONES = 0.0005
"""The same at the end, where values and families matter too: they cost parts of a touch
(own choice)."""

FROM_A_TOUCH = 0.5
"""The share of moves that begin at a place where something touches (own choice)."""

TURNED = 0.2
"""The share of moves that turn a unit, where it shows something else then (own choice)."""

OTHERS = 3
"""Units that are looked at for one swap of a unit that can be turned. Measured on stacked units by
the corner rule: 81 of 8 fabrics come to 9 touches where with one they come to 12 in the same time."""

CHANCE_OF_TURN = 3.0
"""Touches, for each of warmth, by which a worse turn may seem better as units are swapped (own
choice)."""

LOOKED_FOR = 100
"""Moves after which the places where something touches are looked for again (own choice)."""


class Asked(Struct, frozen=True):
    """What is to be laid.

    `units` are those there are: more than places, and some stay over; fewer, and the last places
    stay empty. `setting`, `rows` and `columns` as in `grid_of`. `spread` asks for families and values
    spread evenly, `plan` for one of the value plans: both after touches. `begun` is what lies
    there now; what it has at the places `locked` stays, unit and turn.
    """

    units: tuple[WallUnit, ...]
    rows: int
    columns: int
    setting: Setting | None = None
    rules: Rules = USUAL
    spread: bool = False
    plan: Plan | None = None
    begun: Laying | None = None
    locked: frozenset[At] = frozenset()
    seed: int = 1


class Found(Struct, frozen=True):
    """A laying, its touches, and what it misses of the plan and of an even spread, in parts of a
    touch. No laying has fewer touches than `least`, whatever is done; only where they are as few
    is it the best there can be."""

    laying: Laying
    touches: int
    misses: float
    least: int

    @property
    def is_least(self) -> bool:
        """Whether no laying has fewer touches."""
        return self.touches == self.least


def search(asked: Asked) -> Iterator[Found]:
    """The best laying so far, again and again, each as good as the one before or better.

    It ends where no better can be had: as few touches as the bound says, and nothing else asked
    for. Raises ValueError for a place that is locked and empty, for no places, and where `begun`
    is of another layout.
    """
    seeking = _Seeking(asked)
    return seeking.found()


def laid(asked: Asked, looks: int) -> Found:
    """The best after so many looks: the same on any machine. Raises as `search`."""
    *_, last = islice(search(asked), looks)
    return last


class _Seeking:
    def __init__(self, asked: Asked) -> None:
        begun = asked.begun or empty_laying(asked.rows, asked.columns, asked.setting)
        self.chance = Random(asked.seed)
        self.asked = asked
        if begun.grid != empty_laying(asked.rows, asked.columns, asked.setting).grid:
            raise ValueError("what lies there is of another layout")
        if any(begun.at(at) is None for at in asked.locked):
            raise ValueError("nothing lies at a place that is locked")
        self.board = Board(_filled(begun, len(asked.units)), asked.units, asked.rules)
        locked = {self.board.slot(at) for at in asked.locked}
        self.can_move = frozenset(range(len(self.board.lies))) - locked
        self.free = [slot for slot in range(len(self.board.lies)) if slot in self.can_move]
        self.tones = Tones(
            self.board.grid, len(self.board.lies), asked.units, asked.plan, spread=asked.spread
        )
        self.least = least_touches(self.board.grid, asked.units, asked.rules)
        self.touches = 0
        self.misses = 0.0
        self.best: tuple[int, float, list[Put | None]] = (0, 0.0, [])

    def found(self) -> Iterator[Found]:
        if self.asked.begun is None or None in self.asked.begun.in_order:
            lay_one_by_one(self.board, self.free, self.chance)
        self._count()
        self.best = self._now()
        yield self._best()
        looks = LOOKS_BEFORE_PATTERNS
        while not self._is_done():
            for look in range(looks):
                self._move_some(self._warmth(look / looks))
                self._keep()
                yield self._best()
                if self._is_done():
                    return
            if looks == LOOKS_BEFORE_PATTERNS and self.best[0] > self.least:
                self._lay_pattern()
                yield self._best()
            looks = LOOKS_A_ROUND if looks < LOOKS_A_ROUND else min(LONGEST, looks * 3 // 2)
            self._lay(self.best[2])

    def _warmth(self, done: float) -> float:
        cold = COLD_TONES if self.tones.matter else COLD
        cooled: float = (cold / WARM) ** done
        return WARM * cooled

    def _is_done(self) -> bool:
        return self.best[0] <= self.least and not self.tones.matter

    def _now(self) -> tuple[int, float, list[Put | None]]:
        return (self.touches, self.misses, self.board.lies[:])

    def _keep(self) -> None:
        if (self.touches, self.misses) < self.best[:2]:
            self.best = self._now()

    def _count(self) -> None:
        self.touches = self.board.touches()
        self.misses = self.tones.total(self.board.lies) if self.tones.matter else 0.0

    def _best(self) -> Found:
        touches, misses, lies = self.best
        return Found(
            self.board.laying.with_places(lies[: self.board.places]), touches, misses, self.least
        )

    def _lay(self, lies: Sequence[Put | None]) -> None:
        for slot in self.free:
            self.board.put(slot, lies[slot])
        self._count()

    def _lay_pattern(self) -> None:
        """Keep the pattern with the fewest touches, where there is one, all places are free, and
        it is better."""
        if len(self.free) < len(self.board.lies):
            return
        for numbers in patterns(self.board.grid, self.asked.units, self.asked.rules.touch):
            over = sorted(set(range(len(self.asked.units))) - set(numbers))
            self._lay([Put(number) for number in (*numbers, *over)])
            self._keep()

    def _move_some(self, warmth: float) -> None:
        board, lies, chance = self.board, self.board.lies, self.chance.random
        matter = self.tones.matter
        hot: list[int] = []
        for move in range(MOVES_A_LOOK):
            if move % LOOKED_FOR == 0:
                hot = [slot for slot in board.touching() if slot in self.can_move]
            among = hot if hot and chance() < FROM_A_TOUCH else self.free
            one = among[int(chance() * len(among))]
            drawn = self._drawn(one, warmth)
            if drawn is None:
                continue
            new, other, other_new = drawn
            before, other_before = lies[one], lies[other]
            tone = self.tones.change(lies, one, other) if matter and other != one else 0.0
            more = board.change(one, new, other, other_new)
            if more + tone > 0 and chance() >= exp(-(more + tone) / warmth):
                board.put(one, before)
                board.put(other, other_before)
            else:
                self.touches += more
                self.misses += tone

    def _drawn(self, one: int, warmth: float) -> tuple[Put, int, Put] | None:
        """A turn of what lies in a slot, or a swap with another: what shall lie there, the other
        slot, and what shall lie in that; None where nothing comes of it."""
        lies, chance = self.board.lies, self.chance.random
        mine = lies[one]
        if mine is None:
            return None
        turns = self.board.faces.turns[mine.unit]
        if len(turns) > 1 and chance() < TURNED:
            turned = Put(mine.unit, turns[int(chance() * len(turns))])
            return None if turned == mine else (turned, one, turned)
        if len(turns) > 1:
            return self._exchange(one, mine, warmth)
        other = self.free[int(chance() * len(self.free))]
        theirs = lies[other]
        if theirs is None or other == one:
            return None
        if self.board.face[one] == self.board.face[other] and not self.tones.matter:
            return None
        return theirs, other, mine

    def _exchange(self, one: int, mine: Put, warmth: float) -> tuple[Put, int, Put] | None:
        """The swap with one of a few others, drawn at random, that seems to touch least."""
        lies, chance = self.board.lies, self.chance.random
        best: tuple[Put, int, Put] | None = None
        least = inf
        for _ in range(OTHERS):
            other = self.free[int(chance() * len(self.free))]
            theirs = lies[other]
            if theirs is None or other == one:
                continue
            new, touches = self._turned(one, theirs.unit, warmth)
            other_new, other_touches = self._turned(other, mine.unit, warmth)
            more = touches + other_touches - self.board.around(other)
            if more < least:
                best, least = (new, other, other_new), more
        return best

    def _turned(self, slot: int, unit: int, warmth: float) -> tuple[Put, float]:
        """A unit as it would lie in a slot, in the turn in which it touches least there, and how
        much that is: by a chance that is the wider the warmer it is."""
        faces, face, chance = self.board.faces, self.board.face, self.chance.random
        shared, of, wide = faces.shared, faces.of[unit], CHANCE_OF_TURN * warmth
        near = [(f, face[other][g]) for other, f, g in self.board.links[slot]]
        best, least = 0, inf
        for turns in faces.turns[unit]:
            mine = of[turns]
            touches = chance() * wide + sum([shared[mine[f]][theirs] for f, theirs in near])
            if touches < least:
                best, least = turns, touches
        return Put(unit, best), least


def _filled(laying: Laying, units: int) -> Laying:
    """The laying with units that lie nowhere in its empty places, as far as they go."""
    placed = {put.unit for put in laying.in_order if put is not None}
    more = (Put(number) for number in range(units) if number not in placed)
    return laying.with_places([put or next(more, None) for put in laying.in_order])
