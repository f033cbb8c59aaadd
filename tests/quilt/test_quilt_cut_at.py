"""One size of the starting pieces: what a ruler shows, from which sizes, units and cloth follow."""

from __future__ import annotations

from fractions import Fraction as F
from math import sqrt

import pytest
from msgspec.structs import replace
from shapely import Polygon, union_all

from sewalong.lengths import Unit
from sewalong.progress.record.measurable import read_piece
from sewalong.quilt.derived import derived
from sewalong.quilt.quilt import Lot, Quilt
from sewalong.quilt.worksheet.basis import basis
from sewalong.quilt.worksheet.piece_cloth import piece_cloths
from sewalong.quilt.worksheet.worksheet import worksheet
from tests.progress.building import a_quilt


def of_squares(size: F, unit: Unit = Unit.INCH, method: str = "four-patch") -> Quilt:
    quilt = a_quilt(method, 160, rows=4, columns=5)
    (start,) = quilt.starts
    return replace(quilt, unit=unit, starts=(replace(start, size=size),))


CUT = {
    "on a mark": (F(5, 2), Unit.INCH, F(5, 2)),
    "between two marks": (F(81, 32), Unit.INCH, F(81, 32)),
    "finer than a ruler": (F(13, 5), Unit.INCH, F(21, 8)),
    "a third": (F(7, 3), Unit.INCH, F(19, 8)),
    "inches in a metric quilt": (F(77, 32), Unit.CM, F(62, 1) * F(10, 254)),
}


@pytest.mark.parametrize(("asked", "unit", "cut"), CUT.values(), ids=CUT)
def test_the_unit_comes_of_what_is_cut_and_so_does_the_cloth(asked: F, unit: Unit, cut: F) -> None:
    """A four-patch of squares cut at c is 2 c less two allowances, by arithmetic and by shapely."""
    quilt = of_squares(asked, unit)
    made = derived(quilt)
    assert made.unit.width == pytest.approx(float(2 * cut - 2 * quilt.seam))
    patches = union_all([Polygon(patch.points) for patch in made.units[0].patches])
    assert sqrt(patches.area) == pytest.approx(float(2 * cut - 2 * quilt.seam))
    (cloth,) = piece_cloths(basis(quilt))
    assert cloth.cut.piece.width == cut
    assert read_piece(quilt, quilt.target, "unit").expected == 2 * cut - 2 * quilt.seam


def test_it_is_told_where_the_sizes_are() -> None:
    line = worksheet(of_squares(F(13, 5))).sizes.lines[0]
    assert line.text == "2 5/8 in, rounded up from 2.6 in"
    assert line.inches == 2.625
    assert worksheet(of_squares(F(5, 2))).sizes.lines[0].text == "2 1/2 in"


def test_pieces_that_came_as_they_are_keep_their_size() -> None:
    """From packs, or of several sizes: nobody cuts them larger."""
    quilt = of_squares(F(13, 5))
    (start,) = quilt.starts
    packed = replace(quilt, starts=(replace(start, packs=4),))
    assert derived(packed).unit.width == pytest.approx(2 * 2.6 - 0.5)
    lots = (Lot(F(13, 5), 80), Lot(F(27, 10), 80))
    several = replace(quilt, starts=(replace(start, lots=lots),))
    assert derived(several).unit.width == pytest.approx(2 * 2.6 - 0.5)


def test_strips_are_counted_out_at_the_width_they_are_cut() -> None:
    """Strips of 2.6 in are cut at 2 5/8 in: 15 segments of 40 in, at 2.6 in as well; of 2.52 in
    they are cut at 2 9/16 in: 15, where 2.5 in would give 16."""
    for width, segments in ((F(13, 5), 15), (F(63, 25), 15), (F(5, 2), 16)):
        quilt = a_quilt("four-patch-strips", 20, rows=4, columns=5)
        starts = tuple(replace(start, size=width) for start in quilt.starts)
        cut = replace(quilt, starts=starts)
        assert cut.method.stage("cut-segments").makes.count == segments
        assert derived(cut).stage("cut-segments").makes.count == segments
