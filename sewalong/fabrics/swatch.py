"""The fabrics she has squares of, as an eye takes them: value, family and kind."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from sewalong.fabrics.colours import Colour, parse_colour
from sewalong.fabrics.families import Family, family
from sewalong.fabrics.sight import from_afar, value
from sewalong.fabrics.value_words import value_words
from sewalong.quilt.choices import ASSORTED, VALUES, Fabric

_LEVELS = {word: 15.0 + 17.5 * step for step, word in enumerate(VALUES)}
"""Lightness taken for a value that is only said in a word: even steps from 15 to 85, so that dark
and light are as far apart as cloth mostly is. Own choice."""


NAMED = 6
"""Fabrics that a sentence names; more are only counted (own choice)."""

ROUGH = "Where a value was only said in a word, what is apart is rough."


class Swatch(Struct, frozen=True):
    """One fabric. `colour` is that of the whole print from afar and `value` its lightness, 0 to
    100; `word` is one of the five words for value. None where she has not said so much."""

    letter: str
    name: str
    squares: int
    kind: str | None
    colour: Colour | None
    value: float | None
    word: str | None
    family: Family | None

    @property
    def called(self) -> str:
        """Letter and name: nobody has to know a letter by heart."""
        return f"{self.letter} {self.name}".strip()

    @property
    def is_rough(self) -> bool:
        """Whether its value is only that of a word, taken from even steps."""
        return self.colour is None and self.value is not None

    @property
    def is_pile(self) -> bool:
        """Whether it is a pile of several prints: which of them are alike is not known."""
        return self.kind == ASSORTED

    @property
    def prints(self) -> tuple[int, ...]:
        """The squares of each print in it; those of a pile count as one print each."""
        return (1,) * self.squares if self.is_pile else (self.squares,)


def listed(swatches: Sequence[Swatch]) -> str:
    """By letter and name, or only how many where they are many."""
    if len(swatches) > NAMED:
        return f"{len(swatches)} fabrics"
    return ", ".join(swatch.called for swatch in swatches)


def swatches(fabrics: Sequence[Fabric]) -> tuple[Swatch, ...]:
    """A swatch for each of the fabrics that has squares, value words relative to all of them."""
    counted = [fabric for fabric in fabrics if fabric.squares]
    colours = [_from_afar(fabric) for fabric in counted]
    values = [
        value(colour) if colour else _LEVELS.get(fabric.value or "")
        for fabric, colour in zip(counted, colours, strict=True)
    ]
    known = [lightness for lightness in values if lightness is not None]
    words = iter(value_words(known))
    said = [None if lightness is None else next(words) for lightness in values]
    return tuple(
        Swatch(
            fabric.letter,
            fabric.name,
            fabric.squares or 0,
            fabric.kind,
            colour,
            lightness,
            # What she said herself stands.
            fabric.value or word,
            family(colour) if colour else None,
        )
        for fabric, colour, lightness, word in zip(counted, colours, values, said, strict=True)
    )


def _from_afar(fabric: Fabric) -> Colour | None:
    if fabric.colour is None:
        return None
    ground = parse_colour(fabric.colour)
    if fabric.second is None or fabric.share is None:
        return ground
    return from_afar(ground, parse_colour(fabric.second), fabric.share / 100)
