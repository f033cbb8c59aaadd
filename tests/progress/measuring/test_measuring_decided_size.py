"""What is measured is held against the size units are joined at."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from msgspec.structs import replace

from sewalong.lengths import CENTIMETRE, Unit
from sewalong.progress.measuring.causes.priors import Why
from sewalong.progress.measuring.choices import TrimAll
from sewalong.progress.measuring.diagnosis import diagnose
from sewalong.progress.measuring.projected_top import if_like
from sewalong.progress.record.measurable import proof_pile, read_piece
from sewalong.quilt.quilt import Border, Quilt, Target
from sewalong.quilt.size import Size
from tests.progress.measuring.measuring_quilts import STACKED, measured, of_size

SEAM = F("0.75") * CENTIMETRE

HALVES = replace(
    of_size("half-square-two", "5", 12, 9),
    unit=Unit.CM,
    seam=SEAM,
    starts=(
        replace(of_size("half-square-two", "5").starts[0], size=F("12.5") * CENTIMETRE, count=108),
    ),
    borders=(Border(F(9) * CENTIMETRE, "plain"),),
)
"""Half-square triangles of 11.44 cm, trimmed to 11: twelve rows of nine."""

SIX_AND_A_QUARTER = replace(STACKED, trim=Size.square(F("6.25")))
"""9 × 9 units of 6.364 in that their owner trims to 6 1/4."""


def cm(*lengths: str) -> tuple[F, ...]:
    return tuple(F(length) * CENTIMETRE for length in lengths)


def expected(quilt: Quilt, piece: str) -> F:
    return read_piece(quilt, quilt.target, piece).expected


def test_measure_centre_87_is_right_and_91_is_not() -> None:
    found = diagnose(HALVES, HALVES.target, "centre:across", cm("87"))
    assert found.passed
    assert found.lines == ("Go on.", "Centre across should be 87 cm: right.")
    assert not diagnose(HALVES, HALVES.target, "centre:across", cm("91")).passed


def test_the_untrimmed_unit_is_what_geometry_gives_and_stands_what_is_over() -> None:
    untrimmed = read_piece(HALVES, HALVES.target, "open-unit")
    assert abs(float(untrimmed.expected / CENTIMETRE) - (12.5 - 0.75 * 2**0.5)) < 1e-4
    assert untrimmed.at_least == 11 * CENTIMETRE
    assert expected(HALVES, "unit") == 11 * CENTIMETRE


def test_a_unit_its_owner_trims_is_measured_untrimmed_down_to_the_size() -> None:
    unit = read_piece(SIX_AND_A_QUARTER, SIX_AND_A_QUARTER.target, "unit")
    assert abs(float(unit.expected) - 9 / 2**0.5) < 1e-5
    assert unit.at_least == F("6.25")
    for reading in ("6 3/8", "6 1/4"):
        assert measured(SIX_AND_A_QUARTER, "unit", reading).passed
    small = measured(SIX_AND_A_QUARTER, "unit", "6 1/8")
    assert not small.passed
    assert small.why is Why.WIDE


def test_all_are_trimmed_to_the_owners_size_where_all_reach_it_though_no_eighth_is_it() -> None:
    between = replace(STACKED, trim=Size.square(F("6.1875")))
    found = measured(between, "unit", "6.21875", "6.75")
    (trim,) = (choice for choice in found.choices if isinstance(choice, TrimAll))
    assert (trim.to, found.trim_to, found.spread.common) == (F("6.1875"), F("6.1875"), F("6.125"))
    # Where one does not reach it, it is the largest mark of the ruler that all reach.
    assert measured(between, "unit", "6.15625", "6.75").trim_to == F("6.125")


def test_how_far_a_seam_may_be_off_follows_the_size() -> None:
    """6.364 in lose 2.828 in for an inch of allowance: 6 1/4 stands 0.040 in, 6 in 0.129 in."""
    for size, reading in (("6.25", "6.26"), ("6", "6.18")):
        quilt = replace(STACKED, trim=Size.square(F(size)))
        assert measured(quilt, "unit", reading).passed
    assert not measured(SIX_AND_A_QUARTER, "unit", "6.18").passed


def test_rows_and_centre_follow_what_the_owner_says() -> None:
    # Nine of 5 3/4 in finished, and an allowance at each end.
    for piece in ("row", "column:9", "centre:across", "centre:down"):
        assert expected(SIX_AND_A_QUARTER, piece) == 9 * F("5.75") + F("0.5")
    assert expected(SIX_AND_A_QUARTER, "row:4") == 4 * F("5.75") + F("0.5")
    assert expected(SIX_AND_A_QUARTER, "top:down") == 9 * F("5.75") + F("0.5") + 5


def test_a_row_of_trimmed_units_that_is_short_makes_the_top_short_by_as_much() -> None:
    for quilt in (HALVES, SIX_AND_A_QUARTER):
        row = read_piece(quilt, quilt.target, "row")
        outlook = if_like(quilt, quilt.target, row, row.expected - F(9, 16))
        assert outlook.row_loses == F(9, 16)


def test_every_seam_of_a_row_of_trimmed_units_is_a_seam_between_units() -> None:
    row = read_piece(SIX_AND_A_QUARTER, SIX_AND_A_QUARTER.target, "row")
    assert row.allowances == 2 * 8
    found = measured(SIX_AND_A_QUARTER, "row", "51 3/4")
    assert found.causes[0].off_each == F(1, 2) / 16


def test_trim_all_is_to_the_size_decided_where_all_reach_it() -> None:
    found = measured(SIX_AND_A_QUARTER, "unit", "6 5/8", "6 3/4")
    (trim,) = (one for one in found.choices if isinstance(one, TrimAll))
    assert trim.to == F("6.25")
    assert trim.outlook is not None
    assert trim.outlook.row_loses == 0
    small = measured(SIX_AND_A_QUARTER, "unit", "6 1/8", "6 3/16")
    (trim,) = (one for one in small.choices if isinstance(one, TrimAll))
    assert trim.to == F("6.125")
    assert trim.outlook is not None
    assert trim.outlook.row_loses == 9 * F(1, 8)


def test_another_layout_has_another_centre_of_the_same_units() -> None:
    centre = read_piece(HALVES, Target(3, 4), "centre:down").expected
    assert centre == (3 * F("9.5") + F("1.5")) * CENTIMETRE


@pytest.mark.parametrize("size", ["4", "17/4", "5", "11/2", "6", "7", "8", "10"])
@pytest.mark.parametrize("method", ["half-square-two", "half-square-eight", "hourglass"])
def test_a_reading_on_an_eighth_is_trimmed_to_that_very_eighth(method: str, size: str) -> None:
    """Whole eighths below what is decided stay as they are: no noise takes one more off."""
    quilt = of_size(method, size, rows=4, columns=6)
    piece = read_piece(quilt, quilt.target, proof_pile(quilt))
    below = int(piece.expected * 8)
    readings = [F(eighths, 8) for eighths in range(max(9, below - 8), below)]
    assert readings
    for reading in readings:
        row = if_like(quilt, quilt.target, piece, reading).row
        assert row == 6 * (reading - F(1, 2)) + F(1, 2)
