"""Edges that differ: what can be eased, and what is made again."""

from fractions import Fraction as F

import pytest

from sewalong.lengths import CENTIMETRE
from sewalong.quilt.as_fraction import as_fraction
from sewalong.quilt.cloth.ease import ease, most_off
from sewalong.quilt.refusal import NumbersFault


@pytest.mark.parametrize(
    ("nine_patch", "within"),
    [
        pytest.param("75/8", True, id="Q006-1/8-under"),
        pytest.param("37/4", False, id="Q006-1/4-under"),
    ],
)
def test_a_unit_beside_a_plain_square(nine_patch: str, within: bool) -> None:
    # onforwardmotion.blogspot.com 2013.
    assert ease(F(19, 2), F(nine_patch)).within is within


@pytest.mark.parametrize(
    ("unit", "off"), [pytest.param("6.36", 0.19, id="Q027"), pytest.param("6.5", 0.2, id="Q027b")]
)
def test_three_in_a_hundred_is_remade(unit: str, off: float) -> None:
    # boutsdechiffons.logipatch.com: "4.5 mm on 15 cm".
    assert float(most_off(F(unit))) == pytest.approx(off, abs=0.006)
    assert most_off(F(unit)) < F("0.25")
    assert most_off(15 * CENTIMETRE) == F("0.45") * CENTIMETRE


@pytest.mark.parametrize(
    ("exact", "rounded", "off"),
    [
        pytest.param(50.912, 51, 0.088, id="Q090-across"),
        pytest.param(67.882, 68, 0.118, id="Q090-down"),
    ],
)
def test_an_on_point_top_rounded_for_its_border(exact: float, rounded: int, off: float) -> None:
    # patchworktimes.com 2016, Border for on point quilts: 51 x 68 for 50.912 x 67.882.
    found = ease(F(rounded), as_fraction(exact))
    assert float(found.difference) == pytest.approx(off, abs=1e-3)
    assert found.share < F(2, 1000)
    assert found.within


@pytest.mark.parametrize(
    ("edge", "middle", "too_long"),
    [pytest.param(108, 100, 8, id="Q084-across"), pytest.param(100, 94, 6, id="Q084-down")],
)
def test_edges_far_longer_than_the_middle(edge: int, middle: int, too_long: int) -> None:
    # lovebugstudios.com 2011, fixing wavy borders.
    found = ease(F(edge), F(middle))
    assert found.difference == too_long
    assert not found.within
    assert found.reason.startswith(f"{too_long} in over")


def test_words_both_ways() -> None:
    assert ease(F(10), F(10)).reason == "they match"
    assert ease(F(10), F(81, 8)).reason == "1/8 in short, 1.2 %: ease it in"
    assert ease(F(9), F(10)).reason == "1 in short, 10.0 %: too much to ease"
    assert ease(F(10), F(9)).reason == "1 in over, 11.1 %: too much to ease"


def test_two_in_a_hundred_are_eased_and_a_hair_more_is_not() -> None:
    assert ease(F(51), F(50)).within
    assert ease(F(49), F(50)).within
    assert not ease(F("51.001"), F(50)).within
    assert not ease(F("48.999"), F(50)).within


def test_an_edge_of_nothing_is_refused() -> None:
    with pytest.raises(NumbersFault):
        ease(F(0), F(3))
