"""What units show at their sides and corners, and which of it touches, against shapely."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sewalong.piecing.catalogue import method_ids
from sewalong.piecing.cloth import Flat, turned
from sewalong.piecing.derive import derive
from sewalong.piecing.geometry import turn
from sewalong.quilt.setting import SetOnPoint, Setting
from sewalong.wall.laying.edges import (
    Span,
    TouchRule,
    corners,
    meeting,
    plain_sides,
    print_ways,
    shown_sides,
    turned_sides,
    turns_allowed,
)
from sewalong.wall.laying.laying import Kind, Rules, touches
from sewalong.wall.laying.print_words import print_words
from tests.wall.laying.drawn_out import patches, touching
from tests.wall.laying.walls import derived, laid_anyhow, made, sets

IDS = method_ids()
ON_POINT = SetOnPoint("linen")


@pytest.mark.parametrize("setting", [None, ON_POINT], ids=["straight", "on point"])
@pytest.mark.parametrize("rule", TouchRule)
@settings(max_examples=40, deadline=None)
@given(
    method=st.sampled_from(IDS),
    size=st.sampled_from([(1, 3), (2, 2), (3, 2)]),
    fabrics=st.integers(2, 6),
    seed=st.integers(0, 99),
)
def test_touches_are_what_shapely_finds_of_the_patches_as_they_lie(
    rule: TouchRule,
    setting: Setting | None,
    method: str,
    size: tuple[int, int],
    fabrics: int,
    seed: int,
) -> None:
    if setting is not None and len(turns_allowed(made(method, 1, 2)[0].sides)) == 2:
        setting = None
    units = made(method, 16, fabrics, seed)
    laying = laid_anyhow(units, *size, seed, setting)
    named = sets(method, -(-16 // len(derived(method).units)), fabrics, seed)
    theirs = touching(patches(laying, method, named), rule)
    number = laying.grid.number
    ours = {
        (number(touch.places[0]), number(touch.places[1]), touch.fabric): touch.inches
        for touch in touches(laying, units, Rules(touch=rule))
    }
    assert ours.keys() == theirs.keys()
    for where, inches in ours.items():
        assert inches == pytest.approx(theirs[where], abs=5e-3)


@pytest.mark.parametrize("method", IDS)
def test_turned_sides_are_the_sides_of_the_turned_unit(method: str) -> None:
    for unit in derived(method).units:
        sides = shown_sides(unit, 0.25)
        for quarters in turns_allowed(sides):
            lying = shown_sides(turned(unit, turn(2 * quarters)), 0.25)
            for ours, theirs in zip(turned_sides(sides, quarters), lying, strict=True):
                assert [span.fabric for span in ours] == [span.fabric for span in theirs]
                for one, other in zip(ours, theirs, strict=True):
                    assert one[:2] == pytest.approx(other[:2], abs=2e-5)
        assert turned_sides(sides, 4) == sides


def test_a_square_unit_lies_in_four_turns_and_geese_in_two() -> None:
    for method in IDS:
        sides = shown_sides(derived(method).units[0], 0.25)
        geese = method == "flying-geese-four"
        assert turns_allowed(sides) == ((0, 2) if geese else (0, 1, 2, 3))


def test_a_stacked_four_patch_shows_one_fabric_at_each_side_and_two_at_each_corner() -> None:
    # By hand: the seams of such a unit are its diagonals.
    sides = shown_sides(derived("stacked-four-patch").units[0], 0.25)
    long = [max(side, key=lambda span: span.end - span.start).fabric for side in sides]
    assert len(set(long)) == 4
    assert corners(sides) == tuple(frozenset((long[n - 1], long[n])) for n in range(4))


def test_seams_within_the_allowance_do_not_show() -> None:
    # A strip of the nine-patch that is all allowance: at 3/8 in of seam nothing else changes.
    unit = derive("nine-patch", F(2), F(3, 8)).units[0]
    top = shown_sides(unit, 0.375)[0]
    assert [span.fabric for span in top] == ["A", "B", "C"]
    assert [span.end - span.start for span in top] == pytest.approx([1.25] * 3)


def test_a_point_counts_by_the_corner_rule_only_and_a_hair_is_neither() -> None:
    one, other = (Span(0, 2, "A"), Span(2, 4, "B")), (Span(0, 2, "B"), Span(2, 4, "A"))
    assert meeting(one, other, TouchRule.EDGE) == {}
    assert meeting(one, other, TouchRule.CORNER) == {"A": 0.0, "B": 0.0}
    assert meeting(one, (Span(0, 4, "A"),), TouchRule.EDGE) == {"A": 2}
    apart = (Span(0, 1.9, "B"), Span(2.1, 4, "A"))
    assert meeting(one, apart, TouchRule.CORNER) == {}


def test_plain_squares_show_one_fabric_all_round() -> None:
    sides = shown_sides(derived("plain-squares").units[0], 0.25, {"A": "Q"})
    assert {span.fabric for side in sides for span in side} == {"Q"}
    assert turned_sides(plain_sides("Q"), 3) == plain_sides("Q")


def test_one_way_prints_are_said_as_they_stand_and_no_turn_is_forbidden() -> None:
    nine = derived("nine-patch").units[0]
    assert set(print_ways(nine, 0.25, 0).values()) == {frozenset({0})}
    assert print_words(nine, 0.25, 0, "A") == ()
    assert print_words(nine, 0.25, 2, "AE", {"A": "A birds"}) == (
        "A birds stands on its head.",
        "E stands on its head.",
    )
    assert print_words(nine, 0.25, 1, "B") == ("B lies on its side.",)
    stack = derived("stacked-four-patch").units[0]
    assert all("slanting" in said for said in print_words(stack, 0.25, 0, "ABCDEFGH"))


def test_what_lies_at_an_outer_side_or_at_a_sash_is_the_fabric_there() -> None:
    units = made("hourglass", 6, 2, 3)
    laying = laid_anyhow(units, 2, 3, 5)
    found = [touch for touch in touches(laying, units, Rules(rim="A")) if touch.kind is Kind.RIM]
    width = Flat(derived("hourglass").units[0].finished(0.25)).size[0]
    rim = 0
    for row, puts in enumerate(laying.places):
        for column, put in enumerate(puts):
            assert put is not None
            sides = turned_sides(units[put.unit].sides, put.turns)
            outer = [row == 0, column == 2, row == 1, column == 0]
            for side, is_outer in zip(sides, outer, strict=True):
                rim += is_outer and any(s.fabric == "A" and s.end - s.start > 1 for s in side)
    assert rim > 0
    assert len(found) == rim
    assert {round(touch.inches, 3) for touch in found} == {round(width, 3)}
