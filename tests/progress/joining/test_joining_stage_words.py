"""What to do at the trim, with the size; and never a number where nothing is trimmed."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest
from msgspec.structs import replace

from sewalong.piecing.catalogue import method_ids, written_method
from sewalong.piecing.method_files import text_of
from sewalong.progress.joining.stage_words import TO_SIZE, what_to_do
from sewalong.progress.record.route import route_for
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.size import Size
from tests.progress.building import a_quilt


def said(quilt: Quilt) -> dict[str, str]:
    return {stage.id: what_to_do(quilt, stage) for stage in route_for(quilt, quilt.target).stages}


@pytest.mark.parametrize("method_id", method_ids())
def test_every_trim_has_a_place_for_the_size(method_id: str) -> None:
    for stage in written_method(method_id).stages:
        assert stage.do.count(TO_SIZE) == ("trim" in stage.operations)


def test_the_trim_names_the_decided_size() -> None:
    """5 in squares: (5 - 1/2 - 1/8) would be raw; two at a time give 4 5/8 in, a whole mark."""
    quilt = a_quilt("half-square-two", 20, 4, 5)
    assert said(quilt)["trim"].startswith("Trim to 4 5/8 in, the ruler's 45 line on the seam")
    decided = replace(quilt, trim=Size.square(Fraction(9, 2)))
    assert said(decided)["trim"].startswith("Trim to 4 1/2 in, the ruler's")


def test_a_decided_size_without_a_stage_for_it_follows_the_last_one() -> None:
    decided = replace(a_quilt(), trim=Size.square(Fraction(25, 4)))
    assert said(decided)["press-open"].endswith("Then trim it to 6 1/4 in.")
    oblong = replace(a_quilt(), trim=Size(Fraction(25, 4), Fraction(6)))
    assert said(oblong)["press-open"].endswith("Then trim it to 6 1/4 in across × 6 in down.")


def test_a_method_of_ones_own_that_does_not_say_to_size_names_it_all_the_same() -> None:
    quilt = a_quilt("half-square-two", 20, 4, 5)
    text = text_of("half-square-two") or ""
    own = replace(quilt, method_text=text.replace("Trim to size, the", "Square up, the"))
    assert said(own)["trim"].endswith("each of the four sides. Trim to 4 5/8 in.")


@pytest.mark.parametrize("method_id", method_ids())
def test_no_number_stands_where_nothing_is_trimmed(method_id: str) -> None:
    quilt = a_quilt(method_id, 20, 4, 5)
    trims = quilt.written_method.trim_stage
    for stage, words in said(quilt).items():
        if stage != trims:
            assert not re.search(r"[0-9] ?in\b|[0-9] cm|/", words), (stage, words)


def test_at_the_ruler_it_is_said_in_a_few_words_that_the_point_is_short() -> None:
    """Small squares of 2 13/16 in for 2 7/8: 1/16 in less beyond the point than 1/4."""
    large, small = a_quilt("flying-geese-four", 8, rows=4, columns=8).starts
    quilt = a_quilt("flying-geese-four", 8, rows=4, columns=8)
    starts = (replace(large, size=Fraction(21, 4)), replace(small, size=Fraction(45, 16)))
    trim = said(replace(quilt, starts=starts))["trim"]
    assert trim.endswith("the large triangle. Only 3/16 in is left beyond the point.")
