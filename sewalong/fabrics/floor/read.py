"""From the file of a photograph of units in rows to which lies where and how it is turned."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from typing import BinaryIO

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.floor.known import KnownUnit
from sewalong.fabrics.floor.result import FloorReading
from sewalong.fabrics.photo.read import must_be_readable
from sewalong.fabrics.photo.refused import PhotoRefused


def read_floor(
    source: bytes | BinaryIO,
    rows: int,
    columns: int,
    *,
    units: Sequence[KnownUnit] = (),
    shapes: Sequence[KnownUnit] = (),
    colours: Mapping[str, Colour],
    corners: Sequence[tuple[float, float]] | None = None,
) -> FloorReading:
    """What the photograph of `rows` rows of `columns` units shows.

    Give `units`, all that may lie there, where their sets are known (`units_of_sets`), else the
    `shapes` of the method's (`shapes_of`). `colours` are those of her fabrics by letter, as they
    look from afar; a fabric without one is told by its neighbours in the unit. `source` and
    `corners` are as for `read_photo`. Raises PhotoRefused for what cannot be read, with the reason
    and what to do.
    """
    must_be_readable(rows, columns)
    if not (units or shapes):
        raise PhotoRefused("There are no units to look for yet. Say the sets, or the method.")
    fabrics = {patch.fabric for unit in units for patch in unit.patches}
    if not colours or (units and fabrics.isdisjoint(colours)):
        raise PhotoRefused(
            "No fabric has a colour yet, so units cannot be told apart. Give the fabrics their "
            "colours, by a photograph of a pack or by hand."
        )
    from sewalong.fabrics.floor.seeing import seen
    from sewalong.fabrics.floor.telling import patches_told, units_told

    with _of_units():
        what = seen(source, rows, columns, corners, units or shapes)
        if units:
            return units_told(what, tuple(units), colours)
        return patches_told(what, tuple(shapes), colours)


@contextmanager
def _of_units() -> Iterator[None]:
    """The refusals of a photograph of squares, said of units."""
    try:
        yield
    except PhotoRefused as refused:
        raise PhotoRefused(str(refused).replace("square", "unit")) from None
