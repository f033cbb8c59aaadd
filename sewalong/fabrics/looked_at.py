"""Fabrics as they can be looked at: as they are, in grey, and as without one kind of cones."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations

from msgspec import Struct

from sewalong.fabrics.advice import SAME
from sewalong.fabrics.colours import Colour
from sewalong.fabrics.sight import Sight, difference, grey, seen
from sewalong.fabrics.swatch import Swatch

CONES = {
    Sight.WITHOUT_RED: "red",
    Sight.WITHOUT_GREEN: "green",
    Sight.WITHOUT_BLUE: "blue",
}

NEARLY = 2 * SAME
"""CIEDE2000 under which two may be taken for each other where sight is simulated: models of it
differ a little (own choice)."""


class View(Struct, frozen=True):
    """How fabrics are looked at: by her own eyes, in grey, or as somebody of another sight."""

    in_grey: bool = False
    sight: Sight | None = None

    @property
    def words(self) -> str:
        """What is shown, in plain words; empty for fabrics as they are."""
        if self.in_grey:
            return "in grey: lightness alone (L*), whatever the colour"
        return f"as somebody without {CONES[self.sight]} cones sees it" if self.sight else ""

    def grey_or_not(self) -> View:
        """In grey, or as they are again."""
        return View(in_grey=not self.in_grey)

    def next_sight(self) -> View:
        """Another sight, one after the other, and behind the last as they are again."""
        sights: list[Sight | None] = [None, *Sight]
        place = sights.index(self.sight)
        return View(sight=sights[(place + 1) % len(sights)])


AS_IT_IS = View()


def shown_in(view: View, swatch: Swatch) -> Colour | None:
    """The colour a swatch is shown in; of one that is only said to be light or dark, the grey of
    that. None where neither is known."""
    if swatch.value is None:
        return None
    if swatch.colour is None or view.in_grey:
        return grey(swatch.value)
    return seen(swatch.colour, view.sight) if view.sight else swatch.colour


def taken_for_one(swatches: Sequence[Swatch], view: View) -> tuple[tuple[Swatch, Swatch], ...]:
    """The fabrics that somebody who sees them so may take for each other, two by two: those nearer
    than NEARLY, the nearest first. None where fabrics are looked at as they are, or in grey."""
    if view.sight is None:
        return ()
    looks = [(swatch, seen(swatch.colour, view.sight)) for swatch in swatches if swatch.colour]
    found = [
        (difference(its, others), one, other)
        for (one, its), (other, others) in combinations(looks, 2)
    ]
    found.sort(key=lambda pair: pair[0])
    return tuple((one, other) for apart, one, other in found if apart < NEARLY)


def taken_words(swatches: Sequence[Swatch], view: View) -> tuple[str, ...]:
    """The same in words: first in short, then, where there are more than one, a line for each two.
    Empty where there is nothing to be said."""
    if view.sight is None:
        return ()
    pairs = [f"{one.called} and {other.called}" for one, other in taken_for_one(swatches, view)]
    if not pairs:
        return ("No two of them would be taken for each other.",)
    if len(pairs) == 1:
        return (f"{pairs[0]} may be taken for each other.",)
    first = f"{len(pairs)} pairs may be taken for each other, soonest {pairs[0]}."
    return (first, *(f"May be taken for each other: {pair}." for pair in pairs))
