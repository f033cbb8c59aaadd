"""What narrower cloth changes, against cutting it out at every width there is to try."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sewalong.lengths import Unit, parse
from sewalong.quilt.cloth.backing import backing, panels_reach
from sewalong.quilt.cloth.batting import BATTINGS, Batting, smallest_batting
from sewalong.quilt.cloth.narrower import width_text
from sewalong.quilt.cloth.squares import ClothFor, cloth_for, cuts_fit, from_cloth
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.size import Size

GRID = F(1, 32)
PIECES = st.integers(32, 400).map(lambda n: n * GRID)
WIDTHS = st.integers(38 * 32, 44 * 32).map(lambda n: n * GRID)


def at(width: F, count: int, piece: F) -> ClothFor | None:
    """The same cut from cloth of another width; None where no piece fits."""
    try:
        return cloth_for(count, Size.square(piece), usable=width)
    except NumbersFault:
        return None


def test_one_square_a_strip_less_below_40_in() -> None:
    found = cloth_for(100, Size.square(F(5)), usable=F(40))
    assert found.narrower == "one a strip less below 40 in usable, then 15 strips"


def test_a_square_a_strip_less_may_cost_no_strip() -> None:
    found = cloth_for(20, Size.square(F(7, 2)))
    assert found.narrower == (
        "one a strip less below 38 1/2 in usable, the same number of strips down to 35 in"
    )


def test_one_to_a_strip_is_all_or_none() -> None:
    found = cloth_for(3, Size.square(F(25)))
    assert found.narrower == "none can be cut below 25 in usable"


@given(st.integers(1, 200), PIECES, WIDTHS)
def test_a_strip_gives_one_less_just_below_the_width_said(count: int, piece: F, width: F) -> None:
    found = cloth_for(count, Size.square(piece), usable=width)
    limit = found.per_strip * piece
    assert f"below {width_text(limit, Unit.INCH)} usable" in found.narrower
    for tried in (width, limit):
        same = at(tried, count, piece)
        assert same is not None
        assert same.per_strip == found.per_strip
    below = at(limit - GRID, count, piece)
    if below is None:
        assert found.narrower.startswith("none can be cut")
        return
    assert below.per_strip == found.per_strip - 1
    dearer = f"then {below.strips} strips" if below.strips != found.strips else "same number"
    assert dearer in found.narrower


@given(st.integers(1, 200), PIECES, WIDTHS)
def test_the_strips_hold_down_to_the_width_said_and_no_further(
    count: int, piece: F, width: F
) -> None:
    found = cloth_for(count, Size.square(piece), usable=width)
    if "same number of strips" not in found.narrower:
        return
    # The narrowest cloth on the grid that still takes so many strips.
    limit = width
    while (less := at(limit - GRID, count, piece)) is not None and less.strips == found.strips:
        limit -= GRID
    assert found.narrower.endswith(f"down to {width_text(limit, Unit.INCH)}")


@given(PIECES, WIDTHS)
def test_pieces_from_cloth_lose_one_across_just_below_the_width_said(piece: F, width: F) -> None:
    found = from_cloth(Size(width, F(36)), Size.square(piece))
    if found.across:
        limit = found.across_down_to
        assert from_cloth(Size(limit, F(36)), Size.square(piece)).across == found.across
        assert from_cloth(Size(limit - GRID, F(36)), Size.square(piece)).across == found.across - 1


@settings(deadline=None)
@given(
    st.lists(st.tuples(st.integers(1, 60), st.integers(16, 120)), min_size=1, max_size=3),
    st.integers(1, 120).map(F),
)
def test_cuts_fit_down_to_the_width_said_and_no_further(
    kinds: list[tuple[int, int]], cloth: F
) -> None:
    cuts = [(count, Size.square(F(sixteenths, 8))) for count, sixteenths in kinds]
    found = cuts_fit(cuts, cloth)
    if not found.fits:
        assert found.down_to is None
        return
    assert found.down_to is not None
    # Every width an eighth apart, from the one given down to where a piece no longer fits.
    fitting = []
    width = F(40)
    while width > 0:
        try:
            if not cuts_fit(cuts, cloth, usable=width).fits:
                break
        except NumbersFault:
            break
        fitting.append(width)
        width -= F(1, 8)
    assert fitting[-1] == found.down_to


@given(st.integers(20, 120).map(F), st.integers(20, 120).map(F), WIDTHS)
def test_the_panels_of_a_back_reach_down_to_the_width_said(width: F, length: F, usable: F) -> None:
    found = backing(Size(width, length), usable=usable)
    for way in (found.best, found.other):
        needed = found.size.width if way.seams.value == "along the length" else found.size.length
        assert panels_reach(way.panels, way.narrowest) == needed
        assert panels_reach(way.panels, way.narrowest - GRID) < needed


def test_a_back_says_how_narrow_its_cloth_may_be() -> None:
    # Two panels less a 1 in seam make 68 in from 34 1/2 in of width each.
    found = backing(Size(F(60), F(80)))
    assert found.best.reason.endswith("so many down to 34 1/2 in usable")


def test_a_sixteenth_less_margin_and_the_next_smaller_batting_does() -> None:
    found = smallest_batting(Size(parse("64 1/8"), F(82)))
    assert found.batting is not None
    assert found.batting.name == "full"
    assert found.reason.endswith("; with 1/16 in less margin each side twin, 72 × 90 in, does")
    assert (found.smaller, found.smaller_margin) == (BATTINGS[2], F(63, 16))


def test_a_top_no_batting_covers_may_still_want_only_a_little_less_margin() -> None:
    found = smallest_batting(Size(F(113), F(113)))
    assert found.batting is None
    assert "with 1/2 in less margin each side king, 120 × 120 in, does" in found.reason


@pytest.mark.parametrize("margin", [F(0), F(2), F(4)])
@given(st.integers(20, 120), st.integers(20, 120))
def test_the_smaller_batting_covers_with_the_margin_said_and_no_more(
    margin: F, width: int, length: int
) -> None:
    top = Size(F(width), F(length))
    found = smallest_batting(top, margin=margin)
    if found.smaller is None:
        return
    assert 0 <= found.smaller_margin < margin

    def covers(one: Batting, each_side: F) -> bool:
        need = top.grown(each_side)
        return one.size.covers(need) or one.size.turned.covers(need)

    assert covers(found.smaller, found.smaller_margin)
    assert not covers(found.smaller, found.smaller_margin + GRID)
    if found.batting is not None:
        area = found.batting.size.width * found.batting.size.length
        assert found.smaller.size.width * found.smaller.size.length <= area


@given(st.integers(20, 110), st.integers(20, 110))
def test_no_smaller_batting_is_kept_back(width: int, length: int) -> None:
    top = Size(F(width), F(length))
    found = smallest_batting(top)
    with_less = smallest_batting(top, margin=F(3))
    if with_less.batting is not None and with_less.batting != found.batting:
        assert found.smaller is not None


@pytest.mark.parametrize(
    ("width", "text"), [("100/3", "33 3/8 in"), ("33.3", "33 5/16 in"), ("33 1/32", "33 1/32 in")]
)
def test_a_least_width_is_rounded_up_to_a_line_of_the_ruler(width: str, text: str) -> None:
    exact = F(100, 3) if width == "100/3" else parse(width)
    assert width_text(exact, Unit.INCH) == text
