"""Packs of pre-cut squares: how many, for counts known, measured or only guessed."""

from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.piecing.catalogue import method, method_ids
from sewalong.quilt.cloth.precuts import packs_for
from sewalong.quilt.layouts.layout import LayoutChoice
from sewalong.quilt.layouts.neighbouring_layouts import around
from sewalong.quilt.layouts.yield_of_method import made_by_stage, units_from
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.size import Size

# imperamagna.blogspot.com 2013, Tricky little charm packs: 22 to 56 under one name, need 140.
PACKS = [
    (56, 3, 28),
    (50, 3, 10),
    (43, 4, 32),
    (42, 4, 28),
    (40, 4, 20),
    (32, 5, 20),
    (25, 6, 10),
    (22, 7, 14),
]


@pytest.mark.parametrize(
    ("per_pack", "packs", "spare"), [pytest.param(*row, id=f"Q035-{row[0]}") for row in PACKS]
)
def test_packs_for_140_squares(per_pack: int, packs: int, spare: int) -> None:
    found = packs_for(140, per_pack)
    assert (found.packs, found.spare) == (packs, spare)


@pytest.mark.parametrize("width", [pytest.param(45, id="Q036")])
def test_packs_for_a_stated_size(width: int) -> None:
    # mavanellstudio.com, Let's talk charm packs: 45 x 63 in at 4 1/2 in finished.
    choice = LayoutChoice(0, Size.square(F("4.5")), wanted=Size(F(width), F(63)))
    layout = around(choice).covering
    assert (layout.columns, layout.rows, layout.units) == (10, 14, 140)
    at_40, at_42 = packs_for(layout.units, 40), packs_for(layout.units, 42)
    assert (at_42.packs, at_42.spare) == (4, 28)
    assert (at_40.packs, at_40.spare) == (4, 20)
    assert at_42.reason == "4 packs of 42: 140 needed, 3.33 packs, 28 spare"


def test_one_pack_may_be_just_enough() -> None:
    assert packs_for(42, 42).reason == "1 pack of 42: 42 needed, 1.00 packs, 0 spare"


def test_packs_for_twenty_nine_square_blocks() -> None:
    # paulalynnsbin.blogspot.com 2010: 180 charms are 4 packs of 42 and 12 more.
    found = packs_for(180, 42)
    assert found.packs == 5
    assert 180 - 4 * 42 == 12


@pytest.mark.parametrize(
    ("squares", "units"),
    [pytest.param(40, 80, id="Q038-40"), pytest.param(42, 84, id="Q038-42")],
)
def test_two_squares_make_four_units(squares: int, units: int) -> None:
    # laurainstitches.typepad.com: packs of 40 or 42.
    found = made_by_stage(method("paired-squares"), {"square": squares})
    assert (found[-1].made, [one.over for one in found if one.over]) == (units, [])


@pytest.mark.parametrize(
    ("squares", "made", "over"),
    [
        # 42: 21 pairs, of which one is over, and 10 four-patches. 84: 42 pairs, 21 four-patches,
        # of which one is over.
        pytest.param(40, [20, 10, 10, 5, 5, 20, 20], {}, id="Q039-40"),
        pytest.param(42, [21, 10, 10, 5, 5, 20, 20], {"sew": {"pair": 1}}, id="Q039-42"),
        pytest.param(
            84,
            [42, 21, 21, 10, 10, 40, 40],
            {"stack": {"pressed-four-patch": 1}},
            id="Q039-84",
        ),
        pytest.param(1, [0] * 7, {"pair": {"square": 1}}, id="one-square"),
        pytest.param(0, [0] * 7, {}, id="none"),
    ],
)
def test_every_stage_makes_what_it_can_and_keeps_what_is_over_in_sight(
    squares: int, made: list[int], over: dict[str, dict[str, int]]
) -> None:
    # nationalquilterscircle.com, Measuring precuts: 4 squares, then 2 four-patches to 4 units.
    found = made_by_stage(method("stacked-four-patch"), {"square": squares} if squares else {})
    assert [one.made for one in found] == made
    assert {one.stage: one.over for one in found if one.over} == over
    assert units_from(method("stacked-four-patch"), {"square": squares}) == made[-1]


def test_piles_that_are_there_already_go_in_where_they_lie() -> None:
    found = made_by_stage(method("stacked-four-patch"), {"square": 4, "pair": 3, "unit": 7})
    assert [one.made for one in found[:3]] == [2, 2, 2]
    assert found[1].over == {"pair": 1}


@given(st.sampled_from(method_ids()), st.integers(0, 2000))
def test_no_piece_is_lost_on_the_way(id: str, pieces: int) -> None:
    known = method(id)
    lying = dict.fromkeys((pile.id for pile in known.piles), 0)
    lying |= dict.fromkeys(known.starts, pieces)
    found = made_by_stage(known, dict.fromkeys(known.starts, pieces))
    over: dict[str, int] = {}
    for stage, one in zip(known.stages, found, strict=True):
        counts, part = divmod(one.made, stage.makes.count)
        assert part == 0
        for taken in stage.takes:
            lying[taken.pile] -= counts * taken.count
            assert lying[taken.pile] >= 0
        lying[stage.makes.pile] += one.made
        over |= one.over
    assert {pile: n for pile, n in lying.items() if n and pile != known.unit} == over
    for stage in known.stages:
        assert any(lying[taken.pile] < taken.count for taken in stage.takes)


@given(st.integers(1, 2000), st.integers(1, 60))
def test_one_pack_fewer_is_short(need: int, per_pack: int) -> None:
    found = packs_for(need, per_pack)
    assert found.total - found.spare == need
    assert found.total - per_pack < need <= found.total


def test_packs_of_nothing_are_refused() -> None:
    with pytest.raises(NumbersFault, match="pieces in a pack"):
        packs_for(140, 0)
