"""Bias binding from a whole left-over piece, judged by cutting and sewing it as polygons."""

from __future__ import annotations

from fractions import Fraction as F
from math import sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, box, unary_union
from shapely.affinity import translate

from sewalong.quilt.cloth.bias_binding import bias_tube
from sewalong.quilt.cloth.bias_remnant import bias_from_remnant, bias_strips
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.size import Size

QUARTER = F(1, 4)
SIDES = st.integers(8, 140).map(lambda n: F(n, 2))
STRIPS = st.integers(8, 32).map(lambda n: F(n, 8))


def test_20_by_60_gives_over_400_in_of_2_1_2_in_strip() -> None:
    found = bias_from_remnant(Size(F(20), F(60)), F(400), F(5, 2))
    assert found.enough
    # 59 1/2 in in steps of 2 1/2 * root 2 hold 16 strips; a loop is 19 1/2 * root 2 in.
    assert found.gives == pytest.approx(16 * 19.5 * sqrt(2))
    assert found.reason == (
        "20 × 60 in gives 441 1/8 in on the bias in 16 loops of 27 5/8 in cut round a tube: "
        "41 1/8 in over"
    )


@pytest.mark.parametrize(
    ("need", "over", "enough", "verdict"),
    [
        # 16 * 19 1/2 * root 2 = 441.23 in: 0.23 in over goes down to an eighth, 0.27 in short up.
        ("441", 0.2346, True, "1/8 in over"),
        ("441.5", -0.2654, False, "3/8 in short"),
    ],
)
def test_less_than_an_inch_over_or_short_is_told_from_the_other(
    need: str, over: float, enough: bool, verdict: str
) -> None:
    found = bias_from_remnant(Size(F(20), F(60)), F(need), F(5, 2))
    assert found.over == pytest.approx(over, abs=1e-4)
    assert found.enough == enough
    assert found.reason.endswith(f": {verdict}")


def test_just_what_is_needed_is_enough() -> None:
    gives = bias_from_remnant(Size(F(20), F(60)), F(400), F(5, 2)).gives
    found = bias_from_remnant(Size(F(20), F(60)), F(gives), F(5, 2))
    assert (found.over, found.enough) == (0, True)
    assert found.reason.endswith(": 0 in over")


def test_a_piece_gives_the_same_whichever_side_is_named_first() -> None:
    lying = bias_from_remnant(Size(F(60), F(20)), F(400), F(5, 2))
    standing = bias_from_remnant(Size(F(20), F(60)), F(400), F(5, 2))
    assert lying.gives == pytest.approx(standing.gives)


def test_a_piece_too_small_for_its_strip_is_refused() -> None:
    with pytest.raises(NumbersFault, match="gives no bias strip"):
        bias_from_remnant(Size(F(1), F(1)), F(40), F(3))


def sewn_sheet(piece: Size, seam: float) -> Polygon:
    """The piece with a corner cut off at 45 degrees and sewn to its other end."""
    across, along = sorted((float(piece.width), float(piece.length)))
    whole = box(0, 0, along, across)
    corner = Polygon([(0, 0), (across, across), (0, across)])
    # Both lose their allowance at the ends that are sewn together.
    rest = whole.difference(corner).intersection(box(0, 0, along - seam, across))
    moved = translate(corner.intersection(box(seam, 0, along, across)), along - 2 * seam)
    sheet = unary_union([rest.buffer(1e-9), moved.buffer(1e-9)])
    assert isinstance(sheet, Polygon)
    return sheet


@settings(max_examples=60)
@given(SIDES, SIDES, STRIPS)
def test_the_loops_of_a_tube_lie_in_the_sheet_and_one_more_does_not(
    width: F, length: F, strip: F
) -> None:
    piece = Size(width, length)
    across = float(min(width, length))
    if across <= 0.5:
        return
    sheet = sewn_sheet(piece, 0.25).buffer(1e-6)
    step = float(strip) * sqrt(2)
    loops, gives = bias_tube(piece, strip, QUARTER)

    def strip_at(n: int) -> Polygon:
        x = n * step
        return Polygon([(x, 0), (x + step, 0), (x + step + across, across), (x + across, across)])

    assert all(sheet.covers(strip_at(n)) for n in range(loops))
    assert not sheet.covers(strip_at(loops))
    assert gives == pytest.approx(loops * (across - 0.5) * sqrt(2))


def laid(piece: Size, strip: float, start: float, seam: float) -> list[float]:
    """Strips at 45 degrees from one beginning, each the longest parallelogram with upright ends
    that shapely finds in its band, those worth joining."""
    across, along = float(piece.width), float(piece.length)
    cloth = box(0, 0, across, along)
    step = strip * sqrt(2)
    found = []
    line = start - step
    while line < across + along:
        band = Polygon(
            [
                (-200, line + 200),
                (200, line - 200),
                (200, line - 200 + step),
                (-200, line + 200 + step),
            ]
        ).intersection(cloth)
        # Where both edges of the band lie in the cloth, an upright end can stand.
        if not band.is_empty and band.area > 1e-9:
            low = max(0.0, line + step - along)
            high = min(across, line)
            if high > low:
                strip_shape = Polygon(
                    [(low, line - low), (high, line - high), (high, line - high + step),
                     (low, line - low + step)]
                )  # fmt: skip
                assert cloth.buffer(1e-6).covers(strip_shape)
                found.append((high - low) * sqrt(2))
        line += step
    return [one for one in found if one > 2 * seam * sqrt(2)]


@settings(max_examples=25, deadline=None)
@given(SIDES, SIDES, STRIPS)
def test_no_other_beginning_gives_longer_strips(width: F, length: F, strip: F) -> None:
    piece = Size(width, length)
    join = 2 * 0.25 * sqrt(2)
    best = bias_strips(piece, strip)
    worth = sum(best) - join * len(best)
    step = float(strip) * sqrt(2)
    for way in (piece, piece.turned):
        for tried in range(40):
            lengths = laid(way, float(strip), tried * step / 40, 0.25)
            assert sum(lengths) - join * len(lengths) <= worth + 1e-6


@given(SIDES, SIDES, STRIPS)
def test_neither_way_gives_more_than_the_area(width: F, length: F, strip: F) -> None:
    piece = Size(width, length)
    area = float(width * length) / float(strip)
    assert sum(bias_strips(piece, strip)) <= area + 1e-6
    assert bias_tube(piece, strip)[1] <= area + 1e-6


@given(SIDES, STRIPS)
def test_a_longer_piece_gives_at_least_as_much(side: F, strip: F) -> None:
    try:
        square = bias_from_remnant(Size(side, side), F(100), strip).gives
    except NumbersFault:
        return
    assert bias_from_remnant(Size(side, side + 20), F(100), strip).gives >= square


def test_strips_are_taken_where_they_give_more_than_the_tube() -> None:
    found = bias_from_remnant(Size(F(6), F(18)), F(50), F(5, 2))
    # Five strips lose four joins of 1/2 * root 2 in between them.
    lengths = bias_strips(Size(F(6), F(18)), F(5, 2))
    assert len(lengths) == found.strips == 5
    assert found.joined == pytest.approx(sum(lengths) - 4 * 0.5 * sqrt(2))
    assert found.gives == found.joined > found.tube
    assert found.reason.endswith("in 5 strips cut corner to corner and joined: 18 1/2 in short")


def test_two_long_strips_are_taken_before_three_whose_joins_take_more() -> None:
    # Cut along the diagonal, one strip lies on each side of it: its ends lie 3 * root 2 in apart
    # along the edge, so it is (9 - 3 * root 2) * root 2 = 6.73 in long. Another beginning gives
    # 6.73, 6 and 1.46 in, 14.19 in all, but loses two joins of root 2 in where this loses one.
    each = (9 - 3 * sqrt(2)) * sqrt(2)
    assert each + 6 + 1.47 - 2 * sqrt(2) < 2 * each - sqrt(2)
    found = bias_from_remnant(Size(F(9), F(9)), F(10), F(3), seam=F(1, 2))
    assert found.strips == 2
    assert found.joined == pytest.approx(2 * each - sqrt(2))


def test_very_narrow_strips_are_cut_to_the_far_end() -> None:
    # Strips of 1/2 in begin every 1/2 * root 2 = 0.71 in along the edge. From where the first
    # reaches across 3 in, 7 in are left for nine of them, each 3 * root 2 in long.
    assert 9 * 0.5 * sqrt(2) < 7 < 10 * 0.5 * sqrt(2)
    assert sum(bias_strips(Size(F(3), F(10)), F(1, 2))) > 9 * 3 * sqrt(2)


def test_strips_just_as_long_as_their_join_give_nothing() -> None:
    # Strips across 1/2 in are 1/2 * root 2 in long, and so are two allowances of 1/4 in at a slant.
    assert bias_strips(Size(F(1, 2), F(30)), F(5, 2)) == ()
    with pytest.raises(NumbersFault, match="gives no bias strip"):
        bias_from_remnant(Size(F(1, 2), F(30)), F(10), F(5, 2))


@given(SIDES, STRIPS, st.integers(1, 400))
def test_enough_is_enough_and_said_so(side: F, strip: F, need: int) -> None:
    try:
        found = bias_from_remnant(Size(side, 2 * side), F(need), strip)
    except NumbersFault:
        return
    assert found.enough == (found.gives >= need)
    assert found.reason.endswith("over" if found.enough else "short")
    assert found.gives - need == pytest.approx(found.over)
