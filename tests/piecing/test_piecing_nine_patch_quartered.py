"""A nine-patch cut in quarters: the unit is the quarter; four rejoined are checked too."""

from __future__ import annotations

from fractions import Fraction as F

import pytest

from sewalong.piecing import operations
from sewalong.piecing.derive import derive
from tests.piecing.published import rows

TABLE = rows("strips_and_quarters")
FINISHED = [row for row in TABLE if row["quantity"] == "d9p_finished"]
UNFINISHED = [row for row in TABLE if row["quantity"] == "d9p_unfinished"]


def _square(row: dict[str, str]) -> F:
    return F(row["case"].split()[0])


def _rejoined(square: F) -> float:
    """Width to the raw edges of four quarters joined two and two again."""
    quarters = derive("nine-patch-quartered", square).units
    rows_of_two = []
    for pair in (quarters[:2], quarters[2:]):
        table = operations.Table(0.25, list(pair))
        operations.join_row(table)
        rows_of_two += table.pieces
    table = operations.Table(0.25, rows_of_two)
    operations.join_column(table)
    return table.pieces[0].size[0]


@pytest.mark.parametrize("row", FINISHED, ids=lambda row: row["case"])
def test_four_quarters_rejoined_finish_at_the_published_size(row: dict[str, str]) -> None:
    # Raeven Fea, "Disappearing nine-patch (with sizing table)": 3 s - 2.
    square = _square(row)
    assert _rejoined(square) - 0.5 == pytest.approx(float(row["published"]))
    assert float(row["published"]) == float(3 * square - 2)


@pytest.mark.parametrize("row", UNFINISHED, ids=lambda row: row["source"][:20])
def test_four_quarters_rejoined_measure_thirteen_and_a_half_unfinished(
    row: dict[str, str],
) -> None:
    assert _rejoined(_square(row)) == pytest.approx(float(row["published"]))


@pytest.mark.parametrize("square", [F(5, 2), F(4), F(5), F(10)])
def test_the_quarter_finishes_at_half_of_that(square: F) -> None:
    unit = derive("nine-patch-quartered", square).unit
    assert unit.finishes[0] == pytest.approx(float(3 * square - 2) / 2)


def test_a_quarter_of_a_nine_inch_nine_patch_finishes_at_four_and_a_quarter() -> None:
    # Tamarinis (2020): 9 in finished nine-patch, quarters finish at 4 1/4 in.
    square = F(9) / 3 + F(1, 2)
    derived = derive("nine-patch-quartered", square)
    assert derived.piles["nine-patch"].size[0] - 0.5 == pytest.approx(9)
    assert derived.unit.finishes[0] == pytest.approx(4.25)


def test_a_quilt_of_twenty_rejoined_measures_more_than_was_reported() -> None:
    # Paulalynn (2010): 20 of 5 in charms, 4 x 5, reported as 51 x 63 in; the seams of
    # a quilt pieced exactly give 52 1/2 x 65 1/2 in.
    assert 4 * (_rejoined(F(5)) - 0.5) + 0.5 == pytest.approx(52.5)
    assert 5 * (_rejoined(F(5)) - 0.5) + 0.5 == pytest.approx(65.5)


def test_twenty_nine_patches_take_180_charms() -> None:
    # Paulalynn (2010): 20 of nine charms each; every nine-patch is four units.
    per_unit = derive("nine-patch-quartered", F(5)).per_unit["square"]
    assert 20 * 4 * per_unit == 180


def test_every_quarter_has_a_quarter_of_the_middle_at_the_same_corner() -> None:
    for unit in derive("nine-patch-quartered", F(5)).units:
        assert [patch.letter for patch in unit.patches].index("E") == 0
