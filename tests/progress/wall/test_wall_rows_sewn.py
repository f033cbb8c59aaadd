"""The whole sewing of a laid top: she is always told the right unit, wherever she stops.

The oracle is a table with real units on it: they are laid as the wall says, picked up row by row,
place by place, and what is told is compared with the one in her hand.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta
from random import Random

import pytest
from msgspec.structs import replace

from sewalong.progress.acts.row_in_hand import sew_next
from sewalong.progress.joining.before_joining import before_the_join
from sewalong.progress.joining.current_stage import in_hand
from sewalong.progress.joining.nesting import ALL_NEST, nesting, nesting_facts, press_anew_words
from sewalong.progress.joining.orientation_checks import before_the_next
from sewalong.progress.joining.row_in_hand import (
    InRow,
    next_unit_words,
    row_facts,
    row_in_hand,
    row_looked_at,
    unit_to_take,
)
from sewalong.progress.pace.count_times import stretches
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.sewn_places import units_sewn
from sewalong.progress.record.state import State
from sewalong.progress.record.wall import LaidUnit, Row
from sewalong.progress.resuming.about_stage import about_stage
from sewalong.progress.resuming.coming_back import coming_back, in_lines
from sewalong.progress.resuming.interruption import after_interruption
from sewalong.progress.wall.units import units_by_letter, units_to_lay
from sewalong.progress.wall.wall_words import fabric_words, lies_words
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.setting import Sashing, SetOnPoint, Setting
from sewalong.quilt.web import WEB
from tests.progress import every_act as c
from tests.progress.building import Record, everything, go_on, play
from tests.progress.sets.fabrics import sets_of, with_fabrics

PLAIN = replace(with_fabrics(pieces=96), target=Target(4, 5))
WAYS = {
    "straight": PLAIN,
    "sashed": replace(PLAIN, setting=Sashing(PLAIN.seam * 8, "oat")),
    "on point": replace(PLAIN, setting=SetOnPoint("oat"), target=Target(3, 3)),
    "web": replace(PLAIN, joined=WEB),
    "one row": replace(PLAIN, target=Target(1, 5)),
    "one column": replace(PLAIN, target=Target(5, 1)),
}


def laid_by_chance(quilt: Quilt, chance: Random) -> tuple[State, Record]:
    """All units sewn, and laid anyhow."""
    state, record = play(quilt, c.AcceptSets(sets_of(8, 12)))
    state = go_on(state, record, *everything(quilt, quilt.method.stages[-1].id))
    units = units_to_lay(state)
    order = chance.sample(range(len(units)), len(units))
    lengths = [row.units for row in quilt.rows_for(quilt.target)]
    numbers = iter(order)
    rows: tuple[Row, ...] = tuple(
        tuple((next(numbers), chance.randrange(4)) for _ in range(n)) for n in lengths
    )
    state = go_on(state, record, c.LayWall(units, rows))
    cut = [stage.id for stage in state.route.of_pieces if not stage.takes]
    for stage in cut:
        state = go_on(state, record, c.Count(stage, plan(state).line(stage).to_do))
    return state, record


def unit_lying(state: State, at: tuple[int, int]) -> LaidUnit:
    lies = state.wall.at(at)
    assert lies is not None
    return state.wall.units[lies[0]]


def in_her_hand(state: State) -> Iterator[list[tuple[int, int]]]:
    """The places whose units she takes from the table, seam by seam."""
    lengths = [len(row) for row in state.wall.rows]
    if state.quilt.is_web:
        for row in range(1, len(lengths) + 1):
            yield [(row, 1), (row, 2)]
        for column in range(3, lengths[0] + 1):
            for row in range(1, len(lengths) + 1):
                yield [(row, column)]
        return
    for row, n in enumerate(lengths, start=1):
        first = 1 if state.quilt.is_on_point else min(2, n)
        yield [(row, place) for place in range(1, first + 1)]
        for place in range(first + 1, n + 1):
            yield [(row, place)]


@pytest.mark.parametrize("way", WAYS)
def test_she_is_told_every_unit_of_a_top_in_its_order(way: str) -> None:
    chance = Random(way)
    state, record = laid_by_chance(WAYS[way], chance)
    for taken in in_her_hand(state):
        now = row_in_hand(state)
        assert now is not None
        assert [(now.row, place) for place in now.next] == taken
        said = next_unit_words(state)
        for at in taken:
            assert lies_words(state, state.wall.at(at)) in said
            where, fabrics = unit_to_take(state, at)
            assert lies_words(state, state.wall.at(at)) in where
            assert fabrics == f"{fabric_words(state, unit_lying(state, at))}."
        before = state
        state = go_on(state, record, sew_next(state))
        if chance.random() < 0.3:
            # A wrong press is one undo, and weeks change nothing.
            state = go_on(state, record, c.Undo())
            assert (state.piles, state.begun) == (before.piles, before.begun)
            state = go_on(state, record, sew_next(state), every=timedelta(days=20))
    assert row_in_hand(state) is None
    assert row_facts(state) == ()
    with pytest.raises(Refused, match="no row in hand"):
        sew_next(state)


@pytest.mark.parametrize("way", ["straight", "sashed", "on point", "web"])
def test_what_is_sewn_stays_where_it_lies_and_the_rest_may_move(way: str) -> None:
    state, record = laid_by_chance(WAYS[way], Random(1))
    for _ in range(3):
        state = go_on(state, record, sew_next(state))
    first = next(n for n, units in enumerate(units_sewn(state), start=1) if units)
    with pytest.raises(Refused, match="sewn to its row"):
        go_on(state, record, c.SwapPlaces(first, 1, len(state.wall.rows), 1))
    last = len(state.wall.rows), len(state.wall.rows[-1])
    go_on(state, record, c.TurnUnit(*last))


def test_it_stands_where_the_stage_in_hand_is_told_and_on_coming_back() -> None:
    state, record = laid_by_chance(PLAIN, Random(2))
    for _ in range(3):
        state = go_on(state, record, sew_next(state))
    which = in_hand(state, plan(state)).which
    unit = lies_words(state, state.wall.at((1, 5)))
    assert which.startswith(f"Row 1: 4 of 5 sewn. Next place 5: {unit}. Row 1: press its seams")
    lines = in_lines(coming_back(state, record, record[-1].event.at + timedelta(days=30)))
    assert "Begun: Row 1: 4 of 5 sewn." in lines
    assert f"Next place 5: {unit}." in lines


def test_after_an_interruption_she_is_asked_how_the_next_one_lies_q115() -> None:
    """Q115: interrupted by a question, she picked the stack up turned a quarter."""
    state, record = laid_by_chance(PLAIN, Random(2))
    state = go_on(state, record, sew_next(state))
    later = record[-1].event.at + timedelta(minutes=50)
    unit = lies_words(state, state.wall.at((1, 3)))
    assert after_interruption(state, later) == (
        f"Before you sew on: next place 3: {unit}. Does it lie so?"
    )
    web, record = laid_by_chance(WAYS["web"], Random(2))
    for _ in range(6):
        web = go_on(web, record, sew_next(web))
    said = after_interruption(web, record[-1].event.at + timedelta(minutes=50))
    assert said.startswith("Before you sew on: count two rows.")
    assert said.endswith(f"Next place 3: {lies_words(web, web.wall.at((3, 3)))}.")


def test_where_the_pieces_of_a_row_are_several_nobody_can_say() -> None:
    state, record = laid_by_chance(PLAIN, Random(3))
    state = go_on(state, record, c.BeginRows(((2, 2),)))
    (said,) = row_facts(state)
    assert said == "Row 1 is sewn in several pieces, so nobody can say which place is next."
    with pytest.raises(Refused, match="several pieces"):
        sew_next(state)
    state = go_on(state, record, c.BeginRows(((1, 4),)))
    assert row_facts(state)[0] == "Row 1: 4 of 5 sewn."


def test_pieces_of_later_rows_stay_begun_while_a_row_is_sewn_on() -> None:
    state, record = laid_by_chance(PLAIN, Random(4))
    state = go_on(state, record, c.BeginRows(((1, 4), (2, 3))))
    state = go_on(state, record, sew_next(state))
    assert state.begun == ((2, 3),)
    state = go_on(state, record, sew_next(state))
    assert state.begun == ((1, 4), (1, 3))
    assert state.done["sew-rows"] == 1
    assert row_looked_at(state, 1) == InRow(1, 5, 5, ())
    assert row_looked_at(state, 3) == InRow(3, 5, 3, ())


def test_an_empty_place_is_said_and_does_not_stand_in_the_way() -> None:
    state, record = laid_by_chance(PLAIN, Random(5))
    state = go_on(state, record, sew_next(state), c.PutSpare(1, 3))
    assert "place 3: nothing" in next_unit_words(state)
    assert "spare" in unit_to_take(state, (1, 3))[1]
    state = go_on(state, record, sew_next(state))
    assert units_sewn(state)[0] == 3
    assert unit_to_take(state, (1, 9)) == ()
    assert row_looked_at(state, 9) is None
    assert row_looked_at(state, 0) is None
    assert row_looked_at(state, 1) == row_in_hand(state) == InRow(1, 5, 3, (4,))
    assert row_looked_at(state, 2) == InRow(2, 5, 0, ())


def test_without_a_wall_nothing_is_said() -> None:
    state, _ = play(PLAIN, *everything(PLAIN, PLAIN.method.stages[-1].id))
    assert row_in_hand(state) is None
    assert next_unit_words(state) == ""
    with pytest.raises(Refused, match="Nothing is laid"):
        sew_next(state)


def test_the_time_of_a_row_sewn_square_by_square_is_all_of_it() -> None:
    state, record = laid_by_chance(PLAIN, Random(6))
    begin = len(record)
    state = go_on(state, record, c.Count("sew-rows"))
    for seconds in (70, 20, 70, 70):
        state = go_on(state, record, sew_next(state), every=timedelta(seconds=seconds))
    assert len(record) > begin
    found = [one for one in stretches(record, {"sew-rows": 12.0}) if one.stage == "sew-rows"]
    assert found[-1].minutes == pytest.approx(230 / 60)


N008 = "ABCDE / CDEAB / EABCD / BCDEA"
"""A layout that touches nowhere."""


def typed(layout: str, setting: Setting | None = None) -> tuple[State, Record]:
    """Squares laid by their letters and all sewn to their rows."""
    lines = [line.strip() for line in layout.split("/")]
    across = len(lines[0])
    quilt = replace(with_fabrics("plain-squares", pieces=40), target=Target(len(lines), across))
    state, record = play(replace(quilt, setting=setting))
    rows = tuple(tuple((across * n + p, 0) for p in range(across)) for n in range(len(lines)))
    state = go_on(state, record, c.LayWall(units_by_letter("".join(lines)), rows, how="typed"))
    state = go_on(state, record, *everything(quilt, quilt.method.stages[-1].id))
    for stage in [one for one in state.route.of_pieces if not one.takes]:
        state = go_on(state, record, c.Count(stage.id, plan(state).line(stage.id).to_do))
    return go_on(state, record, c.Count("sew-rows", len(lines))), record


def test_a_row_turned_end_for_end_shows_before_it_is_joined_n008() -> None:
    """N008: row 1 or 4 turned 1 touch; 2 or 3 turned 2: one of them to the row above."""
    state, record = typed(N008)
    assert before_the_join(state) == (
        "If row 2 lies end for end there is 1 new touch: row 1 place 4 meets row 2 "
        "place 4: D butter along a seam.",
    )
    assert before_the_next(state, "join-rows").startswith("If row 2 lies end for end")
    state = go_on(state, record, c.TurnRow(2))
    said = " ".join(before_the_join(state))
    assert "As they lie: row 1 place 4 meets row 2 place 4: D butter along a seam." in said
    assert "Turned end for end row 2 would touch less, at 0: was it picked up so?" in said


def test_a_piece_of_several_rows_is_turned_as_one() -> None:
    state, record = typed(N008)
    state = go_on(state, record, c.JoinRows(1, 2), c.JoinRows(3, 4))
    assert "the piece with row 3" in before_the_join(state)[0]


def test_rows_exchanged_after_pressing_are_said_before_they_are_joined_n009() -> None:
    state, record = typed(N008)
    assert nesting_facts(state) == ()
    state = go_on(state, record, c.ExchangeRows(2, 3))
    assert press_anew_words(state, 1, 2).endswith("press row 2 the other way before you join them.")
    assert before_the_join(state)[0] == press_anew_words(state, 1, 2)
    assert nesting_facts(state) == (
        "Rows 1 and 2 lie ridge on ridge.",
        "Rows 3 and 4 lie ridge on ridge.",
        "Press rows 2, 3 the other way, and all nest.",
    )
    stage = state.route.stage("join-rows")
    assert stage is not None
    told = [text for label, text in about_stage(state, record, stage) if label == "Press"]
    assert tuple(told) == nesting_facts(state)
    state = go_on(state, record, c.ExchangeRows(2, 3), c.ExchangeRows(1, 3))
    assert nesting_facts(state) == ()


def test_a_row_turned_end_for_end_is_pressed_the_other_way_too() -> None:
    state, record = typed(N008)
    state = go_on(state, record, c.TurnRow(3))
    assert press_anew_words(state, 2, 3) != ""
    assert press_anew_words(state, 1, 2) == ""
    state = go_on(state, record, c.TurnRow(3), c.TurnRow(4))
    assert nesting_facts(state)[1] == "Press row 4 the other way, and all nest."


def test_as_many_touches_either_way_say_nothing_of_turning() -> None:
    state, _ = typed("ABC / ADC")
    # Turned, C and A meet no letter of their own; as they lie, two places touch.
    assert before_the_join(state)[0].startswith("Turned end for end row 2 would touch less, at 0")
    state, _ = typed("ABA / ACA")
    assert before_the_join(state) == (
        "As they lie: row 1 place 1 meets row 2 place 1: A chalk along a seam.",
        "As they lie: row 1 place 3 meets row 2 place 3: A chalk along a seam.",
        "If row 2 lay end for end, nothing new would touch: go by its tag.",
    )
    state, _ = typed("ABC / CDA")
    assert before_the_join(state) == (
        "If row 2 lies end for end there are 2 new touches: row 1 place 1 meets row 2 place 1: "
        "A chalk along a seam.",
    )


def test_with_sashes_rows_nest_in_any_order_and_nothing_meets() -> None:
    state, record = typed(N008, Sashing(PLAIN.seam * 8, "oat"))
    state = go_on(state, record, c.ExchangeRows(2, 3))
    assert nesting(state) == ALL_NEST
    assert nesting_facts(state) == ()
    assert before_the_join(state) == ()


def test_rows_joined_are_no_longer_told_to_be_pressed_anew() -> None:
    state, record = typed(N008)
    state = go_on(state, record, c.ExchangeRows(2, 3), c.JoinRows(1, 2))
    assert nesting_facts(state)[0] == "Rows 3 and 4 lie ridge on ridge."


def test_a_row_not_sewn_is_pressed_as_suits() -> None:
    quilt = replace(with_fabrics("plain-squares", pieces=40), target=Target(4, 5))
    state, record = play(quilt, *everything(quilt, quilt.method.stages[-1].id))
    units = units_by_letter("ABCDECDEABEABCDBCDEA")
    rows = tuple(tuple((5 * n + place, 0) for place in range(5)) for n in range(4))
    state = go_on(state, record, c.LayWall(units, rows, how="typed"), c.Count("sew-rows", 2))
    state = go_on(state, record, c.ExchangeRows(1, 2))
    assert nesting(state).collide == ()
    assert before_the_join(state) != ()
