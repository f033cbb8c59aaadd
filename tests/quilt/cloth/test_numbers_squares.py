"""Squares from cloth: tables at every usable width, the impossible entry, fat quarters, kits."""

from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.lengths import YARD, Unit, cloth_length, from_cm, to_cm
from sewalong.quilt.cloth.squares import (
    FAT_QUARTER,
    cloth_for,
    cuts_fit,
    from_cloth,
    spares_to_cut,
)
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.size import Size


def from_a_yard(square: str, usable: int) -> int:
    return from_cloth(Size(F(usable), YARD), Size.square(F(square))).count


# (side, at 40, at 42, at 44 in usable, printed). quilterscache.com, Math Charts, squares per yard
# (M. Hohn 2002), headed 42 in; the counts at each width are recomputed.
PER_YARD = [
    ("1.0", 1440, 1512, 1584, 1584),
    ("1.5", 624, 672, 696, 696),
    ("1.875", 399, 418, 437, 437),
    ("2.0", 360, 378, 396, 396),
    ("2.5", 224, 224, 238, 238),
    ("2.875", 156, 168, 180, 180),
    ("3.0", 156, 168, 168, 168),
    ("3.5", 110, 120, 120, 120),
    ("3.875", 90, 90, 99, 99),
    ("4.0", 90, 90, 99, 99),
    ("4.5", 64, 72, 72, 72),
    ("4.875", 56, 56, 63, 63),
    ("5.0", 56, 56, 56, 56),
    ("5.5", 42, 42, 48, 48),
    ("5.875", 36, 42, 42, 42),
    ("6.0", 36, 42, 42, 42),
    ("6.5", 30, 30, 30, 30),
    ("6.875", 25, 30, 30, 30),
    ("7.5", 20, 20, 20, 20),
    ("7.875", 20, 20, 20, 20),
    ("8.0", 20, 20, 20, 20),
    ("8.5", 16, 16, 20, 20),
    ("8.875", 16, 16, 16, 16),
    ("9.0", 16, 16, 16, 16),
    ("9.5", 12, 12, 12, 12),
    ("9.875", 12, 12, 12, 12),
    ("10.0", 12, 12, 12, 12),
    ("10.5", 9, 12, 12, 12),
    ("10.875", 9, 9, 12, 12),
    ("11.0", 9, 9, 12, 12),
    ("11.5", 9, 9, 9, 9),
    ("11.875", 9, 9, 9, 9),
    ("12.0", 9, 9, 9, 9),
    ("12.5", 6, 6, 6, 6),
    ("12.875", 6, 6, 6, 6),
]


@pytest.mark.parametrize(("side", "at_40", "at_42", "at_44", "printed"), PER_YARD)
def test_squares_from_a_yard(side: str, at_40: int, at_42: int, at_44: int, printed: int) -> None:
    found = [from_a_yard(side, width) for width in (40, 42, 44)]
    assert found == [at_40, at_42, at_44]
    # The printed table holds at 44 in; where that is more than at 42, it is wrong as headed.
    assert found[2] == printed


@pytest.mark.parametrize("printed", [pytest.param(35, id="Q046")])
def test_thirty_five_seven_inch_squares_are_impossible(printed: int) -> None:
    # The same table prints 7 in = 35.
    assert [from_a_yard("7", width) for width in (40, 42, 44)] == [25, 30, 30]
    assert printed not in [from_a_yard("7", width) for width in range(38, 49)]


# piecefulliving.blogspot.com 2011, Number of squares from a fat quarter, and Quilter's Cache.
FAT_QUARTERS = [
    ("2", 99),
    ("2.5", 56),
    ("3", 42),
    ("3.5", 30),
    ("4", 20),
    ("4.5", 16),
    ("5", 12),
    ("5.5", 12),
    ("6", 9),
    ("6.5", 6),
    ("2.875", 42),
    ("3.875", 20),
    ("4.875", 12),
    ("5.875", 9),
    ("6.875", 6),
]


def test_a_fat_quarter_is_a_quarter_of_a_yard_of_44_inches() -> None:
    assert Size(FAT_QUARTER.width * 2, FAT_QUARTER.length * 2) == Size(F(44), YARD)


@pytest.mark.parametrize(("side", "printed"), FAT_QUARTERS)
def test_squares_from_a_fat_quarter(side: str, printed: int) -> None:
    assert from_cloth(FAT_QUARTER, Size.square(F(side))).count == printed


@pytest.mark.parametrize(("yards", "printed"), [("0.5", 4), ("1", 12), ("1.25", 16), ("2", 28)])
@pytest.mark.parametrize("usable", [40, 44])
def test_ten_inch_squares_from_yards(yards: str, printed: int, usable: int) -> None:
    # Alanda Craft, via quiltingdigest.com: 40-44 in cloth.
    cloth = Size(F(usable), F(yards) * YARD)
    assert from_cloth(cloth, Size.square(F(10))).count == printed


# newquilters.com, Cut up layer cakes: what a 10 in square gives.
@pytest.mark.parametrize(("piece", "count"), [(("5", "5"), 4), (("3", "3"), 9), (("2", "10"), 5)])
def test_pieces_from_a_ten_inch_square(piece: tuple[str, str], count: int) -> None:
    assert from_cloth(Size.square(F(10)), Size(F(piece[0]), F(piece[1]))).count == count


def test_a_ten_inch_square_holds_sixteen_small_ones() -> None:
    # The same page prints 8 of 2 1/2 in.
    printed = 8
    assert printed < from_cloth(Size.square(F(10)), Size.square(F("2.5"))).count == 16


def test_strips_left_beside_three_inch_squares() -> None:
    # The same page: "1 in strips left".
    found = from_cloth(Size.square(F(10)), Size.square(F(3)))
    assert (found.left_across, found.left_down) == (F(1), F(1))


@pytest.mark.parametrize(("along", "each", "segments"), [(40, "2.5", 16), (20, "2.5", 8)])
def test_segments_cut_from_a_strip_set(along: int, each: str, segments: int) -> None:
    # warpedspinster.blogspot.com 2016 (16 from 40 in); quilterscache.com, The Garden (8 from 20).
    assert from_cloth(Size(F(along), F(1)), Size(F(each), F(1))).across == segments


def test_nine_segments_where_a_source_asks_eight() -> None:
    # shadywoodquilts.com 2021: 1 1/4 in segments from a 12 in set.
    assert from_cloth(Size(F(12), F(1)), Size(F("1.25"), F(1))).across == 9


def test_the_words_of_squares_from_cloth() -> None:
    found = from_cloth(Size(F(40), F(36)), Size.square(F(5)))
    assert found.count == 8 * 7
    assert found.reason == "56 pieces of 5 × 5 in: 8 across 40 in, 7 down 36 in"
    assert (found.left_across, found.left_down, found.short_of_next) == (F(0), F(1), F(4))


METRES = [("1", 12), ("1.5", 20), ("2", 28), ("2.5", 36), ("3", 44)]


@pytest.mark.parametrize(
    ("metres", "count"), [pytest.param(*row, id=f"Q047-{row[0]}m") for row in METRES]
)
def test_ten_inch_squares_from_metres(metres: str, count: int) -> None:
    # alandacraft.com 2020, Cut 10 in layer cake squares from metreage: 4 across.
    cloth = Size(from_cm(F(102)), from_cm(F(metres) * 100))
    found = from_cloth(cloth, Size.square(F(10)), Unit.CM)
    assert (found.across, found.count) == (4, count)
    if metres == "3":
        assert found.count - 42 == 2


@pytest.mark.parametrize("centimetres", [pytest.param(50, id="Q048")])
def test_half_a_metre_is_eight_millimetres_short_of_a_second_row(centimetres: int) -> None:
    # senttijatuuma.fi, How to cut precuts.
    cloth = Size(from_cm(F(110)), from_cm(F(centimetres)))
    found = from_cloth(cloth, Size.square(F(10)), Unit.CM)
    assert found.down == 1
    assert to_cm(found.left_down) == F("24.6")
    assert to_cm(found.short_of_next) == F("0.8")


@pytest.mark.parametrize("narrow", [pytest.param(40, id="Q050")])
def test_can_they_be_cut_from_one_yard(narrow: int) -> None:
    # quiltingboard.com t131707: 52 of 4 in and 20 of 3 in from one yard of 40-44 in.
    cuts = [(52, Size.square(F(4))), (20, Size.square(F(3)))]
    at_40, at_44 = (cuts_fit(cuts, YARD, usable=F(usable)) for usable in (narrow, 44))
    assert [(one.per_strip, one.strips, one.cloth) for one in at_40.cuts] == [
        (10, 6, F(24)),
        (13, 2, F(6)),
    ]
    assert [one.strips for one in at_44.cuts] == [5, 2]
    assert (at_40.need, at_44.need) == (F(30), F(26))
    assert at_40.fits
    assert at_44.fits
    assert (at_40.left, at_44.left) == (F(6), F(10))
    assert at_40.reason == "30 in of 36 in at 40 in usable: 6 in left, fits down to 32 in usable"


@pytest.mark.parametrize("found_cloth", [pytest.param(63, id="Q101")])
def test_a_kit_short_of_cloth(found_cloth: int) -> None:
    # lissylaine.com 2021: 2 yd promised, 63 in found; 15 blocks of 12 1/2 in.
    found = cloth_for(15, Size.square(F("12.5")))
    assert (found.per_strip, found.strips, found.cloth) == (3, 5, F("62.5"))
    fits = cuts_fit([(15, Size.square(F("12.5")))], F(found_cloth))
    assert fits.left == F(1, 2)
    assert 2 * YARD - found_cloth == 9
    # 15 blocks take 4 corner squares and 8 others each.
    assert (15 * 4, 15 * 8) == (60, 120)


def test_cloth_may_be_just_enough_or_half_an_inch_short() -> None:
    cuts = [(15, Size.square(F("12.5")))]
    enough = cuts_fit(cuts, F("62.5"))
    assert (enough.left, enough.fits) == (F(0), True)
    assert (
        enough.reason
        == "62 1/2 in of 62 1/2 in at 40 in usable: 0 in left, fits down to 37 1/2 in usable"
    )
    over = cuts_fit(cuts, F(63))
    assert (over.left, over.fits) == (F("0.5"), True)
    short = cuts_fit(cuts, F(62))
    assert (short.left, short.fits) == (F("-0.5"), False)
    assert short.reason.endswith("usable: 1/2 in short")


def test_the_words_of_a_cloth_count() -> None:
    assert (
        cloth_for(3, Size.square(F(4))).reason
        == "1 strip of 4 in: 3 pieces, 10 a strip at 40 in usable, 7 over"
    )
    found = cloth_for(52, Size.square(F(4)))
    assert found.reason == "6 strips of 4 in: 52 pieces, 10 a strip at 40 in usable, 8 over"
    assert cloth_length(found.cloth) == "3/4 yd"


@pytest.mark.parametrize(
    ("needed", "spares"),
    [pytest.param(1, 1, id="Q058-one"), (50, 1), (51, 2), pytest.param(324, 7, id="Q058")],
)
def test_spares_to_cut_while_there_is_cloth(needed: int, spares: int) -> None:
    # Common practice: N + max(1, 2 in 100, rounded up).
    assert spares_to_cut(needed) == spares


@given(
    st.integers(1, 400),
    st.fractions(1, 20, max_denominator=8),
    st.fractions(1, 20, max_denominator=8),
)
def test_the_cloth_asked_for_gives_the_pieces(count: int, width: F, length: F) -> None:
    piece = Size(width, length)
    found = cloth_for(count, piece)
    assert from_cloth(Size(F(40), found.cloth), piece).count == count + found.over
    assert found.over < found.per_strip
    assert cuts_fit([(count, piece)], found.cloth).left == 0


def test_a_piece_wider_than_the_cloth_is_refused() -> None:
    with pytest.raises(NumbersFault, match="Turn it"):
        cloth_for(3, Size(F(41), F(10)))
    with pytest.raises(NumbersFault, match="at least 1"):
        cuts_fit([], YARD)
