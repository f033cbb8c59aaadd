"""Strip sets: widths, segments and what they make, against published examples with sources."""

from __future__ import annotations

from fractions import Fraction as F

import pytest

from sewalong.piecing.catalogue import method
from sewalong.piecing.derive import derive, start_for, unit_size
from sewalong.piecing.faults import SizeRefused
from sewalong.piecing.geometry import box
from tests.piecing.published import rows

TABLE = rows("strips_and_quarters")


def _segments(width: F, length: F) -> int:
    return (
        method("four-patch-strips", start=width, strip_length=length)
        .stage("cut-segments")
        .makes.count
    )


def test_three_strips_of_one_and_a_half_make_three_and_a_half() -> None:
    # Quilted Connections; Quiltcentric (2012); Quilting Affection (2014): whole 3 1/2 in,
    # the middle strip showing 1 in.
    derived = derive("rail-fence", F(3, 2))
    strip_set = derived.piles["strip-set"]
    assert strip_set.size[0] == pytest.approx(3.5)
    middle = box([strip_set.pieces[0].patches[1].points])
    assert middle[2] - middle[0] == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("width", "length", "count"),
    [
        # Warped Spinster, Courtyard mystery clue 3 (2016): 2 1/2 in from a 40 in set.
        (F(5, 2), F(40), 16),
        # Quilter's Cache, The Garden block: 2 1/2 in from a 20 in set.
        (F(5, 2), F(20), 8),
        # Shady Wood Quilts (2021), part 4: 1 1/4 in from 12 in; it asks for 8, 9 can be cut.
        (F(5, 4), F(12), 9),
        # Plane geometry: a sixteenth short of sixteen segments gives fifteen.
        (F(5, 2), F(639, 16), 15),
    ],
)
def test_segments_from_a_set(width: F, length: F, count: int) -> None:
    assert _segments(width, length) == count


def test_three_sets_make_twenty_four_four_patches_of_four_and_a_half() -> None:
    # Warped Spinster, Courtyard mystery clue 3 (2016).
    derived = derive("four-patch-strips", F(5, 2))
    assert 3 / derived.per_unit["dark-strip"] == 24
    assert derived.unit.width == pytest.approx(4.5)


@pytest.mark.parametrize(
    "row",
    [row for row in TABLE if row["quantity"] == "nine_patch_finished"],
    ids=lambda row: row["case"],
)
def test_nine_patches_from_strips_finish_as_published(row: dict[str, str]) -> None:
    # Moonlight Quilters, Nine patch tip: strips of W by 4 W are 4 segments each.
    words = row["case"].split()
    width, length = F(words[0]), F(words[4])
    assert unit_size("nine-patch-strips", width).finishes[0] == pytest.approx(
        float(row["published"])
    )
    assert _segments(width, length) == 4


def test_five_nine_patches_take_ten_outer_and_five_middle_segments() -> None:
    # M. Bellew, Nine Patch Block: 5 blocks, 10 rows A and 5 rows B, unfinished 6 1/2 in.
    derived = derive("nine-patch-strips", F(5, 2))
    taken = {pieces.pile: 5 * pieces.count for pieces in derived.stage("join-threes").takes}
    assert taken == {"outer-segment": 10, "middle-segment": 5}
    assert derived.unit.width == pytest.approx(6.5)


def test_the_strip_for_a_nine_inch_nine_patch_is_three_and_a_half() -> None:
    # Quiltingboard thread (2013): finished / 3 + 1/2.
    sizes = start_for("nine-patch-strips", finishes=F(9))
    assert {entry.cutting for entry in sizes.values()} == {F(7, 2)}


def test_from_squares_and_from_strips_the_unit_is_the_same() -> None:
    for squares, strips in (
        ("four-patch", "four-patch-strips"),
        ("nine-patch", "nine-patch-strips"),
    ):
        assert unit_size(squares, F(5, 2)) == unit_size(strips, F(5, 2))


def test_rails_are_square_at_any_seam() -> None:
    for seam in (F(3, 16), F(1, 4), F(5, 16)):
        size = unit_size("rail-fence", F(5, 2), seam)
        assert size.width == pytest.approx(3 * 2.5 - 4 * float(seam))
        assert size.height == pytest.approx(size.width)


def test_a_strip_an_inch_shorter_can_cost_a_segment() -> None:
    assert _segments(F(5, 2), F(40)) == 16
    assert _segments(F(5, 2), F(39)) == 15


def test_a_batch_of_odd_segments_is_worked_out_to_600_units_and_no_further() -> None:
    # 1,201 segments of a strip make 600 four-patches and leave one over.
    endless = derive("four-patch-strips", F("2.5"), strip_length=1201 * F("2.5"))
    assert endless.unit_count == 600
    # 599 of each of two sets make 599.
    assert derive("four-patch-strips", F("2.5"), strip_length=599 * F("2.5")).unit_count == 599


def test_a_strip_too_short_for_one_segment_is_refused() -> None:
    with pytest.raises(SizeRefused, match="shorter than one segment"):
        method("four-patch-strips", start=F(5, 2), strip_length=F(2))


def test_segments_are_sewn_along_the_whole_strip() -> None:
    derived = derive("rail-fence", F(5, 2), strip_length=F(42))
    assert derived.stage("sew-strips").sewn == pytest.approx(2 * 42)


def test_strips_are_cut_across_the_cloth_so_a_print_stands_across_the_strip() -> None:
    # Common practice: strips are cut from selvedge to selvedge.
    derived = derive("rail-fence", F(5, 2))
    (strip,) = derived.piles["dark-strip"].pieces
    width, length = strip.size
    assert length > width
    assert strip.patches[0].turn == 90
    assert {patch.turn for patch in derived.units[0].patches} == {90}
