"""Squares under their label: the common size, and what it does to the unit and the row."""

from fractions import Fraction as F
from math import sqrt

import pytest

from sewalong.quilt.cloth.row import row_length
from sewalong.quilt.cloth.undersized import common_size, printed_at, recut, shrunk
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.size import Size


def sewn_all_round(square: F) -> float:
    """Two squares sewn all round at 1/4 in and cut twice: (L - 1/2) / root 2 (plane geometry)."""
    return (float(square) - 0.5) / sqrt(2)


def plain(square: F) -> F:
    """What a plain square finishes at."""
    return square - F(1, 2)


@pytest.mark.parametrize("in_row", [pytest.param(8, id="Q040")])
def test_a_pinked_edge_read_at_peak_or_valley(in_row: int) -> None:
    # quiltingdaily.com, Technique Tuesday: up to 1/4 in gained or lost on 10 in squares.
    found = shrunk(F("10.25"), F("9.75"), sewn_all_round, in_row)
    assert found.unit == pytest.approx(6.541, abs=1e-3)
    assert found.unit_at_label == pytest.approx(6.894, abs=1e-3)
    assert found.unit_loses == pytest.approx(0.354, abs=1e-3)
    assert found.row_loses == pytest.approx(2.83, abs=5e-3)


@pytest.mark.parametrize("label", [pytest.param(5, id="Q042")])
def test_washed_squares_that_shrank_unevenly(label: int) -> None:
    # susies-scraps.com 2015: 5 in squares lost 1/8 to 3/8 in.
    measured = [Size(F("4.875"), F("4.75")), Size(F("4.625"), F("4.875"))]
    assert common_size(measured) == F("4.625")
    found = shrunk(F(label), common_size(measured), sewn_all_round, 1)
    assert found.unit_at_label == pytest.approx(3.182, abs=1e-3)
    assert found.unit == pytest.approx(2.917, abs=1e-3)


@pytest.mark.parametrize("width", [pytest.param("9.375", id="Q043")])
def test_a_square_longer_than_wide_after_the_wash(width: str) -> None:
    # pieceocakeblog.com 2018: 10 x 9 3/8 in.
    common = common_size([Size(F(10), F(width))])
    assert common == F("9.375")
    found = shrunk(F(10), common, sewn_all_round, 8)
    assert found.unit == pytest.approx(6.276, abs=1e-3)
    assert found.unit_at_label == pytest.approx(6.718, abs=1e-3)
    assert found.unit_loses == pytest.approx(0.442, abs=1e-3)
    assert found.reason == (
        "squares at 9 3/8 in, not 10 in: the unit is 6.276 in, not 6.718 in; "
        "a row of 8 loses 3.536 in"
    )


@pytest.mark.parametrize("squares", [pytest.param(150, id="Q044")])
def test_plain_squares_cut_to_a_size_the_units_do_not_reach(squares: int) -> None:
    # blondeusingrotarycutter.blogspot.com 2013: nine-patches should be 6 1/2 in.
    assert row_length(3, F("2.5"), F(1, 4)) == F("6.5")
    assert row_length(3, F("2.375"), F(1, 4)) == F("6.125")
    work = recut(squares)
    assert (work.edges, work.cuts) == (600, 300)


@pytest.mark.parametrize("smallest", [pytest.param(11, id="Q024-trimmed")])
def test_old_blocks_trimmed_to_the_smallest(smallest: int) -> None:
    # quiltedforyoucolorado.blogspot.com 2010: 23 blocks from 11 to 12 1/2 in.
    measured = [Size.square(F("12.5")), Size.square(F(smallest)), Size.square(F(12))]
    found = shrunk(F("12.5"), common_size(measured), plain, 1)
    assert found.loses == F("1.5")


@pytest.mark.parametrize("in_row", [pytest.param(4, id="Q026-row")])
def test_swapped_blocks_in_a_row(in_row: int) -> None:
    # jobutterfield.blogspot.com: 11 1/2 in for 12 1/2, finishing at 11.
    found = shrunk(F("12.5"), F("11.5"), plain, in_row)
    assert found.unit == 11
    assert found.row_loses == 4


@pytest.mark.parametrize("block", [pytest.param("12.5", id="Q171")])
def test_a_sheet_printed_too_small(block: str) -> None:
    # thetialys.wordpress.com 2016: at 96 % a 12 1/2 in block is 12 in.
    assert F(block) * printed_at(F(1), F("0.96")) == 12
    assert F(block) * printed_at(F(2), F("1.92")) == 12


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(NumbersFault, match="more than 5 in on the label"):
        shrunk(F(5), F(6), plain, 4)
    with pytest.raises(NumbersFault, match="at least 1"):
        common_size([])
