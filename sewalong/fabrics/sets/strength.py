"""How strongly fabrics part where they meet, by each of the rules: tables for a deal."""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence
from math import inf

from sewalong.fabrics.sets.wanted import FORBIDDEN
from sewalong.fabrics.sight import difference
from sewalong.fabrics.swatch import Swatch

Table = tuple[tuple[float, ...], ...]
"""By the fabric of the first place of a contact and that of the second."""


def value_strength(swatches: Sequence[Swatch]) -> Table:
    """Apart in L*; infinite where a value is not known."""
    return _table(swatches, lambda one, other: abs(_apart(one, other)))


def light_on_dark_strength(swatches: Sequence[Swatch]) -> Table:
    """How much lighter the first is in L*, below nothing where it is the darker; infinite where a
    value is not known."""
    return _table(swatches, _apart)


def colour_strength(swatches: Sequence[Swatch]) -> Table:
    """Their CIEDE2000 difference; infinite where a colour is not known."""
    return _table(swatches, _difference)


def background_strength(swatches: Sequence[Swatch], background: Collection[str]) -> Table:
    """Apart in L* where the first is one of the letters `background` and the second is none;
    otherwise they may not lie so."""
    return tuple(
        tuple(
            strength if one.letter in background and other.letter not in background else FORBIDDEN
            for other, strength in zip(swatches, row, strict=True)
        )
        for one, row in zip(swatches, value_strength(swatches), strict=True)
    )


def no_strength_asked(swatches: Sequence[Swatch]) -> Table:
    """Any two may meet."""
    return tuple((inf,) * len(swatches) for _ in swatches)


def _table(swatches: Sequence[Swatch], strength: Callable[[Swatch, Swatch], float]) -> Table:
    return tuple(
        tuple(
            # A fabric is nothing apart from itself, known or not; two of a pile may differ.
            0.0 if one is other and not one.is_pile else strength(one, other)
            for other in swatches
        )
        for one in swatches
    )


def _apart(one: Swatch, other: Swatch) -> float:
    if one.value is None or other.value is None:
        return inf
    return one.value - other.value


def _difference(one: Swatch, other: Swatch) -> float:
    if one.colour is None or other.colour is None:
        return inf
    return difference(one.colour, other.colour)
