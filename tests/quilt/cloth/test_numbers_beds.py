"""Mattress sizes, each with the page that prints it, and two misprints that are not followed."""

from fractions import Fraction as F

import pytest

from sewalong.lengths import to_cm
from sewalong.quilt.cloth.beds import BEDS, bed, quilt_over
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.size import Size

# (bed, width, length, source, url)
PUBLISHED = [
    ("crib", "27", "52", "Better Sleep Council", "bettersleep.org/mattress-sizes"),
    ("twin", "38", "75", "Better Sleep Council", "bettersleep.org/mattress-sizes"),
    ("king", "76", "80", "US-Mattress", "us-mattress.com/mattress-size-information.html"),
    ("cal king", "72", "84", "US-Mattress", "us-mattress.com/mattress-size-information.html"),
    ("queen", "60", "80", "US-Mattress", "us-mattress.com/mattress-size-information.html"),
    ("full xl", "54", "80", "US-Mattress", "us-mattress.com/mattress-size-information.html"),
    ("full", "53", "75", "US-Mattress", "us-mattress.com/mattress-size-information.html"),
    ("twin xl", "38", "80", "US-Mattress", "us-mattress.com/mattress-size-information.html"),
    ("twin", "38", "75", "Mattress Firm", "mattressfirm.com/mattress-sizes-dimensions.html"),
    ("twin xl", "38", "80", "Mattress Firm", "mattressfirm.com/mattress-sizes-dimensions.html"),
    ("full", "54", "75", "Mattress Firm", "mattressfirm.com/mattress-sizes-dimensions.html"),
    ("queen", "60", "80", "Mattress Firm", "mattressfirm.com/mattress-sizes-dimensions.html"),
    ("king", "76", "80", "Mattress Firm", "mattressfirm.com/mattress-sizes-dimensions.html"),
    ("cal king", "72", "84", "Mattress Firm", "mattressfirm.com/mattress-sizes-dimensions.html"),
    ("twin", "39", "75", "Honey Be Good chart 2012", "honeybegood.com"),
    ("full", "54", "75", "Honey Be Good chart 2012", "honeybegood.com"),
    ("queen", "60", "80", "Honey Be Good chart 2012", "honeybegood.com"),
    ("king", "78", "80", "Honey Be Good chart 2012 (76-78)", "honeybegood.com"),
    ("crib", "28", "52", "Honey Be Good chart 2012", "honeybegood.com"),
    ("twin", "38", "74.5", "ikasa sizes", "ikasa.com"),
    ("full", "53", "74.5", "ikasa sizes", "ikasa.com"),
    ("queen", "60", "79.5", "ikasa sizes", "ikasa.com"),
    ("king", "76", "79.5", "ikasa sizes", "ikasa.com"),
    ("twin", "39", "74", "Delaware Quilts", "delawarequilts.com/MyQuilts/Sizes.html"),
    ("full", "54", "74", "Delaware Quilts", "delawarequilts.com/MyQuilts/Sizes.html"),
    ("king", "78", "80", "Delaware Quilts", "delawarequilts.com/MyQuilts/Sizes.html"),
]


@pytest.mark.parametrize(("name", "width", "length", "source", "url"), PUBLISHED)
def test_a_published_mattress_is_the_size_used_or_one_of_the_others(
    name: str, width: str, length: str, source: str, url: str
) -> None:
    found = bed(name)
    assert Size(F(width), F(length)) in (found.size, *found.others), (source, url)


def test_sources_differ_by_two_inches_at_most() -> None:
    for one in BEDS:
        for other in one.others:
            assert abs(other.width - one.size.width) <= 2
            assert abs(other.length - one.size.length) <= 1


def test_two_metric_misprints_are_not_followed() -> None:
    # US-Mattress prints 183 cm for 76 in; Mattress Firm prints 134.5 cm for 54 in.
    assert round(float(to_cm(bed("king").size.width)), 1) == 193.0
    assert round(float(to_cm(bed("full").size.width)), 1) == 137.2


def test_a_drop_on_three_sides() -> None:
    queen = bed("  Queen ").size
    assert quilt_over(queen, F(12)) == Size(F(84), F(92))


def test_a_bed_not_known_names_those_that_are() -> None:
    with pytest.raises(NumbersFault, match="cal king"):
        bed("emperor")
    with pytest.raises(NumbersFault, match="drop"):
        quilt_over(bed("crib").size, F(-1))
