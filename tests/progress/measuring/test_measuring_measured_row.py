"""What a measured row says by itself: the calculator for a row."""

from __future__ import annotations

import re
from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.lengths import CENTIMETRE, Unit
from sewalong.progress.measuring.causes.priors import Why
from sewalong.progress.measuring.measured_row import measured_row
from sewalong.quilt.cloth.row import RowNumbers, row_length
from sewalong.quilt.refusal import NumbersFault

QUARTER = F(1, 4)


def alike(pieces: int, cut: str) -> RowNumbers:
    return RowNumbers((F(cut),) * pieces, QUARTER)


# (case, pieces, cut, measured, expected, off each, source)
READINGS = [
    ("Q001", 5, "5/2", "10", "21/2", "1/16", "andiejohnsonsews.com 2011"),
    ("Q005", 3, "3/2", "13/4", "7/2", "1/16", "howdyblogs.blogspot.com 2009"),
]


@pytest.mark.parametrize(
    ("pieces", "cut", "measured", "expected", "off", "source"),
    [pytest.param(*row[1:], id=row[0]) for row in READINGS],
)
def test_a_measured_row_tells_the_seam(
    pieces: int, cut: str, measured: str, expected: str, off: str, source: str
) -> None:
    row = alike(pieces, cut)
    found = measured_row(row, F(measured))
    assert row.sewn == F(expected), source
    assert found.causes[0].off_each == F(off), source
    assert found.lines[0] == "Likeliest: seams of 5/16 in, each 1/16 in too wide."


@given(
    st.integers(2, 40),
    st.fractions(1, 12, max_denominator=16),
    st.fractions(F(1, 8), F(3, 8), max_denominator=64),
)
def test_the_seam_that_was_sewn_is_read_back(pieces: int, cut: F, seam: F) -> None:
    found = measured_row(RowNumbers((cut,) * pieces, QUARTER), row_length(pieces, cut, seam))
    seams = [cause.seam for cause in found.causes if cause.is_seam]
    assert seams == ([seam] if found.causes else [])


def test_a_row_that_is_right_has_no_cause() -> None:
    for reading in ("3.5", "3.53125", "3.46875"):
        found = measured_row(alike(3, "3/2"), F(reading))
        assert (found.causes, found.further, found.lines) == ((), None, ())
    assert measured_row(alike(3, "3/2"), F("3.4375")).causes


def test_a_missing_piece_is_missing_whatever_the_seam_measures() -> None:
    """Eight of 6 1/2 in lack 6 in: no seam of 43/64 in, and the one measured is right."""
    for read in (None, QUARTER):
        found = measured_row(alike(8, "6.5"), F("42.5"), seam_read=read)
        assert found.lines == ("Likeliest: one piece too few (each adds 6 in; there should be 8).",)


def test_a_row_longer_than_its_pieces_has_one_too_many() -> None:
    """Two of 2 in laid end to end are 4 in; three of them sewn are 5."""
    found = measured_row(alike(2, "2"), F(5))
    assert (found.causes[0].why, found.causes[0].pieces) == (Why.TOO_MANY, 1)


def test_of_unlike_pieces_the_one_that_is_missing_is_told() -> None:
    row = RowNumbers((F(3), F("2.5"), F("4.5"), F(3)), QUARTER)
    found = measured_row(row, row.sewn - 4)
    assert found.lines[0] == "Likeliest: one piece too few (each adds 4 in; there should be 4)."


def test_a_row_in_centimetres() -> None:
    row = RowNumbers((4 * CENTIMETRE,) * 3, F("0.75") * CENTIMETRE)
    found = measured_row(row, F("8.4") * CENTIMETRE, unit=Unit.CM)
    # 0.6 cm over four allowances are 0.15 cm each.
    assert found.causes[0].seam == F("0.9") * CENTIMETRE
    assert found.lines[0] == "Likeliest: seams of 0.95 cm, each 0.2 cm too wide."
    assert not [line for line in found.lines if re.search(r"\d in\b", line)]


def test_a_row_wants_two_pieces_and_a_length() -> None:
    with pytest.raises(NumbersFault, match="at least 2"):
        measured_row(alike(1, "2"), F(2))
    with pytest.raises(NumbersFault):
        measured_row(alike(3, "2"), F(0))
