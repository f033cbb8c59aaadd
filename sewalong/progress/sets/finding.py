"""Which set has these fabrics, and where its pieces lie: for an order that was lost."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from msgspec import Struct

from sewalong.progress.record.sets.laid import LaidSet
from sewalong.progress.record.state import State


class WhereASetIs(Struct, frozen=True):
    """A set and what is known of its pieces: so many in each pile, and whether that is sure.

    `together` is true where one piece of it, made of several squares, has all the fabrics asked
    for, as the two squares of one pair.
    """

    laid: LaidSet
    piles: tuple[tuple[str, int], ...]
    sure: bool
    together: bool = False


def known_sets_lie_in(state: State, pile: str) -> bool:
    """Whether pieces of known sets lie in a pile, squares not yet begun aside."""
    start = state.quilt.starts[0].pile
    return pile != start and any(one.set for one in state.sets.lying.get(pile, ()))


def where_is(state: State, laid: LaidSet) -> WhereASetIs:
    """Where the pieces of a set lie."""
    return _where(state, laid, ())


def sets_with(state: State, fabrics: Sequence[str]) -> tuple[WhereASetIs, ...]:
    """The sets that have all of these fabrics, each as often as it is named: first those that have
    them together in one piece, then by number."""
    wanted = Counter(fabrics)
    found = [
        _where(state, one, fabrics)
        for _, one in sorted(state.sets.sets.items())
        if not wanted - Counter(_known(one))
    ]
    return tuple(sorted(found, key=lambda one: not one.together))


def _known(laid: LaidSet) -> Iterator[str]:
    return (letter for place, letter in enumerate(laid.squares) if place not in laid.lost)


def _where(state: State, laid: LaidSet, fabrics: Sequence[str]) -> WhereASetIs:
    # It takes the geometry of the method, which nobody without sets has to load.
    from sewalong.quilt.set_shape import set_shape

    shape = set_shape(state.quilt)
    piles: list[tuple[str, int]] = []
    sure, together = True, False
    for pile, pieces in state.sets.lying.items():
        mine = [piece for piece in pieces if piece.set == laid.number]
        if not mine or shape is None:
            continue
        piles.append((pile, len(mine)))
        sure = sure and all(piece.sure for piece in mine)
        for piece in mine if fabrics else ():
            held = laid.fabrics(shape.squares_of[(pile, piece.index)])
            together = together or (not Counter(fabrics) - Counter(held))
    return WhereASetIs(laid, tuple(piles), sure, together)
