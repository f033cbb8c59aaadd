"""What is said of one-way prints in a unit that is turned: it is said, and forbids nothing."""

from __future__ import annotations

from collections.abc import Collection, Mapping

from sewalong.piecing.cloth import Flat
from sewalong.wall.laying.edges import print_ways

_STANDS = {
    0: "stands upright",
    90: "lies on its side",
    180: "stands on its head",
    270: "lies on its side",
}


def print_words(
    unit: Flat,
    seam: float,
    quarters: int,
    one_way: Collection[str],
    called: Mapping[str, str] | None = None,
) -> tuple[str, ...]:
    """A sentence for each letter of `one_way` whose print does not stand upright in the unit once
    it is turned by so many quarters. `called` has the name of the fabric by letter."""
    names = called or {}
    said = []
    for letter, ways in sorted(print_ways(unit, seam, quarters).items()):
        if letter in one_way and ways != {0}:
            how = sorted({_STANDS.get(way, "lies slanting") for way in ways})
            said.append(f"{names.get(letter, letter)} {' and '.join(how)}.")
    return tuple(said)
