"""How one number reads: its rounding, its plural, and what is said of a unit's edges and seams."""

from __future__ import annotations

from fractions import Fraction as F
from math import cos, radians, sin, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from sewalong.lengths import CENTIMETRE, Unit, from_cm
from sewalong.piecing.catalogue import method_ids
from sewalong.piecing.cloth import Flat, Patch
from sewalong.piecing.derive import derive
from sewalong.piecing.geometry import Point
from sewalong.quilt.size import Size
from sewalong.quilt.worksheet.line import (
    Line,
    length_line,
    length_text,
    plural,
    size_line,
    size_text,
)
from sewalong.quilt.worksheet.unit_lines import edge_line, seam_room_line
from sewalong.quilt.worksheet.worksheet import worksheet
from tests.progress.building import a_quilt, suited


def test_a_line_is_its_label_text_and_reason_where_it_has_them() -> None:
    assert str(Line("back", "2 panels", "they reach")) == "back: 2 panels (they reach)"
    assert str(Line("back", "2 panels")) == "back: 2 panels"
    assert str(Line("", "2 panels")) == "2 panels"


def test_a_length_says_what_it_was_rounded_from() -> None:
    assert length_text(F("6.364"), Unit.INCH) == "6 3/8 in (rounded up from 6.364 in)"
    assert length_text(F("6.26"), Unit.INCH) == "6 1/4 in (rounded down from 6.260 in)"
    assert length_text(F("6.25"), Unit.INCH) == "6 1/4 in"
    assert length_text(from_cm(F("16.164")), Unit.CM) == "16.2 cm (rounded up from 16.16 cm)"


def test_decimals_that_tell_nothing_more_are_left_off() -> None:
    assert length_text(F("6.2501"), Unit.INCH) == "6 1/4 in (rounded down)"
    assert length_text(from_cm(F("16.201")), Unit.CM) == "16.2 cm (rounded down)"


def test_a_size_says_the_way_both_sides_went_or_only_that_they_were_rounded() -> None:
    up, down, exact = F("65.74"), F("65.76"), F("65.75")
    whole = "65 3/4 in across × 65 3/4 in down"
    assert size_text(Size(exact, exact), Unit.INCH) == whole
    assert size_text(Size(up, up), Unit.INCH) == f"{whole} (rounded up from 65.740 × 65.740 in)"
    assert size_text(Size(up, down), Unit.INCH) == f"{whole} (rounded from 65.740 × 65.760 in)"
    assert size_text(Size(exact, down), Unit.INCH) == f"{whole} (rounded from 65.750 × 65.760 in)"


def test_one_strip_and_several() -> None:
    assert [plural(n, "strip") for n in (0, 1, 2, 1200)] == [
        "0 strips",
        "1 strip",
        "2 strips",
        "1,200 strips",
    ]
    assert plural(1, "batch", "batches") == "1 batch"
    assert plural(2, "batch", "batches") == "2 batches"


# A unit of 4 by 4 in in two halves, one over the other, whose threads run at so many degrees.


def _edges(upper: float, lower: float) -> str:
    def half(y: float, letter: str, degrees: float) -> Patch:
        points: tuple[Point, ...] = ((0.0, y), (4.0, y), (4.0, y + 2.0), (0.0, y + 2.0))
        return Patch(points, letter, (sin(radians(degrees)), -cos(radians(degrees))))

    unit = Flat((half(0.0, "A", upper), half(2.0, "B", lower)))
    return edge_line(replace(derive("plain-squares", F(4)), units=(unit,))).text


def test_edges_on_the_straight_grain_either_way_hold() -> None:
    assert _edges(0, 90) == "all on the straight grain"


def test_edges_on_the_bias_are_named_by_their_side() -> None:
    assert _edges(45, 135) == "all four on the bias"
    # The halves share the two sides; the upper one alone has the top edge.
    assert _edges(45, 0) == "top, side by column 1, side by the last column on the bias in part"


def test_edges_between_the_two_are_off_the_grain() -> None:
    assert _edges(20, 20) == "all four off the straight grain"
    assert _edges(0, 20) == (
        "bottom, side by column 1, side by the last column off the straight grain in part"
    )
    assert _edges(45, 20) == "all four off the straight grain"


# Two squares sewn all round and cut twice give a unit of (L - 2 s) / root 2, so an inch of seam
# takes root 2 in of it.


def _room(side: F, trim: F, unit: Unit = Unit.INCH) -> str:
    return seam_room_line(derive("paired-squares", side), (trim, trim), unit).text


def test_the_seam_error_a_unit_stands_is_rounded_down() -> None:
    # (5 - 1/2) / root 2 = 3.18198; less 3 1/8 is 0.05698, by root 2 is 0.0403: 2/64 and more.
    assert (4.5 / sqrt(2) - 3.125) / sqrt(2) == pytest.approx(0.0403, abs=5e-5)
    assert _room(F(5), F("3.125")) == "1/32 in (rounded down from 0.040 in)"
    # Less 2 1/8: 1.05698, by root 2 is 0.7474, 47/64 and more.
    assert _room(F(5), F("2.125")) == "47/64 in (rounded down from 0.747 in)"


def test_a_seam_error_below_the_finest_mark_is_given_in_decimals() -> None:
    # (7 - 1/2) / root 2 = 4.59619; less 4 37/64 is 0.01807, by root 2 is 0.01278.
    assert _room(F(7), F(4) + F(37, 64)) == "less than 1/64 in: 0.013 in"


def test_a_seam_error_in_centimetres() -> None:
    # (5 - 1/2) / root 2 is 8.0822 cm. Less 7.8 cm is 0.2822 cm, by root 2 is 0.1996 cm.
    assert _room(F(5), 78 * CENTIMETRE / 10, Unit.CM) == "0.19 cm (rounded down from 0.20 cm)"
    # Less 7.9 cm: 0.1822 cm, by root 2 is 0.1289 cm. Less 7.87 cm: 0.2122 cm, 0.1501 cm.
    assert _room(F(5), 79 * CENTIMETRE / 10, Unit.CM) == "0.12 cm (rounded down from 0.13 cm)"
    assert _room(F(5), 787 * CENTIMETRE / 100, Unit.CM) == "0.15 cm (rounded down)"
    # Less 8.08 cm: 0.0022 cm, by root 2 is 0.0016 cm.
    assert _room(F(5), 808 * CENTIMETRE / 100, Unit.CM).startswith("less than 0.01 cm: ")


def test_a_unit_with_nothing_over_its_trim_size_stands_no_error() -> None:
    line = seam_room_line(derive("four-patch", F(6)), (F("11.5"), F("11.5")), Unit.INCH)
    assert (line.text, line.inches) == (
        "none: one seam too wide makes it smaller than that",
        0.0,
    )


def test_where_no_seam_changes_the_size_any_error_is_stood() -> None:
    line = seam_room_line(derive("plain-squares", F(6)), (F(6), F(6)), Unit.INCH)
    assert line.text == "any: no seam of this method changes the unit's size"


@pytest.mark.parametrize("unit", Unit)
@given(inches=st.fractions(F(1, 64), 200), down=st.fractions(F(1, 64), 200))
def test_a_number_and_its_rounding_are_what_stands_in_the_line(
    unit: Unit, inches: F, down: F
) -> None:
    for line in (
        length_line("row", inches, unit, "raw edge to raw edge; as sewn"),
        size_line("centre", Size(inches, down), unit, "raw edge to raw edge; as sewn"),
    ):
        assert "(" not in line.number
        rounded = f" ({line.rounded})" if line.rounded else ""
        assert line.text == f"{line.number}{rounded}"
        assert str(line) == f"{line.label}: {line.text} ({line.reason})"
        assert line.why[:2] == ("Raw edge to raw edge.", "As sewn.")
        assert len(line.why) == 2 + bool(line.rounded)


@pytest.mark.parametrize("method_id", method_ids())
def test_no_number_has_a_bracket_behind_it(method_id: str) -> None:
    # Of the layouts the screen shows the size alone.
    for section in worksheet(suited(a_quilt(method_id, 90, 3, 4, borders=2))).sections[:-1]:
        assert [line.number for line in section.lines if "(" in line.number] == []
