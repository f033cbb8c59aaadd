"""Rows: n pieces have n - 1 seams, and a measured row tells the seam that was really sewn."""

from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.quilt.cloth.row import RowNumbers, carried_across, row_length, row_of
from sewalong.quilt.refusal import NumbersFault

QUARTER, HALF = F(1, 4), F(1, 2)

# (pieces, cut, whole, source). The centre strip shows cut - 1/2, checked below.
SEAM_TESTS = [
    (3, "3/2", "7/2", "Quilted Connections, What is a scant 1/4 seam"),
    (3, "3/2", "7/2", "Quiltcentric 2012, Testing your scant quarter inch seam"),
    (3, "2", "5", "About.com Quilting, Machine piecing: seam allowance"),
    (3, "5/2", "13/2", "Pat Sloan, How to test for an accurate 1/4 seam allowance"),
]


@pytest.mark.parametrize(("pieces", "cut", "whole", "source"), SEAM_TESTS)
def test_a_seam_test_of_three_strips(pieces: int, cut: str, whole: str, source: str) -> None:
    assert row_length(pieces, F(cut), QUARTER) == F(whole), source


@pytest.mark.parametrize(
    ("cut", "centre", "source"),
    [
        ("3/2", "1", "Quilting Affection 2014, Testing your 1/4 seam allowance accuracy"),
        ("2", "3/2", "About.com Quilting, Machine piecing: seam allowance"),
        ("5", "9/2", "T. Pereira, Tips and tutorials"),
        ("5/2", "2", "Pat Sloan, How to test for an accurate 1/4 seam allowance"),
    ],
)
def test_the_middle_strip_shows_its_cut_less_two_allowances(
    cut: str, centre: str, source: str
) -> None:
    outer_two = 2 * (F(cut) - QUARTER)
    assert row_length(3, F(cut), QUARTER) - outer_two == F(centre), source


@pytest.mark.parametrize(
    ("strip", "finishes_at"),
    [("2", "4.5"), ("2.5", "6"), ("3", "7.5"), ("3.5", "9"), ("4", "10.5"), ("4.5", "12")],
)
def test_nine_patches_from_strips(strip: str, finishes_at: str) -> None:
    # moonlightquilters.org, Nine patch tip (no-waste chart); quiltingboard.com t214005 (2013)
    # goes the other way for 9 in: a third and a half inch.
    assert row_length(3, F(strip), QUARTER) - F(1, 2) == F(finishes_at)
    assert F(finishes_at) / 3 + F(1, 2) == F(strip)


@pytest.mark.parametrize("strip", ["2.5"])
def test_four_patches_from_strips(strip: str) -> None:
    # warpedspinster.blogspot.com 2016: 2 1/2 in strips give four-patches of 4 1/2 in unfinished.
    assert row_length(2, F(strip), QUARTER) == F("4.5")


@pytest.mark.parametrize(
    ("seam", "whole"),
    [
        pytest.param("1/4", "19/2", id="Q006-exact"),
        pytest.param("9/32", "75/8", id="Q006-scarcely-wide"),
        pytest.param("5/16", "37/4", id="Q006-wide"),
    ],
)
def test_nine_patches_against_plain_squares(seam: str, whole: str) -> None:
    # onforwardmotion.blogspot.com 2013: nine-patches of 3 1/2 in squares beside plain 9 1/2 in.
    assert row_length(3, F(7, 2), F(seam)) == F(whole)


@pytest.mark.parametrize(
    ("cut", "right", "printed"),
    [
        # fiber-thoughts.blogspot.com 2013: 6 in squares "give a 12 1/2 in four-patch".
        pytest.param("6", "23/2", "25/2", id="Q020"),
        # careyfamily.org: 2 1/2 in squares "make 5 1/2 in".
        pytest.param("5/2", "9/2", "11/2", id="Q021"),
    ],
)
def test_printed_four_patches_that_cannot_be(cut: str, right: str, printed: str) -> None:
    assert row_length(2, F(cut), QUARTER) == F(right)
    assert row_length(2, F(cut), QUARTER) != F(printed)
    # The printed size needs squares half an inch larger: Q020 6 1/2, Q021 3 in.
    assert row_length(2, F(cut) + F(1, 2), QUARTER) == F(printed)


@pytest.mark.parametrize(
    ("pieces", "unfinished"),
    [
        # tamarinis.typepad.com 2020: an 8 1/2 in four-patch cut twice each way loses 1 in, not 2.
        pytest.param(["3.25", "2", "3.25"], "7.5", id="Q018"),
        # alamosaquilter.blogspot.com 2011: four 5 in squares, cut 1 in from the seam each side.
        pytest.param(["3.75", "2", "3.75"], "8.5", id="Q019"),
    ],
)
def test_a_four_patch_cut_twice_each_way_loses_two_seams(
    pieces: list[str], unfinished: str
) -> None:
    cuts = [F(piece) for piece in pieces]
    assert row_of(cuts, QUARTER) == F(unfinished) == sum(cuts) - 1


@pytest.mark.parametrize("trimmed", [pytest.param("21/4", id="Q016-pinwheel")])
def test_four_units_make_a_pinwheel(trimmed: str) -> None:
    # robotmomsews.blogspot.com 2011: units trimmed to 5 1/4 in; the pinwheel finishes at 9 1/2 in.
    assert row_length(2, F(trimmed), QUARTER) - F(1, 2) == F(19, 2)


@pytest.mark.parametrize("printed", [pytest.param("23/2", id="Q022")])
def test_pieces_of_a_printed_block_meet_neither_way(printed: str) -> None:
    # ragdollquilting.blogspot.com 2007: 4 3/4, 3 1/2 and 3 3/4 against an 11 1/2 in background.
    cuts = [F(19, 4), F(7, 2), F(15, 4)]
    assert sum(cuts) == 12
    assert row_of(cuts, QUARTER) == 11
    assert F(printed) not in (sum(cuts), row_of(cuts, QUARTER))


@pytest.mark.parametrize("units", [pytest.param(8, id="Q003")])
def test_an_eighth_lost_in_four_seams_across_eight_blocks(units: int) -> None:
    # quilted-connections.com, What is a scant 1/4 seam.
    lost_in_one = carried_across(F(1, 8), 4)
    assert lost_in_one == F(1, 2)
    assert carried_across(lost_in_one, units) == 4


@pytest.mark.parametrize("pieces", [pytest.param(12, id="Q034")])
def test_seam_drift_cannot_lose_a_third_of_a_top(pieces: int) -> None:
    # againmommy.blogspot.com 2010: 56 in for 90, and seams 1/16 in wide lose 1 3/8 in over 12.
    drift = row_length(pieces, F(8), QUARTER) - row_length(pieces, F(8), F(5, 16))
    assert drift == F(11, 8)
    assert drift < 90 - 56


def test_the_end_pieces_lose_one_allowance_and_those_between_lose_two() -> None:
    hair = F(1, 64)
    end, between = QUARTER + hair, 2 * QUARTER + hair
    assert row_of([end, between, end], QUARTER) == 3 * hair
    for used_up in ([QUARTER, between, end], [end, 2 * QUARTER, end], [end, between, QUARTER]):
        with pytest.raises(NumbersFault, match="used up by its own seams"):
            row_of(used_up, QUARTER)
    with pytest.raises(NumbersFault, match="used up by its own seams"):
        row_of([QUARTER, QUARTER], QUARTER)
    # A piece alone is not sewn.
    assert row_of([QUARTER], QUARTER) == QUARTER


def test_the_numbers_of_a_row_are_those_of_its_pieces_and_seams() -> None:
    # tamarinis.typepad.com 2020: an 8 1/2 in four-patch cut twice each way loses 1 in.
    row = RowNumbers((F("3.25"), F(2), F("3.25")), QUARTER)
    assert (row.edge_to_edge, row.seams, row.sewn, row.finishes_at) == (F("8.5"), 2, F("7.5"), F(7))
    # An eighth more of each of four allowances is half an inch.
    assert row.longer_by(F(3, 8)) == -HALF
    assert row.longer_by(F(1, 8)) == HALF
    assert row.loses(F(1, 8)) == QUARTER


@given(st.lists(st.fractions(1, 12, max_denominator=8), min_size=1, max_size=12))
def test_two_rows_joined_lose_one_more_seam(cuts: list[F]) -> None:
    whole = row_of([*cuts, *cuts], QUARTER)
    assert whole == 2 * row_of(cuts, QUARTER) - 2 * QUARTER


@pytest.mark.parametrize(
    ("pieces", "cut", "seam"), [(0, F(2), QUARTER), (3, F(0), QUARTER), (3, F(1, 2), QUARTER)]
)
def test_rows_that_cannot_be(pieces: int, cut: F, seam: F) -> None:
    with pytest.raises(NumbersFault):
        row_length(pieces, cut, seam)
