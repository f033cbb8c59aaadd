"""One whole quilt of common practice: 5 in squares, stacked four-patches, 9 x 9, two borders."""

from fractions import Fraction as F
from math import sqrt

import pytest

from sewalong.lengths import YARD
from sewalong.quilt.as_fraction import as_fraction
from sewalong.quilt.cloth.backing import backing, backing_from
from sewalong.quilt.cloth.borders import BorderNumbers, BorderPlan, Corners, borders
from sewalong.quilt.layouts.layout import LayoutChoice, layouts
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.size import Size

FINISHES_AT = (2 * 5 - 0.5 - 0.5) / sqrt(2) - 0.5


def bordered(corners: Corners = Corners.SIDES_FIRST, usable: int = 40) -> tuple[BorderNumbers, ...]:
    top = LayoutChoice(81, Size.square(as_fraction(FINISHES_AT))).layout(9, 9).size.grown(F(1, 4))
    plans = [BorderPlan(F("2.5"), corners), BorderPlan(F(5), corners)]
    return borders(top, plans, usable=F(usable))


def test_units_finish_at_5_864() -> None:
    assert pytest.approx(5.864, abs=5e-4) == FINISHES_AT


def test_the_top_is_a_little_over_65_and_a_half() -> None:
    finished = bordered()[-1].finishes_at
    assert float(finished.width) == pytest.approx(65.776, abs=1e-3)
    assert finished.width == finished.length
    assert F("65.5") < finished.width < 66


@pytest.mark.parametrize("usable", [39, 40, 42])
@pytest.mark.parametrize("corners", list(Corners))
def test_the_cloth_that_suffices(corners: Corners, usable: int) -> None:
    inner, outer = bordered(corners, usable)
    # Common practice: 1/2 yd, 1 1/4 yd and 4 1/2 yd.
    assert inner.strips.cloth <= F("0.5") * YARD
    assert outer.strips.cloth <= F("1.25") * YARD
    assert backing_from(F("4.5") * YARD, outer.outer, usable=F(usable)).enough


def test_what_is_asked_for_at_forty_inches() -> None:
    inner, outer = bordered()
    assert (inner.strips.count, inner.strips.purchase.buy) == (6, F("0.5") * YARD)
    assert (outer.strips.count, outer.strips.purchase.buy) == (7, YARD)
    back = backing(outer.outer).best
    assert (back.panels, back.purchase.buy) == (2, F("4.25") * YARD)


def test_the_layouts_of_eighty_one_units_begin_with_nine_by_nine() -> None:
    first = layouts(LayoutChoice(81, Size.square(as_fraction(FINISHES_AT))))[0]
    assert (first.rows, first.columns) == (9, 9)


def test_a_diagonal_taken_twice_comes_back_without_noise() -> None:
    assert as_fraction(sqrt(2) * sqrt(2)) == 2
    assert as_fraction(9.5 / sqrt(2) * sqrt(2)) == F("9.5")
    assert as_fraction(5.000000000001) == 5
    assert as_fraction(F(1, 3)) == F(1, 3)
    with pytest.raises(NumbersFault):
        as_fraction(float("inf"))


def test_a_computed_length_is_the_nearest_fraction_of_at_most_a_million_parts() -> None:
    assert as_fraction(1 / 999_983) == F(1, 999_983)
    assert as_fraction(1 / 1_000_003) == F(1, 1_000_000)


def test_a_size_of_nothing_is_refused() -> None:
    with pytest.raises(NumbersFault, match="width"):
        Size(F(0), F(3))
    with pytest.raises(NumbersFault, match="length"):
        Size(F(3), F(-1))
