"""A picture as runs of like cells, ready for a renderer: one run, one segment."""

from __future__ import annotations

from itertools import groupby
from typing import NamedTuple

from sewalong.wall.keys import Key
from sewalong.wall.picture import Picture

UPPER = "▀"
LOWER = "▄"
SAME = " "


class Run(NamedTuple):
    """Like cells in a row: `text` printed in the colour of `ink` on the colour of `ground`.

    The upper half block is printed when the halves differ, so `ink` is the upper key and
    `ground` the lower. With nothing above it is the lower block in `ink`; when both halves
    are the same it is blanks on `ground`. None is the screen's own colour.
    """

    text: str
    ink: Key | None
    ground: Key | None


def rows_of_runs(picture: Picture) -> list[list[Run]]:
    """The runs of each row of cells; their texts together are as long as the picture is wide."""
    return [
        [
            _run(upper, lower, sum(1 for _ in cells))
            for (upper, lower), cells in groupby(zip(*pair, strict=True))
        ]
        for pair in picture.pairs
    ]


def _run(upper: Key | None, lower: Key | None, length: int) -> Run:
    if upper == lower:
        return Run(SAME * length, None, upper)
    if upper is None:
        return Run(LOWER * length, lower, None)
    return Run(UPPER * length, upper, lower)
