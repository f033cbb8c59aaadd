"""The fabrics of a photograph as those of a quilt, once they are looked over."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.fabrics.families import family
from sewalong.fabrics.photo.result import FoundFabric, Kind, ReadPhoto
from sewalong.quilt.choices import Fabric
from sewalong.quilt.fabrics_said import in_order, next_letter


def name_of(fabric: FoundFabric) -> str:
    """Its name; until it has one, its colour family and where its first square lies: "blue 2·5",
    so that it is found on the table."""
    return fabric.name or f"{family(fabric.colour)} {fabric.places[0].address}"


def with_those_of(photo: ReadPhoto, there: Sequence[Fabric]) -> tuple[Fabric, ...]:
    """The fabrics `there` and those of the photograph. These keep their letters where all are free,
    else each has the next. Raises NumbersFault where letters do not reach."""
    found = {fabric.letter: fabric for fabric in there}
    free = found.keys().isdisjoint(fabric.letter for fabric in photo.fabrics)
    for fabric in photo.fabrics:
        letter = fabric.letter if free else next_letter(found)
        found[letter] = _as_said(fabric, letter)
    return in_order(found.values())


def _as_said(fabric: FoundFabric, letter: str) -> Fabric:
    """A print of two colours by both; one whose scale cannot be told is of no kind."""
    kind = None if fabric.kind is Kind.PRINT else fabric.kind.value
    said = Fabric(letter, name_of(fabric), str(fabric.colour), fabric.squares, kind)
    two = fabric.places[0].two
    share = round(100 * two.share) if two else 0
    if two is None or not share:
        return said
    return Fabric(
        letter, said.name, str(two.ground), said.squares, kind, str(two.second), share
    )
