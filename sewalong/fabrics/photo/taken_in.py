"""The fabrics of a photograph taken among those of a quilt."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.fabrics.families import family
from sewalong.fabrics.photo.result import FoundFabric, Kind, ReadPhoto
from sewalong.quilt.choices import Fabric
from sewalong.quilt.fabrics_said import in_order, next_letter
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.rules import MOST_PIECES, a_name


def taken_in(
    photo: ReadPhoto, there: Sequence[Fabric] = (), *, instead: bool = False
) -> tuple[Fabric, ...]:
    """The fabrics `there` with those of `photo` beside them, or `instead` of the counted ones.

    Each keeps the letter it has on the contact sheet where that is free, else it has the next.
    Raises NumbersFault for a name or a number of squares that no quilt can have.
    """
    fabrics = {one.letter: one for one in there if not (instead and one.squares is not None)}
    for found in photo.fabrics:
        taken = found.letter in fabrics
        letter = next_letter([*fabrics, *_letters(photo)]) if taken else found.letter
        fabrics[letter] = _fabric(found, letter)
    return in_order(fabrics.values())


def name_of(found: FoundFabric) -> str:
    """Its name; until it has one, its colour family and where its first square lies: “brown 2·5”."""
    return found.name or f"{family(found.colour)} {found.places[0].address}"


def _letters(photo: ReadPhoto) -> list[str]:
    return [place.letter for place in photo.places]


def _fabric(found: FoundFabric, letter: str) -> Fabric:
    if found.squares > MOST_PIECES:
        raise NumbersFault(
            f"{letter} would have {found.squares:,} squares, and {MOST_PIECES:,} are the most. "
            "Give fewer packs."
        )
    try:
        name = a_name(name_of(found))
    except ValueError as fault:
        raise NumbersFault(f"The name of {found.letter}: {fault}") from None
    # Only of one square can it be said for sure what the two colours of a print are.
    two = found.places[0].two
    colour = found.colour if two is None else two.ground
    return Fabric(
        letter,
        name,
        str(colour),
        found.squares,
        None if found.kind is Kind.PRINT else found.kind.value,
        None if two is None else str(two.second),
        None if two is None else round(100 * two.share),
    )
