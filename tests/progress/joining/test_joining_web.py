"""The top as a web: its seams counted, and a column picked up the wrong way round."""

from __future__ import annotations

from fractions import Fraction

import pytest

from sewalong.progress.joining.web import in_place_reversed, web_words
from sewalong.progress.plan.plan import plan
from sewalong.quilt.layouts.joining_seams import row_seams, top_seams
from sewalong.quilt.quilt import Target
from sewalong.quilt.size import Size
from tests.progress import every_act as c
from tests.progress.building import a_quilt, all_units, go_on, play

EIGHT_OF_SIX = Target(8, 6)


def test_a_web_of_48_squares_is_40_short_seams_and_7_long_ones() -> None:
    """N028: 8 rows of 6 squares of 6 1/2 in: 260 in of short seams, 255 1/2 in of long ones."""
    words = web_words(EIGHT_OF_SIX)
    assert "5 passes of 8, 40 short seams" in words
    assert "then 7 long ones: 47 seams, as many as by rows" in words
    unit = Size.square(Fraction(13, 2))
    assert row_seams(8, 6, unit).length == 40 * unit.length == Fraction(260)
    assert top_seams(8, 6, unit, Fraction(1, 4)).length == Fraction(511, 2)


def test_each_pass_of_a_web_is_written_down_and_taken_for_what_it_is() -> None:
    """N028: after pass n there are 8 rows of n + 1 units, 8 n of 40 seams; the last makes rows."""
    quilt = a_quilt("plain-squares", 48, rows=8, columns=6)
    state, record = play(quilt, *all_units(quilt))
    for n in range(1, 5):
        state = go_on(state, record, c.BeginRows(((8, n + 1),)))
        line = plan(state).line("sew-rows")
        assert line.begun * 5 == pytest.approx(8 * n)
        assert (state.piles["unit"], line.ready) == (48 - 8 * (n + 1), 8)
    state = go_on(state, record, c.Count("sew-rows", 8))
    assert (state.begun, state.piles["unit"], state.piles["row"]) == ((), 0, 8)


@pytest.mark.parametrize("rows", range(1, 12))
def test_of_a_column_picked_up_in_reverse_only_the_middle_one_is_in_place(rows: int) -> None:
    """N030: of 9 rows only row 5, of 8 none; here laid out and compared place by place."""
    right = range(1, rows + 1)
    in_place = [row for row, was in zip(right, reversed(right), strict=True) if row == was]
    assert in_place_reversed(rows) == len(in_place)
    if rows > 1:
        said = f"only the unit of row {in_place[0]}" if in_place else "none would lie in its row"
        assert said in web_words(Target(rows, 4))


def test_a_single_row_or_column_is_no_web() -> None:
    assert web_words(Target(1, 6)) == web_words(Target(6, 1)) == ""
    assert "1 pass of 6" in web_words(Target(6, 2))
    assert 'write joined = "web" under [layout]' in web_words(Target(6, 2))
