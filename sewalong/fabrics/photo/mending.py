"""What a person puts right in what was read. Each change gives a new reading and keeps the old."""

from __future__ import annotations

from msgspec.structs import replace

from sewalong.fabrics.photo.refused import PhotoRefused
from sewalong.fabrics.photo.result import ReadPhoto
from sewalong.quilt.letters import letter, number_of


def merge(photo: ReadPhoto, kept: str, gone: str) -> ReadPhoto:
    """All squares of fabric `gone` are of fabric `kept`, and so is its name if that has none.

    Raises PhotoRefused for a letter that no square has, or one and the same.
    """
    _must_be_there(photo, kept, gone)
    if kept == gone:
        raise PhotoRefused(f"{kept} is one fabric already. Name two letters.")
    places = tuple(
        replace(place, letter=kept) if place.letter == gone else place for place in photo.places
    )
    names = dict(photo.names)
    name = names.pop(gone, "")
    if name and not names.get(kept):
        names[kept] = name
    return replace(photo, places=places, names=tuple(names.items()))


def split(photo: ReadPhoto, row: int, column: int) -> ReadPhoto:
    """The square at this place is a fabric of its own, with the next letter that is free.

    Raises PhotoRefused where no square lies, or one whose fabric has no other.
    """
    here = next((p for p in photo.places if (p.row, p.column) == (row, column)), None)
    if here is None:
        raise PhotoRefused(
            f"There is no place {row}·{column}: rows go from 1 to {photo.rows}, "
            f"places from 1 to {photo.columns}."
        )
    if sum(place.letter == here.letter for place in photo.places) == 1:
        raise PhotoRefused(f"{here.letter} has only this square, so it stands alone already.")
    free = letter(1 + max(number_of(place.letter) for place in photo.places))
    places = tuple(replace(p, letter=free) if p is here else p for p in photo.places)
    return replace(photo, places=places)


def rename(photo: ReadPhoto, which: str, name: str) -> ReadPhoto:
    """Fabric `which` is called `name`; an empty one takes its name away. Raises PhotoRefused for
    a letter that no square has."""
    _must_be_there(photo, which)
    names = dict(photo.names)
    names.pop(which, None)
    if name.strip():
        names[which] = name.strip()
    return replace(photo, names=tuple(names.items()))


def _must_be_there(photo: ReadPhoto, *letters: str) -> None:
    there = list(dict.fromkeys(place.letter for place in photo.places))
    for one in letters:
        if one not in there:
            raise PhotoRefused(f"No square has the letter {one}. There are {', '.join(there)}.")
