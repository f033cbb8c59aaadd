"""The parts that tell light and shapes, each on numbers made for it."""

from __future__ import annotations

import numpy as np
import pytest

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.floor.naming import named, shape_at, shown_by_fabrics
from sewalong.fabrics.floor.result import HowSure
from sewalong.fabrics.floor.smooth import must_fall_smoothly
from sewalong.fabrics.floor.ways import Way
from sewalong.fabrics.photo.linear_light import to_light
from sewalong.fabrics.photo.refused import PhotoRefused

ROW, COLUMN = np.indices((6, 8)).astype(float)


def test_light_that_falls_off_however_much_is_smooth() -> None:
    must_fall_smoothly(0.2 * COLUMN)
    must_fall_smoothly(0.02 * (ROW - 1) ** 2 + 0.15 * ROW)
    must_fall_smoothly(np.full((6, 8), 3.0))


def test_an_edge_of_shadow_is_said_where_it_runs_and_glare_where_it_is() -> None:
    with pytest.raises(
        PhotoRefused, match="edge of shadow runs through rows 3 to 4, places 1 to 8"
    ):
        must_fall_smoothly(0.6 * (ROW > 2) + 0.05 * COLUMN)
    with pytest.raises(PhotoRefused, match=r"glares on the units at rows 2 to 4, places 4 to 6\."):
        must_fall_smoothly(-1.0 * (np.hypot(ROW - 2, COLUMN - 4) < 0.5))


def test_where_few_places_say_how_light_it_is_nothing_is_told() -> None:
    dark = np.where(COLUMN == 0, ROW > 2, np.nan).astype(float)
    must_fall_smoothly(dark)
    must_fall_smoothly(np.full((6, 8), np.nan))


def test_a_shape_is_plain_where_any_other_lies_over_seams() -> None:
    ways = [Way(0, (0, 2), ((0, ""), (1, ""))), Way(0, (1, 3), ((2, ""), (3, "")))]
    assert shape_at(np.array([1.0, 2.0, 100.0, 120.0]), ways) == (0, True)
    assert shape_at(np.array([90.0, 90.0, 4.0, 4.0]), ways) == (1, True)
    assert shape_at(np.array([4.0, 4.0, 14.0, 14.0]), ways) == (0, False)
    assert shape_at(np.array([4.0, 4.0]), ways[:1]) == (0, True)


@pytest.mark.parametrize(
    ("away", "evened", "told"),
    [
        ([1.0, 9.0, 20.0], True, ("A", HowSure.SURE, ())),
        ([9.0, 1.0, 3.4], True, ("B", HowSure.NOT_SURE, ("C",))),
        ([9.0, 1.0, 3.6], True, ("B", HowSure.SURE, ())),
        ([9.0, 1.0, 3.6], False, ("B", HowSure.NOT_SURE, ("C",))),
        ([9.0, 5.5, 30.0], True, ("B", HowSure.NOT_SURE, ())),
        ([10.5, 12.0, 30.0], True, (None, HowSure.CANNOT_TELL, ())),
    ],
)
def test_a_patch_is_named_by_how_near_and_how_alone_a_fabric_is(
    away: list[float], evened: bool, told: object
) -> None:
    assert named(np.array(away), "ABC", evened=evened) == told


@pytest.mark.parametrize("lamp", [(1.0, 1.0, 1.0), (0.3, 0.3, 0.3), (0.8, 0.7, 0.55)])
def test_patches_are_brought_to_the_light_that_shows_her_fabrics(
    lamp: tuple[float, float, float],
) -> None:
    colours = {
        "A": Colour(165, 83, 47),
        "B": Colour(47, 74, 124),
        "C": Colour(244, 240, 230),
        "D": Colour(106, 111, 44),
    }
    fabrics = np.array(
        [[to_light(part) for part in (c.red, c.green, c.blue)] for c in colours.values()]
    )
    true = fabrics[np.random.default_rng(2).integers(0, 4, (12, 4))]
    assert shown_by_fabrics(true * lamp, colours) == pytest.approx(true, rel=0.02)
