"""The plan: looked at backward from the target, weighed by work, honest about what is short."""

from __future__ import annotations

import itertools

from sewalong.piecing.method import Pieces
from sewalong.progress.plan.plan import Plan, plan
from sewalong.progress.plan.smaller_layouts import layouts_within
from sewalong.progress.record.state import State
from sewalong.quilt.quilt import Target
from tests.progress import every_act as c
from tests.progress.building import (
    a_quilt,
    all_units,
    everything,
    go_on,
    opening,
    play,
    whole_top,
)

QUILT = a_quilt(pieces=168, rows=9, columns=9)


def suggested(state: State) -> str | None:
    suggestion = plan(state).suggestion
    return suggestion.stage if suggestion else None


def work_in_units(state: State) -> float:
    """Of the work up to the last unit, the part that is done; rows and borders left out."""
    method = state.quilt.method
    lines = [plan(state).line(stage.id) for stage in method.stages]
    needed = sum(line.needed * line.stage.minutes for line in lines)
    return sum((line.needed - line.to_do) * line.stage.minutes for line in lines) / needed


def row_of(now: Plan, stage: str) -> tuple[int, int, int, int]:
    line = now.line(stage)
    return line.needed, line.done, line.to_do, line.waiting


def test_every_stage_says_needed_done_to_do_and_waiting() -> None:
    state, _ = play(QUILT, c.Count("pair", 50), c.Count("sew", 20), c.Count("press", 3))
    now = plan(state)
    assert row_of(now, "pair") == (84, 50, 34, 68)
    assert row_of(now, "sew") == (42, 20, 22, 10)
    assert row_of(now, "press") == (42, 3, 39, 17)
    assert row_of(now, "stack") == (21, 0, 21, 3)
    assert row_of(now, "press-open") == (81, 0, 81, 0)
    assert row_of(now, "sew-rows") == (9, 0, 9, 0)
    assert row_of(now, "join-rows") == (8, 0, 8, 0)
    assert now.line("stack").ready == 1
    assert now.line("stack").waiting_noun.of(3) == "pressed four-patches"


def test_of_two_piles_the_scarcer_is_the_one_said_to_wait() -> None:
    quilt = a_quilt("nine-patch-strips", pieces=5, rows=2, columns=4)
    state, record = play(quilt, c.Spoil("light-strip", 2, "faded"))
    line = plan(state).line("sew-outer-sets")
    # Two dark strips and a light one to a set: five dark are enough for two, three light for three.
    assert (line.ready, line.waiting, line.waiting_noun.one) == (2, 5, "dark strip")
    state = go_on(state, record, c.Spoil("light-strip", 2, "faded"))
    line = plan(state).line("sew-outer-sets")
    assert (line.ready, line.waiting, line.waiting_noun.one) == (1, 1, "light strip")


def test_in_batch_sewing_most_of_the_work_is_done_before_the_first_unit_is() -> None:
    """The shape, not the number, of a maker's log of 80 blocks sewn in batches: 82 % of the
    work was done when 2 blocks existed.

    Source: https://scrambledmeggs.wordpress.com/2011/01/21/
    how-many-hours-does-it-take-to-make-80-quilt-blocks/ (11 hours, 2 blocks at 9 hours).
    """
    state, _ = play(QUILT, *everything(QUILT, "press-open", make=2))
    now = plan(state)
    assert now.units.made == 2
    assert now.units.to_go == 79
    assert 0.70 <= work_in_units(state) <= 0.90
    assert now.work_done > 10 * now.units.made / state.units_wanted


def test_work_rises_steadily_where_units_rise_all_at_the_end() -> None:
    state, record = play(QUILT)
    seen = [0.0]
    for command in all_units(QUILT)[:-1]:
        state = go_on(state, record, command)
        seen.append(plan(state).work_done)
        assert plan(state).units.made == 0
    assert all(later > earlier for earlier, later in itertools.pairwise(seen))
    assert seen[-1] > 0.3


def test_work_done_ends_at_one_with_the_last_side_of_the_border() -> None:
    quilt = a_quilt(pieces=40, rows=4, columns=5, borders=1)
    *before, _last = whole_top(quilt)
    state, record = play(quilt, *before, c.Count("add-borders", 3))
    assert 0 < plan(state).work_done < 1
    assert not plan(state).complete
    state = go_on(state, record, c.Count("add-borders"))
    assert plan(state).work_done == 1
    assert plan(state).complete
    assert plan(state).suggestion is None


def test_the_suggestion_goes_on_while_the_pile_lasts() -> None:
    state, record = play(QUILT)
    assert suggested(state) == "pair"
    state = go_on(state, record, c.Count("pair", 40))
    assert suggested(state) == "pair"
    state = go_on(state, record, c.Count("pair", 44))
    assert suggested(state) == "sew"


def test_then_it_names_the_stage_furthest_along_with_enough_waiting() -> None:
    state, record = play(QUILT, c.Count("pair", 20), c.Count("sew", 10), c.Count("press", 10))
    assert suggested(state) == "stack"
    state = go_on(state, record, c.Count("stack", 5))
    assert suggested(state) == "sew-around"


def test_it_accepts_that_the_person_does_otherwise() -> None:
    state, record = play(QUILT, c.Count("pair", 20), c.Count("sew", 6), c.ChooseStage("pair"))
    assert suggested(state) == "pair"
    state = go_on(state, record, c.Count("press", 2))
    assert suggested(state) == "press"


def test_a_stage_chosen_with_nothing_waiting_is_not_suggested() -> None:
    state, _ = play(QUILT, c.Count("pair", 20), c.ChooseStage("cut-twice"))
    assert suggested(state) == "sew"


def test_no_stage_is_suggested_while_the_quilt_is_laid_aside_or_done() -> None:
    state, record = play(QUILT, c.Count("pair", 3), c.LayAside())
    assert suggested(state) is None
    state = go_on(state, record, c.PickUp())
    assert suggested(state) == "pair"
    state = go_on(state, record, c.MarkDone())
    assert suggested(state) is None


def test_more_made_than_needed_shows_as_done_beyond_needed_all_the_way_back() -> None:
    """With 20 units wanted, all 84 pairs are laid and all sewn to four-patches all the same."""
    quilt = a_quilt(pieces=168, rows=4, columns=5)
    state, record = play(quilt, *everything(quilt, "pair"))
    assert row_of(plan(state), "pair") == (20, 84, 0, 0)
    state = go_on(state, record, c.Count("sew", 42))
    assert row_of(plan(state), "pair") == (20, 84, 0, 0)
    assert row_of(plan(state), "sew") == (10, 42, 0, 0)


def test_spoiled_work_is_needed_again_and_stays_counted_as_done() -> None:
    state, record = play(QUILT, *everything(QUILT, "sew"), c.Find("pair", 4))
    state = go_on(state, record, c.Spoil("four-patch", 2, "wrong side out"))
    assert row_of(plan(state), "sew") == (44, 42, 2, 4)
    before = plan(state).work_done
    state = go_on(state, record, c.Count("sew", 2))
    assert row_of(plan(state), "sew") == (44, 44, 0, 0)
    assert plan(state).work_done > before


def test_pieces_found_half_way_are_used_before_new_squares() -> None:
    state, _record = play(QUILT, c.Find("sewn-stack", 20))
    now = plan(state)
    assert now.line("stack").to_do == 1
    assert now.line("pair").to_do == 4
    assert now.units.spare == 83


def test_a_unit_spoiled_late_reaches_back_to_the_first_stage() -> None:
    quilt = a_quilt(pieces=176, rows=9, columns=9)
    state, record = play(quilt, *everything(quilt, "pair", make=84))
    state = go_on(state, record, *all_units(a_quilt(pieces=168))[1:])
    assert plan(state).line("pair").to_do == 0
    state = go_on(state, record, c.Spoil("unit", 4, "cut crooked"))
    assert {line.stage.id: line.to_do for line in plan(state).lines if line.to_do} == {
        "pair": 4,
        "sew": 2,
        "press": 2,
        "stack": 1,
        "sew-around": 1,
        "cut-twice": 1,
        "press-open": 1,
        "sew-rows": 9,
        "join-rows": 8,
    }
    assert suggested(state) == "sew-rows"


def test_what_two_stages_take_is_shared_out_for_whole_units() -> None:
    """Flying geese take a pair of small squares first and two more later, one to each heart.

    Sewing all of them in pairs at once would leave none for the second time.
    """
    quilt = a_quilt("flying-geese-four", pieces=8, rows=2, columns=4)
    now = plan(opening(quilt))
    assert now.units.possible == 8
    assert now.over == (Pieces("large-square", 6),)
    assert now.shortfall is None


def test_a_method_with_two_kinds_of_piece_names_the_kind_that_is_short() -> None:
    quilt = a_quilt("flying-geese-four", pieces=8, rows=3, columns=4)
    short = plan(opening(quilt)).shortfall
    assert short is not None
    assert short.units == 4
    assert short.pieces == (Pieces("small-square", 4),)
    assert short.spare_after == 0


def test_sewn_rows_keep_the_columns_of_the_layouts_offered() -> None:
    state, _ = play(QUILT, *all_units(QUILT), c.Count("sew-rows", 2), c.Spoil("unit", 10, "coffee"))
    short = plan(state).shortfall
    assert short is not None
    assert short.units == 7
    assert short.layouts == (Target(8, 9),)


def test_layouts_offered_fit_are_near_and_lie_the_way_the_wanted_one_does() -> None:
    assert layouts_within(80, Target(9, 9))[0] == Target(8, 10)
    assert layouts_within(80, Target(11, 8))[0] == Target(10, 8)
    for units in range(1, 130):
        for wanted in (Target(9, 9), Target(10, 8), Target(8, 10), Target(12, 11)):
            offered = layouts_within(units, wanted)
            assert len(offered) <= 3
            assert len(set(offered)) == len(offered)
            over = [units - layout.rows * layout.columns for layout in offered]
            assert over == sorted(over)
            for layout in offered:
                assert layout.rows * layout.columns <= units
                assert max(layout.rows, layout.columns) <= 2 * min(layout.rows, layout.columns)
                lies = layout.rows <= layout.columns
                assert layout.rows == layout.columns or lies == (wanted.rows <= wanted.columns)


def test_a_square_layout_is_offered_for_a_long_one_too() -> None:
    assert layouts_within(16, Target(5, 4))[0] == Target(4, 4)
    assert layouts_within(16, Target(4, 5))[0] == Target(4, 4)


def test_no_layout_is_offered_when_there_is_nothing_to_lay() -> None:
    assert layouts_within(0, Target(9, 9)) == ()
    assert layouts_within(8, Target(9, 9), columns=9) == ()


def test_three_layouts_at_most_are_offered_and_one_or_two_units_are_a_layout() -> None:
    assert layouts_within(72, Target(9, 9)) == (Target(8, 9), Target(6, 12), Target(7, 10))
    assert layouts_within(1, Target(2, 2)) == (Target(1, 1),)
    assert layouts_within(2, Target(3, 1)) == (Target(2, 1),)


def test_rows_sewn_are_kept_in_the_layouts_offered() -> None:
    assert layouts_within(50, Target(9, 9), columns=9, least_rows=5) == (Target(5, 9),)
    assert layouts_within(50, Target(9, 9), columns=9, least_rows=6) == ()
    assert layouts_within(100, Target(9, 9), columns=9, least_rows=5) == ()


def test_what_is_over_is_the_same_once_rows_are_sewn() -> None:
    quilt = a_quilt(pieces=42, rows=2, columns=4)
    over = plan(opening(quilt)).over
    assert over == (Pieces("square", 2),)
    state, record = play(quilt, *everything(quilt, "press-open"), c.Find("square", 3))
    assert plan(state).over == (Pieces("square", 1), Pieces("four-patch", 1))
    state = go_on(state, record, c.Count("sew-rows", 2))
    assert plan(state).over == (Pieces("square", 1), Pieces("four-patch", 1))


def test_target_and_spare_follow_the_change_of_target() -> None:
    state, record = play(QUILT, *all_units(QUILT))
    for rows, columns, spare in ((9, 9, 3), (8, 10, 4), (7, 12, 0), (1, 1, 83)):
        if (rows, columns) != (9, 9):
            state = go_on(state, record, c.ChangeTarget(rows, columns))
        assert plan(state).units.spare == spare
