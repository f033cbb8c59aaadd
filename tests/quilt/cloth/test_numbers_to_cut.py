"""A size to be cut is on a ruler, or is said not to be; it is never less than what was asked."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.lengths import MILLIMETRE, Unit, as_given, parse
from sewalong.quilt.cloth.to_cut import cut_size, size_to_cut, to_cut
from sewalong.quilt.cloth.undersized import common_size
from sewalong.quilt.size import Size

# What a person might type: decimals to the thousandth, and any fraction.
TYPED = st.one_of(
    st.integers(1, 60_000).map(lambda n: F(n, 1000)),
    st.builds(F, st.integers(1, 1800), st.sampled_from([2, 3, 4, 5, 6, 7, 8, 16, 32, 64])),
)


@pytest.mark.parametrize(
    ("typed", "unit", "text"),
    [
        ("2 9/16", Unit.INCH, "2 9/16 in"),
        ("2 17/32", Unit.INCH, "2 17/32 in, between the lines of the ruler"),
        ("2 1/3", Unit.INCH, "2 3/8 in, rounded up from 2 1/3 in"),
        ("3.2", Unit.INCH, "3 1/4 in, rounded up from 3.2 in"),
        ("9/64", Unit.INCH, "3/16 in, rounded up from 9/64 in"),
        ("6.4", Unit.CM, "6.4 cm"),
        ("6.35", Unit.CM, "6.35 cm, between the lines of the ruler"),
        ("6.33", Unit.CM, "6.4 cm, rounded up from 6.33 cm"),
        ("2 1/2 in", Unit.CM, "6.35 cm, between the lines of the ruler"),
    ],
)
def test_a_size_is_cut_as_typed_where_a_ruler_shows_it(typed: str, unit: Unit, text: str) -> None:
    assert to_cut(parse(typed, unit), unit).text == text


def test_a_computed_size_says_with_decimals_what_it_was_rounded_from() -> None:
    assert to_cut(4.5 * 2**0.5).text == "6 3/8 in, rounded up from 6.364 in"
    assert to_cut(4.000000000001).text == "4 in"


@given(TYPED, st.sampled_from(list(Unit)))
def test_what_is_cut_is_on_the_ruler_and_never_less_than_asked(asked: F, unit: Unit) -> None:
    found = to_cut(asked, unit)
    line = F(1, 16) if unit is Unit.INCH else MILLIMETRE
    assert 0 <= found.length - asked < line
    assert (found.length / line * (2 if found.between else 1)).denominator == 1
    assert found.rounded == (found.length != asked)
    assert not (found.rounded and found.between)


@given(TYPED, st.sampled_from(list(Unit)))
def test_what_is_printed_reads_back_as_what_is_cut(asked: F, unit: Unit) -> None:
    found = to_cut(asked, unit)
    assert parse(found.text.split(",")[0], unit) == found.length


@given(TYPED, st.sampled_from(list(Unit)))
def test_cutting_what_was_already_decided_changes_nothing(asked: F, unit: Unit) -> None:
    once = to_cut(asked, unit).length
    assert to_cut(once, unit).length == once


@given(st.integers(1, 60_000).map(lambda n: F(n, 1000)))
def test_a_decimal_typed_is_quoted_as_the_same_length(typed: F) -> None:
    assert parse(as_given(typed)) == typed


def test_the_sides_of_a_piece_are_each_cut_as_the_ruler_has_them() -> None:
    piece = Size(F(5, 2), F("5.33"))
    assert cut_size(piece) == Size(F(5, 2), F(43, 8))
    assert size_to_cut(piece) == "2 1/2 × 5 3/8 in (5 3/8 in rounded up from 5.33 in)"
    assert size_to_cut(Size.square(F("2.3"))) == (
        "2 5/16 × 2 5/16 in (2 5/16 in rounded up from 2.3 in)"
    )


@given(TYPED, st.sampled_from(list(Unit)))
def test_what_all_can_be_cut_down_to_is_on_the_ruler_and_never_more(
    shortest: F, unit: Unit
) -> None:
    line = F(1, 16) if unit is Unit.INCH else MILLIMETRE
    if shortest < line:
        return
    common = common_size([Size.square(shortest), Size.square(shortest + 1)], unit)
    assert 0 <= shortest - common < line
    assert to_cut(common, unit).length == common
