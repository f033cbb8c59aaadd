"""Methods as the rest of the program reads them: nouns, piles, stages; sizes of what lies in piles."""

from __future__ import annotations

from fractions import Fraction as F
from math import sqrt

import pytest

from sewalong.piecing.catalogue import method
from sewalong.piecing.derive import derive, unit_size
from sewalong.piecing.method import Noun


def test_one_stack_and_any_other_number_of_stacks() -> None:
    stack = Noun("stack", "stacks")
    assert [stack.count(n) for n in (0, 1, 2, 21)] == [
        "0 stacks",
        "1 stack",
        "2 stacks",
        "21 stacks",
    ]


def test_piles_and_stages_are_found_by_their_id() -> None:
    known = method("stacked-four-patch")
    for pile in known.piles:
        assert known.pile(pile.id) is pile
    for stage in known.stages:
        assert known.stage(stage.id) is stage
    with pytest.raises(KeyError, match="not-there"):
        known.pile("not-there")
    with pytest.raises(KeyError, match="not-there"):
        known.stage("not-there")
    derived = derive("stacked-four-patch", F(5))
    assert [derived.stage(stage.id) for stage in derived.stages] == list(derived.stages)
    with pytest.raises(KeyError, match="not-there"):
        derived.stage("not-there")


def test_every_pile_has_the_size_of_what_lies_in_it() -> None:
    piles = derive("paired-squares", F(5)).piles
    assert piles["square"].size == (5, 5)
    assert piles["sewn-pair"].size == (5, 5)
    # Cut corner to corner both ways, the first part is the triangle at the far side.
    assert piles["cut-unit"].size == pytest.approx((2.5, 5))
    assert piles["unit"].size == pytest.approx((4.5 / sqrt(2), 4.5 / sqrt(2)))


def test_what_a_unit_loses_for_an_inch_of_seam_is_told_of_both_ways() -> None:
    # A square sewn all round: (L - 2 s) / root 2. Two triangles: L - s root 2. Plain squares lose
    # nothing unfinished, nine-patches four allowances. Flying geese of large squares G and small S:
    # G - 2 s root 2 across, S - s root 2 down.
    around = unit_size("paired-squares", F(5))
    assert around.width_per_seam == pytest.approx(sqrt(2))
    assert around.height_per_seam == pytest.approx(sqrt(2))
    pair = unit_size("half-square-two", F(5))
    assert (pair.width_per_seam, pair.height_per_seam) == pytest.approx((sqrt(2), sqrt(2)))
    plain = unit_size("plain-squares", F(5))
    assert (plain.width_per_seam, plain.height_per_seam) == pytest.approx((0, 0))
    nine = unit_size("nine-patch", F(5))
    assert (nine.width_per_seam, nine.height_per_seam) == pytest.approx((4, 4))
    geese = unit_size("flying-geese-four", {"large-square": F("6.5"), "small-square": F("3.375")})
    assert geese.width == pytest.approx(6.5 - 0.5 * sqrt(2))
    assert geese.height == pytest.approx(3.375 - 0.25 * sqrt(2))
    assert geese.width_per_seam == pytest.approx(2 * sqrt(2))
    assert geese.height_per_seam == pytest.approx(sqrt(2))


def test_the_side_that_runs_out_first_tells_the_room_for_error() -> None:
    geese = unit_size("flying-geese-four", {"large-square": F("6.5"), "small-square": F("3.375")})
    width, height = F(geese.width), F(geese.height)
    tenth = F(1, 10)
    # An inch of seam takes twice as much across as down.
    assert geese.seam_room_for((width - tenth, height - tenth)) == pytest.approx(0.1 / sqrt(8))
    assert geese.seam_room_for((width - 1, height - tenth)) == pytest.approx(0.1 / sqrt(2))
    assert geese.seam_room_for((width + tenth, height)) == pytest.approx(-0.1 / sqrt(8))
