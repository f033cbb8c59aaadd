"""The seam inside units that is pressed by turns, so that units nest with those beside them."""

from __future__ import annotations

import pytest

from sewalong.progress.joining.unit_press import pressed_last, unit_press_words
from sewalong.progress.resuming.about_stage import press_plan
from sewalong.quilt.quilt import Quilt, Target
from tests.progress.building import a_quilt, opening

PLANNED = {
    "four-patch": ("press", "level"),
    "four-patch-strips": ("press", "level"),
    "nine-patch": ("press", "level"),
    "nine-patch-strips": ("press", "level"),
    "rail-fence": ("press-sets", "upright"),
}
"""By method, from its drawing: the seam sewn last, where it runs out at an edge."""

NOTHING_RUNS_OUT = ("half-square-two", "half-square-eight", "hourglass", "paired-squares")
"""Their seams run into the corners."""


def quilt_of(method: str) -> Quilt:
    return a_quilt(method, 40, rows=4, columns=5)


@pytest.mark.parametrize("method", PLANNED)
def test_the_seam_to_plan_is_the_last_one_that_runs_out_at_an_edge(method: str) -> None:
    assert pressed_last(quilt_of(method)) == PLANNED[method]


@pytest.mark.parametrize("method", [*NOTHING_RUNS_OUT, "plain-squares"])
def test_where_no_seam_runs_out_straight_nothing_is_planned(method: str) -> None:
    quilt = quilt_of(method)
    assert pressed_last(quilt) == ("", "")
    assert unit_press_words(quilt, quilt.target) == ""


def test_units_are_pressed_by_turns_and_it_is_said_how_many_each_way() -> None:
    """On 3 rows of 5 a chessboard has 8 fields of one kind and 7 of the other."""
    words = unit_press_words(quilt_of("four-patch"), Target(3, 5))
    assert "towards row 1 in the 8 where row and column add up to an even number" in words
    assert "away from row 1 in the other 7." in words
    assert "press it open" in words.lower()


def test_it_is_said_where_they_are_pressed_and_where_rows_are_sewn() -> None:
    quilt = quilt_of("four-patch")
    state = opening(quilt)
    at = {stage.id: press_plan(state, stage) for stage in state.route.stages}
    (units,) = at["press"]
    assert at["sew-rows"][1] == f"Units: {units}"
    assert at["press-pairs"] == at["join-rows"] == ()
    assert "differ by an even number" in at["sew-rows"][0]
