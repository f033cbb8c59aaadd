"""How pieces of known sets go from pile to pile when something is counted or taken apart.

A pile is worked off in the order in which it lies, as stacks are. Nothing here refuses: what does
not come out is not known from then on.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import islice
from typing import TYPE_CHECKING, NamedTuple

from sewalong.piecing.method import Pieces, Stage
from sewalong.progress.record.sets_laid import NOBODY_KNOWS, UNKNOWN, LaidSet, Lying

if TYPE_CHECKING:
    from sewalong.piecing.flow import PieceAt
    from sewalong.quilt.set_shape import Run, SetShape

Piles = Mapping[str, tuple[Lying, ...]]
Sets = Mapping[int, LaidSet]


class Next(NamedTuple):
    """What the next count of a stage takes: a run of a set, and whether it is sure that it is."""

    set: int
    run: Run
    sure: bool


def next_at(shape: SetShape, sets: Sets, lying: Piles, stage: Stage) -> Next | None:
    """What the next count of `stage` takes as the piles lie; None where nobody knows."""
    return _Table(shape, sets, lying, stage).take()


def counted(shape: SetShape, sets: Sets, lying: Piles, stage: Stage, n: int) -> Piles:
    """The piles once `n` of a stage of the method are done."""
    table = _Table(shape, sets, lying, stage)
    made: list[Lying] = []
    for _ in range(n):
        found = table.take()
        if found is None:
            made += [UNKNOWN] * stage.makes.count
        else:
            made += [Lying(found.set, index, found.sure) for _, index in found.run.makes]
    there = lying.get(stage.makes.pile, ())
    return {**lying, **table.left(), stage.makes.pile: (*there, *made)}


def taken_apart(shape: SetShape, lying: Piles, stage: Stage, n: int) -> Piles:
    """The piles once the last `n` of a stage are taken apart: their pieces are first again."""
    each, made = stage.makes.count, lying.get(stage.makes.pile, ())
    last = made[max(0, len(made) - n * each) :]
    back: dict[str, list[Lying]] = {taken.pile: [] for taken in stage.takes}
    for first in range(0, len(last), each):
        pieces = last[first : first + each]
        run = _that_made(shape, stage, pieces)
        for taken in stage.takes:
            back[taken.pile] += _of_run(run, pieces, taken)
    apart = {pile: (*pieces, *lying.get(pile, ())) for pile, pieces in back.items()}
    return {**lying, **apart, stage.makes.pile: made[: len(made) - len(last)]}


def _of_run(run: Run | None, made: Sequence[Lying], taken: Pieces) -> Iterable[Lying]:
    """What goes back to a pile of what a run made; unknown ones where it is not known."""
    if run is None:
        return [UNKNOWN] * taken.count
    sure = all(piece.sure for piece in made)
    return [Lying(made[0].set, index, sure) for pile, index in run.takes if pile == taken.pile]


def _that_made(shape: SetShape, stage: Stage, made: Sequence[Lying]) -> Run | None:
    """The run that made just these pieces, of one set; None where there is none."""
    if made[0].set == NOBODY_KNOWS or any(piece.set != made[0].set for piece in made):
        return None
    pieces = {(stage.makes.pile, piece.index) for piece in made}
    return next((run for run in shape.runs.get(stage.id, ()) if set(run.makes) == pieces), None)


class _Table:
    """The piles a stage takes from, while counts of it are done."""

    def __init__(self, shape: SetShape, sets: Sets, lying: Piles, stage: Stage) -> None:
        self.takes = stage.takes
        self.shape = shape
        self.sets = sets
        self.piles = {
            taken.pile: dict(enumerate(lying.get(taken.pile, ()))) for taken in stage.takes
        }
        self.at = {
            pile: {(piece.set, piece.index): place for place, piece in pieces.items() if piece.set}
            for pile, pieces in self.piles.items()
        }
        self.unknown = {
            pile: dict.fromkeys(place for place, piece in pieces.items() if not piece.set)
            for pile, pieces in self.piles.items()
        }
        self.runs = {piece: run for run in shape.runs.get(stage.id, ()) for piece in run.takes}

    def take(self) -> Next | None:
        """Take what the next count does.

        The first piece of a known set says which; where so many unknown ones lie before it that
        they are enough for the whole count, they come first.
        """
        for taken in self.takes:
            pieces = self.piles[taken.pile]
            for piece in islice(pieces.values(), taken.count):
                run = self.runs.get((taken.pile, piece.index))
                if piece.set != NOBODY_KNOWS and run is not None:
                    return self._take_run(piece.set, run)
        for taken in self.takes:
            for place in list(islice(self.piles[taken.pile], taken.count)):
                self._remove(taken.pile, place)
        return None

    def _take_run(self, number: int, run: Run) -> Next:
        """Take the pieces of a run, and unknown ones in place of those that are not there.

        Where it is not sure that all are there, a piece of another set may have been taken instead.
        """
        sure = True
        for pile, index in run.takes:
            place = self.at[pile].get((number, index))
            if place is None:
                sure = sure and self._is_lost(number, (pile, index))
                place = next(iter(self.unknown[pile]), None)
            else:
                sure = sure and self.piles[pile][place].sure
            if place is None:
                sure = False
            else:
                self._remove(pile, place)
        if not sure:
            for pile in {pile for pile, _ in run.takes} - {self.shape.pile}:
                rest = doubtful(self.piles[pile].values())
                self.piles[pile] = dict(zip(self.piles[pile], rest, strict=True))
        return Next(number, run, sure)

    def _is_lost(self, number: int, piece: PieceAt) -> bool:
        """Whether it was said that this piece of a set is gone: what takes its place is not known."""
        laid = self.sets.get(number)
        return laid is not None and set(self.shape.squares_of[piece]).issubset(laid.lost)

    def _remove(self, pile: str, place: int) -> None:
        piece = self.piles[pile].pop(place)
        self.at[pile].pop((piece.set, piece.index), None)
        self.unknown[pile].pop(place, None)

    def left(self) -> dict[str, tuple[Lying, ...]]:
        """What still lies in the piles."""
        return {pile: tuple(pieces.values()) for pile, pieces in self.piles.items()}


def doubtful(pieces: Iterable[Lying]) -> tuple[Lying, ...]:
    """The same pieces, of which one or more are gone and nobody said which."""
    return tuple(Lying(one.set, one.index, sure=False) if one.set else one for one in pieces)


def first_in_hand(pieces: Sequence[Lying], number: int) -> tuple[Lying, ...]:
    """The pieces of a set first, and sure: somebody has looked."""
    mine = tuple(Lying(number, one.index) for one in pieces if one.set == number)
    return (*mine, *(one for one in pieces if one.set != number))
