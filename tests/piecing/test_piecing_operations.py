"""Each operation on pieces drawn by hand: where the pieces lie, what is sewn and what is cut."""

from __future__ import annotations

from math import sqrt

import pytest

from sewalong.piecing.cloth import Flat, Layered, Patch, Piece, rectangle, turned
from sewalong.piecing.faults import MethodFault, SizeRefused
from sewalong.piecing.geometry import Line, area, box, turn
from sewalong.piecing.operation_words import WORDS
from sewalong.piecing.operations import Table
from sewalong.piecing.primitive import face_down, sewn

Box = tuple[float, float, float, float]


def after(*words: str, pieces: list[Piece], seam: float = 0.25) -> Table:
    """The table after these operations on these pieces."""
    table = Table(seam, list(pieces))
    for word in words:
        WORDS[word](table)
    return table


def boxes(piece: Piece) -> list[Box]:
    """The box of each patch, the lowest layer first."""
    return [box([patch.points]) for patch in piece.patches]


def square(side: float, letter: str = "A") -> Flat:
    return rectangle(side, side, letter)


WIDE = rectangle(6.0, 4.0, "A")
SMALL = square(2.0, "B")


@pytest.mark.parametrize(
    ("word", "degrees", "size"),
    [
        ("turn last a quarter", 90, (4, 6)),
        ("turn last half way", 180, (6, 4)),
        ("turn last three quarters", 270, (4, 6)),
    ],
)
def test_the_last_piece_is_turned_and_no_other(
    word: str, degrees: int, size: tuple[float, float]
) -> None:
    first, second, last = after(word, pieces=[WIDE, WIDE, WIDE]).flats()
    assert first == second == WIDE
    assert last.patches[0].turn == degrees
    assert last.size == pytest.approx(size)


@pytest.mark.parametrize(
    ("corner", "where"),
    [(1, (0, 0, 2, 2)), (2, (4, 0, 6, 2)), (3, (4, 2, 6, 4)), (4, (0, 2, 2, 4))],
)
def test_a_piece_is_laid_on_the_corner_named(corner: int, where: Box) -> None:
    (piece,) = after(f"lay on corner {corner}", pieces=[WIDE, SMALL]).layered()
    assert boxes(piece) == [(0, 0, 6, 4), where]


def test_pieces_on_several_corners_lie_one_after_the_other() -> None:
    (piece,) = after("lay on corner 1", pieces=[WIDE, SMALL]).pieces
    (both,) = after("lay on corner 3", pieces=[piece, square(2.0, "C")]).layered()
    assert boxes(both) == [(0, 0, 6, 4), (0, 0, 2, 2), (4, 2, 6, 4)]


def test_a_piece_may_cover_what_it_is_laid_on_and_not_reach_over_it() -> None:
    (piece,) = after("lay on corner 4", pieces=[WIDE, WIDE]).layered()
    assert boxes(piece) == [(0, 0, 6, 4), (0, 0, 6, 4)]
    for top in (rectangle(6.1, 4.0, "B"), rectangle(6.0, 4.1, "B")):
        with pytest.raises(SizeRefused, match="larger than what it is laid on"):
            after("lay on corner 3", pieces=[WIDE, top])


def test_laying_needs_two_pieces() -> None:
    for word in ("lay", "lay on corner 1"):
        with pytest.raises(MethodFault, match="needs two pieces"):
            after(word, pieces=[WIDE])


def test_the_last_two_pieces_are_laid_and_those_before_stay_as_they_are() -> None:
    first, laid = after("lay", pieces=[SMALL, WIDE, WIDE]).pieces
    assert first == SMALL
    assert isinstance(laid, Layered)
    first, laid = after("lay on corner 2", pieces=[WIDE, WIDE, SMALL]).pieces
    assert first == WIDE
    assert isinstance(laid, Layered)


def test_pieces_of_two_sizes_are_not_laid_face_to_face() -> None:
    for other in (rectangle(6.1, 4.0, "B"), rectangle(6.0, 4.1, "B")):
        with pytest.raises(SizeRefused, match="must be the same size"):
            after("lay", pieces=[WIDE, other])


def test_a_seam_along_the_edge_lies_an_allowance_inside_it() -> None:
    table = after("lay", "sew edge", pieces=[WIDE, WIDE])
    ((a, b),) = table.layered()[0].seams
    assert sorted([a, b]) == [(5.75, 0), (5.75, 4)]
    assert table.sewn == 4


def test_seams_all_round_form_a_ring() -> None:
    table = after("lay", "sew all round", pieces=[WIDE, WIDE])
    ends = sorted(tuple(sorted(seam)) for seam in table.layered()[0].seams)
    near, right, low = 0.25, 5.75, 3.75
    assert ends == [
        ((near, near), (near, low)),
        ((near, near), (right, near)),
        ((near, low), (right, low)),
        ((right, near), (right, low)),
    ]
    assert table.sewn == 2 * 5.5 + 2 * 3.5


def test_a_ring_needs_room_in_the_middle() -> None:
    with pytest.raises(SizeRefused, match="meet in the middle"):
        after("lay", "sew all round", pieces=[square(0.5), square(0.5)])
    assert after("lay", "sew all round", pieces=[square(0.625)] * 2).sewn == 4 * 0.125


@pytest.mark.parametrize(("word", "corners"), [("", (1, 3)), ("other ", (2, 4))])
def test_seams_beside_a_diagonal_lie_an_allowance_off_it(
    word: str, corners: tuple[int, int]
) -> None:
    table = after("lay", f"sew both sides of {word}diagonal", pieces=[square(6.0)] * 2)
    # Each row is a diagonal of a square smaller by the allowance times root 2.
    assert table.sewn == pytest.approx(2 * (6 - 0.25 * sqrt(2)) * sqrt(2))
    rows = table.layered()[0].seams
    off = [abs(x - y if corners == (1, 3) else x + y - 6) / sqrt(2) for row in rows for x, y in row]
    assert off == pytest.approx([0.25] * 4)


@pytest.mark.parametrize("corners", [(1, 2), (2, 3), (3, 4), (4, 1), (1, 3), (2, 4)])
def test_flipped_corners_may_touch_and_not_overlap(corners: tuple[int, int]) -> None:
    def sewn_on(side: float) -> Table:
        one, other = (f"lay on corner {corner}" for corner in corners)
        (piece,) = after(one, pieces=[square(5.0), square(side, "B")]).pieces
        return after(other, "sew across corners", pieces=[piece, square(side, "C")])

    assert sewn_on(2.5).sewn == pytest.approx(2 * 2.5 * sqrt(2))
    with pytest.raises(SizeRefused, match="two corners overlap"):
        sewn_on(2.6)


@pytest.mark.parametrize("corners", [(1, 2), (2, 3), (3, 4), (4, 1), (1, 3), (2, 4)])
def test_oblong_corners_may_touch_and_not_overlap(corners: tuple[int, int]) -> None:
    def sewn_on(width: float, height: float) -> Table:
        one, other = (f"lay on corner {corner}" for corner in corners)
        (piece,) = after(one, pieces=[WIDE, rectangle(width, height, "B")]).pieces
        words = (other, "sew across corners")
        return after(*words, pieces=[piece, rectangle(width, height, "C")])

    assert sewn_on(3.0, 2.0).sewn == pytest.approx(2 * sqrt(13))
    with pytest.raises(SizeRefused, match="two corners overlap"):
        sewn_on(3.2, 2.2)


def test_what_does_not_lie_on_a_corner_is_no_corner_to_flip() -> None:
    laid = Layered(square(5.0).patches, (face_down(SMALL, 1.0, 1.0),))
    for word in ("sew across corners", "trim corners"):
        with pytest.raises(MethodFault, match="must lie on a corner"):
            after(word, pieces=[laid])


def test_corners_for_geese_may_lap_by_two_allowances_and_half_an_inch() -> None:
    def sewn_on(side: float) -> Table:
        (piece,) = after("lay on corner 1", pieces=[square(5.0), square(side, "B")]).pieces
        words = ("lay on corner 3", "sew both sides of diagonal")
        return after(*words, pieces=[piece, square(side, "C")])

    # Two of 3 in on 5 in lap by 1 in.
    assert sewn_on(3.0).sewn > 0
    with pytest.raises(SizeRefused, match="lap too far"):
        sewn_on(3.01)


def test_each_corner_is_sewn_on_its_own_diagonal_and_trimmed_beyond_its_seam() -> None:
    (piece,) = after("lay on corner 1", pieces=[square(5.0), SMALL]).pieces
    table = after("lay on corner 3", "sew across corners", "trim corners",
                  pieces=[piece, square(2.0, "C")])  # fmt: skip
    first, second = table.layered()[0].tops
    assert [coordinate for end in sorted(first.seams[0]) for coordinate in end] == pytest.approx(
        [0, 2, 2, 0], abs=1e-9
    )
    assert [coordinate for end in sorted(second.seams[0]) for coordinate in end] == pytest.approx(
        [3, 5, 5, 3]
    )
    # The cut lies an allowance beyond: across a square smaller by the allowance times root 2.
    assert table.cut == pytest.approx(2 * (2 - 0.25 * sqrt(2)) * sqrt(2))
    left = 25 - (2 - 0.25 * sqrt(2)) ** 2
    assert sum(area(patch.points) for patch in table.layered()[0].base) == pytest.approx(left)


def test_a_piece_cut_on_both_diagonals_gives_four_beginning_at_the_far_side() -> None:
    table = after("cut both diagonals", pieces=[WIDE])
    assert table.cut == pytest.approx(2 * sqrt(52))
    # By the angle of their middles, from high x by way of high y.
    assert [boxes(piece) for piece in table.pieces] == [
        [pytest.approx(where)] for where in [(3, 0, 6, 4), (0, 2, 6, 4), (0, 0, 3, 4), (0, 0, 6, 2)]
    ]


@pytest.mark.parametrize(
    ("word", "corner"), [("cut diagonal", (6, 0)), ("cut other diagonal", (6, 4))]
)
def test_one_cut_on_a_diagonal_leaves_two_halves(word: str, corner: tuple[int, int]) -> None:
    table = after(word, pieces=[WIDE])
    assert table.cut == pytest.approx(sqrt(52))
    assert [area(piece.patches[0].points) for piece in table.pieces] == pytest.approx([12, 12])
    holding = [piece for piece in table.pieces if corner in piece.patches[0].points]
    assert len(holding) == 1


def test_four_cuts_through_the_middle_leave_eighths() -> None:
    table = after("cut in eighths", pieces=[square(4.0)])
    assert table.cut == pytest.approx(2 * 4 + 2 * 4 * sqrt(2))
    assert [area(piece.patches[0].points) for piece in table.pieces] == pytest.approx([2.0] * 8)


def test_quarters_come_with_the_middle_at_corner_one() -> None:
    table = after("cut in quarters", pieces=[square(4.0)])
    assert table.cut == 8
    # The first has the middle at its corner 1 already; the next has it at corner 2, and so on.
    assert [piece.patches[0].turn for piece in table.pieces] == [0, 270, 180, 90]
    assert [piece.size for piece in table.pieces] == [pytest.approx((2, 2))] * 4
    with pytest.raises(MethodFault, match="one piece at a time"):
        after("cut in quarters", pieces=[square(4.0), square(4.0)])


def test_a_cut_pair_has_the_size_of_its_layers_wherever_it_lay() -> None:
    table = after("lay", "sew all round", "cut both diagonals", pieces=[WIDE, WIDE])
    assert [piece.size for piece in table.pieces] == [
        pytest.approx(size) for size in [(3, 4), (6, 2), (3, 4), (6, 2)]
    ]


def test_rows_and_columns_lose_two_allowances_a_seam() -> None:
    row = after("join in a row", pieces=[WIDE, square(4.0, "B"), rectangle(1.0, 4.0, "C")])
    assert row.flats()[0].size == pytest.approx((6 + 4 + 1 - 4 * 0.25, 4))
    assert row.sewn == 8
    assert [patch.letter for patch in row.flats()[0].patches] == ["A", "B", "C"]
    assert boxes(row.flats()[0]) == [
        pytest.approx(where) for where in [(0, 0, 5.75, 4), (5.75, 0, 9.25, 4), (9.25, 0, 10, 4)]
    ]
    column = after("join in a column", pieces=[WIDE, rectangle(6.0, 2.0, "B")])
    assert boxes(column.flats()[0]) == [
        pytest.approx(where) for where in [(0, 0, 6, 3.75), (0, 3.75, 6, 5.5)]
    ]
    assert {patch.turn for patch in column.flats()[0].patches} == {0}


def test_edges_that_differ_and_pieces_no_wider_than_a_seam_are_not_joined() -> None:
    with pytest.raises(SizeRefused, match="differ in length"):
        after("join in a row", pieces=[WIDE, square(4.1)])
    for pair in ([WIDE, rectangle(0.25, 4.0, "B")], [rectangle(0.25, 4.0, "B"), WIDE]):
        with pytest.raises(SizeRefused, match="no wider than its seam"):
            after("join in a row", pieces=[*pair])
    assert after("join in a row", pieces=[WIDE, rectangle(0.375, 4.0, "B")]).sewn == 4


def test_segments_are_as_long_as_a_strip_was_cut_or_as_the_set_is_wide() -> None:
    strips = [rectangle(2.5, 10.0, letter) for letter in "AB"]
    segments = after("join in a row", "cut segments", pieces=[*strips])
    assert [piece.size for piece in segments.pieces] == [pytest.approx((4.5, 2.5))] * 4
    assert segments.cut == 4 * 4.5
    squares = after("join in a row", "cut square segments", pieces=[*strips])
    assert [piece.size for piece in squares.pieces] == [pytest.approx((4.5, 4.5))] * 2
    other_way = after("join in a row", "turn last half way", "cut segments", pieces=[*strips])
    assert [piece.size for piece in other_way.pieces] == [pytest.approx((4.5, 2.5))] * 4
    alone = after("cut segments", pieces=[rectangle(2.5, 10.0, "A")])
    assert [piece.size for piece in alone.pieces] == [pytest.approx((2.5, 2.5))] * 4


def test_a_strip_may_be_just_one_segment_long() -> None:
    assert len(after("cut segments", pieces=[rectangle(2.5, 2.5, "A")]).pieces) == 1
    with pytest.raises(SizeRefused, match="shorter than one segment"):
        after("cut segments", pieces=[rectangle(2.5, 2.4, "A")])


def test_trimming_goes_along_all_four_sides() -> None:
    assert after("trim", pieces=[WIDE, SMALL]).cut == 2 * (6 + 4) + 2 * (2 + 2)


def test_the_longest_edge_of_one_patch_comes_to_lie_lowest() -> None:
    low = Patch(((0.0, 0.0), (3.0, 0.0), (3.0, 1.0), (0.0, 1.0)), "A", (0.0, -1.0))
    (piece,) = after("stand on longest edge", pieces=[Flat((low,))]).flats()
    assert piece.size == pytest.approx((3, 1))
    upright = Patch(((0.0, 0.0), (1.0, 0.0), (1.0, 3.0), (0.0, 3.0)), "A", (0.0, -1.0))
    (piece,) = after("stand on longest edge", pieces=[Flat((upright,))]).flats()
    assert piece.size == pytest.approx((3, 1))
    assert piece.patches[0].turn in (90, 270)


@pytest.mark.parametrize("quarters", range(4))
def test_a_triangle_stands_on_its_long_edge_however_it_lay(quarters: int) -> None:
    triangle = Patch(((0.0, 2.0), (2.0, 0.0), (4.0, 2.0)), "A", (0.0, -1.0))
    lying = turned(Flat((triangle,)), turn(2 * quarters))
    (piece,) = after("stand on longest edge", pieces=[lying]).flats()
    assert piece.patches[0].turn == 0
    assert piece.size == pytest.approx((4, 2))


def test_a_row_of_stitches_may_hold_one_top_of_several_and_must_meet_one() -> None:
    (piece,) = after("lay on corner 1", pieces=[square(5.0), SMALL]).pieces
    (both,) = after("lay on corner 2", pieces=[piece, square(2.0, "C")]).layered()
    level = Line((0.0, 1.0), (0.0, 1.0))
    held, length = sewn(both, level)
    assert length == 4
    assert [len(top.seams) for top in held.tops] == [1, 1]
    held, length = sewn(both, level, tops=(1,))
    assert length == 2
    assert [len(top.seams) for top in held.tops] == [0, 1]
    with pytest.raises(MethodFault, match="misses the pieces"):
        sewn(both, Line((0.0, 3.0), (0.0, 1.0)))


def test_what_lies_open_is_not_sewn_and_what_lies_face_to_face_is_not_joined() -> None:
    with pytest.raises(MethodFault, match="lay them first"):
        after("sew edge", pieces=[WIDE])
    (laid,) = after("lay", pieces=[WIDE, WIDE]).pieces
    with pytest.raises(MethodFault, match="open them first"):
        after("join in a row", pieces=[laid, WIDE])
    with pytest.raises(MethodFault, match="not sewn"):
        after("open", pieces=[laid])
