"""Where fabrics land in the units of one batch, which way their prints turn, and edges."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction as F

import pytest
from msgspec.structs import replace

from sewalong.piecing.catalogue import method_ids, written_method
from sewalong.piecing.cloth import Flat, Patch, rectangle, turned
from sewalong.piecing.definition import Definition
from sewalong.piecing.derive import derive
from sewalong.piecing.edges import EdgeGrain, Side, outer_edges
from sewalong.piecing.geometry import Move, centre, shift, turn
from sewalong.piecing.same_when_turned import alike, kinds


def test_sewn_around_a_one_way_print_stands_all_four_ways() -> None:
    # Delighted Hands (2019): with the all-round, cut-twice method a one-way print
    # appears in all four rotations.
    units = derive("paired-squares", F(5)).units
    for letter in "AB":
        turns = sorted(p.turn for unit in units for p in unit.patches if p.letter == letter)
        assert turns == [45, 135, 225, 315]


def test_each_unit_of_a_stack_has_four_of_its_eight_squares() -> None:
    derived = derive("stacked-four-patch", F(5))
    assert derived.letters == dict.fromkeys("ABCDEFGH", "square")
    landed = Counter(patch.letter for unit in derived.units for patch in unit.patches)
    # Every square shows in two of the four units.
    assert landed == dict.fromkeys("ABCDEFGH", 2)
    for unit in derived.units:
        letters = {patch.letter for patch in unit.patches}
        assert len(letters & set("ABCD")) == 2
        assert len(letters & set("EFGH")) == 2


def test_in_a_unit_of_a_stack_neighbours_in_the_four_patch_stay_neighbours() -> None:
    # The four-patch is A B over D C (the second pair turned): no unit has A with C.
    for unit in derive("stacked-four-patch", F(5)).units:
        letters = {patch.letter for patch in unit.patches}
        assert not {"A", "C"} <= letters
        assert not {"B", "D"} <= letters


def _leans(unit: Flat) -> bool:
    """True if the seam falls away from the start of reading when print A stands upright."""
    (a,) = (patch for patch in unit.patches if patch.letter == "A")
    upright = turned(unit, turn(-round(a.turn / 45)))
    (a,) = (patch for patch in upright.patches if patch.letter == "A")
    x, y = centre(a.points)
    middle_x, middle_y = (side / 2 for side in upright.size)
    # A lies beyond the seam from corner 1 or 3 when the seam rises, 2 or 4 when it falls.
    return (x > middle_x) != (y > middle_y)


def _other_diagonal() -> Definition:
    written = written_method("half-square-two")
    swap = {
        "sew both sides of diagonal": "sew both sides of other diagonal",
        "cut diagonal": "cut other diagonal",
    }
    return replace(
        written,
        id="half-square-two-other",
        stages=tuple(
            replace(stage, operations=tuple(swap.get(word, word) for word in stage.operations))
            for stage in written.stages
        ),
    )


def test_both_units_of_a_pair_lean_one_way_and_the_other_diagonal_the_other() -> None:
    # Delighted Hands (2019): marking all diagonals the same way gives only one handedness
    # of unit; half the pairs must be marked on the other diagonal.
    one = {_leans(unit) for unit in derive("half-square-two", F(4)).units}
    other = {_leans(unit) for unit in derive(_other_diagonal(), F(4)).units}
    assert len(one) == len(other) == 1
    assert one != other


def test_units_of_either_diagonal_are_alike_only_without_a_one_way_print() -> None:
    mine = derive("half-square-two", F(4)).units
    theirs = derive(_other_diagonal(), F(4)).units
    assert alike(mine[0], mine[0])
    assert not any(alike(a, b) for a in mine for b in theirs)
    assert all(alike(a, b, prints=False) for a in mine for b in theirs)


THREE = Flat(
    (
        Patch(((0.0, 0.0), (2.0, 0.0), (2.0, 4.0), (0.0, 4.0)), "A", (0.0, -1.0)),
        Patch(((2.0, 0.0), (4.0, 0.0), (4.0, 2.0), (2.0, 2.0)), "B", (0.0, -1.0)),
        Patch(((2.0, 2.0), (4.0, 2.0), (4.0, 4.0), (2.0, 4.0)), "C", (0.0, -1.0)),
    )
)


@pytest.mark.parametrize("quarters", range(4))
def test_a_unit_is_alike_however_it_is_turned_but_not_turned_over(quarters: int) -> None:
    other = turned(THREE, turn(2 * quarters))
    assert alike(THREE, other)
    assert not alike(THREE, turned(other, Move(-1.0, 0.0, 0.0, 1.0)))
    assert not alike(THREE, turned(other, turn(1)))


def test_units_that_lean_opposite_ways_are_of_two_kinds() -> None:
    over = turned(THREE, Move(-1.0, 0.0, 0.0, 1.0))
    units = [THREE, over, turned(over, turn(2)), turned(THREE, turn(4))]
    assert kinds(units) == [[0, 3], [1, 2]]


def test_each_fabric_takes_its_part_of_what_shows() -> None:
    # Half an inch off each side leaves 3 x 3 inches: A 1 1/2 x 3, B and C 1 1/2 x 1 1/2.
    letters, shares = zip(*THREE.shares(0.5), strict=True)
    assert letters == ("A", "B", "C")
    assert shares == pytest.approx((1 / 2, 1 / 4, 1 / 4))


def test_a_print_that_stands_otherwise_makes_a_unit_another_unless_prints_are_left_out() -> None:
    lying = Flat((replace(THREE.patches[0], grain=(1.0, 0.0)), *THREE.patches[1:]))
    assert not alike(THREE, lying)
    assert alike(THREE, lying, prints=False)


def test_edges_a_millionth_apart_are_the_same_and_a_thousandth_of_an_inch_apart_are_not() -> None:
    def moved_by(distance: float) -> Flat:
        return Flat(
            tuple(
                replace(
                    patch, points=tuple((x + distance * (x == 2.0), y) for x, y in patch.points)
                )
                for patch in THREE.patches
            )
        )

    assert alike(THREE, moved_by(1e-6))
    assert not alike(THREE, moved_by(1 / 1000))


@pytest.mark.parametrize("lying", [False, True])
def test_patches_are_put_in_reading_order_however_narrow_they_are(lying: bool) -> None:
    strips = [rectangle(0.5, 4.0, letter) for letter in "ABCD"]
    laid = [
        replace(strip.patches[0], points=shift(0.5 * n, 0.0).polygon(strip.patches[0].points))
        for n, strip in enumerate(strips)
    ]
    unit = Flat(tuple(laid[n] for n in (2, 0, 3, 1)))
    if lying:
        unit = turned(unit, Move(0.0, 1.0, 1.0, 0.0))
    assert [patch.letter for patch in unit.in_order(0.125).patches] == ["A", "B", "C", "D"]


def test_eight_at_a_time_gives_four_of_each_leaning() -> None:
    assert Counter(_leans(unit) for unit in derive("half-square-eight", F(8)).units) == {
        True: 4,
        False: 4,
    }


def test_paired_squares_have_four_bias_sides_as_practitioners_say() -> None:
    # Quiltingboard post: all four outer edges are bias.
    for unit in derive("paired-squares", F(17, 4)).units:
        edges = outer_edges(unit)
        assert {edge.side for edge in edges} == set(Side)
        assert {edge.grain for edge in edges} == {EdgeGrain.BIAS}


@pytest.mark.parametrize("id", method_ids())
def test_only_the_methods_sewn_around_have_bias_edges(id: str) -> None:
    derived = derive(id, F(9), strip_length=F(80))
    assert derived.has_bias_edges == (id in {"paired-squares", "stacked-four-patch"})


@pytest.mark.parametrize("id", method_ids())
def test_the_outer_edges_go_all_round(id: str) -> None:
    derived = derive(id, F(9), strip_length=F(80))
    width, height = derived.unit.width, derived.unit.height
    length = sum(
        abs(edge.end[0] - edge.start[0]) + abs(edge.end[1] - edge.start[1])
        for edge in outer_edges(derived.units[0])
    )
    assert length == pytest.approx(2 * (width + height))


def test_flipped_corners_show_a_third_of_the_side() -> None:
    derived = derive("flipped-corners", F(13, 2))
    assert derived.unit.finishes == pytest.approx((6, 6))
    shown = [p for p in derived.units[0].finished(0.25) if p.letter != "A"]
    assert len(shown) == 4
    for patch in shown:
        xs = [x for x, _ in patch.points]
        assert max(xs) - min(xs) == pytest.approx(2)
    assert derived.starts["small-square"].cutting == F(5, 2)


def test_flipped_corners_of_another_size_keep_the_unit() -> None:
    derived = derive("flipped-corners", {"large-square": F(13, 2), "small-square": F(3, 2)})
    assert derived.unit.finishes == pytest.approx((6, 6))
    # Sewn on the diagonals of four 1 1/2 in squares.
    assert derived.stage("sew").sewn == pytest.approx(4 * 1.5 * 2**0.5)
