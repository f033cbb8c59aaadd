"""Edges on the bias: which cut makes them, and which piles have them until they are joined."""

from __future__ import annotations

from fractions import Fraction

import pytest
from msgspec.structs import replace

from sewalong.progress.joining.bias_edges import Bias, bias, may_be_cut, pieces_wanted
from sewalong.progress.plan.plan import plan
from tests.progress import every_act as c
from tests.progress.building import a_quilt, all_units, everything, go_on, play


@pytest.mark.parametrize("method", ["paired-squares", "stacked-four-patch"])
def test_all_from_the_cut_corner_to_corner_on_lies_on_the_bias(method: str) -> None:
    stages = a_quilt(method).method.stages
    cut = next(place for place, stage in enumerate(stages) if "cut" in stage.id)
    assert bias(a_quilt(method)) == Bias(
        stages[cut].id, tuple(stage.makes.pile for stage in stages[cut:])
    )
    assert stages[cut].makes.pile == "cut-unit"


@pytest.mark.parametrize("method", ["plain-squares", "half-square-two", "nine-patch-quartered"])
def test_cuts_that_leave_the_straight_grain_outside_are_no_bias(method: str) -> None:
    assert bias(a_quilt(method)) == Bias("", ())


def test_a_quilt_whose_pieces_are_used_up_by_their_seams_has_no_bias_to_tell_of() -> None:
    quilt = a_quilt()
    tiny = replace(quilt, starts=(replace(quilt.starts[0], size=Fraction(1, 4)),))
    assert bias(tiny) == Bias("", ())


def test_pieces_are_wanted_until_the_last_row_is_sewn_of_them() -> None:
    quilt = a_quilt(pieces=8, rows=2, columns=2)
    state, record = play(quilt)
    assert pieces_wanted(plan(state))
    state = go_on(state, record, *all_units(quilt))
    assert pieces_wanted(plan(state))
    state = go_on(state, record, c.Count("sew-rows", 2))
    assert not pieces_wanted(plan(state))


def test_nothing_lies_on_the_bias_before_anything_was_cut() -> None:
    quilt = a_quilt()
    assert not may_be_cut(play(quilt, *everything(quilt, "sew-around"))[0])
    assert may_be_cut(play(quilt, *everything(quilt, "cut-twice"))[0])
