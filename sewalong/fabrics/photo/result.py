"""What was read from a photograph: places with their colours, and the fabrics they make up."""

from __future__ import annotations

from enum import StrEnum

from msgspec import Struct

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.photo.linear_light import average


class Kind(StrEnum):
    """What a square shows of its print, as far as a photograph can tell."""

    SOLID = "solid"
    SMALL_PRINT = "small print"
    LARGE_PRINT = "large print"
    PRINT = "print"
    """Of which scale cannot be told."""


class TwoColours(Struct, frozen=True):
    """A print of two colours: what is more of it, what is less, and the share of that, 0 to 0.5."""

    ground: Colour
    second: Colour
    share: float


class Place(Struct, frozen=True):
    """One square where it lay, rows and columns from 1.

    `colour` is what its middle is from afar, mixed as light mixes; `spread` how far it varies
    around its mean, in CIELAB, root mean square.
    """

    row: int
    column: int
    colour: Colour
    spread: float
    kind: Kind
    letter: str
    two: TwoColours | None = None

    @property
    def address(self) -> str:
        """How a place is called: row and place, as "2·5"."""
        return f"{self.row}·{self.column}"


class FoundFabric(Struct, frozen=True):
    """One fabric of the photograph. Where it has several places, they are likely the same print,
    no more than that. `squares` counts them in all packs."""

    letter: str
    name: str
    colour: Colour
    kind: Kind
    places: tuple[Place, ...]
    squares: int


class ReadPhoto(Struct, frozen=True):
    """A photograph of one pack as it was read. Nothing of the file's own data is in it.

    `places` stand row by row. `names` are those a person gave, by letter. `notes` are whole
    sentences on what was not done, or is not sure.
    """

    rows: int
    columns: int
    packs: int
    places: tuple[Place, ...]
    notes: tuple[str, ...] = ()
    names: tuple[tuple[str, str], ...] = ()

    @property
    def fabrics(self) -> tuple[FoundFabric, ...]:
        """The fabrics in the order in which their first squares lie."""
        by_letter: dict[str, list[Place]] = {}
        for place in self.places:
            by_letter.setdefault(place.letter, []).append(place)
        names = dict(self.names)
        return tuple(
            FoundFabric(
                letter,
                names.get(letter, ""),
                average(place.colour for place in places),
                places[0].kind,
                tuple(places),
                len(places) * self.packs,
            )
            for letter, places in by_letter.items()
        )


class Reading(Struct, frozen=True):
    """What was read, and the squares as they were seen: for each place the red, green and blue
    bytes of `THUMB` rows of `THUMB` pixels, light evened."""

    photo: ReadPhoto
    thumbs: tuple[bytes, ...]


THUMB = 48
"""Pixels on a side of a square as it is shown back."""
