"""Problems of people who do this job, answered by the engine.

Each test tells the problem and where it was told; the right answer is recomputed here,
as the sources are practice and not authority.
"""

from __future__ import annotations

from fractions import Fraction as F
from math import ceil, sqrt

import pytest

from sewalong.piecing import operations
from sewalong.piecing.catalogue import method
from sewalong.piecing.cloth import Flat
from sewalong.piecing.derive import derive, start_for, unit_size
from sewalong.piecing.geometry import Line
from sewalong.piecing.primitive import cut


def test_odd_squares_trimmed_by_experiment_leave_fifteen_hundredths_to_trim() -> None:
    # 4 1/4 in squares trimmed to 2 1/2 in (https://www.quiltingboard.com/2622724-post64.html).
    derived = derive("paired-squares", F(17, 4))
    assert derived.unit.width == pytest.approx(2.652, abs=0.0005)
    assert derived.unit.width - 2.5 == pytest.approx(0.152, abs=0.0005)
    assert derived.has_bias_edges


def test_a_pinwheel_of_eight_inch_squares_finishes_at_nine_and_a_half() -> None:
    # A tutorial said wrong sides together
    # (http://robotmomsews.blogspot.com/2011/12/pinwheel-tutorial.html).
    unit = unit_size("paired-squares", F(8))
    assert unit.width == pytest.approx(5.303, abs=0.0005)
    trimmed = unit.trim_to()[0]
    assert trimmed == F(21, 4)
    assert 2 * (trimmed - F(1, 2)) == F(19, 2)
    assert "right sides together" in method("paired-squares").stage("pair").do


def _cut_beside_the_seams(square: F, beside: float) -> float:
    """A four-patch cut on both sides of its seams both ways, its nine parts joined again."""
    four_patch = derive("four-patch", square).units[0]
    width = four_patch.size[0]
    cuts = [width / 2 - beside, width / 2 + beside]
    parts, _ = cut(four_patch, [Line((x, 0.0), (1.0, 0.0)) for x in cuts])
    strips = sorted(parts, key=lambda part: part.patches[0].points[0][0])
    joined: list[Flat] = []
    for strip in strips:
        assert isinstance(strip, Flat)
        again, _ = cut(strip, [Line((0.0, y), (0.0, 1.0)) for y in cuts])
        by_height = sorted(again, key=lambda part: part.patches[0].points[0][1])
        table = operations.Table(0.25, list(by_height))
        operations.join_column(table)
        joined.append(table.flats()[0])
    table = operations.Table(0.25, list(joined))
    operations.join_row(table)
    return table.flats()[0].size[0]


def test_a_cut_up_four_patch_loses_one_inch_not_two() -> None:
    # 8 1/2 in four-patch, two cuts each way: an article says about two inches are lost
    # (https://tamarinis.typepad.com/tamarinis/2020/10/exploring-the-basics-the-disappearing-four-patch.html).
    assert derive("four-patch", F(9, 2)).unit.width == pytest.approx(8.5)
    assert _cut_beside_the_seams(F(9, 2), 1.0) == pytest.approx(7.5)


def test_a_cut_up_four_patch_of_charms_is_eight_and_a_half() -> None:
    # Four 5 in squares, cuts 1 in from the seam
    # (http://alamosaquilter.blogspot.com/2011/07/disappearing-four-patch.html).
    assert _cut_beside_the_seams(F(5), 1.0) == pytest.approx(8.5)


@pytest.mark.parametrize(
    ("square", "claimed", "true", "needed"),
    [
        # http://fiber-thoughts.blogspot.com/2013/03/disappearing-4-patch.html
        (F(6), F(25, 2), F(23, 2), F(13, 2)),
        # https://careyfamily.org/category/scott-and-sue-family/sue/page/89
        (F(5, 2), F(11, 2), F(9, 2), F(3)),
    ],
)
def test_four_patches_that_cannot_measure_what_is_claimed(
    square: F, claimed: F, true: F, needed: F
) -> None:
    width = unit_size("four-patch", square).width
    assert width == pytest.approx(float(true))
    assert width != pytest.approx(float(claimed))
    assert start_for("four-patch", unfinished=claimed)["square"].cutting == needed


def test_a_square_washed_out_of_shape_costs_four_tenths() -> None:
    # 10 in washed to 10 x 9 3/8 in: square it to 9 3/8
    # (https://pieceocakeblog.com/2018/01/page/2).
    washed = unit_size("paired-squares", F(75, 8)).width
    label = unit_size("paired-squares", F(10)).width
    assert washed == pytest.approx(6.276, abs=0.0005)
    assert label - washed == pytest.approx(0.442, abs=0.0005)


def test_forty_pairs_give_eighty_units() -> None:
    # Cutting one pair for each unit doubled the output
    # (https://bejeweledquilts.blogspot.com/2014/09/).
    per_unit = derive("half-square-two", F(4)).per_unit["square"]
    pairs_per_unit = per_unit / 2
    assert 40 / pairs_per_unit == 80
    assert 80 / pairs_per_unit == 160


def test_168_pairs_give_336_units_not_378() -> None:
    # http://www.quiltersclubofamerica.com/groups/mystery_quilt_9tranquility/forum/t/43657.aspx
    made = method("half-square-two").stage("cut-once").makes.count
    assert 168 * made == 336
    assert ceil(378 / made) == 189


def test_eight_at_a_time_from_four_and_three_quarters_hardly_stands_a_wide_seam() -> None:
    # 350 units trimmed to 2 in: at 4 3/4 in the untrimmed unit is 2.021 in and fails once
    # seams are over 0.265 in; at 5 in it is 2.146 in
    # (http://signofhappyquilting.blogspot.com/2011/12/progress-on-part-three.html).
    tight = unit_size("half-square-eight", F(19, 4))
    assert tight.width == pytest.approx(2.021, abs=0.0005)
    room = tight.seam_room_for((F(2), F(2)))
    assert room is not None
    assert 0.25 + room == pytest.approx(0.265, abs=0.0005)
    assert unit_size("half-square-eight", F(5)).width == pytest.approx(2.146, abs=0.0005)


def test_trimming_from_two_sides_only_takes_the_seam_off_its_corner() -> None:
    # 1/2 in taken off two sides instead of 1/4 in off all four
    # (https://quiltyfolk.blogspot.com/2012/02/). The seam then misses the corner by 0.35 in.
    unit = derive("half-square-two", F(4)).units[0]
    width, _ = unit.size
    seam = next(
        Line(start, (sqrt(0.5), sqrt(0.5)))
        for patch in unit.patches
        for start in patch.points
        if abs(start[0] + start[1] - width) < 1e-6
    )
    # Corner 2, where the seam ran out, if two sides are trimmed by 1/2 in: the top stays.
    assert abs(seam.depth((width - 0.5, 0.0))) == pytest.approx(0.3536, abs=0.0001)
    # And if each side gives 1/4 in.
    assert abs(seam.depth((width - 0.25, 0.25))) == pytest.approx(0)
    assert "each of the four sides" in method("half-square-two").stage("trim").do


def test_three_strips_come_up_a_quarter_short_at_five_sixteenths() -> None:
    # 3 strips cut 1 1/2 in gave 3 1/4 in: 1/16 in too wide on every seam
    # (http://howdyblogs.blogspot.com/2009/01/quarter-ain-quarter-all-time.html).
    right = derive("rail-fence", F(3, 2)).piles["strip-set"].size[0]
    wide = derive("rail-fence", F(3, 2), F(5, 16)).piles["strip-set"].size[0]
    assert right == pytest.approx(3.5)
    assert wide == pytest.approx(3.25)


@pytest.mark.parametrize(("seam", "width"), [(F(1, 4), 9.5), (F(9, 32), 9.375), (F(5, 16), 9.25)])
def test_a_nine_patch_shrinks_with_the_seam(seam: F, width: float) -> None:
    # Nine squares of 3 1/2 in against a plain square of 9 1/2 in
    # (http://onforwardmotion.blogspot.com/2013/09/doesnt-measure-up-tuesday.html).
    assert unit_size("nine-patch", F(7, 2), seam).width == pytest.approx(width)
