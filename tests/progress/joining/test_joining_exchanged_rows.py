"""Two rows that change places after pressing: which joins collide."""

from __future__ import annotations

from itertools import combinations

import pytest

from sewalong.progress.joining.exchanged_rows import exchanged
from sewalong.progress.record.refused import Refused
from sewalong.quilt.quilt import Target

EIGHT_OF_SIX = Target(8, 6)


@pytest.mark.parametrize(
    ("rows", "joins", "crossings"), [((3, 6), 4, 20), ((3, 5), 0, 0), ((2, 3), 2, 10)]
)
def test_rows_exchanged_after_pressing(rows: tuple[int, int], joins: int, crossings: int) -> None:
    """N009: 8 rows of 6, odd rows pressed one way and even the other."""
    found = exchanged(EIGHT_OF_SIX, *rows)
    assert (len(found.collide), found.joins, found.crossings) == (joins, 7, crossings)


@pytest.mark.parametrize("rows", range(2, 10))
def test_every_exchange_against_rows_laid_out_and_looked_at(rows: int) -> None:
    """Ways as +1 and -1 by turns: two neighbours collide when they are the same."""
    for first, second in combinations(range(1, rows + 1), 2):
        way = [1 if row % 2 else -1 for row in range(rows + 2)]
        way[first], way[second] = way[second], way[first]
        alike = sum(way[row] == way[row + 1] for row in range(1, rows))
        assert len(exchanged(Target(rows, 4), second, first).collide) == alike
        assert (second - first) % 2 or not alike


def test_the_sentence_says_where_and_what_to_do() -> None:
    said = exchanged(EIGHT_OF_SIX, 2, 3).sentence
    assert said.startswith(
        "Rows 2 and 3 exchanged: at 2 of the 7 joins ridge lies on ridge (1 on 3, 2 on 4), 10 cross"
    )
    assert "Press both rows the other way" in said
    assert exchanged(EIGHT_OF_SIX, 5, 3).sentence == (
        "Rows 3 and 5 exchanged: every join still nests."
    )


@pytest.mark.parametrize("rows", [(0, 3), (3, 9), (4, 4)])
def test_no_such_rows(rows: tuple[int, int]) -> None:
    with pytest.raises(Refused):
        exchanged(EIGHT_OF_SIX, *rows)
