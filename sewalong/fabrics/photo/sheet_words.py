"""The contact sheet in words, one fact a line."""

from __future__ import annotations

from sewalong.fabrics.photo.result import FoundFabric, Place, ReadPhoto
from sewalong.quilt.worksheet.line import plural


def place_lines(photo: ReadPhoto) -> tuple[str, ...]:
    """A line for each place, row by row."""
    return tuple(_place(place) for place in photo.places)


def fabric_lines(photo: ReadPhoto) -> tuple[str, ...]:
    """A line for each fabric, by its first square, then the notes."""
    return (*(_fabric(fabric) for fabric in photo.fabrics), *photo.notes)


def _place(place: Place) -> str:
    said = f"row {place.row} place {place.column}: {place.letter}, {place.colour}, {place.kind}"
    if place.two is not None:
        percent = round(100 * place.two.share)
        said += f", {place.two.ground} with {percent} % {place.two.second}"
    return said


def _fabric(fabric: FoundFabric) -> str:
    squares = plural(fabric.squares, "square")
    named = f" ({fabric.name})" if fabric.name else ""
    where = ", ".join(place.address for place in fabric.places)
    said = f"{fabric.letter}{named}: {squares}, {fabric.colour}, {fabric.kind}, at {where}"
    return said + ", likely one fabric" if len(fabric.places) > 1 else said
