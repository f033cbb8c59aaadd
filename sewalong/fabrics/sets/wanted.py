"""What is to be dealt into sets, and what a deal comes to."""

from __future__ import annotations

from msgspec import Struct

FORBIDDEN = float("-inf")
"""The strength of two prints that may not lie so, such as a background where it has no place."""


class Wanted(Struct, frozen=True):
    """Squares to deal into sets, all of them known by the number of their print.

    `counts` has the squares of each print. `meeting` has the places of a set that share a seam, two
    by two, of `places` from 0 on. `strength` says how strongly two prints part there: a table over
    prints, by the print of the first place and that of the second; infinite where it is not known,
    FORBIDDEN where they may not lie so. Where it is not the same either way, a place that is
    first in one contact is so in all. `families` has the colour family of each print, to spread
    them; empty where that is not wanted. `most` has how many squares of each print may lie in a
    set before it lies there twice: one of each where it is empty.
    """

    counts: tuple[int, ...]
    strength: tuple[tuple[float, ...], ...]
    meeting: tuple[tuple[int, int], ...]
    places: int
    sets: int
    families: tuple[int, ...] = ()
    most: tuple[int, ...] = ()

    def __post_init__(self) -> None:
        if self.sets < 1 or self.places < 1 or self.sets * self.places > sum(self.counts):
            raise ValueError("there are fewer squares than the sets take, or no set is wanted")


class Dealt(Struct, frozen=True):
    """Sets, each the prints of its places in order, and what is left over.

    `doubles` are the squares whose print is in their set already; `weakest` is the strength of
    the weakest contact, infinite where nothing meets or nothing is known.
    """

    sets: tuple[tuple[int, ...], ...]
    over: tuple[int, ...]
    doubles: int
    weakest: float
    shortfall: float

    @property
    def rank(self) -> tuple[bool, int, float, float]:
        """Compared first to last, more is better: nothing forbidden, no doubles, a strong weakest,
        the others too."""
        return (self.weakest > FORBIDDEN, -self.doubles, self.weakest, -self.shortfall)
