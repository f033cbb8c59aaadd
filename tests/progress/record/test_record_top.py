"""From units to the top: targets that change, rows in pairs, borders and finishing in order."""

from __future__ import annotations

import pytest

from sewalong.piecing.catalogue import method_ids
from sewalong.piecing.method import Hazard, Station
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.route import ROW, route_for
from sewalong.progress.record.state import Standing, State
from tests.progress import every_act as c
from tests.progress.building import a_quilt, all_units, go_on, opening, play, refusal, whole_top

QUILT = a_quilt(pieces=160, rows=4, columns=5, borders=2, finishing=("layer", "quilt", "bind"))


def ready_at(state: State, stage: str) -> int:
    return plan(state).line(stage).ready


@pytest.mark.parametrize("method_id", method_ids())
def test_every_method_ends_in_the_same_assembly(method_id: str) -> None:
    quilt = a_quilt(method_id, rows=4, columns=5, borders=1, finishing=("layer", "quilt", "bind"))
    route = route_for(quilt, quilt.target)
    ids = [stage.id for stage in route.stages]
    n = len(quilt.method.stages)
    assert ids[n:] == ["sew-rows", "join-rows", "add-borders", "layer", "quilt", "bind"]


@pytest.mark.parametrize("method_id", method_ids())
def test_no_two_stages_or_piles_of_a_road_share_a_name(method_id: str) -> None:
    quilt = a_quilt(method_id, borders=1, finishing=("layer", "quilt", "bind"))
    route = route_for(quilt, quilt.target)
    ids = [stage.id for stage in route.stages]
    assert len(set(ids)) == len(ids)
    piles = [*(pile.id for pile in quilt.method.piles), ROW.id]
    assert len(set(piles)) == len(piles)


@pytest.mark.parametrize("method_id", method_ids())
def test_where_there_is_an_iron_a_blade_or_a_needle_its_caution_applies(method_id: str) -> None:
    quilt = a_quilt(method_id, borders=1, finishing=("layer", "quilt", "bind"))
    hazard_at = {
        Station.IRON: Hazard.IRON,
        Station.MAT: Hazard.CUTTER,
        Station.MACHINE: Hazard.NEEDLE,
    }
    for stage in route_for(quilt, quilt.target).stages:
        if stage.station in hazard_at:
            assert hazard_at[stage.station] in stage.hazards, stage.id
        if Hazard.CROSS_CUT in stage.hazards:
            assert Hazard.CUTTER in stage.hazards
        assert stage.minutes > 0


def test_the_road_of_the_stacked_four_patch_is_the_one_that_is_sewn() -> None:
    quilt = a_quilt(borders=1)
    assert [stage.label for stage in route_for(quilt, quilt.target).stages] == [
        "pair",
        "sew",
        "press",
        "stack",
        "sew around",
        "cut twice",
        "press open",
        "sew rows",
        "join rows",
        "add borders",
    ]


def test_a_row_takes_a_row_of_units() -> None:
    state, _ = play(QUILT, *all_units(QUILT), c.Count("sew-rows", 3))
    assert (state.piles["unit"], state.piles["row"]) == (80 - 15, 3)
    assert plan(state).units.made == 80


def test_two_rows_sewn_can_be_joined_before_the_others_are() -> None:
    state, record = play(QUILT, *all_units(QUILT), c.Count("sew-rows"))
    assert ready_at(state, "join-rows") == 0
    state = go_on(state, record, c.Count("sew-rows"))
    assert ready_at(state, "join-rows") == 1
    state = go_on(state, record, c.Count("join-rows"))
    assert ready_at(state, "join-rows") == 0
    state = go_on(state, record, c.Count("sew-rows", 2))
    assert ready_at(state, "join-rows") == 2


def test_more_rows_than_wanted_are_spare_and_never_joined() -> None:
    state, record = play(QUILT, *all_units(QUILT), c.Count("sew-rows", 6))
    assert ready_at(state, "join-rows") == 3
    assert plan(state).units.spare == 60
    state = go_on(state, record, c.Count("join-rows", 3))
    assert ready_at(state, "join-rows") == 0
    assert ready_at(state, "add-borders") == 8


def test_borders_and_finishing_open_one_after_another() -> None:
    order = [("add-borders", 8), ("layer", 1), ("quilt", 4), ("bind", 4)]
    state, record = play(QUILT, *all_units(QUILT), c.Count("sew-rows", 4))
    assert [ready_at(state, stage) for stage, _ in order] == [0, 0, 0, 0]
    state = go_on(state, record, c.Count("join-rows", 3))
    for i, (stage, steps) in enumerate(order):
        assert [ready_at(state, s) for s, _ in order] == [
            steps if j == i else 0 for j in range(len(order))
        ]
        if steps > 1:
            state = go_on(state, record, c.Count(stage, steps - 1))
            assert [ready_at(state, s) for s, _ in order].count(1) == 1
            state = go_on(state, record, c.Count(stage))
        else:
            state = go_on(state, record, c.Count(stage))
    assert plan(state).complete


def test_a_border_is_counted_side_by_side() -> None:
    state, record = play(QUILT, *whole_top(QUILT)[:-1], c.Count("add-borders", 3))
    assert plan(state).line("add-borders").needed == 8
    assert plan(state).line("add-borders").to_do == 5
    state = go_on(state, record, c.Unpick("add-borders", 2))
    assert plan(state).line("add-borders").to_do == 7


def test_a_runner_of_one_row_has_no_rows_to_join() -> None:
    runner = a_quilt(pieces=16, rows=1, columns=8, borders=1)
    assert opening(runner).route.stage("join-rows") is None
    state, record = play(runner, *all_units(runner))
    assert ready_at(state, "add-borders") == 0
    state = go_on(state, record, c.Count("sew-rows"), c.Count("add-borders", 4))
    assert plan(state).complete


def test_a_new_target_keeps_all_that_was_done() -> None:
    state, record = play(QUILT, *all_units(QUILT), c.Count("sew-rows", 3), c.WriteNote("so far"))
    before = state
    state = go_on(state, record, c.ChangeTarget(6, 5))
    assert (state.piles, state.done, state.notes) == (before.piles, before.done, before.notes)
    assert plan(state).line("sew-rows").to_do == 3
    assert plan(state).line("join-rows").to_do == 5
    state = go_on(state, record, c.ChangeTarget(3, 5))
    assert plan(state).line("sew-rows").to_do == 0
    assert plan(state).line("join-rows").to_do == 2


def test_rows_spoiled_leave_the_columns_free_and_the_units_used_up() -> None:
    state, record = play(QUILT, *all_units(QUILT), c.Count("sew-rows"), c.Spoil("row", 1, "ink"))
    state = go_on(state, record, c.ChangeTarget(4, 4), c.Count("sew-rows"))
    assert (state.piles["unit"], state.piles["row"]) == (80 - 5 - 4, 1)
    assert state.done["sew-rows"] == 2


def test_a_target_of_one_row_and_back_again() -> None:
    state, record = play(QUILT, *all_units(QUILT), c.Count("sew-rows", 2), c.Count("join-rows"))
    state = go_on(state, record, c.Unpick("join-rows"), c.ChangeTarget(1, 5))
    assert state.chosen is None  # there is no joining any more
    assert plan(state).line("add-borders").ready == 8
    state = go_on(state, record, c.ChangeTarget(4, 5))
    assert plan(state).line("join-rows").ready == 1
    assert plan(state).line("add-borders").ready == 0


def test_a_stage_chosen_on_a_road_since_taken_back_is_forgotten() -> None:
    runner = a_quilt(pieces=160, rows=1, columns=5)
    state, record = play(runner, c.ChangeTarget(4, 5), c.ChooseStage("join-rows"))
    assert state.chosen == "join-rows"
    state = go_on(state, record, c.Undo())
    assert state.target.rows == 1
    assert state.chosen is None
    assert not state.chosen_by_hand


def test_unpicking_puts_the_pieces_back_where_they_came_from() -> None:
    state, record = play(QUILT, c.Count("pair", 10), c.Count("sew", 5))
    state = go_on(state, record, c.Unpick("sew", 2), c.Unpick("pair", 1))
    assert (state.piles["square"], state.piles["pair"], state.piles["four-patch"]) == (142, 3, 3)
    assert (state.done["pair"], state.done["sew"]) == (9, 3)
    state = go_on(state, record, c.Undo(), c.Undo())
    assert (state.piles["square"], state.piles["pair"], state.piles["four-patch"]) == (140, 0, 5)


def test_a_row_unpicked_gives_its_units_back() -> None:
    state, _record = play(QUILT, *all_units(QUILT), c.Count("sew-rows", 4), c.Unpick("sew-rows", 4))
    assert (state.piles["unit"], state.piles["row"]) == (80, 0)


def test_a_quilt_is_laid_aside_with_its_reason_and_picked_up_where_it_lay() -> None:
    state, record = play(QUILT, c.Count("pair", 7), c.LayAside("waiting for the border cloth"))
    assert state.standing is Standing.LAID_ASIDE
    assert state.aside_reason == "waiting for the border cloth"
    refusal(state, c.Count("pair"))
    state = go_on(state, record, c.PickUp(), c.Count("pair"))
    assert (state.standing, state.aside_reason) == (Standing.IN_PROGRESS, "")
    assert state.done["pair"] == 8


def test_a_quilt_is_done_when_the_person_says_so_even_with_stages_left() -> None:
    state, record = play(QUILT, c.Count("pair", 7), c.MarkDone())
    assert state.standing is Standing.DONE
    assert not plan(state).complete
    state = go_on(state, record, c.Undo())
    assert state.standing is Standing.IN_PROGRESS


def test_what_was_said_can_be_taken_back_one_thing_at_a_time() -> None:
    state, record = play(
        QUILT,
        c.PutPileAway("square", "tin"),
        c.PutPileAway("square", "shoe box"),
        c.WriteNote("blue runs"),
        c.Recount("square", 158),
        c.LayAside(),
    )
    assert (state.where, state.recounted) == ({"square": "shoe box"}, {"square": -2})
    state = go_on(state, record, c.Undo(), c.Undo())
    assert (state.standing, state.piles["square"]) == (Standing.IN_PROGRESS, 160)
    state = go_on(state, record, c.Undo(), c.Undo())
    assert (state.notes, state.where) == ((), {"square": "tin"})
    state = go_on(state, record, c.Undo())
    assert state.where == {}
    assert refusal(state, c.Undo()) == "There is nothing to undo."
