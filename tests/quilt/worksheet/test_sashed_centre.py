"""A sashed centre against shapely: the pieces as they are cut, sewn, laid out one by one."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction as F

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from shapely.geometry import Polygon, box
from shapely.ops import unary_union

from sewalong.lengths import Unit
from sewalong.progress.record.measurable import read_piece
from sewalong.progress.record.route import route_for
from sewalong.quilt.layouts.centre import centre
from sewalong.quilt.layouts.centre_seams import centre_seams
from sewalong.quilt.quilt import Border, Quilt, StartPile, Target
from sewalong.quilt.setting import Cornerstones, Sashing
from sewalong.quilt.size import Size
from sewalong.quilt.worksheet.basis import Basis, basis
from sewalong.quilt.worksheet.setting_cloth import setting_cuts
from sewalong.quilt.worksheet.worksheet import worksheet

SEAM = F(1, 4)
STONES = Cornerstones("coral")


def squares(rows: int, columns: int, side: F, sashing: Sashing) -> Quilt:
    """Plain squares, which are units as they are cut."""
    return Quilt(
        name="Test",
        method_id="plain-squares",
        unit=Unit.INCH,
        seam=SEAM,
        starts=(StartPile("square", side, rows * columns),),
        target=Target(rows, columns),
        setting=sashing,
    )


ON_A_RULER = st.integers(8, 12 * 8).map(lambda eighths: F(eighths, 8))
SASHED = st.builds(
    squares,
    st.integers(1, 5),
    st.integers(1, 5),
    ON_A_RULER,
    st.builds(
        Sashing,
        st.integers(6, 40).map(lambda eighths: F(eighths, 8)),
        st.just("oat"),
        frame=st.booleans(),
        cornerstones=st.sampled_from((None, STONES)),
    ),
).filter(lambda quilt: quilt.sashing is None or not quilt.sashing.why_not(quilt.target.columns))


class Pieces:
    """What was cut, taken piece by piece; each as large as it is once its seams are sewn."""

    def __init__(self, found: Basis) -> None:
        cuts = setting_cuts(found)
        self.left = Counter({one.pile.id: one.count for one in cuts})
        self.left["unit"] = found.units
        self.sizes = {one.pile.id: one.size.grown(-SEAM) for one in cuts}
        self.sizes["standing-sash"] = self.sizes.get("standing-sash", Size.square(F(1))).turned
        self.sizes["unit"] = found.unit.grown(-SEAM)

    def lay(self, pile: str, x: F, y: F) -> tuple[Polygon, F, F]:
        """The next of the pile with its corner at a place, and where the next ones begin."""
        assert self.left[pile], f"one {pile} too few was cut"
        self.left[pile] -= 1
        size = self.sizes[pile]
        right, down = x + size.width, y + size.length
        return box(float(x), float(y), float(right), float(down)), right, down


def laid_out(found: Basis, pieces: Pieces) -> Iterator[Polygon]:
    """Row by row, sash rows between them, as anybody would lay them on a floor."""
    sashing, target = found.quilt.sashing, found.target
    assert sashing is not None
    stones = sashing.cornerstones is not None
    row = ["unit", *["standing-sash", "unit"] * (target.columns - 1)]
    between = ["lying-sash", *["cornerstone", "lying-sash"] * (target.columns - 1)]
    if sashing.frame:
        row = ["standing-sash", *row, "standing-sash"]
        between = ["cornerstone", *between, "cornerstone"]
    between = between if stones else ["long-sash"]
    bands = [row, *[between, row] * (target.rows - 1)]
    if sashing.frame:
        bands = [between, *bands, between]
    y = F(0)
    for band in bands:
        x, down = F(0), y
        for pile in band:
            piece, x, down = pieces.lay(pile, x, y)
            yield piece
        y = down


@settings(max_examples=60, deadline=None)
@given(SASHED)
def test_the_pieces_cut_fill_the_centre_with_no_gap_no_overlap_and_none_over(quilt: Quilt) -> None:
    found = basis(quilt)
    pieces = Pieces(found)
    laid = list(laid_out(found, pieces))
    whole = unary_union(laid)
    inner = centre(quilt, quilt.target, found.unit).grown(-SEAM)
    assert whole.bounds == pytest.approx((0, 0, float(inner.width), float(inner.length)))
    assert whole.area == pytest.approx(float(inner.width * inner.length))
    assert sum(piece.area for piece in laid) == pytest.approx(whole.area)
    assert not any(pieces.left.values())


@settings(max_examples=60, deadline=None)
@given(SASHED)
def test_the_stages_want_the_pieces_that_are_cut(quilt: Quilt) -> None:
    """What the route uses up, stage by stage, against the cut list and the seams."""
    found, route = basis(quilt), route_for(quilt, quilt.target)
    rows, between = quilt.target.rows, 0
    used: Counter[str] = Counter()
    for stage in reversed(route.stages):
        times = {"add-sashes": 1, "sew-rows": rows, "sew-sash-rows": between}.get(stage.id, 0)
        if stage.id == "add-sashes":
            times = between = getattr(stage, "steps", 0)
        for taken in stage.takes:
            if taken.pile.endswith(("sash", "cornerstone")):
                used[taken.pile] += times * taken.count
    assert +used == Counter({one.pile.id: one.count for one in setting_cuts(found)})
    seams = centre_seams(quilt, quilt.target, found.unit)
    assert (seams.sashes.times if seams.sashes else 0) == between
    # Every piece but the first of a row is sewn to the one before it, and so is every row.
    sewn = sum(run.times for run in seams.runs)
    in_sash_rows = 0 if seams.sash_rows is None else between
    pieces = found.units + sum(used.values())
    long = used["long-sash"]
    in_rows = pieces - long - rows - in_sash_rows
    assert sewn == in_rows + between + rows - 1


@settings(max_examples=40, deadline=None)
@given(SASHED, st.booleans())
def test_the_top_and_what_is_measured_follow_the_centre(quilt: Quilt, bordered: bool) -> None:
    quilt = replace(quilt, borders=(Border(F(3), "oat"),) if bordered else ())
    found = basis(quilt)
    inner = centre(quilt, quilt.target, found.unit)
    border = F(5, 2) if bordered else F(0)
    assert found.top == inner.grown(border)
    measured = {way: read_piece(quilt, quilt.target, f"centre:{way}") for way in ("across", "down")}
    assert (measured["across"].expected, measured["down"].expected) == (inner.width, inner.length)
    assert read_piece(quilt, quilt.target, "row").expected == inner.width
    # An inch more of seam takes two from the row at every seam it crosses.
    sixteenth = F(1, 16)
    wider = centre(quilt, quilt.target, found.unit, SEAM + sixteenth)
    for way, side in (("across", "width"), ("down", "length")):
        lost = getattr(inner, side) - getattr(wider, side)
        assert float(lost) == pytest.approx(measured[way].allowances / 16)


def test_a_published_size_row_by_row() -> None:
    """Sashes of 2 in finished between blocks of 12 in and around them, three by four, is
    44 × 58 in: 3 × 12 + 4 × 2 across, 4 × 12 + 5 × 2 down (worked by hand)."""
    quilt = squares(4, 3, F(25, 2), Sashing(F(5, 2), "oat", frame=True, cornerstones=STONES))
    sheet = worksheet(quilt)
    sizes = {line.label: line for line in sheet.sizes.lines}
    assert (sizes["centre"].inches, sizes["centre"].inches_down) == (44.5, 58.5)
    assert (sizes["top finishes at"].inches, sizes["top finishes at"].inches_down) == (44, 58)
    said = [(line.label, line.inches) for line in sheet.rows.lines]
    assert said[:3] == [
        ("after the sash above row 1", 2.5),
        ("after row 1", 14.5),
        ("after the sash below row 1", 16.5),
    ]
    assert said[-1] == ("after the sash below row 4", 58.5)
    cuts = {line.label: line.text for line in sheet.cut_list.lines}
    assert cuts["standing sashes, oat"].startswith("16 standing sashes of 2 1/2 × 12 1/2 in")
    assert cuts["lying sashes, oat"].startswith("15 lying sashes of 2 1/2 × 12 1/2 in")
    assert cuts["cornerstones, coral"].startswith("20 cornerstones of 2 1/2 in")
    bought = {line.label for line in sheet.shopping.lines}
    assert {"oat", "coral"} <= bought


def test_units_that_are_not_square_have_two_lengths_of_sash() -> None:
    quilt = squares(3, 2, F(5), Sashing(F(2), "oat", cornerstones=STONES))
    geese = replace(
        quilt,
        method_id="flying-geese-four",
        starts=(
            StartPile("large-square", F(21, 4), 2),
            StartPile("small-square", F(23, 8), 8),
        ),
        trim=Size(F(9, 2), F(5, 2)),
    )
    cuts = {one.pile.id: one.size for one in setting_cuts(basis(geese))}
    assert cuts["standing-sash"] == Size(F(5, 2), F(2))
    assert cuts["lying-sash"] == Size(F(9, 2), F(2))


def test_long_sashes_longer_than_the_cloth_are_cut_from_strips_joined() -> None:
    """Six units of 12 in with sashes of 2 in between: 82 in, more than 40 in of cloth."""
    quilt = squares(3, 6, F(25, 2), Sashing(F(5, 2), "oat"))
    (_, long) = setting_cuts(basis(quilt))
    assert (long.count, long.size) == (2, Size(F(165, 2), F(5, 2)))
    # 165 in of five strips of 40 in, less 2 1/2 in at each diagonal join: 190 in; four reach 152.5.
    assert long.strips == 5
    assert long.reason.startswith("strips joined, diagonal joins")
