"""A quilt on point from first cut to done: rows of differing lengths, counted by what lies in them."""

from __future__ import annotations

from random import Random

import pytest
from msgspec.structs import replace

from sewalong.progress.joining.current_stage import in_hand
from sewalong.progress.joining.next_joins import joining
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.rows_sewn import rows_sewn
from sewalong.progress.record.state import State
from sewalong.quilt.quilt import Quilt, Target
from tests.progress import every_act as c
from tests.progress.building import MINUTE, a_quilt, all_units, do, go_on, opening, play
from tests.progress.walking import after_the_units, walk_to_the_end
from tests.progress.wandering import ON_POINT


def on_point(rows: int = 3, columns: int = 2, *, spare: int = 0, borders: int = 0) -> Quilt:
    """Plain squares, one unit each, as many as are wanted and `spare`."""
    units = rows * columns + (rows - 1) * (columns - 1)
    quilt = a_quilt("plain-squares", units + spare, rows, columns, borders=borders)
    return replace(quilt, setting=ON_POINT)


def test_the_stages_that_setting_on_point_brings() -> None:
    assert after_the_units(on_point(borders=1)) == [
        "cut triangles",
        "cut corners",
        "sew rows",
        "add triangles",
        "join rows",
        "add corners",
        "add borders",
    ]
    # One unit alone has four corners and no row to join.
    assert after_the_units(on_point(1, 1)) == ["cut corners", "sew rows", "add corners"]
    assert after_the_units(on_point(1, 3)) == [
        "cut triangles",
        "cut corners",
        "sew rows",
        "add triangles",
        "join rows",
        "add corners",
    ]


def test_how_many_of_each_three_rows_of_two_need() -> None:
    """By hand: six whole units and two between; rows of 1, 3, 3 and 1; two gaps in each long edge
    and one in each short one, so six triangles, from two squares cut twice."""
    needed = {line.stage.id: line.needed for line in plan(opening(on_point())).lines}
    assert needed["sew-rows"] == 8
    assert needed["add-side-triangles"] == 6
    assert needed["cut-side-triangles"] == 2
    assert needed["cut-corner-triangles"] == 2
    assert needed["join-rows"] == 3
    assert needed["add-corners"] == 4


@pytest.mark.parametrize("seed", range(24))
def test_a_walk_through_every_stage_ends_done_and_conserves_every_piece(seed: int) -> None:
    """In lots of any size, with pieces spoiled, seams unpicked and acts undone on the way."""
    chance = Random(seed)
    rows, columns = chance.randint(1, 4), chance.randint(1, 4)
    units = rows * columns + (rows - 1) * (columns - 1)
    quilt = a_quilt("paired-squares", 4 * units + 40, rows, columns, borders=seed % 2)
    quilt = replace(quilt, setting=ON_POINT)
    state = walk_to_the_end(quilt, chance, mishap)
    assert rows_sewn(state) == rows + columns - 1


def mishap(chance: Random, state: State) -> c.Act | None:
    what = chance.random()
    if what < 0.08:
        pile = chance.choice(("side-triangle", "corner-triangle", "set-unit", "set-side"))
        return c.Spoil(pile, 1, "stretched")
    if what < 0.18:
        stage = chance.choice(("sew-rows", "add-side-triangles", "join-rows", "add-corners"))
        return c.Unpick(stage, 1)
    if what < 0.24:
        return c.Undo()
    if what < 0.3:
        return c.Recount("set-unit", state.piles["set-unit"] + 1, "found")
    return None


def ready_for_rows(quilt: Quilt) -> list[c.Act]:
    """Every unit, and triangles for all edges and corners."""
    lines = {line.stage.id: line.needed for line in plan(opening(quilt)).lines}
    cuts = ("cut-side-triangles", "cut-corner-triangles")
    return [*all_units(quilt), *(c.Count(id, lines[id]) for id in cuts if id in lines)]


def test_a_row_is_sewn_when_its_units_and_its_triangles_are() -> None:
    """Rows of 1, 3, 3 and 1 unit, with 2, 1, 1 and 2 triangles: the others end in a corner."""
    quilt = on_point()
    state, record = play(quilt, *ready_for_rows(quilt))
    sewn = []
    for count in (
        c.Count("sew-rows", 1),
        c.Count("add-side-triangles", 2),
        c.Count("sew-rows", 3),
        c.Count("add-side-triangles", 1),
        c.Count("sew-rows", 4),
        c.Count("add-side-triangles", 2),
        c.Count("add-side-triangles", 1),
    ):
        state = go_on(state, record, count)
        sewn.append(rows_sewn(state))
    assert sewn == [0, 1, 1, 2, 2, 3, 4]


def test_the_row_in_hand_and_its_ends_are_said() -> None:
    quilt = on_point()
    state, record = play(quilt, *ready_for_rows(quilt), c.ChooseStage("sew-rows"))
    assert in_hand(state, plan(state)).which.endswith("It has 1 unit.")
    state = go_on(state, record, c.Count("sew-rows", 2), c.ChooseStage("sew-rows"))
    said = in_hand(state, plan(state)).which
    assert said.startswith("Row 2: press its seams away from where the row begins.")
    assert said.endswith("It has 3 units.")
    state = go_on(state, record, c.ChooseStage("add-side-triangles"))
    assert in_hand(state, plan(state)).which == "Row 1: at both ends."
    state = go_on(
        state, record, c.Count("add-side-triangles", 2), c.ChooseStage("add-side-triangles")
    )
    said = "Row 2: at one end: the other is a corner of the top."
    assert in_hand(state, plan(state)).which == said


def test_slanting_rows_are_joined_by_their_numbers_and_there_are_as_many_as_there_are() -> None:
    quilt = on_point()
    state, record = play(
        quilt, *ready_for_rows(quilt), c.Count("sew-rows", 8), c.Count("add-side-triangles", 6)
    )
    assert joining(state).seams == 3
    with pytest.raises(Refused, match="There is no row 5: the rows are numbered from 1 to 4"):
        do(state, record, c.JoinRows(4, 5), record[-1].event.at)
    state = go_on(state, record, c.JoinRows(3, 4), c.JoinRows(1, 2), c.JoinRows(2, 3))
    assert joining(state).lines == ("All 4 rows are joined.",)
    state = go_on(state, record, c.Count("add-corners", 4))
    assert state.piles["corner-triangle"] == 0
    assert plan(state).complete


def test_rows_on_point_are_not_begun_for_they_are_counted_unit_by_unit() -> None:
    quilt = on_point()
    state, record = play(quilt, *all_units(quilt))
    with pytest.raises(Refused, match="counted unit by unit: count the units that are sewn"):
        do(state, record, c.BeginRows(((1, 2),)), record[-1].event.at + MINUTE)


def test_corners_come_last_of_the_centre() -> None:
    quilt = on_point()
    state, record = play(
        quilt, *ready_for_rows(quilt), c.Count("sew-rows", 8), c.Count("add-side-triangles", 6)
    )
    with pytest.raises(Refused, match="The top is not ready to add corners"):
        do(state, record, c.Count("add-corners", 1), record[-1].event.at)


def test_what_lies_in_joined_rows_is_neither_spoiled_nor_unpicked_by_itself() -> None:
    """Rows 2 and 3 joined hold three units each; the two in rows 1 and 4 lie loose."""
    quilt = on_point()
    state, record = play(
        quilt,
        *ready_for_rows(quilt),
        c.Count("sew-rows", 8),
        c.Count("add-side-triangles", 6),
        c.JoinRows(2, 3),
    )
    at = record[-1].event.at
    with pytest.raises(Refused, match="Only 2 units in their rows lie there"):
        do(state, record, c.Spoil("set-unit", 3, "torn"), at)
    with pytest.raises(Refused, match="Only 2 units from sew rows can be taken apart"):
        do(state, record, c.Unpick("sew-rows", 3), at)
    with pytest.raises(Refused, match="6 units in their rows are in the top already"):
        do(state, record, c.Recount("set-unit", 5), at)
    state = go_on(state, record, c.Spoil("set-unit", 2, "torn"))
    now = plan(state)
    assert (now.units.to_go, now.line("sew-rows").to_do) == (2, 2)
    # Their triangles are cut new only where they are said to be spoiled too.
    assert now.line("add-side-triangles").to_do == 0


def test_a_triangle_spoiled_is_a_square_more_where_the_last_one_has_none_over() -> None:
    quilt = on_point()
    state, record = play(quilt, *ready_for_rows(quilt), c.Spoil("side-triangle", 2, "stretched"))
    assert plan(state).line("cut-side-triangles").to_do == 0
    state = go_on(state, record, c.Spoil("side-triangle", 1, "stretched"))
    assert plan(state).line("cut-side-triangles").to_do == 1


def test_another_layout_has_rows_of_other_lengths() -> None:
    quilt = on_point(spare=12)
    state, record = play(quilt, *ready_for_rows(quilt))
    state = go_on(state, record, c.ChangeTarget(3, 3))
    assert plan(state).line("sew-rows").needed == 13
    state = go_on(state, record, c.Count("sew-rows", 3))
    with pytest.raises(Refused, match="another layout has rows of other lengths"):
        do(state, record, c.ChangeTarget(3, 2), record[-1].event.at)
    state = go_on(state, record, c.Unpick("sew-rows", 3), c.ChangeTarget(3, 2))
    assert state.target == Target(3, 2)


def test_smaller_layouts_offered_count_the_units_between() -> None:
    quilt = replace(a_quilt("plain-squares", 12, 3, 3), setting=ON_POINT)
    short = plan(opening(quilt)).shortfall
    assert short is not None
    assert short.units == 1
    assert short.layouts
    for layout in short.layouts:
        assert quilt.units_for(layout) <= 12
    # Two rows of four, and the three between them.
    assert Target(2, 4) in short.layouts
