"""From the file of a photograph to places, colours and fabrics."""

from __future__ import annotations

from collections.abc import Sequence
from importlib.util import find_spec
from typing import BinaryIO

from sewalong.fabrics.photo.refused import PhotoRefused
from sewalong.fabrics.photo.result import Reading

MOST_IN_A_ROW = 40
"""Rows, and places in a row: of more, no telephone's picture has enough pixels (own choice)."""


def read_photo(
    source: bytes | BinaryIO,
    rows: int,
    columns: int,
    *,
    corners: Sequence[tuple[float, float]] | None = None,
    packs: int = 1,
) -> Reading:
    """What the photograph of one pack shows, laid out in `rows` rows of `columns` squares.

    `source` is the file's bytes, or it open for reading them. `corners` are four points (x, y) in
    pixels of the picture held upright: row 1 place 1, the end of row 1, the end of the last row,
    its first place. Raises PhotoRefused for what cannot be read, with the reason and what to do.
    """
    for count, what in ((rows, "rows"), (columns, "places in a row")):
        if not 1 <= count <= MOST_IN_A_ROW:
            raise PhotoRefused(f"The grid has from 1 to {MOST_IN_A_ROW} {what}, not {count}.")
    if packs < 1:
        raise PhotoRefused(f"There is 1 pack at least, not {packs}.")
    if missing := what_is_missing():
        raise PhotoRefused(missing)
    from sewalong.fabrics.photo.seeing import seen

    return seen(source, rows, columns, corners, packs)


def what_is_missing() -> str:
    """Why no photograph can be read here, and what to do; empty where they can be."""
    if find_spec("PIL") is None or find_spec("numpy") is None:
        return (
            "Photographs are read with two more libraries, Pillow and numpy, and they are not "
            "installed. Install sewalong with its extra: sewalong[photo]."
        )
    return ""
