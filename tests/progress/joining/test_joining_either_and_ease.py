"""Two ways that are both right, with what each costs; and what bias edges let be eased in."""

from __future__ import annotations

from fractions import Fraction

import pytest
from msgspec.structs import replace

from sewalong.lengths import Unit
from sewalong.piecing.catalogue import method_ids, written_method
from sewalong.piecing.method import Either
from sewalong.progress.joining.easing import ease_words
from sewalong.progress.joining.either_way import BOTH_RIGHT, both_right
from sewalong.progress.record.route import route_for
from sewalong.progress.resuming.about_stage import about_stage
from sewalong.quilt.size import Size
from tests.progress.building import a_quilt, opening

BIAS_OUTSIDE = ("stacked-four-patch", "paired-squares")
"""Sewn all round and cut on the diagonal: all four outer edges are bias (Q015)."""


def test_every_choice_has_words_that_say_both_are_right() -> None:
    assert set(BOTH_RIGHT) == set(Either)
    assert all("both are right" in words for words in BOTH_RIGHT.values())


@pytest.mark.parametrize("method_id", method_ids())
def test_sewing_all_round_leaves_the_corners_to_the_owner(method_id: str) -> None:
    for stage in written_method(method_id).stages:
        assert (Either.CORNERS in stage.either) == ("sew all round" in stage.operations)
        if Either.CORNERS in stage.either:
            assert "sew off the edge" in stage.do


@pytest.mark.parametrize("method_id", method_ids())
def test_wherever_rows_are_joined_seams_may_oppose_or_not(method_id: str) -> None:
    quilt = a_quilt(method_id, 40, rows=4, columns=5)
    joins = [s for s in route_for(quilt, quilt.target).stages if Either.CROSSINGS in s.either]
    assert joins[-1].id == "join-rows"
    assert both_right(joins[-1].either) == (BOTH_RIGHT[Either.CROSSINGS],)


def test_the_crossings_of_a_top_are_counted() -> None:
    """8 rows of 6: 7 seams with 5 crossings each, as many as N009 counts."""
    state = opening(a_quilt("plain-squares", 48, rows=8, columns=6))
    join = state.route.stage("join-rows")
    assert join is not None
    assert dict(about_stage(state, (), join))["Crossings"] == "35: 5 at each of 7 seams."


@pytest.mark.parametrize("method_id", method_ids())
def test_only_where_edges_stretch_is_there_anything_to_ease(method_id: str) -> None:
    if method_id in ("flipped-corners", "flying-geese-four"):
        return  # Their small pieces are of another size than this helper cuts.
    words = ease_words(a_quilt(method_id, 40, rows=4, columns=5), along_the_rows=False)
    assert bool(words) == (method_id in BIAS_OUTSIDE)


def test_how_much_is_a_fiftieth_of_the_edge_down_to_a_mark_of_the_ruler() -> None:
    """Common practice: 1/8 in on 9 1/2 in is eased, 1/4 in is not; 2 % of 6 1/4 in is 1/8 in."""
    quilt = replace(a_quilt(), trim=Size.square(Fraction(25, 4)))
    assert "up to 1/8 in longer or shorter than the 6 1/4 in" in ease_words(
        quilt, along_the_rows=True
    )
    oblong = replace(quilt, trim=Size(Fraction(25, 4), Fraction(3)))
    assert "up to 1/8 in longer" in ease_words(oblong, along_the_rows=True)
    assert "up to 1/32 in longer" in ease_words(oblong, along_the_rows=False)
    metric = replace(quilt, unit=Unit.CM, trim=Size.square(Fraction(1600, 254)))
    assert "up to 0.3 cm longer" in ease_words(metric, along_the_rows=True)
