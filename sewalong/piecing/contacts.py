"""Which patches of a unit share a seam, and for how long: where contrast can be lost."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations

from msgspec import Struct

from sewalong.piecing.cloth import Flat, Patch, Patches
from sewalong.piecing.geometry import NEAR, Line, Point, line_through


class Contact(Struct, frozen=True):
    """Two patches that share a seam in a finished unit.

    `unit` and `patches` are places in the sequence of units and among its patches; `letters` are
    the two fabrics in alphabetical order; `length` is what shows of the seam, in inches.
    """

    unit: int
    patches: tuple[int, int]
    letters: tuple[str, str]
    length: float


def contacts(units: Sequence[Flat], seam: float) -> tuple[Contact, ...]:
    """Every contact of `units`, such as the different units of a batch, unit by unit.

    `seam` is the allowance taken around each unit, in inches. A patch that is all allowance
    meets nothing, and a corner that only touches is no contact.
    """
    return tuple(
        Contact(number, (i, j), _in_order(shown[i].letter, shown[j].letter), length)
        for number, unit in enumerate(units)
        for shown in [unit.finished(seam)]
        for i, j, length in _meeting(shown)
    )


def _in_order(a: str, b: str) -> tuple[str, str]:
    return (a, b) if a <= b else (b, a)


def _meeting(patches: Patches) -> Iterator[tuple[int, int, float]]:
    """Places of two patches and the inches of edge they share, for each two that share any."""
    sides = [tuple(_sides(patch)) for patch in patches]
    for i, j in combinations(range(len(patches)), 2):
        length = sum(_shared(one, ends) for one in sides[i] for ends in sides[j])
        if length > NEAR:
            yield i, j, length


class _Side(Struct, frozen=True):
    """One side of a patch and the line it lies on."""

    ends: tuple[Point, Point]
    line: Line


def _sides(patch: Patch) -> Iterator[_Side]:
    for i, end in enumerate(patch.points):
        ends = (patch.points[i - 1], end)
        if max(abs(ends[0][0] - ends[1][0]), abs(ends[0][1] - ends[1][1])) > NEAR:
            yield _Side(ends, line_through(*ends))


def _shared(one: _Side, other: _Side) -> float:
    """Inches that two sides have in common; patches lie on the two sides of a seam, so that
    sides in one direction never meet."""
    line = one.line
    if any(abs(line.depth(end)) > _SAME_LINE for end in other.ends):
        return 0.0
    mine = sorted(map(line.along, one.ends))
    theirs = sorted(map(line.along, other.ends))
    return max(0.0, min(mine[1], theirs[1]) - max(mine[0], theirs[0]))


_SAME_LINE = 1e-6
"""Inches two seams that meet may be apart: float noise of a few moves, far under a thread."""
