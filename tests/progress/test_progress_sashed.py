"""A sashed quilt from first cut to done: sashes cut, sewn in, sewn along rows, rows joined."""

from __future__ import annotations

from fractions import Fraction
from random import Random

import pytest
from msgspec.structs import replace

from sewalong.progress.joining.current_stage import in_hand
from sewalong.progress.joining.next_joins import joining
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.on_the_top import joined_rows, loose_sashes, sashed_rows
from sewalong.progress.record.readiness import ready
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.setting import Cornerstones, Sashing
from tests.progress import every_act as c
from tests.progress.building import (
    MINUTE,
    Record,
    a_quilt,
    all_units,
    do,
    go_on,
    opening,
    play,
)
from tests.progress.walking import after_the_units, walk_to_the_end
from tests.progress.wandering import SETTINGS

PLAIN = Sashing(Fraction(2), "oat")
STONES = Cornerstones("coral")


def sashed(
    rows: int = 3,
    columns: int = 4,
    *,
    frame: bool = False,
    stones: bool = True,
    spare: int = 0,
    borders: int = 0,
) -> Quilt:
    """Plain squares, one unit each, as many as are wanted and `spare`."""
    setting = replace(PLAIN, frame=frame, cornerstones=STONES if stones else None)
    quilt = a_quilt("plain-squares", rows * columns + spare, rows, columns, borders=borders)
    return replace(quilt, setting=setting)


def test_the_stages_that_sashes_bring() -> None:
    assert after_the_units(sashed()) == [
        "cut standing sashes",
        "cut lying sashes",
        "cut cornerstones",
        "sew rows",
        "sew sash rows",
        "add sashes",
        "join rows",
    ]
    assert after_the_units(sashed(stones=False)) == [
        "cut standing sashes",
        "cut long sashes",
        "sew rows",
        "add sashes",
        "join rows",
    ]


def test_one_row_or_one_column_without_a_frame_has_sashes_one_way_only() -> None:
    assert after_the_units(sashed(rows=1)) == ["cut standing sashes", "sew rows"]
    assert after_the_units(sashed(rows=1, frame=True))[-2:] == ["sew sash rows", "add sashes"]
    assert after_the_units(sashed(columns=1, stones=False)) == [
        "cut long sashes",
        "sew rows",
        "add sashes",
        "join rows",
    ]


def needed(quilt: Quilt) -> dict[str, int]:
    return {line.stage.id: line.needed for line in plan(opening(quilt)).lines}


def test_how_many_of_each_three_rows_of_four_need() -> None:
    """By hand. Without a frame: 3 sashes in each row, 2 sash rows of 4 sashes and 3 stones. With
    one: 5 in each row, 4 sash rows of 4 sashes and 5 stones."""
    bare, framed = needed(sashed()), needed(sashed(frame=True))
    stages = ("cut-standing-sashes", "cut-lying-sashes", "cut-cornerstones", "sew-sash-rows")
    assert [bare[stage] for stage in stages] == [9, 8, 6, 2]
    assert [framed[stage] for stage in stages] == [15, 16, 20, 4]
    # Between rows and sash rows there is a seam fewer than there are of both.
    assert bare["add-sashes"] + bare["join-rows"] == 3 + 2 - 1
    assert framed["add-sashes"] + framed["join-rows"] == 3 + 4 - 1
    assert needed(sashed(frame=True, stones=False))["cut-long-sashes"] == 4


@pytest.mark.parametrize("seed", range(24))
def test_a_walk_through_every_stage_ends_done_and_conserves_every_piece(seed: int) -> None:
    """In lots of any size, with pieces spoiled, seams unpicked and acts undone on the way."""
    chance = Random(seed)
    setting = SETTINGS[seed % len(SETTINGS)]
    rows, columns = chance.randint(1, 4), chance.randint(2, 4)
    quilt = a_quilt("paired-squares", 12 * rows * columns, rows, columns, borders=seed % 2)
    quilt = replace(quilt, setting=setting)
    walk_to_the_end(quilt, chance, mishap)


def mishap(chance: Random, state: State) -> c.Act | None:
    what = chance.random()
    between = [p for p in state.route.piles if p.endswith(("sash", "cornerstone", "sash-row"))]
    if what < 0.08:
        return c.Spoil(chance.choice([*between, "row"]), 1, "scorched")
    if what < 0.16:
        return c.Unpick(chance.choice(("add-sashes", "sew-rows", "sew-sash-rows")), 1)
    if what < 0.22:
        return c.Undo()
    if what < 0.28:
        pile = chance.choice(between)
        return c.Recount(pile, state.piles[pile] + 1, "found")
    return None


def ready_for_rows(quilt: Quilt) -> list[c.Act]:
    """Units, and whatever is cut and sewn to lie between them."""
    lines = {line.stage.id: line.needed for line in plan(opening(quilt)).lines}
    ids = ("cut-standing-sashes", "cut-lying-sashes", "cut-cornerstones", "cut-long-sashes")
    counts = [c.Count(id, lines[id]) for id in ids if lines.get(id)]
    sash_rows = lines.get("sew-sash-rows")
    more = [c.Count("sew-sash-rows", sash_rows)] if sash_rows else []
    return [*all_units(quilt), *counts, *more]


@pytest.mark.parametrize(("frame", "on"), [(False, (1, 2)), (True, (0, 1, 2, 3))])
def test_a_row_with_a_sash_on_is_in_the_top(frame: bool, on: tuple[int, ...]) -> None:
    """By hand: without a frame each sash is on a row of its own; with one, row 1 may have two."""
    quilt = sashed(frame=frame)
    state, record = play(quilt, *ready_for_rows(quilt), c.Count("sew-rows", 3))
    assert (sashed_rows(state), joined_rows(state)) == (0, 0)
    for rows in on:
        state = go_on(state, record, c.Count("add-sashes"))
        assert (sashed_rows(state), joined_rows(state)) == (rows, max(rows, 1))
        assert loose_sashes(state) == state.done["add-sashes"]
    state = go_on(state, record, c.Count("join-rows"))
    assert loose_sashes(state) == state.done["add-sashes"] - 1


def test_a_sash_waits_for_its_row_and_a_seam_for_both_its_rows_and_their_sash() -> None:
    quilt = sashed()
    state, record = play(quilt, *ready_for_rows(quilt))
    seen = []
    for act in (None, "sew-rows", "add-sashes", "sew-rows", "join-rows", "add-sashes", "sew-rows"):
        if act is not None:
            state = go_on(state, record, c.Count(act))
        both = (ready(state, stage) for stage in state.route.of_the_top)
        seen.append((act, *both))
    assert seen == [
        (None, 0, 0),
        ("sew-rows", 1, 0),
        ("add-sashes", 0, 0),
        ("sew-rows", 1, 1),
        ("join-rows", 1, 0),
        ("add-sashes", 0, 0),
        ("sew-rows", 0, 1),
    ]


def test_cutting_from_cloth_is_suggested_when_nothing_waits_in_a_pile() -> None:
    quilt = sashed(rows=2, columns=2)
    suggested = []
    state, record = opening(quilt), Record(quilt)
    for _ in range(30):
        now = plan(state)
        if now.suggestion is None:
            break
        line = now.line(now.suggestion.stage)
        suggested.append(line.stage.id)
        state = go_on(state, record, c.Count(line.stage.id, min(line.to_do, line.ready)))
    assert suggested[len(quilt.method.stages) :] == [
        "cut-standing-sashes",
        "sew-rows",
        "cut-lying-sashes",
        "cut-cornerstones",
        "sew-sash-rows",
        "add-sashes",
        "join-rows",
    ]
    assert plan(state).complete


def test_a_sash_spoiled_is_one_more_to_cut() -> None:
    quilt = sashed()
    state, record = play(quilt, *all_units(quilt), c.Count("cut-standing-sashes", 9))
    assert plan(state).line("cut-standing-sashes").to_do == 0
    state = go_on(state, record, c.Spoil("standing-sash", 2, "cut short"))
    line = plan(state).line("cut-standing-sashes")
    assert (line.to_do, line.needed, line.done) == (2, 11, 9)
    # No unit is lost by it: there is cloth enough as far as anybody knows.
    assert plan(state).shortfall is None


def test_cut_from_cloth_cannot_be_unpicked_and_waits_for_nothing() -> None:
    quilt = sashed()
    state, record = play(quilt, c.Count("cut-standing-sashes", 20))
    assert state.piles["standing-sash"] == 20
    assert plan(state).line("cut-standing-sashes").from_cloth
    state = go_on(state, record, c.ChooseStage("cut-lying-sashes"))
    hand = in_hand(state, plan(state))
    assert (hand.takes, hand.makes) == ("cloth", "1 lying sash")
    with pytest.raises(Refused, match="is cut and cannot be taken apart"):
        do(state, record, c.Unpick("cut-standing-sashes", 1), record[-1].event.at)


@pytest.mark.parametrize(("frame", "fit"), [(False, 2), (True, 3)])
def test_as_many_sashes_go_on_as_there_are_rows_for(frame: bool, fit: int) -> None:
    quilt = sashed(rows=4, frame=frame)
    state, record = play(quilt, *ready_for_rows(quilt))
    (stage,) = (one for one in state.route.of_the_top if one.id == "add-sashes")
    assert ready(state, stage) == 0
    state = go_on(state, record, c.Count("sew-rows", 2))
    assert ready(state, stage) == fit
    with pytest.raises(Refused, match=r"2 rows sewn, 0 sashes on already.*Sew more rows first"):
        do(state, record, c.Count("add-sashes", fit + 1), record[-1].event.at)
    state = go_on(state, record, c.Count("sew-rows", 2))
    assert ready(state, stage) == (5 if frame else 3)


def test_rows_are_joined_once_their_sash_is_on() -> None:
    quilt = sashed(rows=4)
    state, record = play(quilt, *ready_for_rows(quilt), c.Count("sew-rows", 4))
    with pytest.raises(Refused, match="Add the sash between two rows first"):
        do(state, record, c.JoinRows(1, 2), record[-1].event.at)
    assert joining(state).lines == ("3 seams to go.", "Add the sash between two rows first.")
    state = go_on(state, record, c.Count("add-sashes", 2))
    # Put on from row 1 on: those of rows 1 and 2, so that row 3 has none yet.
    assert [(join.first, join.second) for join in joining(state).joins] == [(1, 2)]
    state = go_on(state, record, c.Count("add-sashes"), c.JoinRows(3, 4), c.JoinRows(1, 2))
    assert [(join.first, join.second) for join in joining(state).joins] == [(2, 3)]
    state = go_on(state, record, c.JoinRows(2, 3))
    assert plan(state).complete


def test_a_sash_between_joined_rows_is_not_unpicked_and_a_loose_one_is() -> None:
    quilt = sashed(rows=4)
    state, record = play(
        quilt,
        *ready_for_rows(quilt),
        c.Count("sew-rows", 4),
        c.Count("add-sashes", 3),
        c.JoinRows(1, 2),
    )
    assert state.piles["sash-row"] == 0
    with pytest.raises(Refused, match="Only 2 seams from add sashes"):
        do(state, record, c.Unpick("add-sashes", 3), record[-1].event.at)
    state = go_on(state, record, c.Unpick("add-sashes", 2))
    assert state.piles["sash-row"] == 2
    assert plan(state).line("add-sashes").to_do == 2


def test_a_row_with_its_sash_on_is_not_spoiled_by_itself() -> None:
    quilt = sashed(rows=4)
    state, record = play(
        quilt, *ready_for_rows(quilt), c.Count("sew-rows", 4), c.Count("add-sashes", 3)
    )
    with pytest.raises(Refused, match="Only 1 row lies there"):
        do(state, record, c.Spoil("row", 2, "torn"), record[-1].event.at)
    state = go_on(state, record, c.Spoil("row", 1, "torn"))
    now = plan(state)
    assert (now.line("sew-rows").to_do, now.line("cut-standing-sashes").to_do) == (1, 3)
    assert now.units.to_go == 4


def test_another_layout_must_fit_what_lies_between_the_rows() -> None:
    quilt = sashed(rows=4, spare=8)
    state, record = play(quilt, *ready_for_rows(quilt))
    at = record[-1].event.at
    with pytest.raises(Refused, match="3 sash rows are as long as 4 across already"):
        do(state, record, c.ChangeTarget(4, 5), at)
    with pytest.raises(Refused, match="With one column and no frame no sashes meet"):
        do(state, record, c.ChangeTarget(4, 1), at)
    state = go_on(state, record, c.Count("sew-rows", 4), c.Count("add-sashes", 3))
    with pytest.raises(Refused, match="3 sashes are sewn along rows already, and 3 rows take 2"):
        do(state, record, c.ChangeTarget(3, 4), at)
    state = go_on(state, record, c.ChangeTarget(5, 4))
    assert state.target == Target(5, 4)
    assert plan(state).line("add-sashes").to_do == 1


def test_seams_are_pressed_towards_the_sashes_in_every_row() -> None:
    quilt = sashed(rows=2)
    state, _ = play(quilt, *ready_for_rows(quilt))
    hand = in_hand(state, plan(state))
    assert hand.line.stage.id == "sew-rows"
    assert hand.which == "Row 1: press its seams towards the sashes."
    assert hand.takes == "4 units and 3 standing sashes"


@pytest.mark.parametrize(
    ("frame", "said"),
    [
        (True, "Row 1: the outer edge first, the one no other row is joined to."),
        (False, "Row 1: the edge towards row 2."),
    ],
)
def test_which_edge_the_next_sash_goes_on(frame: bool, said: str) -> None:
    quilt = sashed(rows=2, frame=frame)
    state, record = play(quilt, *ready_for_rows(quilt), c.Count("sew-rows", 2))
    hand = in_hand(state, plan(state))
    assert (hand.line.stage.id, hand.which) == ("add-sashes", said)
    assert (hand.takes, hand.makes) == ("a row and 1 sash row", "a row with its sash")
    if frame:
        state = go_on(state, record, c.Count("add-sashes", 2))
        hand = in_hand(state, plan(state))
        assert hand.which == "Row 2: the edge away from row 1."


def test_rows_begun_hold_the_sashes_between_their_units() -> None:
    """Rows of four with three sashes: a piece of three holds two, one of two holds one."""
    quilt = sashed(rows=3)
    state, record = play(quilt, *ready_for_rows(quilt))
    state = go_on(state, record, c.ReadCaution("sew-rows"))
    state = do(state, record, c.BeginRows(((1, 3), (1, 2))), record[-1].event.at + MINUTE)
    assert (state.piles["unit"], state.piles["standing-sash"]) == (12 - 5, 9 - 3)
    # Seven loose units and six sashes finish both rows begun and one more.
    assert ready(state, state.route.of_pieces[-2]) == 3
    state = go_on(state, record, c.Count("sew-rows", 1))
    assert (state.piles["unit"], state.piles["standing-sash"]) == (6, 5)
    assert state.begun == ((1, 2),)
    state = go_on(state, record, c.Spoil("standing-sash", 1, "cut short"))
    assert ready(state, state.route.of_pieces[-2]) == 1
    assert plan(state).line("cut-standing-sashes").to_do == 1
    state = go_on(state, record, c.Find("standing-sash", 1), c.Count("sew-rows", 2))
    assert state.begun == ()
    assert (state.piles["unit"], state.piles["standing-sash"]) == (0, 0)


def test_more_is_not_begun_than_there_are_sashes_for() -> None:
    quilt = sashed(rows=3)
    state, record = play(quilt, *all_units(quilt), c.Count("cut-standing-sashes", 1))
    with pytest.raises(
        Refused, match="2 standing sashes would be in 1 piece of 3 units, and only 1 standing sash"
    ):
        do(state, record, c.BeginRows(((1, 3),)), record[-1].event.at + MINUTE)


def test_straight_quilts_have_the_stages_they_always_had() -> None:
    quilt = a_quilt(borders=1)
    assert after_the_units(quilt) == ["sew rows", "join rows", "add borders"]
    assert set(opening(quilt).piles) == {pile.id for pile in quilt.method.piles} | {"row"}
