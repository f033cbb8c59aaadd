"""How pieces of known sets go from pile to pile when something is counted or taken apart.

A pile is worked off in the order in which it lies, as stacks are. Nothing here refuses: what does
not come out is not known from then on.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import islice
from typing import TYPE_CHECKING, NamedTuple

from sewalong.piecing.method import Pieces, Stage
from sewalong.progress.record.sets.laid import NOBODY_KNOWS, UNKNOWN, LaidSet, Lying
from sewalong.progress.record.sets.lying_pile import LyingPile

if TYPE_CHECKING:
    from sewalong.piecing.flow import PieceAt
    from sewalong.quilt.set_shape import Run, SetShape

Piles = dict[str, LyingPile]
"""Every pile of the method, by its id."""

Sets = Mapping[int, LaidSet]


class Next(NamedTuple):
    """What the next count of a stage takes: a run of a set, and whether it is sure that it is."""

    set: int
    run: Run
    sure: bool


def next_at(
    shape: SetShape, sets: Sets, lying: Mapping[str, tuple[Lying, ...]], stage: Stage
) -> Next | None:
    """What the next count of `stage` takes as the piles lie; None where nobody knows."""
    piles = {taken.pile: LyingPile(lying.get(taken.pile, ())) for taken in stage.takes}
    return _take(shape, sets, piles, stage)


def count_on(shape: SetShape, sets: Sets, lying: Piles, stage: Stage, n: int) -> None:
    """Do `n` of a stage of the method: its pieces go from pile to pile."""
    for _ in range(n):
        found = _take(shape, sets, lying, stage)
        if found is None:
            made = [UNKNOWN] * stage.makes.count
        else:
            made = [Lying(found.set, index, found.sure) for _, index in found.run.makes]
        lying[stage.makes.pile].lay(made)


def take_apart(shape: SetShape, lying: Piles, stage: Stage, n: int) -> None:
    """Take the last `n` of a stage apart: their pieces are first again in their piles."""
    each, made = stage.makes.count, tuple(lying[stage.makes.pile])
    last = made[max(0, len(made) - n * each) :]
    back: dict[str, list[Lying]] = {taken.pile: [] for taken in stage.takes}
    for first in range(0, len(last), each):
        whole = last[first : first + each]
        run = _that_made(shape, stage, whole)
        for taken in stage.takes:
            back[taken.pile] += _of_run(run, whole, taken)
    for pile, pieces in back.items():
        lying[pile] = LyingPile((*pieces, *lying[pile]))
    lying[stage.makes.pile] = LyingPile(made[: len(made) - len(last)])


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


def _take(shape: SetShape, sets: Sets, piles: Piles, stage: Stage) -> Next | None:
    """Take what the next count does.

    The first piece of a known set says which; where so many unknown ones lie before it that they
    are enough for the whole count, they come first.
    """
    runs = {piece: run for run in shape.runs.get(stage.id, ()) for piece in run.takes}
    for taken in stage.takes:
        for piece in islice(piles[taken.pile], taken.count):
            run = runs.get((taken.pile, piece.index))
            if piece.set != NOBODY_KNOWS and run is not None:
                return _take_run(shape, sets, piles, piece.set, run)
    for taken in stage.takes:
        piles[taken.pile].take_first(taken.count)
    return None


def _take_run(shape: SetShape, sets: Sets, piles: Piles, number: int, run: Run) -> Next:
    """Take the pieces of a run, and unknown ones in place of those that are not there.

    Where it is not sure that all are there, a piece of another set may have been taken instead.
    """
    sure = True
    for pile, index in run.takes:
        piece = piles[pile].take(number, index)
        if piece is not None:
            sure = sure and piece.sure
        else:
            took = piles[pile].take_unknown()
            sure = sure and took and _is_lost(shape, sets, number, (pile, index))
    if not sure:
        for pile in {pile for pile, _ in run.takes} - {shape.pile}:
            piles[pile] = LyingPile(doubtful(piles[pile]))
    return Next(number, run, sure)


def _is_lost(shape: SetShape, sets: Sets, number: int, piece: PieceAt) -> bool:
    """Whether it was said that this piece of a set is gone: what takes its place is not known."""
    laid = sets.get(number)
    return laid is not None and set(shape.squares_of[piece]).issubset(laid.lost)


def doubtful(pieces: Iterable[Lying]) -> tuple[Lying, ...]:
    """The same pieces, of which one or more are gone and nobody said which."""
    return tuple(Lying(one.set, one.index, sure=False) if one.set else one for one in pieces)


def first_in_hand(pieces: Iterable[Lying], number: int) -> tuple[Lying, ...]:
    """The pieces of a set first, and sure: somebody has looked."""
    there = tuple(pieces)
    mine = tuple(Lying(number, one.index) for one in there if one.set == number)
    return (*mine, *(one for one in there if one.set != number))
