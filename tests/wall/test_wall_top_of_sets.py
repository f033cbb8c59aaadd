"""The top as it would look with all sets: their units in reading order, the unknown in outline."""

from __future__ import annotations

from fractions import Fraction

import pytest
from msgspec.structs import replace

from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.setting import Cornerstones, Sashing, SetOnPoint
from sewalong.wall.keys import OUTLINE, UNKNOWN, cloth_key, cloth_letter
from sewalong.wall.of_quilt import picture_of_top
from sewalong.wall.picture import EMPTY, Picture
from sewalong.wall.set_picture import units_of_set
from sewalong.wall.top_of_sets import UnitOf, laid_top, top_of_sets, top_of_units
from tests.wall.drawing import usual
from tests.wall.laid_sets import a_quilt_with_fabrics, a_set

SETS = tuple(a_set(n, 8) for n in range(3))


def shown(quilt: Quilt, sets: int, across: int = 60, down: int = 30) -> Picture:
    picture = top_of_sets(quilt, quilt.target, SETS[:sets], across, down)
    assert picture is not None
    return picture


def test_units_lie_row_by_row_in_the_order_they_are_made() -> None:
    """Three rows of four: each row is the four units of one set, patch by patch."""
    picture = shown(a_quilt_with_fabrics(), 3)
    made = usual("stacked-four-patch")
    high, wide = len(picture.pixels) // 3, picture.across // 4
    for row, squares in enumerate(SETS):
        for column, unit in enumerate(units_of_set(made, squares)):
            there = {
                picture.pixels[row * high + y][column * wide + x]
                for y in range(1, high - 1)
                for x in range(1, wide - 1)
            }
            assert there == {patch.letter for patch in unit.patches}


def test_where_sets_end_units_are_outlined() -> None:
    """The last row is not known: only the outline is drawn, and nothing of any fabric."""
    picture = shown(a_quilt_with_fabrics(), 2)
    assert UNKNOWN not in picture.keys
    last = picture.pixels[-len(picture.pixels) // 3 + 1 :]
    assert {key for row in last for key in row} <= {None, OUTLINE}
    assert any(key == OUTLINE for row in last for key in row)
    assert {cloth_letter(key) for key in picture.keys} - {None} == {*SETS[0], *SETS[1]}


def test_without_any_set_all_is_outline() -> None:
    assert shown(a_quilt_with_fabrics(), 0).keys == [OUTLINE]


def test_units_can_lie_in_any_order() -> None:
    quilt = a_quilt_with_fabrics("paired-squares", 1, 3)
    units = (UnitOf(("A", "B"), 0), None, UnitOf(("C", "D"), 1))
    picture = top_of_units(quilt, quilt.target, units, 30, 10)
    assert picture is not None
    third = picture.across // 3
    first, middle, last = (
        {row[x] for row in picture.pixels for x in range(n * third + 1, (n + 1) * third - 1)}
        for n in range(3)
    )
    assert first - {None} == {cloth_key("A"), cloth_key("B")}
    assert middle <= {None, OUTLINE}
    assert last - {None} == {cloth_key("C"), cloth_key("D")}


def test_on_point_rows_are_read_as_they_show() -> None:
    """Whole units along the edges 2 × 2: five units, the odd row of one between two of two."""
    quilt = replace(a_quilt_with_fabrics("paired-squares", 2, 2), setting=SetOnPoint("grey"))
    units = tuple(UnitOf((letter, letter), 0) for letter in "ABCDE")
    picture = top_of_units(quilt, quilt.target, units, 40, 20)
    assert picture is not None
    half = picture.across // 4
    at = {(1, 1): "A", (1, 3): "B", (2, 2): "C", (3, 1): "D", (3, 3): "E"}
    for (down, along), letter in at.items():
        assert picture.pixels[down * half][along * half] == cloth_key(letter)


@pytest.mark.parametrize(("across", "down"), [(0, 5), (5, 0), (0, 0)])
def test_no_room_shows_nothing(across: int, down: int) -> None:
    quilt = a_quilt_with_fabrics()
    assert top_of_units(quilt, quilt.target, (), across, down) == EMPTY


def test_the_smallest_room_there_is_shows_something() -> None:
    quilt = a_quilt_with_fabrics("paired-squares", 1, 1)
    picture = top_of_units(quilt, quilt.target, (UnitOf(("A", "B"), 0),), 1, 1)
    assert picture is not None
    assert picture.keys


def test_more_units_than_the_top_holds_change_nothing() -> None:
    quilt = a_quilt_with_fabrics("stacked-four-patch", 1, 4)
    assert shown(quilt, 1) == shown(quilt, 3)


@pytest.mark.parametrize("size", [(12, 4), (16, 6), (24, 10)])
def test_where_there_is_no_room_for_all_units_a_part_is_shown_and_said_so(
    size: tuple[int, int],
) -> None:
    quilt = a_quilt_with_fabrics("stacked-four-patch", 9, 9)
    assert not shown(quilt, 3, *size).is_whole


def test_the_top_without_sets_is_drawn_as_ever() -> None:
    """Fabrics change nothing of the picture that shows no sets."""
    quilt = a_quilt_with_fabrics()
    plain = replace(quilt, fabrics=())
    assert picture_of_top(quilt, quilt.target, 40, 20) == picture_of_top(
        plain, plain.target, 40, 20
    )


def test_too_small_for_its_seams_there_is_no_top() -> None:
    quilt = a_quilt_with_fabrics()
    small = replace(quilt, starts=(replace(quilt.starts[0], size=Fraction(1, 2)),))
    assert top_of_sets(small, small.target, SETS, 40, 20) is None
    assert laid_top(small, small.target, ()) is None


def test_sashes_and_borders_stand_there_as_in_any_top() -> None:
    sashing = Sashing(Fraction(2), "grey", frame=True, cornerstones=Cornerstones("dark"))
    quilt = replace(a_quilt_with_fabrics(borders=1), setting=sashing)
    plain = picture_of_top(quilt, Target(3, 4), 60, 40)
    known = shown(quilt, 3, 60, 40)
    assert plain is not None
    cloth = [[cloth_letter(key or "") is not None for key in row] for row in known.pixels]
    for row, other, is_cloth in zip(known.pixels, plain.pixels, cloth, strict=True):
        for key, as_ever, there in zip(row, other, is_cloth, strict=True):
            assert there or key == as_ever
