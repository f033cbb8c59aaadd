"""A photograph of squares read from its file, as somebody names it and says how they lie."""

from __future__ import annotations

import os
import re
from math import isqrt
from typing import TYPE_CHECKING

from msgspec import Struct

from sewalong.fabrics.photo.read import read_photo
from sewalong.quilt.beginning.wording import read_layout
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.refusal import NumbersFault
from sewalong.store.bounded import read_at_most
from sewalong.store.pictures import write_picture

if TYPE_CHECKING:
    from sewalong.fabrics.photo.result import Reading

MOST_BYTES = 50_000_000
"""Bytes of a photograph's file, as `fabrics.photo.bounds` has it, which is loaded only to read one."""

_NUMBER = re.compile(r"[0-9]{1,6}(?:\.[0-9]{1,3})?", re.ASCII)


class PhotoAsked(Struct, frozen=True):
    """Which photograph, and how the squares of one pack lie in it; `corners` are four points in
    pixels, None where they are found."""

    path: str
    rows: int
    columns: int
    packs: int = 1
    corners: tuple[tuple[float, float], ...] | None = None


def offered_for(plan: Quilt) -> dict[str, str]:
    """How the squares of a plan likely lie, as it can be typed: its packs, and one of them in rows as
    even as can be. Six rows of seven where nothing is known: many packs have 42 (common practice)."""
    first = plan.starts[0]
    packs = first.packs if first.packs and first.count % first.packs == 0 else None
    rows, columns = (6, 7) if packs is None else _in_rows(first.count // packs)
    return {"grid": f"{rows} x {columns}", "packs": str(packs or 1)}


def _in_rows(squares: int) -> tuple[int, int]:
    """Rows and squares in a row, the fewest rows last; a pack that makes none is one row."""
    rows = next(n for n in range(isqrt(squares), 0, -1) if squares % n == 0)
    return rows, squares // rows


def photo_asked(file: str, grid: str, packs: str, corners: str = "") -> PhotoAsked:
    """The same out of what was typed: "6 x 7" for the grid, "1" for the packs, and for corners
    eight numbers. Raises NumbersFault, a plain sentence, for what cannot be read."""
    if not file.strip():
        raise NumbersFault("Write the file of the photograph.")
    try:
        rows, columns = read_layout(grid).values()
    except ValueError:
        raise NumbersFault("Write rows and how many lie in one, such as 6 x 7.") from None
    if not re.fullmatch("[0-9]{1,4}", packs.strip() or "1", re.ASCII):
        raise NumbersFault("Write how many packs there are as a whole number, such as 4.")
    return PhotoAsked(
        os.path.abspath(os.path.expanduser(file.strip())),
        rows,
        columns,
        int(packs.strip() or "1"),
        _corners(corners),
    )


def _corners(text: str) -> tuple[tuple[float, float], ...] | None:
    if not text.strip():
        return None
    numbers = [float(number) for number in _NUMBER.findall(text)]
    if len(numbers) != 8 or _NUMBER.sub("", text).strip(" ,;()x"):
        raise NumbersFault(
            "Write the corners as four points, each x and y in pixels, such as 120 80, 910 85, "
            "905 700, 118 690: row 1 place 1, the end of row 1, the end of the last row, its "
            "first place."
        )
    return tuple(zip(numbers[::2], numbers[1::2], strict=True))


def read_photographed(asked: PhotoAsked) -> Reading:
    """What the photograph shows. It takes up to some seconds. Raises PhotoRefused for what cannot
    be read, and StoreFault for a file that is none."""
    data = read_at_most(asked.path, MOST_BYTES)
    return read_photo(data, asked.rows, asked.columns, corners=asked.corners, packs=asked.packs)


def write_sheet(path: str, reading: Reading, *, replace: bool = False) -> None:
    """Write the contact sheet of what was seen, a PNG, where a person names a place for it. Raises
    StoreFault."""
    from sewalong.fabrics.photo.sheet import contact_sheet

    write_picture(path, contact_sheet(reading), replace=replace)
