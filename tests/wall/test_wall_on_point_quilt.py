"""The picture of a quilt on point: its triangles, to the scale of its units."""

from __future__ import annotations

from fractions import Fraction

import pytest
from msgspec.structs import replace

from sewalong.fabrics.colours import parse_colour
from sewalong.quilt.setting import SetOnPoint
from sewalong.quilt.size import Size
from sewalong.wall.keys import SETTING, border_key
from sewalong.wall.of_quilt import own_colours, picture_of_top
from sewalong.wall.on_point import by_turns_on_point
from sewalong.wall.picture import Picture
from tests.progress.building import a_quilt

QUILT = replace(a_quilt("plain-squares", 8, 3, 2), setting=SetOnPoint("grey", "#8d99a6"))


def shares(picture: Picture | None) -> dict[str, float]:
    """What part of the picture has each key."""
    assert picture is not None
    keys = [key for row in picture.pixels for key in row if key is not None]
    return {key: keys.count(key) / len(keys) for key in set(keys)}


def test_the_triangles_have_their_share_of_the_top() -> None:
    """Eight units are four of the six diagonals squared, so the triangles are a third."""
    found = shares(picture_of_top(QUILT, QUILT.target, 60, 60))
    assert found[SETTING] == pytest.approx(1 / 3, abs=0.03)


def test_a_border_is_to_the_scale_of_the_units_as_they_are_trimmed() -> None:
    """Trimmed to 4 1/2 in: 11.31 × 16.97 in, and a border of 2 1/2 in around it."""
    bordered = replace(QUILT, borders=a_quilt(borders=1).borders, trim=Size.square(Fraction(9, 2)))
    found = shares(picture_of_top(bordered, bordered.target, 60, 60))
    inner = 11.314 * 16.971
    assert found[border_key(1)] == pytest.approx(1 - inner / (16.314 * 21.971), abs=0.03)


def test_the_owners_colour_of_the_triangles() -> None:
    assert own_colours(QUILT)[SETTING] == parse_colour("#8d99a6")
    assert SETTING not in own_colours(replace(QUILT, setting=SetOnPoint("grey")))


@pytest.mark.parametrize("different", [2, 3, 4, 5])
def test_on_point_too_no_two_units_that_share_a_seam_are_the_same(different: int) -> None:
    """Units of one row as it shows meet at corners only; their seams are with the rows beside."""
    place = by_turns_on_point(different)
    used = set()
    for row in range(8):
        for column in range(6):
            used.add(place(row, column))
            for beside in (column - 1 + row % 2, column + row % 2):
                assert place(row, column) != place(row + 1, beside)
    assert len(used) == different
