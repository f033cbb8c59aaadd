"""What can be had of squares in sets, exactly, before any is laid: how many sets, how much contrast."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

from sewalong.piecing.contacts import Contact


def strongest_pairs(values: Sequence[float], pairs: int) -> list[tuple[int, int]]:
    """Places in `values` of so many pairs, the weakest of them as strong as can be.

    The lowest are paired with the highest in step: sorted, each with the one as many places on
    as are left of it. No other pairing has a stronger weakest pair (an exchange argument: where
    two pairs cross, uncrossing them weakens neither below the weaker). What is in the middle is
    left over. Where `values` come print by print, a print is paired with itself only as often as
    cannot be helped: the two of a pair lie `len(values) - pairs` places apart, so it is so only
    where a print has more squares than that, and for each of them that it has more. Raises ValueError if there are too few values.
    """
    if 2 * pairs > len(values):
        raise ValueError("there are fewer values than the pairs take")
    order = sorted(range(len(values)), key=values.__getitem__)
    return list(zip(order[:pairs], order[len(order) - pairs :], strict=True))


def weakest_at_best(values: Sequence[float], pairs: int) -> float:
    """The difference of the weakest pair at best; nothing above it can be had. Raises ValueError
    for no pair, or more than there are."""
    return min(abs(values[high] - values[low]) for low, high in strongest_pairs(values, pairs))


def most_sets(counts: Sequence[int], different: int) -> int:
    """Sets of `different` squares with no print twice, from so many squares of each print.

    The largest b with sum of min(count, b) at least different * b: a print is in each set once
    at most, so of b sets it fills min(count, b) places, and dealing the prints out in turn
    reaches that. Raises ValueError for sets of nothing.
    """
    if different < 1:
        raise ValueError("a set is of one square at least")
    low, high = 0, sum(counts) // different
    while low < high:
        tried = (low + high + 1) // 2
        if sum(min(count, tried) for count in counts) >= different * tried:
            low = tried
        else:
            high = tried - 1
    return low


def least_doubles(counts: Sequence[int], different: int, sets: int) -> int:
    """Squares that must lie in a set where their print lies already, in so many sets of so many.

    Of `sets` sets a print fills min(count, sets) places without lying twice, and dealing the
    prints out in turn reaches that; what places are left are filled with doubles.
    """
    return max(0, different * sets - sum(min(count, sets) for count in counts))


def independent_contacts(meeting: Sequence[Contact]) -> int:
    """The most contacts of a set of which no two have a square in common.

    Each of them pairs two squares, so whatever sets are laid their squares are paired as often,
    and the weakest contact is no stronger than the weakest of that many pairs at best.
    """
    edges = {contact.letters for contact in meeting if contact.letters[0] != contact.letters[1]}

    @cache
    def most(free: str) -> int:
        if len(free) < 2:
            return 0
        first, rest = free[0], free[1:]
        taken = (1 + most(rest.replace(other, "")) for other in rest if (first, other) in edges)
        return max(most(rest), *taken, 0)

    return most("".join(sorted({letter for edge in edges for letter in edge})))
