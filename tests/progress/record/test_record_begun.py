"""Rows begun: half a row, or the pairs of several, is not lost and is counted as what it is."""

from __future__ import annotations

from datetime import timedelta
from fractions import Fraction
from itertools import combinations, product

import pytest

from sewalong.progress.plan.plan import plan
from sewalong.progress.record.begun_rows import (
    Begun,
    can_be_made,
    held,
    in_order,
    left_begun,
    part_sewn,
    rows_begun,
    units_in,
)
from sewalong.progress.record.events.begun import RowsBegun
from sewalong.progress.resuming.coming_back import coming_back, facts
from tests.progress import every_act as c
from tests.progress.building import EVENING, a_quilt, all_units, go_on, play, refusal

PLAIN = a_quilt("plain-squares", 36, rows=4, columns=9)
"""Four rows of nine squares: nothing to sew before the rows."""


def test_five_of_nine_units_are_not_loose_any_more_and_count_as_made() -> None:
    state, _ = play(PLAIN, *all_units(PLAIN), c.BeginRows(((1, 5),)))
    now = plan(state)
    assert state.piles["unit"] == 31
    assert (now.units.made, now.units.to_go, now.units.possible) == (36, 0, 36)
    assert now.line("sew-rows").ready == 4
    assert now.line("sew-rows").begun == pytest.approx(4 / 8)


def test_all_pairs_of_four_rows_leave_one_unit_each_to_take() -> None:
    """N pairs are n seams: 16 of the 32 that four rows of nine take."""
    state, record = play(PLAIN, *all_units(PLAIN), c.BeginRows(((16, 2),)))
    assert state.piles["unit"] == 4
    assert plan(state).line("sew-rows").begun == pytest.approx(16 / 8)
    state = go_on(state, record, c.Count("sew-rows", 3))
    assert (state.piles["unit"], state.begun) == (1, ((4, 2),))
    state = go_on(state, record, c.Count("sew-rows"))
    assert (state.piles["unit"], state.begun, state.piles["row"]) == (0, (), 4)


def test_what_was_begun_is_there_after_weeks() -> None:
    state, record = play(PLAIN, *all_units(PLAIN), c.BeginRows(((1, 5),)))
    later = record[-1].event.at + timedelta(days=40)
    said = dict(facts(coming_back(state, record, later)))
    assert said["Begun"] == "1 row begun: 1 piece of 5 units sewn, 4 more units finish it."


def test_a_session_in_which_only_a_row_was_begun_is_told_as_such() -> None:
    state, record = play(PLAIN, *all_units(PLAIN), c.CloseSession(ALL))
    state = go_on(state, record, c.BeginRows(((3, 3),)), at=record[-1].event.at + timedelta(days=1))
    later = record[-1].event.at + timedelta(days=40)
    said = dict(facts(coming_back(state, record, later)))
    assert said["Last time"] == "rows begun."
    assert "the machine is off" in said["First"]


ALL = dict.fromkeys(("iron", "blade", "machine", "pins"), "yes")


def test_undo_puts_the_units_back_and_the_begun_row_back_after_a_count() -> None:
    state, record = play(PLAIN, *all_units(PLAIN), c.BeginRows(((1, 5),)), c.Count("sew-rows"))
    assert (state.begun, state.piles["unit"]) == ((), 27)
    state = go_on(state, record, c.Undo())
    assert (state.begun, state.piles["unit"]) == (((1, 5),), 31)
    state = go_on(state, record, c.Undo())
    assert (state.begun, state.piles["unit"]) == ((), 36)


def test_said_anew_it_stands_in_place_of_what_was_said_before() -> None:
    state, record = play(PLAIN, *all_units(PLAIN), c.BeginRows(((16, 2),)))
    state = go_on(state, record, c.BeginRows(((10, 2), (3, 4))))
    assert (state.begun, state.piles["unit"]) == (((3, 4), (10, 2)), 4)
    state = go_on(state, record, c.BeginRows(()))
    assert (state.begun, state.piles["unit"]) == ((), 36)


def test_an_unpicked_row_is_loose_units_again() -> None:
    state, _ = play(
        PLAIN, *all_units(PLAIN), c.BeginRows(((1, 5),)), c.Count("sew-rows"), c.Unpick("sew-rows")
    )
    assert (state.begun, state.piles["unit"], state.piles["row"]) == ((), 36, 0)


def test_a_row_made_but_not_counted_finishes_the_one_begun() -> None:
    state, _ = play(PLAIN, *all_units(PLAIN), c.BeginRows(((1, 5),)), c.Recount("row", 1, "made"))
    assert (state.begun, state.piles["unit"], state.done["sew-rows"]) == ((), 27, 1)


REFUSED = {
    "a whole row": (((1, 9),), "9 units are a whole row: count it instead."),
    "longer than a row": (
        ((1, 10),),
        "A row has 9 units, so no piece of one has 10. Count its units again.",
    ),
    "one unit": (((2, 1),), "A piece of a row is two units or more sewn together."),
    "more rows than are to sew": (
        ((17, 2),),
        "5 rows would be begun with 17 pairs, and 4 rows are still",
    ),
    "as it stands": ((), "That is how it stands already."),
}


@pytest.mark.parametrize(("pieces", "sentence"), REFUSED.values(), ids=REFUSED)
def test_what_cannot_be_is_refused(pieces: tuple[tuple[int, int], ...], sentence: str) -> None:
    state, _ = play(PLAIN, *all_units(PLAIN))
    assert sentence in refusal(state, c.BeginRows(pieces))


@pytest.mark.parametrize(("sewn", "left"), [(3, "1 row is"), (4, "0 rows are"), (6, "0 rows are")])
def test_no_more_rows_are_begun_than_are_left_to_sew(sewn: int, left: str) -> None:
    state, _ = play(PLAIN, *all_units(PLAIN), c.Recount("row", sewn, "found"))
    said = refusal(state, c.BeginRows(((6, 2),)))
    assert said.startswith(f"2 rows would be begun with 6 pairs, and {left} still to sew.")


WRONG = {
    "the shortest first": (((1, 2), (1, 5)), 1),
    "one length twice": (((1, 5), (1, 5)), 2),
    "fewer rows than they begin": (((2, 5),), 1),
}


@pytest.mark.parametrize(("pieces", "rows"), WRONG.values(), ids=WRONG)
def test_a_record_says_pieces_in_order_and_the_rows_they_begin(pieces: Begun, rows: int) -> None:
    state, _ = play(PLAIN, *all_units(PLAIN))
    with pytest.raises(c.Refused, match="each length of piece once, the longest first"):
        RowsBegun(at=EVENING, session=1, pieces=pieces, rows=rows).check(state)


def test_what_is_begun_is_told_in_the_log() -> None:
    state, record = play(PLAIN, *all_units(PLAIN), c.BeginRows(((1, 5), (3, 2))), c.BeginRows(()))
    said = [one.event.words(state, record) for one in record if isinstance(one.event, RowsBegun)]
    assert said == [
        "Begun: 1 piece of 5 units and 3 pairs, for 2 rows.",
        "No row is begun any more.",
    ]


def test_what_is_begun_stands_in_the_way_of_what_contradicts_it() -> None:
    state, record = play(PLAIN, *all_units(PLAIN), c.Count("sew-rows", 3), c.BeginRows(((1, 5),)))
    assert "5 units more are sewn into rows begun." in refusal(state, c.Spoil("unit", 5, "askew"))
    assert "4 rows are sewn or begun already." in refusal(state, c.ChangeTarget(3, 9))
    state = go_on(state, record, c.Unpick("sew-rows", 3))
    assert "Of rows begun, say what is still sewn." in refusal(state, c.Unpick("sew-rows"))
    assert "with 5 units sewn together" in refusal(state, c.ChangeTarget(4, 5))
    assert go_on(state, record, c.ChangeTarget(4, 6)).begun == ((1, 5),)


def test_too_few_units_for_what_is_said_to_be_begun() -> None:
    few = a_quilt("plain-squares", 8, rows=4, columns=9)
    state, _ = play(few, *all_units(few))
    assert "10 units would be in 5 pairs, and only 8 units lie there" in refusal(
        state, c.BeginRows(((5, 2),))
    )


def test_units_missing_for_a_begun_row_are_missed_as_those_of_no_row_are() -> None:
    """36 units are wanted and 35 are there, however they lie."""
    few = a_quilt("plain-squares", 35, rows=4, columns=9)
    loose, record = play(few, *all_units(few))
    begun = go_on(loose, record, c.BeginRows(((3, 5),)))
    assert plan(loose).shortfall == plan(begun).shortfall
    assert plan(begun).units == plan(loose).units


# What can be made of pieces, against trying every way to lay them out.

SOME = [in_order(((a, 2), (b, 3), (d, 4))) for a, b, d in product(range(4), range(3), range(3))]


@pytest.mark.parametrize("begun", SOME)
def test_pieces_lie_in_rows_none_is_lost_and_no_row_is_overfull(
    begun: tuple[tuple[int, int], ...],
) -> None:
    rows = rows_begun(begun, 7)
    assert sum(map(sum, rows)) == units_in(begun)
    assert all(sum(row) <= 7 for row in rows)
    for n in range(len(rows) + 1):
        left = left_begun(begun, 7, n)
        assert units_in(left) + held(begun, 7, n) == units_in(begun)
    seams = sum(sum(row) - len(row) for row in rows)
    assert part_sewn(begun, 7, len(rows)) == pytest.approx(seams / 6)


@pytest.mark.parametrize("begun", SOME)
def test_no_choice_of_rows_to_finish_makes_more_of_them(
    begun: tuple[tuple[int, int], ...],
) -> None:
    """Every choice is tried: finish these, and make whole rows of the loose units left."""
    rows = rows_begun(begun, 7)
    for loose in range(23):
        most = max(
            len(finished) + (loose - costs) // 7
            for n in range(len(rows) + 1)
            for finished in combinations(rows, n)
            if (costs := sum(7 - sum(row) for row in finished)) <= loose
        )
        assert can_be_made(begun, 7, loose) == most


def test_pieces_of_one_length_begin_as_few_rows_as_they_fit_in() -> None:
    """So many of a length fit in a row as its length goes into it."""
    for units, n, across in product(range(2, 6), range(1, 12), range(6, 10)):
        assert len(rows_begun(((n, units),), across)) == -(-n // (across // units))


def test_units_of_a_row_begun_keep_their_size() -> None:
    state, _ = play(PLAIN, *all_units(PLAIN), c.BeginRows(((1, 5),)))
    size = Fraction(9, 2)
    assert "A row is begun with units of 5 in." in refusal(state, c.DecideUnit(size, size))
