"""How much of the seam allowance is left beyond the point of a unit that has one (flying geese).

The large triangle stands on the long edge; its point ends a seam allowance below the other edge
when the small squares are cut as asked. Cut smaller by some, it ends nearer by as much, and no
trimming brings it back: only cloth above the point could.
"""

from __future__ import annotations

from sewalong.lengths import Length, Rounding, show
from sewalong.piecing.derive import Derivation
from sewalong.quilt.as_fraction import as_fraction
from sewalong.quilt.quilt import Quilt

UNSEEN = 1e-6
"""Inches: no computed size is nearer than this."""


def beyond_the_point(made: Derivation) -> Length | None:
    """Inches of cloth from the point of the large triangle to the raw edge, the least of all
    units of a batch; None for units that have no such point."""
    if made.unit.shape is None:
        return None
    main = next(iter(made.starts))
    tops = [
        min(y for _, y in patch.points)
        for unit in made.units
        for patch in unit.patches
        if made.letters.get(patch.letter) == main
    ]
    return as_fraction(min(tops))


def point_lost(made: Derivation) -> Length:
    """Inches of the point that its seam takes away: what its allowance is short of; 0 for none."""
    left = beyond_the_point(made)
    if left is None or made.seam - left < UNSEEN:
        return Length(0)
    return made.seam - left


def point_briefly(quilt: Quilt, made: Derivation) -> str:
    """The same at the ruler, where there is no room for more."""
    lost = point_lost(made)
    if not lost:
        return ""
    left = show(made.seam - lost, quilt.unit, fineness=quilt.unit.finest)
    return f"Only {left} is left beyond the point."


def point_words(quilt: Quilt, made: Derivation) -> str:
    """What is short beyond the point and what would mend it, in a sentence; empty if nothing is."""
    lost = point_lost(made)
    if not lost:
        return ""
    unit = quilt.unit
    asked = [
        f"{quilt.method.pile(one.pile).noun.many} of {show(one.exact, unit, rounding=Rounding.UP)}"
        for one in list(made.starts.values())[1:]
        if float(one.cutting) < one.exact - UNSEEN
    ]
    left, allowance, gone = (
        show(length, unit, fineness=unit.finest) for length in (made.seam - lost, made.seam, lost)
    )
    return (
        f"{left} of the {allowance} allowance is left beyond the point, so the seam takes {gone} "
        f"of the point away. {' and '.join(asked).capitalize()} would keep it."
    )
