"""Pictures of pieces and units: their shape, their room, and what the eye sees."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sewalong.piecing.cloth import Flat, rectangle
from sewalong.piecing.derive import derive
from sewalong.wall.keys import STITCHES
from sewalong.wall.picture import EMPTY, Picture, fitted, from_pixels, picture_of
from sewalong.wall.pieces import LONGEST, finished_unit, piece_picture
from tests.wall.drawing import METHODS, cells, counts, drawn, pixel_height, unit_picture, usual

ROOMS = st.tuples(st.integers(1, 40), st.integers(1, 20))


@pytest.mark.parametrize("method", METHODS)
def test_every_pile_and_unit_of_every_method_has_a_picture(method: str) -> None:
    derivation = usual(method)
    for pile, shape in derivation.piles.items():
        for number in range(len(shape.pieces)):
            picture = piece_picture(derivation, pile, 24, 12, number)
            assert counts(picture)
            assert picture.across <= 24
            assert picture.down <= 12
    for number, unit in enumerate(derivation.units):
        fabrics = sorted({patch.letter for patch in unit.patches})
        assert unit_picture(derivation, 24, 12, number).keys == fabrics


@given(st.sampled_from(METHODS), ROOMS)
def test_any_room_holds_its_picture_and_tiny_rooms_have_one(
    method: str, room: tuple[int, int]
) -> None:
    derivation = usual(method)
    for pile in derivation.piles:
        picture = piece_picture(derivation, pile, *room)
        assert 1 <= picture.across <= room[0]
        assert 1 <= picture.down <= room[1]
        assert len({len(row) for row in picture.pixels}) == 1


@pytest.mark.parametrize("room", [(0, 0), (0, 10), (10, 0), (-1, 5)])
def test_no_room_gives_an_empty_picture(room: tuple[int, int]) -> None:
    derivation = usual("hourglass")
    assert unit_picture(derivation, *room) == EMPTY
    assert (EMPTY.across, EMPTY.down, cells(EMPTY), EMPTY.keys) == (0, 0, [], [])


def test_nothing_cannot_be_drawn() -> None:
    with pytest.raises(ValueError, match="nothing to draw"):
        picture_of(Flat(()), 10, 10)


@given(st.fractions(1, 40), st.fractions(1, 40), ROOMS)
def test_the_shape_is_kept_to_the_nearest_pixel_and_fills_the_room(
    width: Fraction, height: Fraction, room: tuple[int, int]
) -> None:
    wide, high = fitted((float(width), float(height)), *room)
    assert wide == room[0] or high == 2 * room[1]
    if wide > 1 and high > 1:
        scale = min(room[0] / width, 2 * room[1] / height)
        assert abs(wide - width * scale) <= 0.501
        assert abs(high - height * scale) <= 0.501


@given(st.integers(1, 60), st.integers(1, 30))
def test_a_square_is_drawn_square_for_a_cell_is_two_pixels_high(across: int, down: int) -> None:
    picture = picture_of(rectangle(5, 5, "A"), across, down)
    assert picture.across == pixel_height(picture) == min(across, 2 * down)


def test_an_odd_row_of_pixels_has_nothing_below_it() -> None:
    picture = from_pixels([["A"], ["B"], ["C"]])
    assert cells(picture) == [[("A", "B")], [("C", None)]]
    assert picture == Picture((("A",), ("B",), ("C",), (None,)))


def test_a_laid_pair_shows_the_wrong_side_of_the_upper_square() -> None:
    assert piece_picture(usual("paired-squares"), "pair", 20, 10).keys == ["b"]


def test_sewn_all_round_the_stitches_run_round_the_edge() -> None:
    picture = piece_picture(usual("paired-squares"), "sewn-pair", 20, 10)
    rows = drawn(picture)
    edge = [*rows[1][1:-1], *rows[-2][1:-1], *(row[1] for row in rows[1:-1])]
    assert set(edge) == {STITCHES}
    assert picture.keys == ["b", STITCHES]
    assert {key for row in rows[2:-2] for key in row[2:-2]} == {"b"}


def test_sewn_beside_the_diagonal_there_are_two_rows_with_cloth_between() -> None:
    picture = piece_picture(usual("half-square-two"), "sewn-pair", 40, 20)
    middle = [key == STITCHES for key in drawn(picture)[20]]
    starts = [place for place, sewn in enumerate(middle) if sewn]
    # A quarter inch each side of a diagonal on 5 in drawn 40 wide: root 2 times 2, twice.
    assert len(starts) == 2
    assert starts[1] - starts[0] == pytest.approx(2 * 2**0.5 * 2, abs=1)


def test_corners_that_are_laid_show_their_wrong_sides_and_the_square_beneath() -> None:
    derivation = usual("flipped-corners")
    assert piece_picture(derivation, "laid-square", 20, 10).keys == ["A", "b", "c", "d", "e"]
    assert piece_picture(derivation, "unit", 20, 10).keys == ["A", "B", "C", "D", "E"]


def test_cut_pieces_have_nothing_where_the_cloth_was_cut_away() -> None:
    picture = piece_picture(usual("half-square-two"), "cut-unit", 20, 10)
    assert sum(counts(picture).values()) == pytest.approx(200, abs=20)


def test_a_strip_lies_across_and_only_its_beginning_is_shown() -> None:
    derivation = usual("rail-fence")
    picture = piece_picture(derivation, "strip-set", 40, 20)
    rows = drawn(picture)
    assert picture.across / len(rows) == pytest.approx(LONGEST, abs=0.2)
    assert [row[0] for row in rows] == sorted(row[0] or "" for row in rows)
    assert picture.keys == ["A", "B", "C"]


def test_a_unit_in_the_top_has_lost_its_seams() -> None:
    derivation = usual("flying-geese-four")
    raw, shown = derivation.units[0].size, finished_unit(derivation, 0).size
    assert (raw[0] - shown[0], raw[1] - shown[1]) == pytest.approx((0.5, 0.5))
    # The point of the large triangle reaches the upper edge once the seam is taken.
    top = drawn(unit_picture(derivation, 40, 20))[0]
    assert top.count("A") <= 2


@settings(max_examples=40)
@given(st.sampled_from(METHODS), st.sampled_from([Fraction(n, 16) for n in range(2, 9)]))
def test_any_seam_has_its_picture(method: str, seam: Fraction) -> None:
    derivation = derive(method, Fraction(6), seam)
    assert unit_picture(derivation, 16, 8).keys
