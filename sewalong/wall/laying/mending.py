"""The fewest swaps and turns that mend the touches, one at a time."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from sewalong.wall.laying.board import Board
from sewalong.wall.laying.grid import At
from sewalong.wall.laying.laying import Laying, Put, Rules, Touch, touches
from sewalong.wall.laying.moves import (
    Move,
    best_exchange,
    carry_out,
    cost,
    exchanges,
    turns,
)
from sewalong.wall.laying.units import WallUnit

MOST_LOOKED_AT = 60_000
"""Moves that are tried in all while it is made sure that fewer would not do (own choice:
one second or two, measured on 6 x 6 squares and 9 x 9 stacked units)."""


class Mended(Struct, frozen=True):
    """Moves in the order they are made, and the touches of the laying `after` them.

    No fewer than `at_least` moves mend all; `fewest` says that these are as few as can be and all
    is mended. Where that is not said, fewer could do.
    """

    moves: tuple[Move, ...]
    after: Laying
    left: tuple[Touch, ...]
    at_least: int

    @property
    def fewest(self) -> bool:
        """Whether fewer moves cannot mend all."""
        return not self.left and len(self.moves) == self.at_least


def mend(
    laying: Laying,
    units: Sequence[WallUnit],
    rules: Rules,
    locked: frozenset[At] = frozenset(),
    *,
    with_spares: bool = True,
) -> Mended:
    """The moves that mend the touches; what lies at `locked` places is not moved.

    First the move is taken that mends most, again and again, and two at once where no one move
    betters anything. Then fewer are tried for, all ways that could do, as long as that takes no
    more than MOST_LOOKED_AT tries.
    """
    board = Board(laying, units, rules)
    trying = _Trying(board, locked, with_spares=with_spares)
    begun = board.lies[:]
    at_least = trying.no_fewer_than()
    moves = trying.greedy()
    mends_all = not board.touches()
    trying.put_back(begun)
    trying.tries = 0
    while at_least < len(moves) or (at_least == len(moves) and not mends_all):
        shorter = trying.within(at_least)
        if shorter is None:
            break
        if shorter:
            moves, mends_all = shorter, True
            break
        at_least += 1
    for move in moves:
        carry_out(board, move)
    after = board.as_laying()
    return Mended(tuple(moves), after, touches(after, units, rules), at_least)


class _Trying:
    def __init__(self, board: Board, locked: frozenset[At], *, with_spares: bool) -> None:
        self.board = board
        last = len(board.lies) if with_spares else board.places
        locked_slots = {board.slot(at) for at in locked}
        self.free = [slot for slot in range(last) if slot not in locked_slots]
        # What lies round the places changes never, so that all its touches can be apart.
        self.ground = {len(board.lies), len(board.lies) + 1}
        self.tries = 0

    def greedy(self) -> list[Move]:
        """Moves that each mend the most, until nothing touches or none betters it."""
        made: list[Move] = []
        while self.board.touches():
            found = self._best_move() or self._best_two()
            if found is None:
                return made
            for move in found:
                carry_out(self.board, move)
            made += found
        return made

    def _best_move(self) -> list[Move] | None:
        found = [way for slot in self._touching() for way in self._best_of(slot) if way[0] < 0]
        if not found:
            return None
        return [min(found, key=lambda way: (way[0], _effort(way[1])))[1]]

    def _best_two(self) -> list[Move] | None:
        """Two moves that mend a touch together, the first of which costs nothing."""
        for slot in self._touching():
            for more, move in list(self._best_of(slot)):
                if more == 0:
                    before = self.board.lies[:]
                    carry_out(self.board, move)
                    then = self._best_move()
                    self.put_back(before)
                    if then is not None:
                        return [move, *then]
                    self.tries += len(self.board.lies)
                    if self.tries > MOST_LOOKED_AT:
                        return None
        return None

    def _touching(self) -> list[int]:
        return [slot for slot in self.board.touching() if slot in self.free]

    def _others(self, slot: int) -> list[int]:
        """What may be exchanged with what lies in a slot."""
        return [
            other for other in self.free if other != slot and self.board.lies[other] is not None
        ]

    def _best_of(self, slot: int) -> Iterator[tuple[int, Move]]:
        """The moves of what lies in a slot, swaps turned as is best, and what each costs."""
        for move in turns(self.board, slot):
            yield cost(self.board, move), move
        for other in self._others(slot):
            yield best_exchange(self.board, slot, other)

    def _every(self, slot: int) -> Iterator[Move]:
        """The same, in every turn."""
        yield from turns(self.board, slot)
        for other in self._others(slot):
            yield from exchanges(self.board, slot, other)

    def put_back(self, lies: Sequence[Put | None]) -> None:
        for slot, put in enumerate(lies):
            if put is not self.board.lies[slot]:
                self.board.put(slot, put)

    def no_fewer_than(self) -> int:
        """Moves that must be made at least: one of the places of each touch has to change, and a
        move changes two. Touches without a common place are counted, as many as are found."""
        taken: set[int] = set()
        apart = 0
        for one, other in self.board.pairs():
            if one not in taken and other not in taken:
                taken |= {one, other} - self.ground
                apart += 1
        return (apart + 1) // 2

    def within(self, moves: int) -> list[Move] | None:
        """So many moves that mend all; none where there are none so few; None where it took too
        many tries to tell. The board lies as before afterwards.

        The unit that shall lie in the end at a place of the first touch can always be brought there
        first, by a swap with where it lies or a turn, without a move more in all. So all ways to
        begin there are all ways.
        """
        pairs = self.board.pairs()
        if not pairs:
            return []
        if self.no_fewer_than() > moves:
            return []
        total = self.board.touches()
        starts = [slot for slot in pairs[0] if slot in self.free]
        if moves == 1:
            for slot in starts:
                for more, move in self._best_of(slot):
                    self.tries += 1
                    if total + more == 0:
                        return [move]
            return [] if self.tries <= MOST_LOOKED_AT else None
        before = self.board.lies[:]
        for move in [move for slot in starts for move in self._every(slot)]:
            self.tries += 1
            carry_out(self.board, move)
            rest = self.within(moves - 1)
            self.put_back(before)
            if rest is None or self.tries > MOST_LOOKED_AT:
                return None
            if rest:
                return [move, *rest]
        return []


def _effort(move: Move) -> int:
    """How far somebody kneeling has to reach: a turn in place least of all."""
    if move.other is None:
        return 1 if move.spare is not None else 0
    return 2 + abs(move.at[0] - move.other[0]) + abs(move.at[1] - move.other[1])
