"""The picture of a sashed quilt: its sashes and cornerstones where they lie, to scale."""

from __future__ import annotations

from fractions import Fraction

import pytest
from msgspec.structs import replace

from sewalong.fabrics.colours import parse_colour
from sewalong.quilt.setting import Cornerstones, Sashing
from sewalong.wall.keys import CORNERSTONE, SASH
from sewalong.wall.of_quilt import own_colours, picture_of_top
from sewalong.wall.picture import Picture
from tests.progress.building import a_quilt

SASHING = Sashing(Fraction(5, 2), "oat", "#e3d9c3", cornerstones=Cornerstones("coral", "#e2725b"))


def top(sashing: Sashing | None, rows: int = 2, columns: int = 3) -> Picture:
    """Units that finish at 4 in, with sashes of 2 in, in a picture of 44 cells across."""
    quilt = a_quilt("plain-squares", 6, rows, columns)
    quilt = replace(quilt, starts=(replace(quilt.starts[0], size=Fraction(9, 2)),), setting=sashing)
    picture = picture_of_top(quilt, quilt.target, 44, 44)
    assert picture is not None
    return picture


def shares(picture: Picture) -> dict[str, float]:
    """What part of the picture has each key."""
    keys = [key for row in picture.pixels for key in row if key is not None]
    return {key: keys.count(key) / len(keys) for key in set(keys)}


@pytest.mark.parametrize("frame", [False, True])
def test_sashes_and_cornerstones_have_their_share_of_the_top(frame: bool) -> None:
    """By hand: two rows of three of 4 in; beside them 2 or 4 sashes, between 1 or 3, of 2 in."""
    found = shares(top(replace(SASHING, frame=frame)))
    beside, between = (4, 3) if frame else (2, 1)
    whole = (12 + 2 * beside) * (8 + 2 * between)
    assert found[CORNERSTONE] == pytest.approx(4 * beside * between / whole, abs=0.02)
    assert found[SASH] == pytest.approx((8 * 2 * beside + 12 * 2 * between) / whole, abs=0.03)


def test_long_sashes_have_no_cornerstones_and_a_straight_top_no_sash() -> None:
    assert CORNERSTONE not in shares(top(replace(SASHING, cornerstones=None)))
    assert SASH not in shares(top(None))


def test_the_owners_colours_of_what_lies_between() -> None:
    quilt = replace(a_quilt(), setting=SASHING)
    assert own_colours(quilt)[SASH] == parse_colour("#e3d9c3")
    assert own_colours(quilt)[CORNERSTONE] == parse_colour("#e2725b")
    assert CORNERSTONE not in own_colours(
        replace(quilt, setting=replace(SASHING, cornerstones=None))
    )
