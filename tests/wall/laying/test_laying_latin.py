"""Every fabric once in each row and column: possible or not, against every way to lay them."""

from __future__ import annotations

from itertools import permutations

import pytest

from sewalong.wall.laying.latin import Square, latin_square, rows_and_columns


def is_latin(square: Square, *, corners: bool) -> bool:
    order = len(square)
    lines = [*map(set, square), *(set(column) for column in zip(*square, strict=True))]
    if any(line != set(range(order)) for line in lines):
        return False
    return not corners or not any(
        square[row][place] == square[row + 1][place + step]
        for row in range(order - 1)
        for place in range(order)
        for step in (-1, 1)
        if 0 <= place + step < order
    )


@pytest.mark.parametrize("order", range(1, 13))
def test_once_in_each_row_and_column_can_always_be_had(order: int) -> None:
    square = latin_square(order)
    assert square is not None
    assert is_latin(square, corners=False)


@pytest.mark.parametrize("order", range(1, 13))
def test_none_meets_itself_at_a_point_but_in_orders_two_to_four(order: int) -> None:
    # N011 and W07: exhaustive for 2 to 4, examples for 5 and 6.
    square = latin_square(order, corners=True)
    if order in (2, 3, 4):
        assert square is None
    else:
        assert square is not None
        assert is_latin(square, corners=True)


@pytest.mark.parametrize("order", [1, 2, 3, pytest.param(4, marks=pytest.mark.long)])
def test_every_way_to_lay_the_rows_says_so(order: int) -> None:
    def any_square(rows: Square) -> bool:
        if len(rows) == order:
            return is_latin(rows, corners=True)
        return any(any_square((*rows, row)) for row in permutations(range(order)))

    assert any_square(()) == (latin_square(order, corners=True) is not None)


def test_the_wish_that_fails_is_named() -> None:
    # N011: in rows of 7 five fabrics repeat at 2 places at least.
    assert rows_and_columns(5, 5, 7).rows_fail == 2
    assert rows_and_columns(5, 7, 5).columns_fail == 2
    assert rows_and_columns(4, 4, 4).possible
    assert rows_and_columns(4, 4, 4, corners=True).points_fail
    assert rows_and_columns(5, 5, 5, corners=True).possible
    with pytest.raises(ValueError, match="one row"):
        latin_square(0)
