"""The picture of the top is to the scale of the units as they are joined."""

from __future__ import annotations

from fractions import Fraction

from msgspec.structs import replace

from sewalong.quilt.size import Size
from sewalong.wall.keys import border_key
from sewalong.wall.of_quilt import picture_of_top
from tests.progress.building import a_quilt

QUILT = a_quilt(rows=4, columns=4, borders=1)
"""Four by four units of 6.364 in, and a border that finishes at 2 1/2 in."""


def border_cells(trim: str) -> int:
    """Cells of the border above the middle of the top, in a picture of 60 cells across."""
    quilt = replace(QUILT, trim=Size.square(Fraction(trim)))
    picture = picture_of_top(quilt, quilt.target, 60, 60)
    assert picture is not None
    middle = [row[picture.across // 2] for row in picture.pixels]
    return middle.count(border_key(1)) // 2


def test_a_border_is_broader_beside_smaller_units() -> None:
    # 2.5 of 4 * 5.5 + 5 = 27 in are 5.6 of 60 cells; 2.5 of 4 * 2 + 5 = 13 in are 11.5.
    assert border_cells("6") in (5, 6)
    assert border_cells("2.5") in (11, 12)
