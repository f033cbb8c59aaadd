"""The top and the unit in words: what the pictures show, for whoever cannot see them."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest
from msgspec.structs import replace

from sewalong.piecing.catalogue import method_ids
from sewalong.quilt.choices import Fabric
from sewalong.quilt.derived import derived
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.set_rows import set_rows
from sewalong.quilt.setting import Cornerstones, Sashing, SetOnPoint
from sewalong.quilt.worksheet.one_fact import apart
from sewalong.wall.told import top_told, unit_told
from tests.progress.building import a_quilt, suited

NINE = Target(9, 9)
SASHED = Sashing(Fraction(2), "linen", frame=True, cornerstones=Cornerstones("coral"))


def quilt_by(method: str) -> Quilt:
    return suited(a_quilt(method, 90, 3, 2, borders=1))


def rows_in(lines: tuple[str, ...]) -> dict[int, str]:
    """What is told of every row, by its number: runs and steps of rows told together taken apart."""
    found: dict[int, str] = {}
    for line in lines:
        told = re.fullmatch(r"Rows? ([\d, and so to]+?)(?:, every (\w+))?: (.*)\.", line)
        if told is None:
            continue
        numbers = [int(n) for n in re.findall(r"\d+", told[1])]
        if told[2]:
            numbers = list(range(numbers[0], numbers[-1] + 1, numbers[1] - numbers[0]))
        elif " to " in told[1]:
            numbers = list(range(numbers[0], numbers[-1] + 1))
        for number in numbers:
            assert number not in found, line
            found[number] = told[3].replace(" each", "")
    return found


@pytest.mark.parametrize("method", method_ids())
@pytest.mark.parametrize("setting", [None, SASHED, SetOnPoint("grey")])
@pytest.mark.parametrize("target", [Target(1, 1), Target(3, 2), NINE, Target(12, 7)])
def test_every_row_is_told_once_with_its_units(
    method: str, setting: Sashing | SetOnPoint | None, target: Target
) -> None:
    quilt = replace(quilt_by(method), setting=setting)
    told = rows_in(top_told(quilt, target))
    rows = set_rows(setting, target.rows, target.columns)
    assert sorted(told) == list(range(1, len(rows) + 1))
    for number, row in enumerate(rows, start=1):
        units = re.match(r"(\d+) units?", told[number])
        assert units is not None
        assert int(units[1]) == row.units
        if setting is not None and isinstance(setting, SetOnPoint):
            ends = {0: "no side", 1: "at one end", 2: "at both ends"}[row.sides]
            assert ends in told[number]


@pytest.mark.parametrize("method", method_ids())
def test_every_patch_of_every_kind_is_told_or_said_to_be_like_another(method: str) -> None:
    quilt = quilt_by(method)
    units = derived(quilt).units
    lines = unit_told(quilt)
    kinds = [line for line in lines if line.startswith(("The unit:", "Kind "))]
    assert len(kinds) == len(units)
    patches = sum(int(n) for line in kinds for n in re.findall(r": (\d+) patch", line))
    assert patches == sum(line.startswith("Patch ") for line in lines)
    assert patches >= len(units[0].patches)


@pytest.mark.parametrize("method", method_ids())
def test_each_line_is_one_fact_and_none_speaks_of_hands(method: str) -> None:
    quilt = replace(quilt_by(method), setting=SASHED)
    for line in (*unit_told(quilt), *top_told(quilt, NINE)):
        assert len(apart(line)) == 1, line
        assert "(" not in line
        assert not re.search(r"\b(left|right|clockwise)\b", line)


def test_a_long_regular_top_is_summed_up() -> None:
    lines = top_told(quilt_by("plain-squares"), NINE)
    assert lines[:3] == (
        "The top: 9 rows.", "The units are set edge to edge.", "Rows 1 to 9: 9 units each."
    )  # fmt: skip


def test_the_kinds_are_told_by_turns_as_the_picture_has_them() -> None:
    told = rows_in(top_told(quilt_by("stacked-four-patch"), Target(4, 5)))
    assert {n: what[-1] for n, what in told.items()} == {1: "1", 2: "3", 3: "1", 4: "3"}


def test_a_half_square_is_told_by_its_triangles_and_her_own_names() -> None:
    fabrics = (Fabric("A", "oat"), Fabric("B", "[red]"))
    lines = unit_told(replace(quilt_by("half-square-two"), fabrics=fabrics))
    assert "Patch 1: a triangle of oat, towards row 1, where the row begins." in lines
    assert "Patch 2: a triangle of [red], away from row 1, where the row goes on." in lines
    assert "Kind 2: as kind 1, but one-way prints stand another way." in lines


def test_sashes_and_borders_are_told() -> None:
    quilt = replace(quilt_by("plain-squares"), setting=SASHED)
    lines = top_told(quilt, Target(3, 2))
    assert "In every row: 3 sashes, one at either end among them." in lines
    assert "In a row of sashes: 3 cornerstones where sashes meet." in lines
    assert "Cornerstones: coral." in lines
    assert any(line.startswith("Border 1, on all four sides: ") for line in lines)


def test_a_web_is_told_with_its_passes() -> None:
    quilt = replace(a_quilt("plain-squares", 81), joined="web")
    assert top_told(quilt, NINE)[2:4] == (
        "They are put together as a web, column by column: 8 passes of 9 seams.",
        "Then 8 long seams join the rows.",
    )
    smallest = top_told(quilt, Target(2, 2))
    assert "They are put together as a web, column by column: 1 pass of 2 seams." in smallest
    assert "Then 1 long seam joins the rows." in smallest
