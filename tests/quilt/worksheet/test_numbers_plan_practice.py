"""One whole quilt of common practice, through everything it comes to in numbers."""

from __future__ import annotations

from fractions import Fraction as F
from itertools import pairwise
from math import sqrt

import pytest
from msgspec.structs import replace

from sewalong.lengths import YARD
from sewalong.quilt.quilt import Target
from sewalong.quilt.worksheet.worksheet import Line, Section, Worksheet, worksheet
from tests.quilt.worksheet.quilts import common


def line(section: Section, label: str) -> Line:
    found = [one for one in section.lines if one.label == label]
    assert len(found) == 1, [one.label for one in section.lines]
    return found[0]


@pytest.fixture(scope="module")
def found() -> Worksheet:
    return worksheet(common())


def test_units_finish_at_5_864(found: Worksheet) -> None:
    unit = line(found.sizes, "unit finishes at")
    assert unit.inches == pytest.approx(9 / sqrt(2) - 0.5, abs=1e-6)
    assert "5.864" in unit.text


def test_the_top_is_a_little_over_65_and_a_half(found: Worksheet) -> None:
    top = line(found.sizes, "top finishes at")
    assert top.inches == top.inches_down == pytest.approx(9 * (9 / sqrt(2) - 0.5) + 13, abs=1e-5)
    assert top.text == "65 3/4 in across × 65 3/4 in down (rounded down from 65.776 × 65.776 in)"


def test_what_is_bought_is_within_what_suffices(found: Worksheet) -> None:
    # Common practice: 1/2 yd for the inner border, 1 1/4 yd for the outer, 4 1/2 yd for the back.
    bought = {one.label: one.inches for one in found.shopping.lines}
    assert bought["cream linen"] == F(1, 2) * YARD
    assert F(1) * YARD <= F(str(bought["indigo print"])) <= F(5, 4) * YARD
    assert F(str(bought["backing"])) <= F(9, 2) * YARD


def test_the_reason_of_a_border_can_be_followed(found: Worksheet) -> None:
    inner = line(found.cut_list, "border 1, cream linen")
    assert inner.text == "6 strips of 2 1/2 in"
    # Cut to the ruler's next line: (53 5/16 + 57 5/16) * 2 = 221 1/4;
    # (221.25 - 2.5) / (40 - 2.5) = 5.8
    assert inner.reason == "6 strips: 221 1/4 in at 40 in usable less 2 1/2 in a join, 5.8"


def test_each_border_adds_to_the_top(found: Worksheet) -> None:
    sizes = [one.inches or 0 for one in found.sizes.lines if one.label.startswith(("centre", "w"))]
    steps = [round(b - a, 6) for a, b in pairwise(sizes)]
    assert steps == [4, 9]


def test_every_pile_has_its_size(found: Worksheet) -> None:
    assert line(found.sizes, "four-patch").inches == 9.5
    assert line(found.sizes, "squares").text == "5 in"
    assert line(found.sizes, "squares").reason == "168 in 4 packs, at their label"
    assert line(found.sizes, "units can be trimmed to").inches == 6.25
    assert line(found.sizes, "unit's outer edges").text == "all four on the bias"
    # 2 * root 2 in is lost for every inch of seam: (6.36396 - 6.25) / 2.82843 = 0.0403
    assert line(found.sizes, "seam error it stands").inches == pytest.approx(0.0403, abs=1e-4)


def test_the_centre_row_by_row_ends_at_the_centre(found: Worksheet) -> None:
    assert len(found.rows.lines) == 9
    assert found.rows.lines[0].inches == line(found.sizes, "unit unfinished").inches
    assert found.rows.lines[-1].inches == line(found.sizes, "centre").inches_down


def test_the_layout_wanted_comes_first_and_is_marked(found: Worksheet) -> None:
    first, *others = found.layouts
    assert (first.target, first.current, first.spare) == (Target(9, 9), True, 3)
    assert not any(one.current for one in others)
    assert found.units == 84
    assert {(7, 12), (12, 7)} <= {(one.target.rows, one.target.columns) for one in others}
    assert [one.spare for one in others] == sorted(one.spare for one in others)


def test_another_target_changes_sizes_and_mark_but_not_the_units(found: Worksheet) -> None:
    other = worksheet(common(), Target(7, 12))
    assert other.layouts[0].target == Target(7, 12)
    assert other.layouts[0].spare == 0
    assert other.units == found.units
    size = line(other.sizes, "top finishes at")
    assert size.inches != size.inches_down


def test_the_record_may_know_better_how_many_units_there_are() -> None:
    less = worksheet(common(), have=76)
    assert less.units == 76
    assert (less.layouts[0].short, less.layouts[0].current) == (5, True)
    assert "5 short" in less.layouts[0].line.text


def test_other_choices_change_the_strips() -> None:
    quilt = common()
    narrow = worksheet(replace(quilt, choices=replace(quilt.choices, usable=F(36))))
    assert line(narrow.cut_list, "border 1, cream linen").text == "7 strips of 2 1/2 in"
    straight = worksheet(replace(quilt, choices=replace(quilt.choices, joins="straight")))
    # (221.1 - 0.5) / (40 - 0.5) = 5.58
    assert line(straight.cut_list, "border 1, cream linen").reason.endswith("a join, 5.6")
