"""Invented fabrics to make sets of, and methods to make them for."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction as F
from random import Random

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.families import family
from sewalong.fabrics.sets.proposing import Asked
from sewalong.fabrics.sets.rules import Rule
from sewalong.fabrics.sight import value as lightness
from sewalong.fabrics.swatch import Swatch
from sewalong.piecing.contacts import Contact, contacts
from sewalong.piecing.derive import derive


def meeting_of(method: str) -> tuple[Contact, ...]:
    return contacts(derive(method, F(5)).units, 0.25)


PLACES = {
    "paired-squares": "AB",
    "four-patch": "ABCD",
    "stacked-four-patch": "ABCDEFGH",
    "nine-patch": "ABCDEFGHI",
}
"""The letters of some methods' sets."""


def swatch(letter: str, squares: int, value: float | None, kind: str | None = None) -> Swatch:
    """A fabric of which only the value is known."""
    return Swatch(letter, f"fabric {letter}", squares, kind, None, value, None, None)


def coloured(letter: str, squares: int, colour: Colour) -> Swatch:
    return Swatch(
        letter,
        f"fabric {letter}",
        squares,
        None,
        colour,
        lightness(colour),
        None,
        family(colour),
    )


LETTERS = tuple(f"{a}{b}" for a in "ABCD" for b in "ABCDEFGHIJKL")


def drawer(prints: int, squares: int, seed: int = 17) -> tuple[Swatch, ...]:
    """So many prints of so many squares, of any values."""
    chance = Random(seed)
    return tuple(swatch(letter, squares, chance.uniform(15, 95)) for letter in LETTERS[:prints])


def colour_drawer(prints: int, squares: int, seed: int = 17) -> tuple[Swatch, ...]:
    """So many prints of so many squares, of any colours."""
    chance = Random(seed)
    return tuple(
        coloured(letter, squares, Colour(*(chance.randrange(256) for _ in range(3))))
        for letter in LETTERS[:prints]
    )


def asked(
    fabrics: tuple[Swatch, ...],
    sets: int,
    rule: Rule = Rule.BY_VALUE,
    method: str = "stacked-four-patch",
    background: str = "",
) -> Asked:
    return Asked(fabrics, meeting_of(method), tuple(PLACES[method]), sets, rule, background)


def apart_by_value(values: Sequence[float]) -> tuple[tuple[float, ...], ...]:
    """The strengths of prints told apart by value alone: their differences."""
    return tuple(tuple(abs(one - other) for other in values) for one in values)
