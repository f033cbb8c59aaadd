"""What is sewn of the top and what is in hand of it, followed through whole quilts; and what is said
to come next, held against what then does."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from msgspec.structs import replace

from sewalong.progress.joining.current_stage import in_hand
from sewalong.progress.joining.next_stage import NEAR, then_in_words
from sewalong.progress.joining.sewn_top import in_hand_of_the_top, said_of_the_top, sewn_top
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.rows_sewn import rows_wanted, units_in_rows
from sewalong.progress.record.state import State
from sewalong.quilt.quilt import Quilt
from sewalong.wall.standing import NOTHING_LIT, Lit, Sewn
from sewalong.wall.top_in_hand import top_in_hand
from tests.progress import every_act as c
from tests.progress.building import Record, a_quilt, all_units, go_on, opening, play, suited
from tests.progress.wandering import ON_POINT, SETTINGS

STRAIGHT = a_quilt("four-patch", 100, 4, 3, borders=2, finishing=("layer", "quilt", "bind"))
QUILTS = {
    "straight": STRAIGHT,
    **{f"sashed {n}": replace(STRAIGHT, setting=one) for n, one in enumerate(SETTINGS)},
    "on point": replace(STRAIGHT, setting=ON_POINT),
    "web": replace(STRAIGHT, joined="web"),
    "one row": replace(STRAIGHT, target=replace(STRAIGHT.target, rows=1)),
}


def one_by_one(quilt: Quilt, *before: c.Act) -> Iterator[tuple[State, Record]]:
    """The states of a quilt after `before`, as it is suggested, one count after the other; with
    each its record so far."""
    state, record = opening(quilt), Record(quilt)
    state = go_on(state, record, *before)
    yield state, record.copy()
    while (suggestion := plan(state).suggestion) is not None:
        state = go_on(state, record, c.Count(suggestion.stage, 1))
        yield state, record.copy()


@pytest.mark.parametrize("quilt", QUILTS.values(), ids=QUILTS)
def test_the_top_as_it_stands_holds_what_was_sewn_and_in_the_end_all_of_it(quilt: Quilt) -> None:
    seen: set[str] = set()
    for state, _ in one_by_one(quilt, *all_units(quilt)):
        sewn, now = sewn_top(state), plan(state)
        assert sum(sewn.units) == units_in_rows(state)
        assert [
            row.units >= n for row, n in zip(quilt.rows_for(state.target), sewn.units, strict=True)
        ]
        rows = set(range(1, rows_wanted(state) + 1))
        for line in now.lines:
            lit = in_hand_of_the_top(state, line)
            assert lit.rows <= rows
            if not line.to_do:
                assert lit == NOTHING_LIT
            if lit != NOTHING_LIT:
                seen.add(line.stage.id)
        lit = in_hand_of_the_top(state, in_hand(state, now).line)
        assert top_in_hand(state.quilt, state.target, sewn, 30, 10, lit) is not None
    whole = top_in_hand(state.quilt, state.target, sewn, 60, 30)
    assert whole is not None
    everything = Sewn(
        units=tuple(row.units for row in quilt.rows_for(state.target)),
        sides=tuple(row.sides for row in quilt.rows_for(state.target)) if quilt.is_on_point else (),
        sashes=frozenset(range(9)),
        joined=frozenset(range(1, 9)),
        corners=4,
        borders=8,
    )
    assert whole == top_in_hand(state.quilt, state.target, everything, 60, 30)
    assert {"sew-web" if quilt.is_web else "sew-rows", "add-borders"} <= seen


FROM_THE_FIRST_PIECE = {
    "stacked four-patch": a_quilt("stacked-four-patch", 24, 3, 3),
    "half-squares": a_quilt("half-square-two", 9, 3, 3, borders=1),
    "flipped corners": suited(a_quilt("flipped-corners", 9, 2, 2)),
}


@pytest.mark.parametrize("name", [*QUILTS, *FROM_THE_FIRST_PIECE])
def test_what_is_said_to_come_next_is_what_comes(name: str) -> None:
    told = 0
    quilt = {**QUILTS, **FROM_THE_FIRST_PIECE}[name]
    before = all_units(quilt) if name in QUILTS else ()
    for state, record in one_by_one(quilt, *before):
        now = plan(state)
        line = in_hand(state, now).line
        said = then_in_words(state, now, line)
        left = min(line.to_do, line.ready)
        if not 0 < left <= NEAR:
            assert not said
            continue
        after = go_on(state, record, c.Count(line.stage.id, left))
        suggestion = plan(after).suggestion
        if plan(after).complete:
            assert said == "Then every stage is done."
        elif suggestion is None or suggestion.stage == line.stage.id:
            assert not said
        else:
            stage = plan(after).line(suggestion.stage).stage
            assert said == f"Then {stage.label}, at the {stage.station.value}."
            told += 1
    assert told >= 2


def lit_at(stage: str, *acts: c.Act, quilt: Quilt = STRAIGHT) -> Lit:
    state, _ = play(quilt, *all_units(quilt), *acts)
    return in_hand_of_the_top(state, plan(state).line(stage))


def test_the_row_the_two_pieces_and_the_side_in_hand() -> None:
    rows = c.Count("sew-rows", 4)
    assert lit_at("sew-rows", c.Count("sew-rows", 2)).rows == {3}
    assert lit_at("join-rows", rows).rows == {1, 2}
    # In pairs: rows 3 and 4 next, then both pairs.
    assert lit_at("join-rows", rows, c.JoinRows(1, 2)).rows == {3, 4}
    assert lit_at("join-rows", rows, c.JoinRows(1, 2), c.JoinRows(3, 4)).rows == {1, 2, 3, 4}
    assert (
        lit_at("add-borders", rows, c.Count("join-rows", 3), c.Count("add-borders", 5)).border == 6
    )


def test_pieces_of_rows_begun_fill_the_rows_after_the_whole_ones() -> None:
    quilt = replace(STRAIGHT, target=replace(STRAIGHT.target, columns=5))
    state, _ = play(quilt, *all_units(quilt), c.Count("sew-rows", 1), c.BeginRows(((1, 3), (2, 2))))
    # A piece of three and one of two are one row, the other two begin the next.
    assert sewn_top(state).units == (5, 5, 2, 0)


def test_seams_counted_without_saying_which_are_said_to_be_a_guess() -> None:
    rows = c.Count("sew-rows", 4)
    state, _ = play(STRAIGHT, *all_units(STRAIGHT), rows, c.JoinRows(3, 4))
    assert sewn_top(state).joined == {3}
    assert said_of_the_top(state) == "the top as it stands"
    state, _ = play(STRAIGHT, *all_units(STRAIGHT), rows, c.JoinRows(3, 4), c.Count("join-rows", 1))
    assert sewn_top(state).joined == {1, 3}
    assert said_of_the_top(state) == "the top, if its rows were joined from row 1 on"


def test_where_what_waits_lies_is_known_at_its_stage_alone() -> None:
    state, _ = play(
        STRAIGHT, c.Count("pair", 4), c.PutPileAway("pair", "blue tray"), c.ChooseStage("sew-pairs")
    )
    assert in_hand(state, plan(state)).where == "blue tray"
    state, _ = play(STRAIGHT, c.Count("pair", 4), c.PutPileAway("pair", "blue tray"))
    assert in_hand(state, plan(state)).where == ""
