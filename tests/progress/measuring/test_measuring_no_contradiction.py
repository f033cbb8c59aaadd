"""No sentence contradicts itself, whatever was read: the numbers in it are read back and compared."""

from __future__ import annotations

import re
from fractions import Fraction
from functools import cache

from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from sewalong.lengths import Length, Unit, parse
from sewalong.piecing.catalogue import method_ids
from sewalong.progress.measuring.diagnosis import diagnose
from sewalong.progress.measuring.measured_row import measured_row
from sewalong.progress.record.measurable import measurable
from sewalong.quilt.cloth.row import RowNumbers
from sewalong.quilt.quilt import Quilt
from tests.progress.measuring.measuring_quilts import in_cm, measured, of_size

F = Fraction
N = r"(\d[\d /.]*? (?:in|cm|mm))"
"""A length as it is printed."""


def length(text: str) -> Length:
    return parse(text, Unit.INCH)


def check(line: str, seam: Length) -> None:
    """Raises AssertionError where a sentence says that a thing is not what it is."""
    if found := re.search(rf"should be {N}, reads {N}, {N} (short|over)", line):
        should, reads, much = map(length, found.groups()[:3])
        assert should != reads, line
        assert should - reads == (much if found[4] == "short" else -much), line
    if found := re.search(rf"seams of {N}, each (less than )?{N} too (wide|narrow)", line):
        sewn, off = length(found[1]), length(found[3])
        assert off > 0, line
        assert (sewn > seam) == (found[4] == "wide"), line
        # A foot in millimetres is no whole 64th of an inch.
        assert abs(abs(sewn - seam) - off) <= F(1, 128), line
    if found := re.search(
        rf"seams too (wide|narrow), about {N}(?: \(from {N} to {N}\))? instead of {N}", line
    ):
        sewn, meant = length(found[2]), length(found[5])
        assert sewn != meant, line
        assert (sewn > meant) == (found[1] == "wide"), line
        if found[3]:
            low, high = length(found[3]), length(found[4])
            assert low <= sewn <= high, line
            assert not low <= meant <= high, line
    if found := re.search(rf"readings from {N} to {N}, (less than )?{N} apart", line):
        low, high, apart = length(found[1]), length(found[2]), length(found[4])
        assert low <= high, line
        assert found[3] or high - low == apart, line
    if found := re.search(rf"To tell: measure .*: {N} if .*, {N} if", line):
        assert found[1] != found[2], line
    assert not re.search(rf"{N}[^,.;]*, not \1", line), line
    assert not re.search(r"\b0 (in|cm) (too|short|over|longer|apart)", line), line


@cache
def quilts() -> list[Quilt]:
    made = []
    for method in method_ids():
        size = "5/2" if "strip" in method or "rail" in method else "5"
        quilt = of_size(method, size, 4, 7)
        made += [quilt, in_cm(quilt), replace(quilt, seam=F(19, 64))]
    return made


@st.composite
def cases(draw: st.DrawFn) -> tuple[Quilt, str, list[Length]]:
    """Readings near to what is expected, and some far from it, on marks and between them."""
    quilt = draw(st.sampled_from(quilts()))
    piece = draw(st.sampled_from(measurable(quilt, quilt.target)))
    marks = draw(st.sampled_from((8, 16, 64, 100, 254)))
    near = st.integers(-marks, marks).map(lambda n: F(n, marks))
    by = st.one_of(near, near.map(lambda n: n / 8), near.map(lambda n: 4 * n))
    offs = draw(st.lists(by, min_size=1, max_size=6))
    base = F(round(piece.expected * marks), marks)
    return quilt, piece.id, [max(base + off, F(1, 16)) for off in offs]


@settings(max_examples=500, deadline=None)
@given(cases())
def test_no_sentence_of_a_measurement_contradicts_itself(
    case: tuple[Quilt, str, list[Length]],
) -> None:
    quilt, piece, readings = case
    found = diagnose(quilt, quilt.target, piece, readings)
    for line in found.lines:
        check(line, quilt.seam)
    assert found.passed == (found.lines[0] == "Go on.")


@settings(max_examples=300, deadline=None)
@given(
    st.integers(2, 30),
    st.sampled_from(("1.5", "2", "2.5", "5", "10")),
    st.fractions(F(1, 20), F(3, 2), max_denominator=64),
    st.sampled_from(list(Unit)),
    st.sampled_from((None, F(1, 4), F(5, 16))),
)
def test_no_sentence_of_a_row_contradicts_itself(
    pieces: int, cut: str, share: Length, unit: Unit, seam_read: Length | None
) -> None:
    row = RowNumbers((F(cut),) * pieces, F(1, 4))
    found = measured_row(row, row.sewn * share, seam_read=seam_read, unit=unit)
    for line in found.lines:
        check(line, row.seam)


def test_a_seam_off_by_less_than_can_be_printed_is_a_hair_off() -> None:
    """Rows 1/4 in short over 52 allowances: seams of 53/208 in; a 64th is the finest printed."""
    found = measured(of_size("nine-patch", "3.5"), "row", *["81.25"] * 3)
    assert found.lines[2] == "Likeliest: every seam a hair too wide, less than 1/64 in each."


def test_what_is_short_is_not_more_than_what_it_is_within() -> None:
    """5.657 in from 4 1/2 in squares: 3 % are 0.1697 in, and 5 1/2 in lack 0.1569."""
    found = measured(of_size("stacked-four-patch", "4.5"), "unit", "5.5")
    assert found.lines[1] == "Unit should be 5 11/16 in, reads 5 1/2 in, 3/16 in short."
    assert "Within 3 % of its size: block to shape." in found.lines
    assert "11/64" not in " ".join(found.lines)


def test_the_check_itself_finds_what_was_said_once() -> None:
    for wrong in (
        "Likeliest: seams of 1/4 in, each 1/64 in too wide.",
        "Unit should be 6 3/8 in, reads 6 3/8 in, 1/16 in short.",
        "Likeliest: seams too wide, about 1/4 in instead of 1/4 in.",
        "1/4 in was sewn, not 1/4 in.",
    ):
        try:
            check(wrong, F(1, 4))
        except AssertionError:
            continue
        raise AssertionError(f"not found: {wrong}")
