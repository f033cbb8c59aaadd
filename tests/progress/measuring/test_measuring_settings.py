"""What is measured, resewn and projected of quilts with sashes or on point."""

from __future__ import annotations

from fractions import Fraction

import pytest
from msgspec.structs import replace

from sewalong.progress.measuring.projected_top import if_like, if_seam
from sewalong.progress.measuring.seams_sewn import seams_sewn
from sewalong.progress.record.measurable import read_piece
from sewalong.quilt.layouts.centre import centre
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.set_rows import set_rows
from sewalong.quilt.setting import Setting
from sewalong.quilt.worksheet.basis import basis
from tests.progress.building import a_quilt
from tests.progress.wandering import ON_POINT, SETTINGS

EVERY = [None, *SETTINGS, ON_POINT]


def quilt_set(setting: Setting | None) -> Quilt:
    """Three rows of four plain squares of 5 in, which no seam makes."""
    return replace(a_quilt("plain-squares", 40, 3, 4, borders=1), setting=setting)


def pieces_of(quilt: Quilt) -> int:
    """Units, sashes, cornerstones and triangles of the centre, counted by hand for three rows of
    four."""
    sashing = quilt.sashing
    if quilt.is_on_point:
        return 3 * 4 + 2 * 3 + (2 * 2 + 2 * 3) + 4
    if sashing is None:
        return 12
    beside, between = (5, 4) if sashing.frame else (3, 2)
    sash_row = 1 if sashing.cornerstones is None else 4 + beside
    return 12 + 3 * beside + between * sash_row


@pytest.mark.parametrize("setting", EVERY)
def test_every_seam_makes_one_piece_of_two(setting: Setting | None) -> None:
    """So a centre has one seam fewer than it has pieces, however it is set."""
    quilt = quilt_set(setting)
    whole = read_piece(quilt, quilt.target, "centre:across")
    assert seams_sewn(quilt, quilt.target, whole) == pieces_of(quilt) - 1
    top = read_piece(quilt, quilt.target, "top:down")
    assert seams_sewn(quilt, quilt.target, top) == pieces_of(quilt) - 1 + 4


@pytest.mark.parametrize("setting", EVERY)
def test_a_row_has_one_seam_fewer_than_pieces(setting: Setting | None) -> None:
    quilt = quilt_set(setting)
    row = read_piece(quilt, quilt.target, "row")
    sashes = 0 if quilt.sashing is None else (5 if quilt.sashing.frame else 3)
    units = max(one.units for one in set_rows(setting, 3, 4))
    assert seams_sewn(quilt, quilt.target, row) == units + sashes - 1


def test_all_slanting_rows_joined_lack_only_the_corners() -> None:
    quilt = quilt_set(ON_POINT)
    joined = read_piece(quilt, quilt.target, "column:6")
    assert seams_sewn(quilt, quilt.target, joined) == pieces_of(quilt) - 1 - 4
    two = read_piece(quilt, quilt.target, "column:2")
    # Rows of one and three units, with two triangles each: eight pieces.
    assert seams_sewn(quilt, quilt.target, two) == 7


@pytest.mark.parametrize("setting", EVERY)
def test_seams_too_wide_make_the_top_as_small_as_the_geometry_says(
    setting: Setting | None,
) -> None:
    quilt, wider = quilt_set(setting), Fraction(1, 16)
    found = if_seam(quilt, quilt.target, wider)
    unit = basis(quilt).unit
    assert found.centre == centre(quilt, quilt.target, unit, quilt.seam + wider)
    planned = read_piece(quilt, quilt.target, "row")
    assert float(planned.expected - found.row) == pytest.approx(planned.allowances / 16)
    assert found.row_loses == planned.expected - found.row


@pytest.mark.parametrize("setting", EVERY)
@pytest.mark.parametrize("piece", ["row", "centre:across", "centre:down"])
def test_a_reading_as_planned_projects_the_plan_and_a_short_one_less(
    setting: Setting | None, piece: str
) -> None:
    quilt = quilt_set(setting)
    planned = read_piece(quilt, quilt.target, piece)
    right = if_like(quilt, quilt.target, planned, planned.expected)
    assert right.centre == basis(quilt).centre
    assert right.row_loses == 0
    short = if_like(quilt, quilt.target, planned, planned.expected - Fraction(1, 2))
    way = {"row": "width", "centre:across": "width", "centre:down": "length"}[piece]
    if piece != "row":
        # The pieces take the shortfall by their share, so the centre comes out as it was measured.
        lost = getattr(right.centre, way) - getattr(short.centre, way)
        assert float(lost) == pytest.approx(0.5, abs=1e-4)
    assert short.row < right.row
