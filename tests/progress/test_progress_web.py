"""A web from its first seam to the top: passes counted seam by seam, resumed inside a pass."""

from __future__ import annotations

from fractions import Fraction
from random import Random

import pytest
from msgspec.structs import replace

from sewalong.progress.joining.current_stage import in_hand
from sewalong.progress.joining.next_joins import joining
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.rows_sewn import rows_sewn, units_in_rows
from sewalong.progress.record.state import State
from sewalong.progress.record.web_rows import next_seam, rows_joined, units_in_web
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.web import WEB
from tests.progress import every_act as c
from tests.progress.building import MINUTE, a_quilt, all_units, do, go_on, opening, play
from tests.progress.walking import after_the_units, walk_to_the_end


def a_web(rows: int = 4, columns: int = 5, *, spare: int = 0, borders: int = 0) -> Quilt:
    """Plain squares, one unit each, as many as are wanted and `spare`."""
    quilt = a_quilt("plain-squares", rows * columns + spare, rows, columns, borders=borders)
    return replace(quilt, joined=WEB)


def seams(state: State) -> int:
    return sum(line.done for line in plan(state).lines if line.stage.id.endswith("-web"))


def sewn_so_far(quilt: Quilt, short: int) -> list[c.Act]:
    """All units, and so many of the short seams."""
    rows = quilt.target.rows
    started, added = min(short, rows), max(0, short - rows)
    counts = [c.Count("start-web", started)] if started else []
    return [*all_units(quilt), *counts, *([c.Count("sew-web", added)] if added else [])]


def by_hand(rows: int, columns: int) -> list[tuple[int, int, int]]:
    """Every short seam in the order of the passes: its pass, its row, and the column sewn on."""
    return [
        (column - 1, row, column) for column in range(2, columns + 1) for row in range(1, rows + 1)
    ]


@pytest.mark.parametrize(
    ("rows", "columns", "short", "long"), [(8, 6, 40, 7), (9, 9, 72, 8), (2, 2, 2, 1)]
)
def test_a_web_has_as_many_seams_as_rows(rows: int, columns: int, short: int, long: int) -> None:
    """N028: 8 rows of 6 are 40 short seams and 7 long ones; r(c - 1) and r - 1."""
    lines = {line.stage.id: line.needed for line in plan(opening(a_web(rows, columns))).lines}
    assert sum(n for id, n in lines.items() if id.endswith("-web")) == short == rows * (columns - 1)
    assert lines["join-rows"] == long == rows - 1


def test_the_stages_of_a_web() -> None:
    web = ["start web", "sew web", "join rows", "add borders"]
    assert after_the_units(a_web(borders=1)) == web
    # In two columns the first pass is the only one.
    assert after_the_units(a_web(3, 2)) == ["start web", "join rows"]


@pytest.mark.parametrize("joins", range(4))
def test_long_seams_counted_without_their_rows_hold_the_first(joins: int) -> None:
    """The first joins two rows, each further one a row more."""
    quilt = a_web(4, 3)
    state, _ = play(quilt, *sewn_so_far(quilt, 8), *[c.Count("join-rows", 1)] * joins)
    assert rows_joined(state) == (set(range(1, joins + 2)) if joins else set())


@pytest.mark.parametrize(("rows", "columns"), [(2, 2), (2, 5), (5, 2), (3, 4), (4, 5)])
def test_seam_by_seam_against_a_web_laid_out(rows: int, columns: int) -> None:
    """Every seam, every row's length, and every unit in or out of the web, after each count."""
    quilt = a_web(rows, columns)
    state, record = play(quilt, *all_units(quilt))
    held = [0] * rows
    for number, row, column in by_hand(rows, columns):
        seam = next_seam(state)
        assert seam is not None
        assert (seam.number, seam.row, seam.column) == (number, row, column)
        assert seam.passes == columns - 1
        state = go_on(state, record, c.Count("start-web" if number == 1 else "sew-web"))
        held[row - 1] += 2 if number == 1 else 1
        assert units_in_web(state) == tuple(held)
        assert units_in_rows(state) == sum(held)
        assert state.piles["unit"] == rows * columns - sum(held)
        assert rows_sewn(state) == sum(units == columns for units in held)
        assert plan(state).units.made == rows * columns
    assert next_seam(state) is None
    state = go_on(state, record, *(c.JoinRows(row, row + 1) for row in range(1, rows)))
    assert plan(state).complete


@pytest.mark.parametrize("seed", range(24))
def test_a_walk_through_every_stage_ends_done_and_conserves_every_piece(seed: int) -> None:
    """In lots of any size, with pieces spoiled, seams unpicked and acts undone on the way."""
    chance = Random(seed)
    rows, columns = chance.randint(2, 4), chance.randint(2, 5)
    quilt = a_quilt("paired-squares", 4 * rows * columns + 40, rows, columns, borders=seed % 2)
    state = walk_to_the_end(replace(quilt, joined=WEB), chance, mishap)
    assert rows_sewn(state) >= rows
    assert units_in_rows(state) >= rows * columns


def mishap(chance: Random, state: State) -> c.Act | None:
    what = chance.random()
    if what < 0.08:
        return c.Spoil(chance.choice(("web-row", "web-unit", "unit")), 1, "stretched")
    if what < 0.2:
        return c.Unpick(chance.choice(("start-web", "sew-web", "join-rows")), 1)
    if what < 0.26:
        return c.Undo()
    if what < 0.32:
        pile = chance.choice(("web-row", "web-unit"))
        return c.Recount(pile, state.piles[pile] + chance.choice((-1, 1)), "stands")
    return None


def test_the_stage_in_hand_says_the_pass_and_the_place() -> None:
    quilt = a_web(9, 9)
    said = {}
    for short in (0, 5, 9, 32, 71):
        state, _ = play(quilt, *sewn_so_far(quilt, short))
        said[short] = in_hand(state, plan(state)).which
    assert said == {
        0: "Pass 1 of 8: next row 1, columns 1 and 2.",
        5: "Pass 1 of 8: next row 6, columns 1 and 2.",
        9: "Pass 2 of 8: next column 3, row 1.",
        32: "Pass 4 of 8: next column 5, row 6.",
        71: "Pass 8 of 8: next column 9, row 9.",
    }


def test_no_pass_before_the_first_and_no_seam_the_web_has_no_place_for() -> None:
    quilt = a_web(spare=9)
    state, record = play(quilt, *all_units(quilt), c.Count("start-web", 3))
    at = record[-1].event.at + MINUTE
    with pytest.raises(Refused, match=r"not all of the 4 rows are started. Start the web in every"):
        do(state, record, c.Count("sew-web", 1), at)
    with pytest.raises(Refused, match="Only 1 seam is left at start web"):
        do(state, record, c.Count("start-web", 2), at)
    state = go_on(state, record, c.Count("start-web", 1), c.Count("sew-web", 12))
    at = record[-1].event.at + MINUTE
    with pytest.raises(
        Refused, match=r"Start web is done: 4 seams. To go further, change the target"
    ):
        do(state, record, c.Count("start-web", 1), at)
    with pytest.raises(
        Refused, match=r"Sew web is done: 12 seams. To go further, change the target"
    ):
        do(state, record, c.Count("sew-web", 1), at)


def test_too_few_units_are_said_as_at_every_stage() -> None:
    quilt = a_web()
    state, record = play(
        quilt, *all_units(quilt), c.Count("start-web", 4), c.Spoil("unit", 11, "torn")
    )
    with pytest.raises(Refused, match="each takes 1 unit, and 1 unit waits, enough for 1"):
        do(state, record, c.Count("sew-web", 2), record[-1].event.at + MINUTE)


def test_a_row_that_goes_on_is_not_taken_apart_at_its_start() -> None:
    quilt = a_web()
    state, record = play(quilt, *sewn_so_far(quilt, 6))
    with pytest.raises(Refused, match="Only 2 seams from start web can be taken apart"):
        do(state, record, c.Unpick("start-web", 3), record[-1].event.at + MINUTE)
    state = go_on(state, record, c.Unpick("sew-web", 2), c.Unpick("start-web", 4))
    assert (state.piles["unit"], seams(state)) == (20, 0)


def test_what_the_long_seams_hold_is_neither_unpicked_nor_spoiled() -> None:
    """Rows 1 and 2 joined hold three added units each."""
    quilt = a_web()
    state, record = play(quilt, *sewn_so_far(quilt, 16), c.JoinRows(1, 2))
    at = record[-1].event.at + MINUTE
    with pytest.raises(Refused, match="Only 6 seams from sew web can be taken apart"):
        do(state, record, c.Unpick("sew-web", 7), at)
    with pytest.raises(Refused, match="Only 2 rows started lie there"):
        do(state, record, c.Spoil("web-row", 3, "torn"), at)
    state = go_on(state, record, c.Unpick("sew-web", 6))
    assert units_in_web(state) == (5, 5, 2, 2)
    assert in_hand(state, plan(state)).which == "Pass 2 of 4: next column 3, row 3."
    # Rows 3 and 4 are two units each, and all that is left to take apart.
    with pytest.raises(Refused, match="Only 2 seams from start web"):
        do(state, record, c.Unpick("start-web", 3), record[-1].event.at + MINUTE)


def test_a_recount_of_the_rows_started_stands_and_the_row_comes_next() -> None:
    quilt = a_web()
    state, _ = play(quilt, *sewn_so_far(quilt, 8), c.Recount("web-row", 3, "made"))
    assert state.piles["unit"] == 10
    seam = next_seam(state)
    assert seam is not None
    assert (seam.number, seam.row) == (1, 4)
    assert plan(state).suggestion is not None
    assert in_hand(state, plan(state)).line.stage.id == "start-web"


def test_long_seams_are_joined_by_their_rows_once_rows_are_whole() -> None:
    quilt = a_web()
    state, record = play(quilt, *sewn_so_far(quilt, 13))
    assert joining(state).can == 0
    with pytest.raises(Refused, match="1 row sewn so far"):
        do(state, record, c.JoinRows(1, 2), record[-1].event.at + MINUTE)
    state = go_on(state, record, c.Count("sew-web", 3))
    assert [(join.first, join.second) for join in joining(state).joins] == [(1, 2), (3, 4)]


def test_rows_are_not_begun_in_a_web() -> None:
    quilt = a_web()
    state, record = play(quilt, *all_units(quilt))
    with pytest.raises(Refused, match="In a web no row is begun by itself"):
        do(state, record, c.BeginRows(((1, 2),)), record[-1].event.at + MINUTE)


def test_another_layout_keeps_the_passes_that_are_sewn() -> None:
    quilt = a_web(spare=20)
    state, record = play(quilt, *sewn_so_far(quilt, 10))
    at = record[-1].event.at + MINUTE
    for rows, columns, why in (
        (5, 5, "6 units added are sewn on already, in passes of 4. Unpick them first"),
        (4, 3, "and 4 rows of 3 take 4. Unpick 2 first, or keep 4 × 5"),
        (4, 2, "and 4 rows of 2 take none"),
        (1, 5, "A web has at least two rows and two columns"),
    ):
        with pytest.raises(Refused, match=why):
            do(state, record, c.ChangeTarget(rows, columns), at)
    before = state
    state = go_on(state, record, c.ChangeTarget(4, 7))
    assert plan(state).line("sew-web").to_do == 14
    assert in_hand(state, plan(state)).which == "Pass 3 of 6: next column 4, row 3."
    state = go_on(state, record, c.ChangeTarget(4, 4))
    assert plan(state).line("sew-web").to_do == 2
    assert units_in_web(state) == units_in_web(before) == (4, 4, 3, 3)


def test_rows_can_be_more_or_fewer_while_the_first_pass_is_sewn() -> None:
    quilt = a_web(spare=20)
    state, record = play(quilt, *sewn_so_far(quilt, 3), c.ChangeTarget(6, 5))
    assert in_hand(state, plan(state)).which == "Pass 1 of 4: next row 4, columns 1 and 2."
    with pytest.raises(Refused, match=r"3 rows started already. Unpick 1 first, or keep 3 rows"):
        do(state, record, c.ChangeTarget(2, 5), record[-1].event.at + MINUTE)
    state = go_on(state, record, c.ChangeTarget(3, 5))
    assert state.target == Target(3, 5)


def test_where_units_are_short_a_web_that_is_begun_is_offered_fewer_columns() -> None:
    quilt = a_web()
    state, record = play(quilt, *sewn_so_far(quilt, 6), c.Spoil("unit", 2, "torn"))
    short = plan(state).shortfall
    assert short is not None
    assert short.layouts == (Target(4, 4),)
    state = go_on(state, record, c.ChangeTarget(4, 4))
    assert plan(state).shortfall is None


def test_the_plan_changes_between_rows_and_web_only_while_neither_is_begun() -> None:
    rows = replace(a_web(), joined="rows")
    state, record = play(rows, *all_units(rows), c.BeginRows(((3, 2),)))

    def change(state: State, **parts: object) -> c.ChangePlan:
        was = replace(state.quilt, target=state.target)
        return c.ChangePlan(was, replace(was, **parts))

    def refused(act: c.Act, why: str) -> None:
        with pytest.raises(Refused, match=why):
            do(state, record, act, record[-1].event.at + MINUTE)

    refused(change(state, joined=WEB), "Write down that nothing is begun first")
    state = go_on(state, record, c.BeginRows(()), c.Count("sew-rows", 1))
    refused(change(state, joined=WEB), "1 row is sewn already, one after another. Unpick it first")
    state = go_on(state, record, c.Unpick("sew-rows", 1))
    state = go_on(state, record, change(state, joined=WEB))
    assert state.quilt.is_web
    state = go_on(state, record, c.Count("start-web", 4), c.Count("sew-web", 1))
    refused(
        change(state, joined="rows"), "5 seams of the web are sewn already. Count them as unpicked"
    )
    state = go_on(state, record, c.Unpick("sew-web", 1), c.Unpick("start-web", 4))
    # Another layout that no web has, and rows, in one change.
    state = go_on(state, record, change(state, joined="rows", target=Target(1, 5)))
    assert (state.quilt.is_web, state.target) == (False, Target(1, 5))
    state = go_on(state, record, c.Undo())
    assert (state.quilt.is_web, state.target) == (True, Target(4, 5))


def test_units_in_a_web_keep_their_size() -> None:
    """What is sewn has to be unpicked first, the last sewn first, as with rows."""
    quilt = a_web()
    state, record = play(quilt, *sewn_so_far(quilt, 16), c.JoinRows(1, 2))
    with pytest.raises(Refused) as refused:
        do(state, record, c.DecideUnit(Fraction(4), Fraction(4)), record[-1].event.at + MINUTE)
    assert "4 rows started are sewn already with units of 5 in" in str(refused.value)
    assert "1 seam at join rows, then 12 units added, then 4 rows started" in str(refused.value)


def test_undo_takes_back_a_seam_and_redo_puts_it_back() -> None:
    quilt = a_web()
    state, record = play(quilt, *sewn_so_far(quilt, 10))
    before = units_in_web(state)
    state = go_on(state, record, c.Count("sew-web", 1), c.Undo())
    assert units_in_web(state) == before
    state = go_on(state, record, c.Redo())
    assert units_in_web(state) == (4, 4, 4, 3)
