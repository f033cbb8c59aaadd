"""Which way up prints stand in the units: birds and words are noticed only when a unit is pressed."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from sewalong.piecing.cloth import Flat


def ways_up(
    units: Sequence[Flat], seam: float, turned: Mapping[str, int] | None = None
) -> tuple[Mapping[str, frozenset[int]], ...]:
    """For each unit and each fabric that shows in it, the degrees from the unit's up to the
    print's up, 0 to 359, all that occur; x towards y.

    `seam` is the allowance around the unit, in inches. `turned` has the degrees that a fabric's
    squares were turned by before they were pieced, where they did not lie upright: 180 for the
    back of a stack that was turned over its top edge and not like a page.
    """
    before = turned or {}
    found = []
    for unit in units:
        ways: dict[str, set[int]] = {}
        for patch in unit.finished(seam):
            way = (patch.turn + before.get(patch.letter, 0)) % 360
            ways.setdefault(patch.letter, set()).add(way)
        found.append({letter: frozenset(each) for letter, each in ways.items()})
    return tuple(found)


def standing_one_way(
    ways: Sequence[Mapping[str, frozenset[int]]], letters: Collection[str]
) -> tuple[int, ...]:
    """The places of the units in which the prints of all these fabrics that show there stand one
    way up, whichever way the unit is turned."""
    return tuple(
        place
        for place, shown in enumerate(ways)
        if len({way for letter in letters for way in shown.get(letter, ())}) <= 1
    )
