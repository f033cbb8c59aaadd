"""What is laid on the wall is kept, changed by acts, undone like anything, and what is sewn stays."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from random import Random

import pytest
from msgspec.structs import replace

from sewalong.progress.joining.nesting import nesting_facts
from sewalong.progress.record.events.replanning import planned
from sewalong.progress.record.events.wall import WallLaid
from sewalong.progress.record.fold import fold
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.sewn_places import sewn_places, units_sewn
from sewalong.progress.record.state import State
from sewalong.progress.record.wall import LaidUnit, Row
from sewalong.progress.wall.on_wall import asked_of, on_wall, rows_of
from sewalong.progress.wall.units import units_by_letter, units_to_lay
from sewalong.progress.wall.wall_words import pressed_under, row_read
from sewalong.quilt.quilt import Target
from sewalong.quilt.setting import SetOnPoint
from sewalong.store.codec import event_from_json, event_to_json
from sewalong.wall.laying.rows import with_row_turned
from sewalong.wall.laying.search import laid
from tests.progress import every_act as c
from tests.progress.building import Record, a_quilt, go_on, play, suited
from tests.progress.sets.fabrics import sets_of, with_fabrics


def a_wall(rows: int = 3, columns: int = 4, **changed: object) -> tuple[State, Record]:
    """Twelve units of three sets, laid in order of making."""
    quilt = replace(with_fabrics(), target=Target(rows, columns), **changed)
    state, record = play(quilt, c.AcceptSets(sets_of(8, 3)))
    units = units_to_lay(state)
    lengths = [row.units for row in quilt.rows_for(quilt.target)]
    numbers = iter(range(len(units)))
    laid_rows = tuple(
        tuple((n, 0) if (n := next(numbers, None)) is not None else None for _ in range(length))
        for length in lengths
    )
    return go_on(state, record, c.LayWall(units, laid_rows)), record


def sewn(state: State, record: Record, rows: int) -> State:
    """So many rows sewn, of units found."""
    state = go_on(state, record, c.Find("unit", 12, "bought"))
    return go_on(state, record, c.Count("sew-rows", rows))


def test_units_are_those_of_all_sets_in_order_of_making() -> None:
    state, record = play(with_fabrics(), c.AcceptSets(sets_of(8, 3)))
    state = go_on(state, record, c.MarkSet(2, "held back"))
    assert [(unit.set, unit.unit) for unit in units_to_lay(state)] == [
        (number, unit) for number in (1, 3) for unit in range(4)
    ]


def test_of_plain_squares_each_square_is_a_unit() -> None:
    state, _ = play(with_fabrics("plain-squares", each=3, pieces=36))
    assert Counter(unit.squares for unit in units_to_lay(state)) == {
        (letter,): 3 for letter in "ABCDEFGHIJKL"
    }


def test_swap_turn_put_in_and_take_out_are_one_undo_each() -> None:
    state, record = a_wall()
    laid_first = state.wall
    for act, then in (
        (c.SwapPlaces(1, 1, 3, 4), {(1, 1): (11, 0), (3, 4): (0, 0)}),
        (c.TurnUnit(2, 2, 3), {(2, 2): (5, 3)}),
        (c.PutSpare(1, 2), {(1, 2): None}),
        (c.MoveMany(((1, 1, 1, 2), (1, 2, 0, 1))), {(1, 1): (1, 2), (1, 2): (0, 1)}),
    ):
        after = go_on(state, record, act)
        for at, lies in then.items():
            assert after.wall.at(at) == lies
        same = [at for at in ((2, 1), (3, 1), (2, 4)) if at not in then]
        assert [after.wall.at(at) for at in same] == [laid_first.at(at) for at in same]
        assert go_on(after, record, c.Undo()).wall == laid_first


def test_what_is_taken_out_is_spare_and_can_be_put_in_elsewhere() -> None:
    state, record = a_wall()
    state = go_on(state, record, c.PutSpare(1, 2))
    assert state.wall.spares() == (1,)
    state = go_on(state, record, c.PutSpare(3, 4, 1, 2))
    assert state.wall.at((3, 4)) == (1, 2)
    assert state.wall.spares() == (11,)
    with pytest.raises(Refused, match="not spare"):
        go_on(state, record, c.PutSpare(1, 1, 1))


def test_a_unit_lies_in_one_place_only() -> None:
    state, record = a_wall()
    with pytest.raises(Refused, match="one place only"):
        go_on(state, record, c.MoveMany(((1, 1, 5, 0),)))


@pytest.mark.parametrize(
    ("act", "said"),
    [
        (c.SwapPlaces(1, 1, 1, 1), "Name two places"),
        (c.SwapPlaces(4, 1, 1, 1), "There is no row 4"),
        (c.SwapPlaces(1, 5, 1, 1), "Row 1 has places 1 to 4"),
        (c.TurnUnit(1, 1, 4), "lies already"),
        (c.MoveMany(((1, 1, 40, 0),)), "unit that there is not"),
        (c.MoveMany(((1, 1, 0, 4),)), "beyond three quarters"),
        (c.LockPlaces((), True), "Name a place"),
        (c.LockPlaces(((1, 1),), False), "Nothing there is locked"),
        (c.ExchangeRows(2, 2), "Name two rows"),
        (c.ExchangeRows(1, 4), "no row 4"),
        (c.OrderRows((1, 1, 2)), "each row once"),
        (c.OrderRows((1, 2, 3)), "in that order already"),
        (c.OrderRows((2, 1, 3), (4,)), "numbered from 1 to 3"),
    ],
)
def test_refused_and_nothing_recorded(act: c.Act, said: str) -> None:
    state, record = a_wall()
    before = len(record)
    with pytest.raises(Refused, match=said):
        go_on(state, record, act)
    assert len(record) == before


def test_nothing_can_be_moved_where_nothing_is_laid() -> None:
    state, record = play(with_fabrics())
    for act in (c.SwapPlaces(1, 1, 1, 2), c.TurnUnit(1, 1), c.PutSpare(1, 1), c.TurnRow(1),
                c.ExchangeRows(1, 2), c.OrderRows((2, 1)), c.LockPlaces(((1, 1),))):  # fmt: skip
        with pytest.raises(Refused, match="Nothing is laid on the wall yet"):
            go_on(state, record, act)
    with pytest.raises(Refused, match="Nothing is laid"):
        go_on(state, record, c.ClearWall())


def test_what_is_locked_stays_until_it_is_unlocked_and_is_kept_by_a_proposal() -> None:
    state, record = a_wall()
    state = go_on(state, record, c.LockPlaces(((1, 1), (2, 3))))
    with pytest.raises(Refused, match="Row 1 place 1 is locked"):
        go_on(state, record, c.TurnUnit(1, 1))
    units, asked = asked_of(state, units_to_lay(state))
    found = laid(asked, 5).laying
    state = go_on(state, record, c.LayWall(units, rows_of(found)))
    was = {(1, 1): (1, 0), (2, 3): (2, 2)}
    for at, (of_set, unit) in was.items():
        lies = state.wall.at(at)
        assert lies is not None
        assert (state.wall.units[lies[0]].set, state.wall.units[lies[0]].unit) == (of_set, unit)
        assert lies[1] == 0
    assert state.wall.locked == {(1, 1), (2, 3)}
    state = go_on(state, record, c.LockPlaces(((1, 1),), False))
    assert go_on(state, record, c.TurnUnit(1, 1)).wall.locked == {(2, 3)}


def test_rows_sewn_are_kept_by_moves_and_by_proposals() -> None:
    state, record = a_wall()
    state = sewn(state, record, 2)
    assert units_sewn(state) == (4, 4, 0)
    with pytest.raises(Refused, match="row 2 place 1 is sewn to its row already"):
        go_on(state, record, c.SwapPlaces(2, 1, 3, 1))
    units, asked = asked_of(state, units_to_lay(state), seed=7)
    assert asked.locked == {(row, place) for row in (1, 2) for place in (1, 2, 3, 4)}
    state = go_on(state, record, c.LayWall(units, rows_of(laid(asked, 5).laying)))
    wall = state.wall
    assert [wall.units[lies[0]] for row in wall.rows[:2] for lies in row if lies] == list(
        units_to_lay(state)[:8]
    )
    with pytest.raises(Refused, match="sewn"):
        go_on(state, record, c.LayWall(units, wall.rows[::-1]))


def test_exchanged_rows_take_along_what_they_were_pressed_under() -> None:
    state, record = a_wall()
    state = sewn(state, record, 3)
    rows = state.wall.rows
    state = go_on(state, record, c.ExchangeRows(1, 3))
    assert state.wall.rows == (rows[2], rows[1], rows[0])
    assert state.wall.pressed == (3, 2, 1)
    state = go_on(state, record, c.TurnRow(2))
    assert state.wall.pressed == (3, -2, 1)
    assert state.wall.rows[1] == tuple(
        (lies[0], 2) for lies in reversed(rows[1]) if lies is not None
    )
    assert go_on(go_on(state, record, c.Undo()), record, c.Undo()).wall.rows == rows


def test_rows_that_are_not_sewn_are_pressed_by_the_place_they_lie_in() -> None:
    state, record = a_wall()
    state = sewn(state, record, 1)
    rows = state.wall.rows
    state = go_on(state, record, c.ExchangeRows(2, 3))
    assert state.wall.rows == (rows[0], rows[2], rows[1])
    assert state.wall.pressed == (1, 2, 3)
    with pytest.raises(Refused, match="One of rows 1 and 2 is sewn"):
        go_on(state, record, c.ExchangeRows(1, 2))
    state = go_on(state, record, c.BeginRows(((1, 2),)))
    with pytest.raises(Refused, match="Row 2 is half sewn"):
        go_on(state, record, c.TurnRow(2))


def test_a_row_turned_is_the_engine_s_row_turned() -> None:
    state, record = a_wall()
    state = go_on(state, record, c.TurnUnit(2, 1, 1))
    before = on_wall(state)
    state = go_on(state, record, c.TurnRow(2))
    after = on_wall(state)
    assert before is not None
    assert after is not None
    assert after.laying == with_row_turned(before.laying, 2)


def test_rows_joined_are_not_exchanged() -> None:
    state, record = a_wall()
    state = sewn(state, record, 3)
    state = go_on(state, record, c.JoinRows(1, 2))
    with pytest.raises(Refused, match="Row 2 is joined"):
        go_on(state, record, c.ExchangeRows(2, 3))
    with pytest.raises(Refused, match="Row 1 is joined"):
        go_on(state, record, c.TurnRow(1))
    assert go_on(state, record, c.TurnRow(3)).wall.pressed == (1, 2, -3)


def test_a_row_begun_is_sewn_as_far_as_it_is_one_piece() -> None:
    state, record = a_wall()
    state = go_on(state, record, c.Find("unit", 12, "bought"))
    state = go_on(state, record, c.BeginRows(((1, 3),)))
    assert sewn_places(state) == {(1, 1), (1, 2), (1, 3)}
    state = go_on(state, record, c.BeginRows(((2, 2),)))
    # Two pairs may be of any two places: nobody knows.
    assert units_sewn(state) in ((0, 0, 0), (2, 2, 0))


def test_another_layout_keeps_what_has_its_place_and_the_rest_is_spare() -> None:
    state, record = a_wall()
    rows = state.wall.rows
    state = go_on(state, record, c.LockPlaces(((1, 1), (3, 4))))
    state = go_on(state, record, c.ChangeTarget(4, 3))
    assert state.wall.rows == (*(row[:3] for row in rows), (None, None, None))
    assert state.wall.spares() == (3, 7, 11)
    assert state.wall.locked == {(1, 1)}
    assert state.wall.pressed == (1, 2, 3, 4)
    assert go_on(state, record, c.Undo()).wall.rows == rows


def test_on_point_no_place_of_the_old_layout_is_one_of_the_new() -> None:
    state, record = a_wall()
    state = go_on(
        state,
        record,
        c.ChangePlan(planned(state), replace(planned(state), setting=SetOnPoint("chalk"))),
    )
    assert not state.wall.is_laid
    assert [len(row) for row in state.wall.rows] == [
        row.units for row in state.quilt.rows_for(state.target)
    ]
    assert len(state.wall.spares()) == 12


def test_units_typed_by_letters() -> None:
    quilt = replace(with_fabrics(), target=Target(2, 3))
    state, record = play(quilt)
    units = units_by_letter("ABABAB")
    rows: tuple[Row, ...] = (((0, 0), (1, 0), (2, 0)), ((3, 0), (4, 0), (5, 0)))
    state = go_on(state, record, c.LayWall(units, rows, how="typed"))
    wall = on_wall(state)
    assert wall is not None
    assert wall.board().touches() == 0
    state = go_on(state, record, c.SwapPlaces(1, 1, 1, 2))
    wall = on_wall(state)
    assert wall is not None
    assert wall.board().touches() == 3


@pytest.mark.parametrize(
    "units",
    [
        (LaidUnit(0, -1, ("ABC",)),),
        (LaidUnit(0, -1, ("é",)),),
        (LaidUnit(9, 0, tuple("ABCDEFGH")),),
        (LaidUnit(1, 4, tuple("ABCDEFGH")),),
        (LaidUnit(1, 0, tuple("ABCDEFG")),),
        (LaidUnit(1, 0, tuple("ABCDEFGZ")),),
        (LaidUnit(1, 0, tuple("ABCDEFGH")),) * 2,
        (),
    ],
)
def test_units_there_cannot_be_are_refused(units: tuple[LaidUnit, ...]) -> None:
    quilt = replace(with_fabrics(), target=Target(2, 2))
    state, record = play(quilt, c.AcceptSets(sets_of(8, 3)))
    with pytest.raises(Refused):
        go_on(state, record, c.LayWall(units, ((None, None), (None, None))))


def test_a_unit_longer_than_wide_is_turned_half_way_round_only() -> None:
    quilt = suited(a_quilt("flying-geese-four", 90, 2, 2))
    state, record = play(quilt)
    units = units_by_letter("ABCD")
    rows: tuple[Row, ...] = (((0, 0), (1, 2)), ((2, 0), (3, 0)))
    with pytest.raises(Refused, match="longer than they are wide"):
        go_on(state, record, c.LayWall(units, (((0, 1), (1, 0)), rows[1]), how="typed"))
    state = go_on(state, record, c.LayWall(units, rows, how="typed"))
    with pytest.raises(Refused, match="longer than they are wide"):
        go_on(state, record, c.TurnUnit(1, 1))
    assert go_on(state, record, c.TurnUnit(1, 1, 2)).wall.at((1, 1)) == (0, 2)


def test_an_unknown_patch_touches_nothing() -> None:
    quilt = replace(with_fabrics(), target=Target(1, 2))
    state, record = play(quilt)
    unknown = (LaidUnit(0, 0, ("",) * 8), LaidUnit(0, 0, ("",) * 8))
    state = go_on(state, record, c.LayWall(unknown, (((0, 0), (1, 0)),), how="photograph"))
    wall = on_wall(state)
    assert wall is not None
    assert wall.board().touches() == 0
    assert "not known" in row_read(state, 1)[0]


def test_a_swap_within_sets_is_seen_on_the_wall() -> None:
    state, record = a_wall()
    assert "B oat" in row_read(state, 1)[0]
    state = go_on(state, record, c.SwapSquares(1, 2, 3, 4))
    assert "B oat" not in row_read(state, 1)[0]


def test_how_it_is_read_aloud() -> None:
    state, record = a_wall()
    state = sewn(state, record, 1)
    first, *_ = row_read(state, 1)
    assert first.startswith("Place 1: unit 1 of set 1, ")
    assert " towards row 1" in first
    assert first.endswith(", sewn.")


def test_what_is_written_reads_as_it_was() -> None:
    _, record = a_wall()
    event = record[-1].event
    assert isinstance(event, WallLaid)
    assert event_from_json(event_to_json(event)) == event


@pytest.mark.parametrize("seed", range(12))
def test_no_history_lays_a_unit_twice_or_loses_one(seed: int) -> None:
    chance = Random(seed)
    state, record = a_wall()
    quilt = state.quilt
    state = go_on(state, record, c.Find("unit", 12, "bought"))

    def at() -> tuple[int, int]:
        return chance.randint(1, 3), chance.randint(1, 4)

    ways: tuple[Callable[[], c.Act], ...] = (
        lambda: c.SwapPlaces(*at(), *at(), chance.randrange(4)),
        lambda: c.TurnUnit(*at(), chance.randrange(4)),
        lambda: c.PutSpare(*at()),
        lambda: c.PutSpare(*at(), chance.randrange(12), chance.randrange(4)),
        lambda: c.ExchangeRows(chance.randint(1, 3), chance.randint(1, 3)),
        lambda: c.TurnRow(chance.randint(1, 3)),
        lambda: c.LockPlaces((at(),), chance.random() < 0.3),
        lambda: c.Count("sew-rows"),
        lambda: c.Unpick("sew-rows", 1),
        c.Undo,
        c.Redo,
    )
    for _ in range(60):
        before = state
        fixed = {
            spot: state.wall.at(spot)
            for spot in sewn_places(state)
            if state.wall.at(spot) is not None
        }
        made = chance.choice(ways)()
        try:
            state = go_on(state, record, made)
        except Refused:
            assert state is before
            continue
        lying = [lies[0] for row in state.wall.rows for lies in row if lies is not None]
        assert len(set(lying)) == len(lying)
        assert sorted([*lying, *state.wall.spares()]) == list(range(12))
        if isinstance(made, c.SwapPlaces | c.TurnUnit | c.PutSpare):
            assert {spot: state.wall.at(spot) for spot in fixed} == fixed
        assert {abs(under) for under in state.wall.pressed} <= {1, 2, 3}
    assert fold(quilt, record) == state
    assert len(pressed_under(state)) == 3


def test_rows_unpicked_are_pressed_as_they_lie_when_they_are_sewn_again() -> None:
    state, record = a_wall()
    state = sewn(state, record, 3)
    state = go_on(state, record, c.ExchangeRows(1, 2))
    assert state.wall.pressed == (2, 1, 3)
    # Rows are unpicked from the last on: row 1 stays as it was pressed.
    state = go_on(state, record, c.Unpick("sew-rows", 2))
    assert state.wall.pressed == (2, 2, 3)
    state = go_on(state, record, c.Unpick("sew-rows", 1), c.Count("sew-rows", 3))
    assert state.wall.pressed == (1, 2, 3)


def test_what_was_pressed_stays_known_when_the_wall_is_cleared_and_laid_again() -> None:
    state, record = a_wall()
    state = sewn(state, record, 3)
    state = go_on(state, record, c.ExchangeRows(1, 2))
    units, rows = state.wall.units, state.wall.rows
    state = go_on(state, record, c.ClearWall())
    assert not state.wall.is_laid
    state = go_on(state, record, c.LayWall(units, rows))
    assert state.wall.pressed == (2, 1, 3)


def test_rows_sewn_elsewhere_do_not_finish_the_row_begun_at_home() -> None:
    state, record = a_wall()
    state = go_on(state, record, c.Find("unit", 12, "bought"), c.BeginRows(((1, 3),)))
    state = go_on(state, record, c.PutPileAway("unit", "Ann's", 4))
    state = go_on(state, record, c.CountElsewhere("sew-rows", 1, "Ann's", "Ann"))
    assert state.begun == ((1, 3),)
    assert state.piles["unit"] == 5


def test_no_row_that_is_joined_is_told_to_be_pressed_anew() -> None:
    state, record = a_wall()
    state = sewn(state, record, 3)
    state = go_on(state, record, c.JoinRows(1, 2), c.TurnRow(3))
    *_, press = nesting_facts(state)
    assert press == "Press row 3 the other way, and all nest."
