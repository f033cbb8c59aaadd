"""`trim` in a quilt file: what units are trimmed to, and every fault with what would be right."""

from __future__ import annotations

from fractions import Fraction as F

import pytest

from sewalong.lengths import CENTIMETRE
from sewalong.quilt.file.faults import Fault, QuiltFileFaults
from sewalong.quilt.file.reader import read_quilt
from sewalong.quilt.size import Size
from tests.quilt.file.test_quilt_file_faults import GEESE


def stacked(trim: str, unit: str = "inch") -> str:
    """Units of 6.364 in, or of 16.16 cm; `trim` as TOML."""
    size = '"5"' if unit == "inch" else '"5 in"'
    return (
        f'name = "Test"\nmethod = "stacked-four-patch"\nunit = "{unit}"\n{trim}\n'
        f"[squares]\nsize = {size}\ncount = 40\n[layout]\nrows = 4\ncolumns = 5\n"
    )


def geese(trim: str) -> str:
    """Untrimmed units of 4.543 × 2.521 in."""
    return GEESE.replace("layout =", f"trim = {trim}\nlayout =")


@pytest.mark.parametrize(
    ("written", "size"),
    [
        ('"6 1/4"', Size.square(F(25, 4))),
        ("6.25", Size.square(F(25, 4))),
        ("6", Size.square(F(6))),
        ('"6 1/4 x 6 1/4"', Size.square(F(25, 4))),
        ('"15.5 cm"', Size.square(F(31, 2) * CENTIMETRE)),
        ('"15.5 × 15.5 cm"', Size.square(F(31, 2) * CENTIMETRE)),
    ],
)
def test_a_trim_is_read_as_people_write_sizes(written: str, size: Size) -> None:
    assert read_quilt(stacked(f"trim = {written}")).trim == size


def test_a_bare_number_is_in_the_owners_unit() -> None:
    assert read_quilt(stacked("trim = 15.5", "cm")).trim == Size.square(F(31, 2) * CENTIMETRE)


def test_no_trim_is_none() -> None:
    assert read_quilt(stacked("")).trim is None


def test_geese_are_trimmed_across_and_down() -> None:
    assert read_quilt(geese('"4 1/2 x 2 1/2"')).trim == Size(F(9, 2), F(5, 2))


A_LENGTH = 'This must be a length, such as "2 1/2", "6.35 cm" or 2.5.'

# What is written, and all that is said of it; 4 is the line.
WRONG = [
    (
        '"6 3/8"',
        "Such units come to 6.364 in × 6.364 in, 0.011 in short of 6 3/8 in. It would take seams "
        "of 0.246 in at most. Cut larger pieces.",
    ),
    (
        '"8"',
        "Such units come to 6.364 in × 6.364 in, 1.636 in short of 8 in. No seam is narrow enough "
        "for that. Cut larger pieces.",
    ),
    (
        '"1/2"',
        "Trimmed to 1/2 in, nothing but seam would be left of a unit. Trim to more than 1/2 in.",
    ),
    (
        '"6 x 5"',
        "6 in across × 5 in down is not square, and these units are: seams would miss their "
        "corners. Give one length.",
    ),
    (
        '"6 x 5 x 4"',
        "'6 x 5 x 4' has more than two lengths. Write across x down: 60 x 80.",
    ),
    ("true", A_LENGTH),
    ("[6, 6]", A_LENGTH),
    ("{width = 6}", A_LENGTH),
]


@pytest.mark.parametrize(("written", "sentence"), WRONG)
def test_a_trim_that_cannot_be(written: str, sentence: str) -> None:
    with pytest.raises(QuiltFileFaults) as caught:
        read_quilt(stacked(f"trim = {written}"))
    assert caught.value.faults == (Fault("trim", 4, sentence),)


@pytest.mark.parametrize("written", ['"4 1/2"', '"4 1/2 x 2 1/4"', '"4 1/2 x 2 9/16"'])
def test_geese_that_do_not_finish_two_to_one(written: str) -> None:
    with pytest.raises(QuiltFileFaults) as caught:
        read_quilt(geese(written))
    (fault,) = caught.value.faults
    assert (fault.key, fault.line) == ("trim", 3)
    assert fault.sentence.endswith(
        "does not finish 2 to 1, and the point would lose its seam allowance. Give across x down "
        "that do, such as 4 1/2 in across × 2 1/2 in down."
    )


def test_geese_as_near_to_two_to_one_as_a_ruler_shows() -> None:
    """With seams of 1/4 in, 18 cm across want 9.635 cm down; 9.6 is what a ruler has of it."""
    text = (
        GEESE.replace("layout =", 'unit = "cm"\ntrim = "18 x 9.6"\nlayout =')
        .replace('size = "5 1/4"', 'size = "21"')
        .replace('size = "2 7/8"', 'size = "11.2"')
    )
    assert read_quilt(text).trim == Size(18 * CENTIMETRE, F("9.6") * CENTIMETRE)
    with pytest.raises(QuiltFileFaults, match="does not finish 2 to 1"):
        read_quilt(text.replace("9.6", "9.5"))


def test_geese_larger_than_their_squares_give() -> None:
    with pytest.raises(QuiltFileFaults) as caught:
        read_quilt(geese('"4 5/8 x 2 9/16"'))
    (fault,) = caught.value.faults
    assert "come to 4.543 in × 2.521 in, 0.082 in short" in fault.sentence


def test_sizes_that_make_no_unit_are_told_before_what_it_is_trimmed_to() -> None:
    text = stacked('trim = "6"').replace('size = "5"', 'size = "0.4"')
    with pytest.raises(QuiltFileFaults) as caught:
        read_quilt(text)
    assert [fault.key for fault in caught.value.faults] == ["squares.size"]
