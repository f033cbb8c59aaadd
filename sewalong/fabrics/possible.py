"""What can be had of the squares there are, before any set is laid: with the bound and its reason."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from sewalong.fabrics.advice import READABLE
from sewalong.fabrics.pairing import most_sets, weakest_at_best
from sewalong.fabrics.swatch import Swatch


class TooMany(Struct, frozen=True):
    """A fabric of which so many squares can be in no set, however the others are dealt."""

    swatch: Swatch
    squares: int


class Possible(Struct, frozen=True):
    """What is possible for `wanted` sets of `places` squares.

    `squares` is how many there are, and `pairs` the most pairs of two different fabrics. Squares of
    a pile count as different: which are alike is not known. `unknown` are the fabrics whose value
    is not known, and `rough` is whether that of some is only said in a word. `different` is the
    most sets with no print twice, at most `wanted`. `too_many` are the fabrics that keep it below.
    `bound` is what the weakest seam cannot pass in as many sets as there are squares for, in L*,
    None where a value is not known or nothing meets; `readable` the most sets for which it can
    reach READABLE. `lights` and `darks` are how many more squares as light as her lightest, or as
    dark as her darkest, would let all wanted sets reach it; None where no number would, or nothing
    is known.
    """

    wanted: int
    places: int
    squares: int
    pairs: int
    unknown: tuple[Swatch, ...]
    rough: bool
    different: int
    too_many: tuple[TooMany, ...]
    bound: float | None
    readable: int
    lights: int | None
    darks: int | None

    @property
    def sets(self) -> int:
        """The sets there are squares for, at most as many as are wanted."""
        return min(self.wanted, self.squares // self.places)


def possible(swatches: Sequence[Swatch], wanted: int, places: int, apart: int) -> Possible:
    """What can be had of `swatches` in sets of `places` squares, of which `apart` seams have no
    square in common (`pairing.independent_contacts`). Raises ValueError for sets of nothing."""
    prints = [n for swatch in swatches for n in swatch.prints]
    squares = sum(prints)
    different = min(wanted, most_sets(prints, places))
    too_many = tuple(
        TooMany(swatch, max(swatch.prints) - different)
        for swatch in swatches
        if 0 < different < wanted and max(swatch.prints, default=0) > different
    )
    there = [swatch for swatch in swatches if swatch.squares]
    return Possible(
        wanted,
        places,
        squares,
        most_sets(prints, 2),
        tuple(swatch for swatch in there if swatch.value is None),
        any(swatch.is_rough for swatch in there),
        different,
        too_many,
        *_contrast(_values(there), apart, wanted, min(wanted, squares // places)),
    )


def _contrast(
    values: Sequence[float] | None, apart: int, wanted: int, sets: int
) -> tuple[float | None, int, int | None, int | None]:
    """The bound, the sets for which it can be read, and how many lights and darks are missing."""
    if values is None or not apart or not sets:
        return None, 0, None, None
    return (
        weakest_at_best(values, apart * sets),
        next((n for n in range(sets, 0, -1) if _reaches(values, apart * n)), 0),
        _more(values, apart * wanted, max(values)),
        _more(values, apart * wanted, min(values)),
    )


def _values(swatches: Sequence[Swatch]) -> list[float] | None:
    """The lightness of every square; None where that of a fabric is not known."""
    found: list[float] = []
    for swatch in swatches:
        if swatch.value is None:
            return None
        found += [swatch.value] * swatch.squares
    return found


def _reaches(values: Sequence[float], pairs: int) -> bool:
    return 2 * pairs <= len(values) and weakest_at_best(values, pairs) >= READABLE


def _more(values: Sequence[float], pairs: int, like: float) -> int | None:
    """The fewest squares of lightness `like` with which so many pairs reach READABLE."""
    # With one for each pair none more is of use: each pair has its own then.
    return next((n for n in range(pairs + 1) if _reaches([*values, *[like] * n], pairs)), None)
